"""The report of a unit as one HTML file that needs nothing beside it."""
