"""What must hold in every position of the switches, whatever the wiring that breaks it."""
