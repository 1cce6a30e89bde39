"""The correction: search, proof, text."""
