"""No lead joins the two sides of the 24 V secondary.

A common lead landed on R, or a jumper between a hot and a common terminal, is a dead short until a
fuse or the transformer gives way.
"""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.language.edit import remove_lead
from wirecheck.model.diagram import LeadRole
from wirecheck.model.finding import Breaks, Finding
from wirecheck.model.nearest import both
from wirecheck.rules.cautions import MOVING_LEADS
from wirecheck.rules.facts import Facts
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule
from wirecheck.rules.supply.mismatched import mismatched
from wirecheck.rules.workmanship.bridged_in_passing import bridging_leads

_GOOD = """\
part xfmr is transformer
part stat is thermostat: power common
part fan is relay
wire xfmr.R to stat to fan to xfmr.C
wire xfmr.C to earth: green
wire xfmr.C to stat.C
"""

RULE = Rule(
    name="secondary-shorted",
    title="No lead joins the two sides of the 24 V secondary",
    family="supply",
    breaks=Breaks.SAFETY,
    why=(
        "Nothing but the copper limits the current: some 12 A from a transformer of 40 VA, which "
        "burns out within minutes and may take the insulation around it along."
    ),
    blind_spots="Of several leads on the way from one side to the other, it names the likeliest.",
    caution=MOVING_LEADS,
    sources=(PRACTICE,),
    faults={
        "by-lead": Fault(
            "the {noun} {lead} joins {hot} to {common}: both sides of {supply} are one conductor; "
            "take it {off}",
            "A dead short: the fuse blows or the transformer burns out as soon as power is on.",
        ),
        "behind-fuse": Fault(
            "the {noun} {lead} joins {hot} to {common}, with nothing but {fuse} between: take it "
            "{off}",
            "A dead short: {fuse} opens as soon as power is on.",
        ),
    },
    bad=(
        Example(
            _GOOD.replace("xfmr.C to stat.C", "xfmr.C to stat.R"),
            (("by-lead", "xfmr.C to stat.R"),),
        ),
        Example(
            _GOOD.replace("xfmr.R to stat", "xfmr.R to guard to stat")
            + "part guard is fuse: 3 A\njumper guard.2 to fan.B\n",
            (("behind-fuse", "guard.2 to fan.B"),),
        ),
    ),
    good=(Example(_GOOD),),
    stands_back_for=("both-leads-on-one-side",),
    covers=True,
)


def check(facts: Facts) -> Iterator[Finding]:
    """Find supplies whose two sides are one conductor, but for fuses, without earth's help."""
    sides = facts.sides
    for supply in facts.supplies:
        if not sides.may_join(supply.hot, supply.common):
            continue
        path = sides.copper(supply.hot, supply.common)
        if path is not None and path.leads and facts.once(bridging_leads).isdisjoint(path.leads):
            cause = mismatched(facts, path.leads) or sides.cause(path.leads)
            lead = facts.diagram.leads[cause]
            is_jumper = lead.role is LeadRole.JUMPER
            yield RULE.finding(
                facts,
                "behind-fuse" if path.contacts else "by-lead",
                facts.lead_span(cause),
                leads=(cause,),
                terminals=dict.fromkeys((supply.hot, supply.common, lead.a, lead.b)),
                edits=(remove_lead(facts.diagram, cause),) if is_jumper else (),
                noun="jumper" if is_jumper else "lead",
                off="out" if is_jumper else "off and land it where it belongs",
                fuse=both(list(dict.fromkeys(contact.part.name for contact in path.contacts))),
                lead=facts.lead(cause),
                hot=facts.show(supply.hot),
                common=facts.show(supply.common),
                supply=supply.part.name,
            )
