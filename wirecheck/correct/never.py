"""What a repair never does, however few leads it would move.

It takes no safety out of the circuit, bypasses none and puts no lead where a contact belongs; it
takes off no earth and no burner ground; and it lands no lead on a terminal whose duty is another,
just because that is empty: the next lead that belongs there would make it live, or short it.  What
shows only in the circuit as a whole is left to the proof of the result (`wirecheck.correct.proof`).
"""

from __future__ import annotations

from typing import Final

from wirecheck.circuit.nets import Nets
from wirecheck.correct.rewired import Change, Ends, Rewired, TakeOut
from wirecheck.model.diagram import EARTH, Diagram, Terminal

#: Roles of metal and earth, and of what may be earthed.
_EARTHED: Final = frozenset({"line-ground", "burner-ground", "burner-metal"})
_EARTHED_BY_LEAD: Final = ("line-ground", "secondary-common")
_EARTHABLE: Final = _EARTHED | {"secondary-common", "control-common", "own-common"}

#: What must not be hot for as long as the power is on.
_NEVER_ALWAYS_HOT: Final = frozenset(
    {
        "call", "control-common", "main-operator", "main-valve", "operator", "operator-common",
        "pilot-operator", "pilot-valve", "secondary-common", "thermostat-heat", "valve-common",
        "valve-feed",
    }
)  # fmt: skip


def takes_out_earth(state: Rewired, change: Change) -> bool:
    """Whether a change would take out an earth or a burner ground."""
    return isinstance(change, TakeOut) and protects(state.found, state.ends[change.lead])


def grounds(nets: Nets) -> frozenset[frozenset[Terminal]]:
    """What is earthed or grounded: line grounds, commons of supplies, burners at their controls."""
    parts = nets.diagram.parts.values()
    pairs = [(end, EARTH) for part in parts for end in part.with_role(*_EARTHED_BY_LEAD)]
    metals = [end for part in parts for end in part.with_role("burner-metal")]
    pairs += [(a, b) for part in parts for a in part.with_role("burner-ground") for b in metals]
    return frozenset(frozenset(pair) for pair in pairs if nets.joined(*pair))


def bridged(nets: Nets) -> frozenset[tuple[str, str, frozenset[Terminal]]]:
    """The contacts both sides of which are one conductor: a lead stands across them."""
    return frozenset(
        (element.part.key, element.name, frozenset((element.a, element.b)))
        for elements in nets.elements_of.values()
        for element in elements
        if element.type == "switch" and element.net_a == element.net_b
    )


def misused(nets: Nets) -> frozenset[Terminal]:
    """Terminals for the standing hot side or the common of a supply, with another thing on them."""
    found = set()
    for part in nets.diagram.parts.values():
        for hot in part.with_role("control-hot"):
            if _roles(nets, hot) & _NEVER_ALWAYS_HOT:
                found.add(hot)
        for common in part.with_role("thermostat-common"):
            if nets.is_wired(common) and "secondary-common" not in _roles(nets, common):
                found.add(common)
    return frozenset(found)


def _roles(nets: Nets, terminal: Terminal) -> set[str]:
    """The roles of all that is one conductor with a terminal."""
    return {_role(nets.diagram, end) for end in nets.members[nets.net(terminal)]}


def protects(diagram: Diagram, ends: Ends | None) -> bool:
    """Whether a lead between two terminals is an earth or a burner ground."""
    if ends is None:
        return False
    roles = [_role(diagram, end) for end in ends]
    return all(role in _EARTHABLE for role in roles) and any(role in _EARTHED for role in roles)


def _role(diagram: Diagram, terminal: Terminal) -> str:
    if terminal == EARTH:
        return "line-ground"
    spec = diagram.spec(terminal)
    return spec.role if spec else ""
