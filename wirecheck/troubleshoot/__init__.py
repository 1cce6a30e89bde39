"""Troubleshooting: from what is seen and measured to the fault, by the fewest readings."""
