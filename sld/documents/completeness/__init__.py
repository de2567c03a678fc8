"""What operators, permit offices and inspection bodies ask for, and where in a pack it is answered."""
