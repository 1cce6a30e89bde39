"""The corrected sheets."""
