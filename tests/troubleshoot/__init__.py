"""Finding a fault."""
