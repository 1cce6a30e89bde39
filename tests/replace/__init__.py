"""A device replaced by another."""
