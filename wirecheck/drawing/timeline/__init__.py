"""The timeline of a run: who does what when, as bars over time, on one sheet."""

from wirecheck.drawing.timeline.picture import draw

__all__ = ["draw"]
