"""No conductor leads past a safety.

A jumper left in after a test, a lead landed on the wrong side, two leads under one screw: the
safety still clicks, and nothing happens.
"""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.model.finding import Breaks, Finding
from wirecheck.rules.call_chain.bridge import Bridge, by_bridge
from wirecheck.rules.call_chain.burners import Burners
from wirecheck.rules.call_chain.common_lead import CommonLeads
from wirecheck.rules.call_chain.contacts import (
    in_text_order,
    is_safety,
    key_of_contact,
    names,
    sides,
)
from wirecheck.rules.call_chain.loops import Bridged
from wirecheck.rules.call_chain.safeties import Safeties, Standing
from wirecheck.rules.call_chain.words import SAFETY_CAUTION, dangers
from wirecheck.rules.facts import Facts
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule

_GOOD = """\
part xfmr is transformer
part limit is high-limit
part rollout is rollout-switch
part stat is thermostat
part box is pilot-ignition-control
part pilot is pilot-burner
wire xfmr.R to limit to rollout to stat to box.TH
wire xfmr.C to box.COM: blue
wire box.GND to pilot.HOOD: green
wire box.SENSE to pilot.ROD
wire box.SPARK to pilot.SPARK: ignition-cable
"""

RULE = Rule(
    name="safety-jumpered",
    title="No lead or jumper joins the two sides of a safety",
    family="call and safety chain",
    breaks=Breaks.SAFETY,
    why=(
        "A safety whose sides are one conductor opens for nothing: the burner runs on through "
        "whatever it was to stop. Jumpers set for a test are the usual cause."
    ),
    blind_spots="A jumper at the unit that was not typed.",
    caution=SAFETY_CAUTION,
    sources=(PRACTICE,),
    faults={
        "one": Fault(
            "{way} joins both sides of {safety}: take it off",
            "With {safety} open the burner runs on through {danger}.",
        ),
        "several": Fault(
            "{way} leads past {safety}: take it off, so that the current goes through them",
            "With any of them open the burner runs on through {danger}.",
        ),
        "one-place": Fault(
            "{way} bring both ends of {safety} to one conductor: land one of them further along "
            "the call, so that the current goes through",
            "With {safety} open the burner runs on through {danger}.",
        ),
    },
    bad=(
        Example(
            _GOOD + "jumper limit.1 to limit.2\n",
            (("one", "limit.1 to limit.2"),),
        ),
        Example(
            _GOOD + "jumper limit.1 to rollout.2\n",
            (("several", "limit.1 to rollout.2"),),
        ),
        Example(
            _GOOD.replace("to limit to rollout", "to rollout") + "wire xfmr.R to limit to xfmr.R\n",
            (("one-place", "limit"),),
        ),
    ),
    good=(Example(_GOOD),),
)


def check(facts: Facts) -> Iterator[Finding]:
    """Find safeties, one or several in a row, that a conductor bridges."""
    wired = facts.as_wired
    for rows in by_bridge(facts, _rows(facts)):
        bridge = Bridge(facts, rows[0])
        bridged = in_text_order({key_of_contact(c): c for r in rows for c in r.contacts}.values())
        if bridge.as_typed:
            continue  # told where the text passes a contact
        yield RULE.finding(
            facts,
            "one-place" if bridge.by_its_own_leads else "several" if len(bridged) > 1 else "one",
            bridge.span,
            leads=bridge.leads,
            terminals=[side for contact in bridged for side in sides(wired, contact)],
            edits=bridge.edits,
            way=bridge.words,
            safety=names(wired, bridged),
            danger=dangers(filter(is_safety, bridged)),
        )


def _rows(facts: Facts) -> Iterator[Bridged]:
    """Rows with a safety in them, but for those that a call or a common lead bypassed tells of."""
    burners, common = facts.once(Burners), facts.once(CommonLeads)
    for safety in facts.once(Safeties).standing(Standing.BRIDGED):
        row = safety.bridged
        if row is None or common.holds(safety.contact):
            continue
        if len(row.contacts) == 1 or not burners.is_on_straight(row.net):
            yield row
