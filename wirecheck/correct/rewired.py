"""A diagram with some leads changed: what the search walks over.

Leads keep the numbers they have in the diagram as found; added ones are numbered on from there.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from functools import cached_property
from typing import NamedTuple

from wirecheck.circuit.changed_nets import ChangedNets
from wirecheck.circuit.nets import Nets
from wirecheck.language.derive import has_derived_defaults, with_derived_defaults
from wirecheck.model.diagram import EARTH, Attribute, Diagram, Lead, LeadRole, Part, Terminal
from wirecheck.model.kind import FLAG_SET
from wirecheck.model.text import Span
from wirecheck.parts.structure import structure_of

Ends = tuple[Terminal, Terminal]


class Move(NamedTuple):
    """The end of a lead comes off one terminal and lands on another."""

    lead: int
    old: Terminal
    new: Terminal


class Exchange(NamedTuple):
    """Two ends of two leads change places: ``end`` of ``lead``, ``other_end`` of ``other``."""

    lead: int
    end: Terminal
    other: int
    other_end: Terminal


class Add(NamedTuple):
    """A lead goes in; ``attribute`` is what it must be: ``ignition-cable``, ``green`` or ""."""

    a: Terminal
    b: Terminal
    attribute: str = ""


class TakeOut(NamedTuple):
    """A lead comes out."""

    lead: int


class Fit(NamedTuple):
    """A link or plug of a device is fitted or taken out."""

    part: str
    attribute: str
    value: str


Change = Move | Exchange | Add | TakeOut | Fit


@dataclass(frozen=True, eq=False)
class Rewired:
    """The diagram as found, and what was changed in it.

    Attributes:
        found: the diagram as found.
        changes: in the order in which they were made.
        ends: where each lead runs now, None where it was taken out; added ones behind.
        added: what was added, in order.
        fitted: value of each link or plug that was changed, by part and attribute.
        before: the same without the last change; None where nothing was changed.
    """

    found: Diagram
    changes: tuple[Change, ...] = ()
    ends: tuple[Ends | None, ...] = ()
    added: tuple[Add, ...] = ()
    fitted: Mapping[tuple[str, str], str] = field(default_factory=dict)
    before: Rewired | None = None

    @classmethod
    def nothing_changed(cls, diagram: Diagram) -> Rewired:
        """Start from a diagram as found."""
        return cls(diagram, ends=tuple((lead.a, lead.b) for lead in diagram.leads))

    def after(self, change: Change) -> Rewired:
        """The same with one more change."""
        ends, added, fitted = list(self.ends), self.added, self.fitted
        match change:
            case Move(lead, old, new):
                ends[lead] = _landed(ends[lead], old, new)
            case Exchange(lead, end, other, other_end):
                ends[lead] = _landed(ends[lead], end, other_end)
                ends[other] = _landed(ends[other], other_end, end)
            case Add(a, b):
                ends.append((a, b))
                added = (*added, change)
            case TakeOut(lead):
                ends[lead] = None
            case Fit(part, attribute, value):
                fitted = {**fitted, (part, attribute): value}
        return Rewired(self.found, (*self.changes, change), tuple(ends), added, fitted, self)

    @cached_property
    def key(self) -> tuple[object, ...]:
        """What makes two of them the same, however they came about."""
        found = self.found.leads
        moved = frozenset(
            (number, ends and frozenset(ends))
            for number, ends in enumerate(self.ends[: len(found)])
            if ends is None or frozenset(ends) != frozenset(found[number][:2])
        )
        new = frozenset(frozenset(ends) for ends in self.ends[len(found) :] if ends)
        return moved, new, frozenset(self.fitted.items())

    def lead(self, number: int) -> Lead:
        """A lead by its number here, as it runs now.

        Raises:
            ValueError: it was taken out.
        """
        ends, count = self.ends[number], len(self.found.leads)
        if ends is None:
            raise ValueError(f"lead {number} was taken out")
        if number < count:
            return _running(self.found.leads[number], ends)
        nowhere = Span(self.found.source, 0, 0)
        name = self.added[number - count].attribute
        given = {}
        if name == "ignition-cable":
            given = {name: Attribute(name, FLAG_SET, nowhere)}
        elif name:
            given = {"colour": Attribute("colour", name, nowhere)}
        return Lead(
            a=ends[0],
            b=ends[1],
            a_span=nowhere,
            b_span=nowhere,
            role=LeadRole.WIRE,
            given=given,
            shared_length=False,
            statement=nowhere,
            run=-1 - number,
        )

    @cached_property
    def leads(self) -> dict[int, Lead]:
        """The leads as they run now, by their numbers here."""
        if self.before is None:
            return dict(enumerate(self.found.leads))
        leads = dict(self.before.leads)
        for number in self._changed_leads:
            if self.ends[number] is None:
                leads.pop(number, None)
            else:
                leads[number] = self.lead(number)
        return leads

    @property
    def numbers(self) -> tuple[int, ...]:
        """The number here of each lead of `diagram`, in its order."""
        return tuple(self.leads)

    @property
    def _changed_leads(self) -> tuple[int, ...]:
        """The numbers of the leads that the last change is about."""
        match self.changes[-1]:
            case Move(lead) | TakeOut(lead):
                return (lead,)
            case Exchange(lead, _end, other, _other_end):
                return lead, other
            case Add():
                return (len(self.ends) - 1,)
            case Fit():
                return ()

    @cached_property
    def diagram(self) -> Diagram:
        """The diagram as it is after the changes."""
        if self.before is None:
            return self.found
        leads = tuple(self.leads.values())
        return replace(self.found, parts=self._parts(self.before, leads), leads=leads, _shown={})

    def _parts(self, before: Rewired, leads: tuple[Lead, ...]) -> Mapping[str, Part]:
        """The parts now; those that are as they were before are the very same."""
        known = before.diagram.parts
        is_fitted = isinstance(self.changes[-1], Fit)
        touched = (known.get(end.part) for end in self._touched)
        if not is_fitted and not any(part and has_derived_defaults(part) for part in touched):
            return known
        parts = dict(self.found.parts)
        for (key, attribute), value in self.fitted.items():
            parts[key] = _with_value(parts[key], attribute, value)
        derived = with_derived_defaults(parts, leads)
        alike = {
            key: known[key] for key, part in derived.items() if part.values == known[key].values
        }
        return known if len(alike) == len(derived) else {**derived, **alike}

    @property
    def _touched(self) -> set[Terminal]:
        """The terminals where a lead came off or landed with the last change."""
        assert self.before is not None  # noqa: S101 - only asked of what was changed
        places = (
            state.ends[n]
            for n in self._changed_leads
            for state in (self.before, self)
            if n < len(state.ends)
        )
        return {end for ends in places for end in ends or ()}

    @cached_property
    def nets(self) -> Nets:
        """The nets after the changes."""
        before = self.before
        if before is None or self.diagram.parts is not before.diagram.parts:
            return Nets(self.diagram)
        known, touched = before.nets, self._touched
        named = self.diagram.parts.keys() | self.diagram.splices.keys() | {EARTH.part}
        plain = all(end.part in named for end in touched) and not any(
            "touches" in self.leads[number].given
            for number in self._changed_leads
            if number in self.leads
        )
        return ChangedNets(known, self.diagram, touched) if plain else Nets(self.diagram)


def _running(lead: Lead, ends: Ends) -> Lead:
    """A lead between other terminals; a pin of a plug that leaves its devices is a wire."""
    apart = {end.part for end in ends} != {lead.a.part, lead.b.part}
    role = LeadRole.WIRE if apart and lead.role is LeadRole.PLUG else lead.role
    return lead._replace(a=ends[0], b=ends[1], role=role)


def _landed(ends: Ends | None, old: Terminal, new: Terminal) -> Ends:
    if ends is None or old not in ends:
        raise ValueError(f"the lead has no end on {old}")
    return (new, ends[1]) if ends[0] == old else (ends[0], new)


def _with_value(part: Part, attribute: str, value: str) -> Part:
    given = {**part.given, attribute: Attribute(attribute, value, part.name_span)}
    values = {**part.values, attribute: value}
    return replace(part, given=given, values=values, structure=structure_of(part.kind, values))
