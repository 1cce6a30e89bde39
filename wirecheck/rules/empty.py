"""Terminals that have to be wired and have no lead, and where such a lead would run to."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final, NamedTuple

from wirecheck.model.diagram import OPEN_END, UNKNOWN_END, Part, Terminal
from wirecheck.model.structure import Structure
from wirecheck.rules.facts import Facts
from wirecheck.rules.legs import Legs

#: Role of a control's terminal: family and role of the terminal that its lead runs to.
_RUNS_TO: Final = {
    "pilot-valve": ("gas-valve", "pilot-operator"),
    "main-valve": ("gas-valve", "main-operator"),
    "valve-feed": ("gas-valve", "operator"),
    "valve-common": ("gas-valve", "operator-common"),
    "spark": ("burner", "electrode"),
    "sense": ("burner", "rod"),
    "burner-ground": ("burner", "burner-metal"),
    "damper-hot": ("vent-damper", "damper-hot"),
    "damper-call": ("vent-damper", "damper-call"),
    "damper-proved": ("vent-damper", "damper-proved"),
    "damper-common": ("vent-damper", "damper-common"),
}

#: Roles of the two sides of contacts that a device may leave unused.
_CONTACTS: Final = frozenset(
    {
        "contact-common", "contact-normally-open", "contact-normally-closed", "end-switch",
        "fan-contact", "limit-contact",
    }
)  # fmt: skip

#: Roles of the terminals that follow each other in a chain of switches, from supply to load.
_IN_CHAIN: Final = frozenset(
    {
        "line-hot", "secondary-hot", "side", "thermostat-feed", "thermostat-heat", "probe-out",
        "call", "coil", "motor", "load-hot", "contact-common", "contact-normally-open",
        "contact-normally-closed", "limit-contact", "fan-contact", "end-switch",
    }
)  # fmt: skip

#: Roles of those among them where the chain begins.
_SOURCES: Final = frozenset({"line-hot", "secondary-hot"})

#: Families of what makes a call, or stops what was called.
_CALLS_OR_STOPS: Final = frozenset(
    {
        "thermostat", "safety-switch", "hand-switch", "operating-control", "low-water-probe",
        "fan-limit-control",
    }
)  # fmt: skip


class Gap(NamedTuple):
    """Two ends of a chain without the lead between them.

    ``beside``: what makes or stops a call and has no lead at all; it may belong between the ends.
    """

    end: Terminal
    other: Terminal
    beside: tuple[Part, ...]


def needed_and_empty(facts: Facts) -> tuple[Terminal, ...]:
    """Those of parts that are wired otherwise, in the order of the text.

    Those that a supply reaches all the same are left out (see `reached_inside`).
    Use it as ``facts.once(needed_and_empty)``.
    """
    reached = facts.once(reached_inside)
    return tuple(end for end in facts.once(_needed_and_empty) if end not in reached)


def reached_inside(facts: Facts) -> Mapping[Terminal, Terminal]:
    """Those that a supply reaches through the device, by another of its terminals, and that one.

    A terminal that the device itself feeds is none: its lead runs on from there.
    Use it as ``facts.once(reached_inside)``.
    """
    found = {}
    for end in facts.once(_needed_and_empty):
        if facts.role(end) not in _RUNS_TO and _is_supplied(facts, end):
            names = facts.diagram.parts[end.part].structure.terminals
            others = (Terminal(end.part, name) for name in names)
            wired = (o for o in others if facts.is_wired(o) and facts.sides.same(o, end))
            other = next(wired, None)
            if other is not None:
                found[end] = other
    return found


def one_gap(facts: Facts) -> Gap | None:
    """The one place where a chain of switches ends, if a lead is all that is missing there.

    Where several ends of chains are empty, which belong together is not known.
    Use it as ``facts.once(one_gap)``.
    """
    empty = [end for end in facts.once(needed_and_empty) if facts.role(end) in _IN_CHAIN]
    if not len({end.part for end in empty}) == len(empty) == 2:
        return None
    parts = facts.diagram.parts.values()
    at_line = any(spec and spec.circuit == "line" for spec in map(facts.diagram.spec, empty))
    switches = [part for part in parts if _makes_or_stops(part)]
    beside = () if at_line else tuple(part for part in switches if not any_wired(facts, part))
    if switches and not beside and {facts.role(end) for end in empty} & _SOURCES:
        return None  # a lead from the supply itself would lead past all of them
    return Gap(empty[0], empty[1], beside)


def homes_of_loose(facts: Facts) -> Mapping[int, Terminal]:
    """The one open lead of a chain of switches, and the one empty terminal it can be meant for.

    Use it as ``facts.once(homes_of_loose)``.
    """
    leads = facts.diagram.leads
    loose = [
        number
        for number, lead in enumerate(leads)
        if OPEN_END in (lead.a.part, lead.b.part) and "capped" not in lead.given
    ]
    empty = [end for end in facts.once(needed_and_empty) if facts.role(end) in _IN_CHAIN]
    if len(loose) != 1 or len(empty) != 1:
        return {}
    lead = leads[loose[0]]
    landed = lead.b if lead.a.part == OPEN_END else lead.a
    spec, other = facts.diagram.spec(landed), facts.diagram.spec(empty[0])
    in_chain = facts.role(landed) in _IN_CHAIN - _SOURCES and landed.part != empty[0].part
    circuits = {end.circuit for end in (spec, other) if end is not None}
    unwired = any(
        _makes_or_stops(part) and not any_wired(facts, part)
        for part in facts.diagram.parts.values()
    )
    fits = in_chain and len(circuits - {"any"}) <= 1 and not unwired
    return {loose[0]: empty[0]} if fits else {}


def _makes_or_stops(part: Part) -> bool:
    """Whether it makes a call or may stop what was called: it is never to be led past."""
    return part.family in _CALLS_OR_STOPS or any(s.safety for s in part.structure.switches)


def _is_supplied(facts: Facts, end: Terminal) -> bool:
    sides = facts.sides
    return bool(sides.hot_beyond(end) or sides.common_beyond(end) or facts.once(Legs).at(end))


def _needed_and_empty(facts: Facts) -> tuple[Terminal, ...]:
    """Those without a lead, reached or not.

    One that a lead whose end was not traced may land on is left out, and so are those of valve
    adapters beside a control: what is missing there is told of the valve.
    """
    beside_control = any(True for _ in facts.of("ignition-control"))
    return tuple(
        terminal
        for part in facts.diagram.parts.values()
        if any_wired(facts, part) and not (beside_control and part.family == "valve-adapter")
        for terminal in (*needed(facts, part), *_other_sides(facts, part))
        if not facts.is_wired(terminal) and not may_be_untraced(facts, terminal)
    )


def _other_sides(facts: Facts, part: Part) -> list[Terminal]:
    """The empty sides of contacts that may stay unused, but are wired at one side alone."""
    specs = part.structure.terminals
    beyond: dict[str, list[str]] = {}
    for switch in part.structure.switches:
        a, b = switch.between
        if specs[a].role in _CONTACTS or specs[b].role in _CONTACTS:
            beyond.setdefault(a, []).append(b)
            beyond.setdefault(b, []).append(a)
    empty = []
    for name in beyond:
        if facts.is_wired(part.terminal(name)):
            others = _outer(part, beyond, name)
            if others and not _leads_on(facts, part, others):
                empty.append(part.terminal(others[0]))
    return list(dict.fromkeys(empty))


def _outer(part: Part, beyond: Mapping[str, list[str]], name: str) -> list[str]:
    """The terminals that contacts lead to from one, those behind a point inside for that point."""
    specs = part.structure.terminals
    found: list[str] = []
    for other in beyond[name]:
        if specs[other].inner:
            found += [end for end in beyond.get(other, ()) if end != name]
        else:
            found.append(other)
    return [end for end in found if not specs[end].inner]


def _leads_on(facts: Facts, part: Part, names: list[str]) -> bool:
    """Whether one of these terminals is wired, by a lead or by a link."""
    linked = {
        end
        for link in part.structure.links
        for end in link.between
        if any(facts.is_wired(part.terminal(other)) for other in link.between)
    }
    return any(name in linked or facts.is_wired(part.terminal(name)) for name in names)


def needed(facts: Facts, part: Part) -> list[Terminal]:
    """The terminals of a part that have to be wired beside the other parts drawn."""
    return [part.terminal(name) for name in facts.once(_Needed).names(part.structure)]


class _Needed:
    """Names of the terminals that have to be wired; parts alike share a structure."""

    def __init__(self, facts: Facts) -> None:
        self._families = {part.family for part in facts.diagram.parts.values()}
        self._names: dict[Structure, tuple[str, ...]] = {}

    def names(self, structure: Structure) -> tuple[str, ...]:
        known = self._names.get(structure)
        if known is None:
            known = self._names[structure] = tuple(
                name
                for name, spec in structure.terminals.items()
                if spec.must
                and not spec.inner
                and (not spec.must_beside or not self._families.isdisjoint(spec.must_beside))
            )
        return known


def any_wired(facts: Facts, part: Part) -> bool:
    """Whether any lead lands on a part."""
    return part.key in facts.once(_wired_parts)


def _wired_parts(facts: Facts) -> frozenset[str]:
    return frozenset(end.part for lead in facts.diagram.leads for end in (lead.a, lead.b))


def may_be_untraced(facts: Facts, terminal: Terminal) -> bool:
    """Whether a lead of the terminal's circuit was not traced to its end, and may land there."""
    spec = facts.diagram.spec(terminal)
    untraced = facts.once(_untraced_circuits)
    return bool(untraced) and (
        spec is None or "any" in untraced or spec.circuit == "any" or spec.circuit in untraced
    )


