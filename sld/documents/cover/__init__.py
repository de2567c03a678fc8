"""The cover of a pack."""
