"""Sheets of a corrected diagram: what is to be taken away and what is to go in stand out."""

from wirecheck.drawing.corrected.connections import corrected_connections
from wirecheck.drawing.corrected.ladder import corrected_ladder

__all__ = ["corrected_connections", "corrected_ladder"]
