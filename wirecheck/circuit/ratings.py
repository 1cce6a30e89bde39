"""What parts are rated for: volts, and what loads take at these."""

from __future__ import annotations

import cmath
import math
from collections.abc import Mapping
from functools import lru_cache

from wirecheck.model.diagram import Value
from wirecheck.model.kind import LoadSpec
from wirecheck.model.quantity import Quantity


def load_ohms(spec: LoadSpec, values: Mapping[str, Value]) -> complex | None:
    """Impedance of a load at its rated volts, in ohm; None if it takes no steady current.

    |Z| is V/I, V^2/VA or V^2 pf/W; its angle follows from the power factor, inductive.
    """
    if spec.volts is None or spec.takes is None:
        return None
    volts = highest(values.get(spec.volts) if isinstance(spec.volts, str) else spec.volts)
    taken = values.get(spec.takes)
    if not isinstance(taken, Quantity) or not taken.high_base or not volts:
        return None
    return _impedance(volts, taken, spec.power_factor)


@lru_cache(maxsize=1024)
def _impedance(volts: float, taken: Quantity, power_factor: float) -> complex:
    amount = taken.high_base
    magnitude = {
        "amps": lambda: volts / amount,
        "volt-amps": lambda: volts**2 / amount,
        "watts": lambda: volts**2 * power_factor / amount,
        "ohms": lambda: amount,
    }[taken.dimension]()
    return cmath.rect(magnitude, math.acos(power_factor))


def amounts(value: Value | float | None) -> list[float]:
    """The amounts of a value in base units; of a range the upper end."""
    if isinstance(value, Quantity):
        return [value.high_base]
    if isinstance(value, tuple):
        return [each.high_base for each in value if isinstance(each, Quantity)]
    return [float(value)] if isinstance(value, (int, float)) else []


def highest(value: Value | float | None) -> float:
    """The highest amount of a value, in base units; 0 where there is none."""
    return max(amounts(value), default=0.0)
