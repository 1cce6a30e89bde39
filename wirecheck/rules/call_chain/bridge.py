"""A conductor that leads past contacts: its leads, its words, and how it comes off."""

from __future__ import annotations

from collections.abc import Iterable
from functools import cached_property

from wirecheck.language.edit import remove_lead
from wirecheck.model.diagram import LeadRole, Terminal
from wirecheck.model.finding import Edit
from wirecheck.model.nearest import both
from wirecheck.model.text import Span
from wirecheck.rules.call_chain.loops import Bridged
from wirecheck.rules.facts import Facts


class Bridge:
    """The leads between the two ends of a row of contacts."""

    def __init__(self, facts: Facts, row: Bridged) -> None:
        """Follow the shortest conductor from the one end of the row to the other.

        Leads that land on the row itself are its own: where there is a lead besides, that is the
        one that leads past.
        """
        self._facts, self._row = facts, row
        path = facts.as_wired.nets.path(*row.ends)
        beside = [number for number in path if not self._lands_on_row(number)]
        self.leads: tuple[int, ...] = tuple(beside or path)
        #: The row's own leads meet: there is none besides that could come off.
        self.by_its_own_leads = not beside and len(path) > 1

    def _lands_on_row(self, number: int) -> bool:
        lead = self._facts.diagram.leads[number]
        return bool(self._row.contacts) and not {lead.a, lead.b}.isdisjoint(self._row.ends)

    @property
    def as_typed(self) -> bool:
        """Whether two terminals of one part stand next to each other inside a longer run."""
        if len(self.leads) != 1 or len(self._row.contacts) != 1:
            return False
        lead = self._facts.diagram.leads[self.leads[0]]
        if {lead.a, lead.b} != set(self._row.ends):
            return False
        return lead.role is LeadRole.WIRE and self._facts.nets.run_sizes[lead.run] > 1

    @property
    def ends(self) -> tuple[Terminal, ...]:
        """Where its one lead lands; of several none is known to be wrong."""
        if len(self.leads) != 1:
            return ()
        lead = self._facts.diagram.leads[self.leads[0]]
        return lead.a, lead.b

    @property
    def span(self) -> Span:
        """Where it stands in the text: the one lead, or where the first of several lands."""
        if len(self.leads) == 1:
            return self._facts.lead_span(self.leads[0])
        return self._facts.place(self._row.ends[0])

    @property
    def words(self) -> str:
        """What it consists of."""
        if not self.leads:
            return "the link inside the device"
        named = both([self._facts.lead(number) for number in self.leads])
        if len(self.leads) > 1:
            return f"{'the leads' if self.by_its_own_leads else 'the way over'} {named}"
        jumper = self._facts.diagram.leads[self.leads[0]].role is LeadRole.JUMPER
        return f"the {'jumper' if jumper else 'lead'} {named}"

    @cached_property
    def edits(self) -> tuple[Edit, ...]:
        """Take it off, where it is one lead and nothing else hangs on it."""
        if len(self.leads) != 1:
            return ()
        return (remove_lead(self._facts.diagram, self.leads[0]),)


def by_bridge(facts: Facts, rows: Iterable[Bridged]) -> list[list[Bridged]]:
    """Rows of contacts, those together that the same leads lead past."""
    groups: list[tuple[set[int], list[Bridged]]] = []
    shortest_first = sorted(
        ((set(Bridge(facts, row).leads), row) for row in rows), key=lambda pair: len(pair[0])
    )
    for leads, row in shortest_first:
        group = next((rows for some, rows in groups if some and some <= leads), None)
        if group is None:
            groups.append((leads, [row]))
        else:
            group.append(row)
    return [group for _leads, group in groups]
