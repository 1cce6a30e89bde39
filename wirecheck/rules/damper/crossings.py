"""Two leads of a damper that changed places: which do, and what the unit does then."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

from wirecheck.model.finding import Breaks
from wirecheck.rules.damper.hookup import CALL, HOT, PROVED, Hookup

#: By the two terminals: what is seen at the unit, and what it breaks.
OUTCOMES: Final[Mapping[str, tuple[str, Breaks]]] = {
    "call-proved": (
        "The damper's motor gets no call: it does not open, and the burner never lights.",
        Breaks.OPERATION,
    ),
    "hot-call": (
        (
            "The damper is open all the time, and its end switch feeds the control with no call: "
            "the burner fires as soon as there is power."
        ),
        Breaks.SAFETY,
    ),
    "hot-proved": (
        "On a call the damper opens and holds itself open from then on; the burner never lights.",
        Breaks.OPERATION,
    ),
    "hot-common": (
        (
            "The motor has the hot side at both ends on a call: the damper does not open, and the "
            "burner never lights."
        ),
        Breaks.OPERATION,
    ),
    "call-common": (
        (
            "The damper opens on a call, and its end switch passes on the common: the burner never "
            "lights."
        ),
        Breaks.OPERATION,
    ),
    "proved-common": (
        (
            "The motor runs weakly or not at all; if the damper opens, its end switch shorts the "
            "transformer."
        ),
        Breaks.SAFETY,  # as any dead short of the transformer on a call is
    ),
}


def crossed_over(hookup: Hookup, one: str, other: str) -> bool:
    """Whether each of two leads landed on the other's terminal."""
    return other in hookup.landed[one] and one in hookup.landed[other]


def told_elsewhere(hookup: Hookup, role: str) -> bool:
    """Whether another rule tells of a lead: a plug left in, a damper on constant power."""
    if hookup.in_call_lead or hookup.plugged:
        return role in (CALL, PROVED)
    constant = HOT in hookup.landed[CALL] and HOT in hookup.landed[HOT]
    return role == CALL and constant
