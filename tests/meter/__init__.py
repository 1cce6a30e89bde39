"""The meter sheet."""
