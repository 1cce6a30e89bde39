"""Words for leads that meet earth: where they do, and what they carry there."""

from __future__ import annotations

from wirecheck.model.diagram import Terminal
from wirecheck.model.text import Span
from wirecheck.rules.facts import Facts
from wirecheck.rules.sides import Touch


def found_touching(facts: Facts, touch: Touch) -> bool:
    """Whether the lead was found chafed through, rather than landed on metal."""
    lead = facts.diagram.leads[touch.lead]
    return touch.at not in (lead.a, lead.b)


def near_end(facts: Facts, touch: Touch) -> Terminal:
    """The end of the lead that is not on metal."""
    if found_touching(facts, touch):
        return facts.diagram.leads[touch.lead].a
    return facts.other_end(touch.lead, touch.at)


def place(facts: Facts, touch: Touch) -> Span:
    """Where in the text the lead meets metal."""
    if found_touching(facts, touch):
        return facts.lead_span(touch.lead)
    return facts.end_span(touch.lead, touch.at)


def metal(facts: Facts, touch: Touch) -> str:
    """What the lead is on, in words."""
    return "metal" if found_touching(facts, touch) else facts.show(touch.at)