def _untraced_circuits(facts: Facts) -> frozenset[str]:
    """The circuits that leads with an end not traced are known to belong to."""
    circuits = set()
    for lead in facts.diagram.leads:
        for here, there in ((lead.a, lead.b), (lead.b, lead.a)):
            if there.part == UNKNOWN_END:
                spec = facts.diagram.spec(here)
                circuits.add(spec.circuit if spec else "any")
    return frozenset(circuits)


def counterparts(facts: Facts) -> Mapping[Terminal, tuple[Terminal, ...]]:
    """For the terminals of controls and of what is wired to them, where their lead may run to.

    Use it as ``facts.once(counterparts)``.
    """
    found: dict[Terminal, list[Terminal]] = {}
    for control, other in facts.once(_hookups):
        for role, (family, other_role) in _RUNS_TO.items():
            here = facts.terminal(control, role)
            there = facts.terminal(other, other_role) if other.family == family else None
            if here is not None and there is not None:
                found.setdefault(here, []).append(there)
                found.setdefault(there, []).append(here)
    return {end: tuple(others) for end, others in found.items()}


def _hookups(facts: Facts) -> tuple[tuple[Part, Part], ...]:
    """Controls and the parts that belong to them, or that a lead joins to them."""
    families = {family for family, _role in _RUNS_TO.values()}
    parts = facts.diagram.parts
    found: dict[tuple[str, str], tuple[Part, Part]] = {}
    for control in facts.of("ignition-control"):
        for family in families:
            other = facts.companion(control, family)
            if other is not None:
                found[control.key, other.key] = (control, other)
    for lead in facts.diagram.leads:
        a, b = parts.get(lead.a.part), parts.get(lead.b.part)
        for one, far in ((a, b), (b, a)):
            if one is not None and far is not None and one.family == "ignition-control":
                found[one.key, far.key] = (one, far)
    return tuple(found.values())
