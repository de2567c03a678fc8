"""What whoever mounts and operates an installation is handed."""
