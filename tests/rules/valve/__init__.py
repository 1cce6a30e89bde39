"""Rules for the gas valve."""
