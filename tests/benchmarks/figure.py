"""One line of the table: a figure, and the bound it must keep."""

from typing import NamedTuple


class Figure(NamedTuple):
    """What was measured.

    Attributes:
        name: what the figure is, in words.
        value: the ratio or the exponent; without a unit.
        bound: the most it may be.
        beside: what else to know: the times behind a ratio.
    """

    name: str
    value: float
    bound: float
    beside: str

    @property
    def holds(self) -> bool:
        """True if the figure keeps its bound."""
        return self.value <= self.bound
