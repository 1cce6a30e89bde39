"""The report floor: results as text for people and as JSON for programs, and whole-file writing."""
