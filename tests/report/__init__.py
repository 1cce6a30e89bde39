"""The reports: what they say, and the files they are written to."""
