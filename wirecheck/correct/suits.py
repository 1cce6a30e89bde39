"""How well two terminals suit each other: the lead labelled alike wins.

The weights only order answers that are equally short; they are our own judgement.
"""

from __future__ import annotations

from typing import Final

from wirecheck.model.diagram import EARTH, Diagram, Terminal

#: Roles that a lead usually joins, besides those of one name (common practice, no source).
_PAIRS: Final = frozenset(
    frozenset(pair)
    for pair in (
        ("sense", "rod"),
        ("spark", "electrode"),
        ("burner-ground", "burner-metal"),
        ("pilot-valve", "pilot-operator"),
        ("main-valve", "main-operator"),
        ("valve-common", "operator-common"),
        ("valve-feed", "adapter-feed"),
        ("secondary-common", "control-common"),
        ("secondary-hot", "thermostat-feed"),
        ("thermostat-heat", "call"),
        ("call", "side"),
        ("secondary-hot", "side"),
        ("side", "thermostat-feed"),
        ("line-hot", "load-hot"),
        ("line-neutral", "load-neutral"),
        ("line-hot", "side"),
    )
)
#: How badly a terminal suits the unit's earth.
_TO_EARTH: Final = {"line-ground": 0.0, "secondary-common": 1.0, "burner-metal": 2.0, "": 2.0}
ALIKE, PAIRED, ONE_CIRCUIT, OTHER_CIRCUIT, ONE_PART = 0.0, 1.0, 2.0, 6.0, 4.0


def mismatch(diagram: Diagram, a: Terminal, b: Terminal) -> float:
    """How badly two terminals suit each other; 0 where they are labelled alike."""
    here, there = diagram.spec(a), diagram.spec(b)
    cost = ONE_PART if a.part == b.part else 0.0
    if here is None or there is None:
        spec = here or there
        if EARTH not in (a, b):
            return cost + PAIRED
        return cost + _TO_EARTH.get(spec.role if spec else "", OTHER_CIRCUIT)
    if here.role == there.role and here.role not in ("side", "tie"):
        return cost + ALIKE
    if _label(diagram, a) == _label(diagram, b):
        return cost + ALIKE
    if frozenset((here.role, there.role)) in _PAIRS:
        return cost + PAIRED
    alike = "any" in (here.circuit, there.circuit) or here.circuit == there.circuit
    return cost + (ONE_CIRCUIT if alike else OTHER_CIRCUIT)


def _label(diagram: Diagram, terminal: Terminal) -> str:
    return diagram.show(terminal).rpartition(".")[2].casefold()
