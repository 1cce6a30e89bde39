"""Quantities: a number or a range, and a unit the trade uses.

Inside the program a quantity keeps the unit as typed (for printing) and gives its value in the
base unit of its dimension with ``low_base`` / ``high_base`` (V, A, VA, W, ohm, mm2, m, s, Hz,
degrees C, %).
"""

from __future__ import annotations

import math
from typing import Final, NamedTuple


class Unit(NamedTuple):
    """A unit: how it is printed, what it measures, and ``base = factor * value + offset``."""

    symbol: str
    dimension: str
    factor: float
    offset: float = 0.0


#: Length of an inch in metres, exact (international yard and pound agreement, 1959; from memory).
INCH_M: Final = 0.0254

UNITS: Final[dict[str, Unit]] = {
    unit.symbol.casefold(): unit
    for unit in (
        Unit("V", "volts", 1.0),
        Unit("mV", "volts", 1e-3),
        Unit("kV", "volts", 1e3),
        Unit("A", "amps", 1.0),
        Unit("mA", "amps", 1e-3),
        Unit("uA", "amps", 1e-6),
        Unit("VA", "volt-amps", 1.0),
        Unit("W", "watts", 1.0),
        Unit("ohm", "ohms", 1.0),
        Unit("kohm", "ohms", 1e3),
        Unit("Mohm", "ohms", 1e6),
        Unit("AWG", "gauge", 1.0),
        Unit("mm2", "area", 1.0),
        Unit("in", "length", INCH_M),
        Unit("ft", "length", 12 * INCH_M),
        Unit("mm", "length", 1e-3),
        Unit("m", "length", 1.0),
        Unit("s", "time", 1.0),
        Unit("min", "time", 60.0),
        Unit("Hz", "frequency", 1.0),
        Unit("F", "temperature", 5 / 9, -160 / 9),
        Unit("C", "temperature", 1.0),
        Unit("%", "percent", 1.0),
    )
}


class Quantity(NamedTuple):
    """``low`` to ``high`` of ``unit`` (equal for a single value), in the unit as typed."""

    low: float
    high: float
    unit: str

    @property
    def dimension(self) -> str:
        """What is measured: ``volts``, ``length``, ``gauge`` and so on."""
        return UNITS[self.unit.casefold()].dimension

    @property
    def low_base(self) -> float:
        """The lower end in the base unit of its dimension."""
        unit = UNITS[self.unit.casefold()]
        return self.low * unit.factor + unit.offset

    @property
    def high_base(self) -> float:
        """The upper end in the base unit of its dimension."""
        unit = UNITS[self.unit.casefold()]
        return self.high * unit.factor + unit.offset

    def __str__(self) -> str:
        """As a technician writes it: ``24 V``, ``10-30 s``."""
        number = f"{self.low:g}" if self.low == self.high else f"{self.low:g}-{self.high:g}"
        return f"{number} {self.unit}"


def conductor_area_mm2(gauge_awg: float) -> float:
    """Cross-section of a solid round conductor of an American gauge, in mm2.

    Diameter 0.127 mm x 92^((36-n)/39) (ASTM B258, from memory).
    """
    diameter_mm = 0.127 * 92 ** ((36 - gauge_awg) / 39)
    return float(math.pi / 4 * diameter_mm**2)
