"""How the metal of each burner gets back to the ground terminal of its control.

One reading, shared by the rules of the family, so that one ground lead gives one finding.
"""

from __future__ import annotations

from collections.abc import Iterator
from enum import Enum, auto
from typing import NamedTuple

from wirecheck.model.diagram import EARTH, Terminal
from wirecheck.rules.facts import Facts
from wirecheck.rules.ignition_leads.hookup import Hookup, hookups

#: Where a lead from the ground terminal does no harm and is no way to the burner either.
_COMMON_ROLES = frozenset(
    {"control-common", "valve-common", "damper-common", "secondary-common", "operator-common"}
)


class Ends(Enum):
    """Where a ground lead ends that does not join the control's ground to the burner's metal."""

    AT_CABINET = auto()
    AT_WRONG_TERMINAL = auto()
    AT_CONTACT = auto()


class Astray(NamedTuple):
    """A ground lead that goes from one of its two places, ``start``, to ``far``."""

    hookup: Hookup
    ends: Ends
    lead: int
    start: Terminal
    far: Terminal


class NoLead(NamedTuple):
    """No ground lead at all; ``by_common``: the metal is joined to the control all the same."""

    hookup: Hookup
    by_common: bool


def ways_back(facts: Facts) -> tuple[Astray | NoLead, ...]:
    """Every hookup with no ground lead of its own; use it as ``facts.once(ways_back)``."""
    read = (_read(facts, hookup) for hookup in facts.once(hookups))
    return tuple(way for way in read if way is not None)


def astray(facts: Facts, ends: Ends) -> Iterator[Astray]:
    """The ground leads that end wrong in one way, judged by where they land, broken or not."""
    for way in facts.as_wired.once(ways_back):
        if isinstance(way, Astray) and way.ends is ends:
            yield way


def no_lead(facts: Facts) -> Iterator[NoLead]:
    """The hookups without a ground lead."""
    return (way for way in facts.as_wired.once(ways_back) if isinstance(way, NoLead))


def bond_closes(facts: Facts, hookup: Hookup) -> bool:
    """Whether the burner's mounting does the ground lead's work as long as it stays clean."""
    solid = hookup.burner.values.get("bond") == "solid"
    wired = facts.as_wired
    return solid and wired.net(hookup.ground) == wired.earth


def _read(facts: Facts, hookup: Hookup) -> Astray | NoLead | None:
    ground, metal = hookup.ground, hookup.metal
    if facts.joined(ground, metal):
        return None if facts.is_wired(ground) else NoLead(hookup, by_common=True)
    if not (facts.is_traced(ground) and facts.is_traced(metal)):
        return None
    if hookup.exchanged_with_ground(facts):
        return None
    from_ground = _astray(facts, hookup, ground)
    return from_ground or _astray(facts, hookup, metal) or NoLead(hookup, by_common=False)


def _astray(facts: Facts, hookup: Hookup, start: Terminal) -> Astray | None:
    """The first lead on one of the two places that ends at a device or at earth."""
    for number in facts.nets.leads_at(start):
        far = facts.other_end(number, start)
        if far == EARTH:
            return Astray(hookup, Ends.AT_CABINET, number, start, far)
        if far.part not in facts.diagram.parts or _is_another_lead(facts, hookup, start, far):
            continue
        through = facts.conduction.may_join(facts.net(hookup.ground), facts.net(hookup.metal))
        ends = Ends.AT_CONTACT if through else Ends.AT_WRONG_TERMINAL
        return Astray(hookup, ends, number, start, far)
    return None


def _is_another_lead(facts: Facts, hookup: Hookup, start: Terminal, far: Terminal) -> bool:
    """Whether the lead is not the ground lead: a common, or an ignition or sense lead astray.

    An ignition or sense lead on the burner's metal leaves its proper place empty; if both ends of
    that lead are joined all the same, the one on the metal is the ground lead.
    """
    if start == hookup.ground:
        return facts.role(far) in _COMMON_ROLES
    for ends in ((hookup.spark, hookup.electrode), hookup.sense_lead):
        if far in ends:
            return not facts.joined(ends[0], ends[-1])
    return False
