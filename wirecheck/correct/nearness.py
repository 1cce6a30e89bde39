"""Which changes are at what was found, so that they are tried before others.

Whatever mends a diagram mends each of its findings.  So the changes at that finding which fewest
are at come first, then those at any, then those of leads over which the current of a finding may
run, and all others last.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from itertools import combinations, islice
from typing import Final, NamedTuple

from wirecheck.circuit.conduction import Conduction
from wirecheck.correct.candidates import Candidates, terminals_of
from wirecheck.correct.rewired import Change, Exchange, Fit, Move, Rewired, TakeOut
from wirecheck.model.diagram import EARTH, Terminal
from wirecheck.model.finding import Finding

#: Between so many terminals of a finding the ways of the current are looked for.
_MOST_ENDS: Final = 5


class Rings(NamedTuple):
    """Every change of a diagram, each once.

    Attributes:
        sharpest: at the finding that fewest are at.
        near: at another finding.
        on_the_way: of leads over which the current of a finding may run.
        far: all others.
    """

    sharpest: list[Change]
    near: list[Change]
    on_the_way: list[Change]
    far: list[Change]


def rings(state: Rewired, here: Sequence[Finding]) -> Rings:
    """Sort every change of a diagram by how near it is to what was found in it.

    Where nothing was found but it does not run, all changes are near.
    """
    changes = list(Candidates(state))
    at = _changes_at(state, changes, here) or [set(range(len(changes)))]
    sharpest = min(at, key=len)
    near = set().union(*at) - sharpest
    leads = set(_leads_on_the_way(state, here))
    sorted_in = Rings([], [], [], [])
    for number, change in enumerate(changes):
        if number in sharpest:
            sorted_in.sharpest.append(change)
        elif number in near:
            sorted_in.near.append(change)
        elif leads.isdisjoint(_leads_of(change)):
            sorted_in.far.append(change)
        else:
            sorted_in.on_the_way.append(change)
    return sorted_in


def _changes_at(
    state: Rewired, changes: Sequence[Change], here: Iterable[Finding]
) -> list[set[int]]:
    """The numbers of the changes at each finding that any are at; a link is near everything."""
    fits: list[int] = []
    by_terminal: dict[Terminal, list[int]] = {}
    for number, change in enumerate(changes):
        if isinstance(change, Fit):
            fits.append(number)
        for terminal in terminals_of(state, change):
            by_terminal.setdefault(terminal, []).append(number)
    at = []
    for finding in here:
        numbers = {n for place in _places(state, finding) for n in by_terminal.get(place, ())}
        if numbers:
            at.append(numbers.union(fits))
    return at


def _places(state: Rewired, finding: Finding) -> frozenset[Terminal]:
    """The terminals of a finding, and the ends of its leads; earth only where there is no other."""
    leads = state.diagram.leads
    ends = (end for number in finding.lead_numbers for end in leads[number][:2])
    places = frozenset((*finding.at_terminals, *ends))
    return places - {EARTH} or places


def _leads_of(change: Change) -> tuple[int, ...]:
    match change:
        case Move(lead) | TakeOut(lead):
            return (lead,)
        case Exchange(lead, _end, other, _other_end):
            return lead, other
    return ()


def _leads_on_the_way(state: Rewired, here: Iterable[Finding]) -> Iterator[int]:
    """The numbers of leads in the nets of findings, and in those between them."""
    nets = state.nets
    conduction = Conduction(nets)
    on_way: set[int] = set()
    for finding in here:
        ends = islice(dict.fromkeys(finding.at_terminals), _MOST_ENDS)
        own = [nets.net(end) for end in ends if end in nets.net_of]
        on_way.update(own)
        for a, b in combinations(own, 2):
            for contact in conduction.way(a, b).contacts:
                on_way.update((contact.net_a, contact.net_b))
    for number, lead in state.leads.items():
        if nets.net(lead.a) in on_way or nets.net(lead.b) in on_way:
            yield number
