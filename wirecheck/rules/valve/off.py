"""Valve leads that do not join what they should: left out, or landed on another circuit."""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from wirecheck.model.diagram import EARTH, Terminal
from wirecheck.rules.facts import Facts
from wirecheck.rules.valve.arrangement import OPERATOR_ROLES, Arrangement, Fed
from wirecheck.rules.valve.feeds import OUTPUTS, Feeds, Source

#: Circuits in which no lead of a valve ends.
_OTHER_CIRCUITS = frozenset({"ignition", "flame", "line"})


class Stray(NamedTuple):
    """A lead from ``start`` that ends at ``far`` and should end at ``right``."""

    lead: int
    start: Terminal
    far: Terminal
    right: Terminal


def ends_off(facts: Facts, found: Arrangement) -> list[Fed]:
    """The terminals of a valve that are on nothing of the control; of those tied, the first."""
    off: list[Fed] = []
    for fed in found.terminals:
        if not fed.right and not any(facts.joined(fed.terminal, said.terminal) for said in off):
            off.append(fed)
    return off


def stray_lead(facts: Facts, found: Arrangement, fed: Fed) -> Stray | None:
    """The lead that is there, at the valve or at the control, and ends on another circuit."""
    for start, right in ((fed.terminal, fed.wanted), (fed.wanted, fed.terminal)):
        for number in facts.nets.leads_at(start):
            far = facts.other_end(number, start)
            if _is_stray(facts, found, start, far):
                return Stray(number, start, far, right)
    return None


def _is_stray(facts: Facts, found: Arrangement, start: Terminal, far: Terminal) -> bool:
    feeds = facts.as_wired.once(Feeds)
    spec = facts.diagram.spec(far)
    if spec is not None and spec.circuit in _OTHER_CIRCUITS:
        return True
    if far.part == found.control.key or facts.role(far) in OUTPUTS or feeds.is_live(far):
        return True
    if facts.role(start) == "valve-common":
        return facts.role(far) in OPERATOR_ROLES
    return far == EARTH or facts.role(far) == "burner-metal" or feeds.is_common(far, found.control)


def what_is_off(found: Arrangement, off: Sequence[Fed]) -> str:
    """The fault of the rules for it: what the unit misses first."""
    if found.common in off:
        return "common-off"
    if found.direct:
        return "feed-off"
    return "pilot-off" if off[0].want is Source.PILOT else "main-off"
