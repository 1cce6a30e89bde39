"""What a variant takes out of the base diagram, and what it sets otherwise."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from itertools import pairwise

from wirecheck.language import statements as st
from wirecheck.language.build import Draft
from wirecheck.language.read import Parsed
from wirecheck.language.scope import Scope
from wirecheck.language.words import read_attributes
from wirecheck.model.diagram import EARTH, OPEN_END, UNKNOWN_END, Lead, LeadRole, Terminal, key_of
from wirecheck.model.text import Span
from wirecheck.parts.defaults import values_of
from wirecheck.parts.structure import structure_of


def set_attributes(scope: Scope, parsed: Parsed, statement: st.SetStatement) -> None:
    """Give a part other attributes; what is set stands for the same attribute typed before."""
    part = scope.part(statement.name, parsed.source)
    if part is None:
        return
    kind = part.kind
    typed = read_attributes(scope, parsed, statement.attributes, kind.attributes, f"a {kind.name}")
    given = {**part.given, **typed}
    values = values_of(kind, given)
    scope.parts[part.key] = replace(
        part, given=given, values=values, structure=structure_of(kind, values)
    )
    scope.forget(part.key)


def remove_part(draft: Draft, parsed: Parsed, statement: st.RemovePartStatement) -> None:
    """Take a part or splice out, with its leads."""
    scope, leads = draft.scope, draft.leads
    key = key_of(statement.name.text)
    if scope.splices.pop(key, None) is None:
        if scope.part(statement.name, parsed.source) is None:
            return
        del scope.parts[key]
    scope.forget(key)
    leads.leads[:] = [lead for lead in leads.leads if key not in (lead.a.part, lead.b.part)]
    leads.passed[:] = [each for each in leads.passed if each.part != key]
    leads.named_alone[:] = [each for each in leads.named_alone if each.part != key]


def remove_lead(draft: Draft, parsed: Parsed, statement: st.RemoveLeadStatement) -> None:
    """Take out each lead between neighbouring ends of the statement."""
    ends = [_Stop(draft.scope, parsed, place) for place in statement.places]
    for one, other in pairwise(ends):
        if one.known and other.known:
            _remove_one(draft, statement.role, one, other)


class _Stop:
    """An end of a lead that is to go."""

    def __init__(self, scope: Scope, parsed: Parsed, place: st.Place) -> None:
        """Look it up; what is not there becomes a problem."""
        self.span = Span(parsed.source, place.start, place.end)
        self._names: set[Terminal] = set()
        self._part = ""
        key = key_of(place.name.text)
        part = scope.parts.get(key)
        if place.terminal is not None:
            found = scope.landing(place, parsed.source)
            self._names.update([found] if found else [])
            if found and part and place.through is not None:
                through = scope.terminal(part, place.through, parsed.source)
                self._names.update([through] if through else [])
        elif scope.is_node(place.name):
            self._names.add(EARTH if key == EARTH.part else Terminal(key, ""))
        elif part is not None:
            self._part = key
        elif key in ("open", "unknown"):
            self._part = OPEN_END if key == "open" else UNKNOWN_END
        else:
            scope.part(place.name, parsed.source, ends_a_lead=True)

    @property
    def known(self) -> bool:
        """Whether the diagram has it."""
        return bool(self._names or self._part)

    def fits(self, terminal: Terminal) -> bool:
        """Whether a lead's end is it: that terminal, or any of a part named alone."""
        return terminal in self._names or terminal.part == self._part


def _remove_one(draft: Draft, role: str, one: _Stop, other: _Stop) -> None:
    leads = draft.leads.leads
    between = [lead for lead in leads if _runs(lead, one, other)]
    found = [lead for lead in between if (lead.role is LeadRole.JUMPER) == (role == "jumper")]
    if len(found) == 1:
        leads.remove(found[0])
        return
    span = Span(one.span.source, one.span.start, other.span.end)
    ends = f"{one.span.text} and {other.span.text}"
    if found:
        message = f"{len(found)} leads run between {ends}; name the terminals of the one to remove"
        draft.scope.problem(message, span)
        return
    hint = "".join(_instead(draft, role, one, between))
    draft.scope.problem(f"no {role} runs between {ends}{hint}", span)


def _runs(lead: Lead, one: _Stop, other: _Stop) -> bool:
    return (one.fits(lead.a) and other.fits(lead.b)) or (one.fits(lead.b) and other.fits(lead.a))


def _instead(draft: Draft, role: str, one: _Stop, between: list[Lead]) -> Iterator[str]:
    """What there is in the place of a lead that is not."""
    if between:
        yield f"; what runs there is a {'wire' if role == 'jumper' else 'jumper'}"
        return
    there = [
        end
        for lead in draft.leads.leads
        for here, end in ((lead.a, lead.b), (lead.b, lead.a))
        if one.fits(here)
    ]
    if there:
        names = list(dict.fromkeys(draft.named(end) for end in there))
        yield f"; from {one.span.text} leads run to {', '.join(names[:3])}"
