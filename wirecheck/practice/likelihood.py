"""How often people make a mistake, beside others: what comes up often is practised often.

The weights are common practice, no source: the ground of the burner first, then what carries the
flame signal, the valve and the safeties; who wires a line switch wrong finds out at once.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

from wirecheck.model.diagram import EARTH, Diagram, Terminal
from wirecheck.practice.mistake import Form, Mistake

#: Of the kinds of mistakes.
FORMS: Final[Mapping[Form, float]] = {
    Form.MISSING: 2.0,
    Form.WRONG_TERMINAL: 3.0,
    Form.EXCHANGED: 3.0,
    Form.JUMPER: 2.0,
    Form.LINK: 1.0,
}
_BY_ROLE: Final[Mapping[str, float]] = {
    "burner-ground": 8.0,
    "burner-metal": 8.0,
    "sense": 5.0,
    "rod": 5.0,
    "spark": 4.0,
    "electrode": 4.0,
    "pilot-valve": 4.0,
    "main-valve": 4.0,
    "valve-common": 4.0,
    "control-common": 3.0,
    "call": 3.0,
    "thermostat-heat": 3.0,
    "thermostat-feed": 3.0,
}
_AT_A_SAFETY, _AT_A_DAMPER, _AT_THE_LINE, _ELSEWHERE = 4.0, 3.0, 0.3, 1.0


def weight(diagram: Diagram, mistake: Mistake) -> float:
    """How often a mistake is made, beside others of its kind: as at the likeliest of its places."""
    return max(_at(diagram, place) for place in mistake.places)


def _at(diagram: Diagram, place: Terminal) -> float:
    spec = diagram.spec(place)
    if place == EARTH or spec is None:
        return _ELSEWHERE
    if spec.circuit == "line":
        return _AT_THE_LINE
    part = diagram.parts[place.part]
    if any(switch.safety and place.name in switch.between for switch in part.structure.switches):
        return _AT_A_SAFETY
    if spec.role.startswith("damper-"):
        return _AT_A_DAMPER
    return _BY_ROLE.get(spec.role, _ELSEWHERE)
