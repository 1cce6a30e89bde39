"""Changes of single leads that might undo a mistake, the likeliest first.

A lead that a finding names is landed where a lead is missing, or where another finding points; a
jumper is taken out; two leads are exchanged; a lead that is missing is run.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from itertools import combinations, islice
from typing import Final, NamedTuple

from wirecheck.model.diagram import EARTH, OPEN_END, UNKNOWN_END, Lead, LeadRole, Terminal
from wirecheck.model.finding import Finding
from wirecheck.rules.empty import needed_and_empty
from wirecheck.rules.facts import Facts

#: So many leads, and so many terminals, are looked at; those that most findings name come first.
_LEADS, _TERMINALS = 16, 16
#: So many leads are landed on strips and splices.
_JOINED_LEADS = 2
#: Where leads belong though others are there already.
_SUPPLY_ROLES: Final = frozenset(
    {"line-hot", "line-neutral", "line-ground", "secondary-hot", "secondary-common"}
)


class Trial(NamedTuple):
    """A change.

    Attributes:
        leads: all leads after it.
        changed: numbers of the leads it changes, as they were before.
    """

    leads: tuple[Lead, ...]
    changed: tuple[int, ...]


def trials(facts: Facts, findings: Sequence[Finding]) -> Iterator[Trial]:
    """The changes to try for some findings, each once; where there is no lead yet, none."""
    if not facts.diagram.leads:
        return
    leads = _leads(facts, findings)
    empty = list(dict.fromkeys((*facts.once(needed_and_empty), *_unwired(facts, findings))))
    named = _named(findings)
    supplies = _supplies(facts)
    yield from _taken_out(facts, leads)
    yield from _moved(facts, leads, empty[:_TERMINALS])
    yield from _moved(facts, leads[:_JOINED_LEADS], _joints(facts))
    yield from _run(facts, empty, (*empty, *named, *supplies))
    others = dict.fromkeys((*named, *supplies, EARTH))
    yield from _moved(facts, leads, [end for end in others if end not in empty])
    yield from _exchanged(facts, leads)


# ---- what they are made of ---------------------------------------------------------------------


def _leads(facts: Facts, findings: Iterable[Finding]) -> list[int]:
    """The leads that findings name, then those at the terminals they name."""
    named = Counter(number for each in findings for number in dict.fromkeys(each.lead_numbers))
    at: Counter[int] = Counter()
    for each in findings:
        for terminal in dict.fromkeys(each.at_terminals):
            if terminal != EARTH:
                at.update(facts.nets.leads_at(terminal)[:_LEADS])
    by_count = [number for number, _count in (*named.most_common(), *at.most_common())]
    return list(islice(dict.fromkeys(by_count), _LEADS))


def _named(findings: Iterable[Finding]) -> list[Terminal]:
    counted = Counter(end for each in findings for end in dict.fromkeys(each.at_terminals))
    return [terminal for terminal, _count in counted.most_common(_TERMINALS)]


def _joints(facts: Facts) -> list[Terminal]:
    """Strips and splices that others land on too: a lead that comes off leaves none empty."""
    joints = [
        part.terminal(name) for part in facts.of("strip") for name in part.structure.terminals
    ]
    joints += [Terminal(key, "") for key in facts.diagram.splices]
    return list(islice((end for end in joints if facts.is_wired(end)), _TERMINALS))


def _unwired(facts: Facts, findings: Iterable[Finding]) -> Iterator[Terminal]:
    ends = (end for each in findings for end in each.at_terminals)
    return (end for end in ends if not facts.is_wired(end))


def _supplies(facts: Facts) -> list[Terminal]:
    """The terminals of the first few supplies, where many leads belong."""
    parts = facts.of("mains", "transformer")
    ends = (end for part in parts for end in part.with_role(*_SUPPLY_ROLES))
    return list(islice(ends, _TERMINALS))


# ---- the changes -------------------------------------------------------------------------------


def _with(facts: Facts, *changed: tuple[int, Terminal, Terminal]) -> tuple[Lead, ...]:
    leads = list(facts.diagram.leads)
    for number, old, new in changed:
        lead = leads[number]
        leads[number] = lead._replace(a=new) if lead.a == old else lead._replace(b=new)
    return tuple(leads)


def _taken_out(facts: Facts, numbers: Iterable[int]) -> Iterator[Trial]:
    """Jumpers, and leads that leave no terminal empty."""
    leads = facts.diagram.leads
    for number in numbers:
        lead = leads[number]
        spare = all(len(facts.nets.leads_at(end)) > 1 for end in lead[:2])
        if lead.role is LeadRole.JUMPER or spare:
            yield Trial((*leads[:number], *leads[number + 1 :]), (number,))


def _moved(facts: Facts, numbers: Iterable[int], targets: Sequence[Terminal]) -> Iterator[Trial]:
    tried: set[tuple[int, Terminal, Terminal | int]] = set()
    for new in targets:
        for number in numbers:
            a, b = facts.diagram.leads[number][:2]
            for old, stays in ((a, b), (b, a)):
                landing = (number, stays, _place(facts, new, stays))
                if new not in (a, b) and landing not in tried and _suits(facts, stays, new):
                    tried.add(landing)
                    yield Trial(_with(facts, (number, old, new)), (number,))


def _place(facts: Facts, end: Terminal, other: Terminal) -> Terminal | int:
    """Where a lead lands: all wired terminals of a conductor are one place.

    Those of the lead's own conductor are not, as that falls in two where the lead comes off.
    """
    if facts.is_wired(end) and not facts.sides.same(end, other):
        return facts.sides.conductor(end)
    return end


def _run(facts: Facts, empty: Sequence[Terminal], ends: Iterable[Terminal]) -> Iterator[Trial]:
    """A lead from each empty terminal to another one."""
    leads, others = facts.diagram.leads, list(dict.fromkeys(ends))
    for here in empty[:_LEADS]:
        tried: set[Terminal | int] = set()
        for there in others:
            place = _place(facts, there, here)
            if there.part != here.part and place not in tried and _suits(facts, here, there):
                tried.add(place)
                yield Trial((*leads, _lead(leads[-1], here, there, len(leads))), ())


def _lead(like: Lead, a: Terminal, b: Terminal, number: int) -> Lead:
    return like._replace(a=a, b=b, role=LeadRole.WIRE, given={}, run=-1 - number)


def _exchanged(facts: Facts, numbers: Iterable[int]) -> Iterator[Trial]:
    leads = facts.diagram.leads
    for one, other in combinations(numbers, 2):
        a, b = leads[one][:2]
        for c, d in ((leads[other].a, leads[other].b), (leads[other].b, leads[other].a)):
            if len({a, b, c, d}) == 4 and _suits(facts, c, b) and _suits(facts, a, d):
                yield Trial(_with(facts, (one, a, c), (other, c, a)), (one, other))


def _suits(facts: Facts, a: Terminal, b: Terminal) -> bool:
    """Whether a lead may run between two terminals: their circuits are one, or may be."""
    if OPEN_END in (a.part, b.part) or UNKNOWN_END in (a.part, b.part):
        return False
    here, there = (_circuit(facts, end) for end in (a, b))
    return here == there or "any" in (here, there) or {here, there} == {"24V", "earth"}


def _circuit(facts: Facts, end: Terminal) -> str:
    if end == EARTH:
        return "earth"
    spec = facts.diagram.spec(end)
    return spec.circuit if spec else "any"
