"""Readings in tolerances: two values closer than one can be confused.

That covers the meter, and the ups and downs of the line.
"""

from __future__ import annotations

import math

from wirecheck.circuit.instrument import OPEN_OHM
from wirecheck.troubleshoot.reading import Observation, Reading

#: Tolerance of a reading: so much, or such a share of it, whichever is more (common practice, no
#: source: it covers the meter and the ups and downs of the line).
TOLERANCES = {"V": (1.0, 0.10), "ohm": (2.0, 0.20), "uA": (0.25, 0.15)}
#: Two choices are never confused.
CHOICE_APART = 100.0


def position(reading: Reading, value: float) -> float:
    """Where a value lies, in tolerances: straight up to where the share counts, then by ratio.

    Args:
        reading: whose value it is.
        value: in its unit, or the number of a choice.
    """
    if not reading.unit:
        return value * CHOICE_APART
    least, share = TOLERANCES[reading.unit]
    value = min(abs(value), 2 * OPEN_OHM)
    knee = least / share
    return value / least if value <= knee else (1 + math.log(value / knee)) / share


def distance(observation: Observation, value: float) -> float:
    """How many tolerances what was observed lies from what would be read; 0 if not at all."""
    there = position(observation.reading, value)
    low = position(observation.reading, observation.low)
    high = position(observation.reading, observation.high)
    return max(0.0, low - there, there - high)
