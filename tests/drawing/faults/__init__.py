"""The sheets for finding a fault."""
