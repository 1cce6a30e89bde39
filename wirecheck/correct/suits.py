"""How well two terminals suit each other: the lead labelled alike wins.

The weights only order answers that are equally short; they are our own judgement.
"""

from __future__ import annotations

from typing import Final

from wirecheck.model.diagram import EARTH, Diagram, Terminal
from wirecheck.model.kind import TerminalSpec

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
        ("secondary-hot", "control-hot"),
        ("secondary-hot", "damper-hot"),
        ("control-hot", "damper-hot"),
    )
)
#: The sides of a circuit: what belongs on the one suits nothing on the other.
_HOT: Final = {
    "secondary-hot", "control-hot", "damper-hot", "call", "pilot-valve", "main-valve",
    "valve-feed", "pilot-operator", "main-operator", "thermostat-feed", "thermostat-heat",
    "line-hot", "line-hot-2", "load-hot",
}  # fmt: skip
_COMMON: Final = {
    "secondary-common", "control-common", "valve-common", "operator-common", "damper-common",
    "thermostat-common", "own-common", "line-neutral", "load-neutral",
}  # fmt: skip
#: How badly a terminal suits the unit's earth.
_TO_EARTH: Final = {"line-ground": 0.0, "secondary-common": 1.0, "burner-metal": 2.0, "": 2.0}
ALIKE, PAIRED, ONE_CIRCUIT, OTHER_CIRCUIT, ONE_PART = 0.0, 1.0, 2.0, 6.0, 4.0


def mismatch(diagram: Diagram, a: Terminal, b: Terminal) -> float:
    """How badly two terminals suit each other; 0 where they are labelled alike."""
    here, there = diagram.spec(a), diagram.spec(b)
    cost = ONE_PART if a.part == b.part else 0.0
    if here is not None and there is not None:
        same_label = _label(diagram, a) == _label(diagram, b)
        return cost + (ALIKE if same_label else _by_role(here, there))
    if EARTH not in (a, b):
        return cost + PAIRED
    spec = here or there
    return cost + _TO_EARTH.get(spec.role if spec else "", OTHER_CIRCUIT)


def _by_role(here: TerminalSpec, there: TerminalSpec) -> float:
    roles = here.role, there.role
    if here.role == there.role and here.role not in ("side", "tie"):
        return ALIKE
    same_circuit = "any" in (here.circuit, there.circuit) or here.circuit == there.circuit
    if frozenset(roles) in _PAIRS or (same_circuit and _COMMON.issuperset(roles)):
        return PAIRED
    opposite = _are_opposite(*roles) or _are_opposite(*reversed(roles))
    return ONE_CIRCUIT if same_circuit and not opposite else OTHER_CIRCUIT


def _are_opposite(role: str, other: str) -> bool:
    return role in _HOT and other in _COMMON


def _label(diagram: Diagram, terminal: Terminal) -> str:
    return diagram.show(terminal).rpartition(".")[2].casefold()
