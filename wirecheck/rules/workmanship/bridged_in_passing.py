"""A lead that is to pass a contact goes in at one terminal and out at the other.

Typed one behind the other, the two terminals are joined by a lead and the contact is bridged; two
dots between their names pass it.
"""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.language.spelling import spell_in_part
from wirecheck.model.diagram import Lead, LeadRole, Part
from wirecheck.model.finding import Breaks, Edit, Finding
from wirecheck.model.kind import LoadSpec, SwitchSpec
from wirecheck.model.text import Span
from wirecheck.rules.cautions import MOVING_LEADS
from wirecheck.rules.facts import Facts
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule

_GOOD = """\
part xfmr is transformer
part stat is thermostat
part aid is relay
part lamp is lamp
wire xfmr.R to stat to aid to xfmr.C
wire xfmr.R to aid.COM..NO to lamp to xfmr.C
wire xfmr.C to earth: green
"""
RULE = Rule(
    name="bridged-in-passing",
    title="A lead passes a contact; it does not join its two terminals",
    family="workmanship",
    breaks=Breaks.OPERATION,
    why=(
        "As typed, copper joins both sides of the contact and its opening does nothing. Nearly "
        "always the lead goes through, and the text should say so."
    ),
    blind_spots="A bridge that is really there: type it as a jumper.",
    caution=MOVING_LEADS,
    sources=(PRACTICE,),
    faults={
        "bridged": Fault(
            "as typed, a lead joins {a} to {b} and bridges {part}: if it passes through, write "
            "{form}; if the bridge is there, take it out",
            "As typed, {part} does nothing there.",
        ),
    },
    bad=(
        Example(
            _GOOD.replace("aid.COM..NO", "aid.COM to aid.NO"),
            (("bridged", "aid.COM to aid.NO"),),
        ),
    ),
    good=(Example(_GOOD),),
    general=True,
)


def check(facts: Facts) -> Iterator[Finding]:
    """Find leads inside a longer wire that join two terminals with a contact or load between."""
    for number in sorted(facts.once(bridging_leads)):
        lead = facts.diagram.leads[number]
        form = f"{lead.a_span.text}..{spell_in_part(facts.diagram, lead.b)}"
        yield RULE.finding(
            facts,
            "bridged",
            lead.span,
            leads=(number,),
            terminals=(lead.a, lead.b),
            edits=_passing(lead, form),
            a=facts.show(lead.a),
            b=facts.show(lead.b),
            part=facts.diagram.parts[lead.a.part].name,
            form=form,
        )


def bridging_leads(facts: Facts) -> frozenset[int]:
    """Numbers of the leads that this rule is about; use it as ``facts.once(bridging_leads)``."""
    leads = facts.diagram.leads
    return frozenset(
        number
        for number, lead in enumerate(leads[1:-1], 1)
        if lead.a.part == lead.b.part
        and lead.role is LeadRole.WIRE
        and leads[number - 1].run == lead.run == leads[number + 1].run
        and (part := facts.part(lead.a)) is not None
        and part.family != "ignition-control"
        and _between(part, lead) is not None
    )


def _between(part: Part, lead: Lead) -> SwitchSpec | LoadSpec | None:
    """The contact or load between the two ends of a lead."""
    ends = {lead.a.name, lead.b.name}
    structure = part.structure
    elements: tuple[SwitchSpec | LoadSpec, ...] = (*structure.switches, *structure.loads)
    return next((element for element in elements if set(element.between) == ends), None)


def _passing(lead: Lead, form: str) -> tuple[Edit, ...]:
    """Say that the lead passes, unless what stands between the two ends is more than a ``to``."""
    gap = Span(lead.span.source, lead.a_span.end, lead.b_span.start).text
    if gap.strip().lower() != "to":
        return ()
    return (Edit("set", f"write {form}: the lead passes through", lead.span, form),)
