"""Values as a meter shows them, in words for people."""

from __future__ import annotations

import math

#: What a meter shows of nothing: less than this is 0 V.
NO_VOLTS = 0.05
#: Less than this across a contact does not tell whether it is open (common practice, no source).
TELLS_V = 1.0
#: Up to so many ohms a lead or contact is whole (common practice, no source).
WHOLE_OHM = 1.0


def volts_words(volts: float) -> str:
    """``24.9 V``, ``120 V``, ``0 V``."""
    if volts < NO_VOLTS:
        return "0 V"
    return f"{volts:.0f} V" if volts >= 99.95 else f"{volts:.1f} V"


def limit_words(volts: float) -> str:
    """A bound: ``20.4 V``, ``30 V``, ``102 V``."""
    return f"{volts:.3g} V"


def amps_words(amps: float) -> str:
    """``0.79 A``."""
    return f"{amps:.2f} A"


def microamps_words(microamps: float) -> str:
    """``3.6 uA``; ``0 uA``."""
    return f"{microamps:.1f} uA" if microamps >= 0.05 else "0 uA"


def ohms_words(ohms: float) -> str:
    """``under 1 ohm`` for a conductor, ``120 ohm``, ``open (OL)`` where nothing conducts."""
    if math.isinf(ohms):
        return "open (OL)"
    if ohms < WHOLE_OHM:
        return f"under {WHOLE_OHM:g} ohm"
    if ohms < 10:
        return f"{ohms:.1f} ohm"
    return f"{ohms:.0f} ohm" if ohms < 10_000 else f"{ohms / 1000:.0f} kohm"
