"""The hot side of the 24 V secondary touches earth nowhere.

Every control puts its common on the burner's metal.  With R earthed too that is a dead short; with
no burner ground the unit works, and an earth fault past a switch energises what lies past it.
"""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.language.edit import move_end, remove_lead
from wirecheck.model.diagram import EARTH, LeadRole, Terminal
from wirecheck.model.finding import Breaks, Edit, Finding
from wirecheck.rules.cautions import MOVING_LEADS
from wirecheck.rules.earthed_leads import metal, near_end, place
from wirecheck.rules.facts import Facts, Supply
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule
from wirecheck.rules.sides import Touch, Trace

_BAD = """\
part xfmr is transformer
part stat is thermostat
part fan is relay
wire xfmr.R to stat to fan to xfmr.C
wire xfmr.C to earth: green
wire xfmr.R to earth: green
"""
_ALONE = _BAD.replace("wire xfmr.C to earth: green\n", "")

RULE = Rule(
    name="hot-side-earthed",
    title="The hot side of the 24 V secondary is earthed nowhere",
    family="supply",
    breaks=Breaks.SAFETY,
    why=(
        "Through the burner ground the common is earthed in almost every unit: R on earth as well "
        "is a dead short. Where the common is not earthed, one earth fault past a limit or a "
        "thermostat feeds the valve around it."
    ),
    blind_spots="A hot lead chafed through that nobody has found yet.",
    caution=MOVING_LEADS,
    sources=(PRACTICE,),
    faults={
        "short": Fault(
            "the lead {lead} puts the hot side {hot} on {metal}, and its common reaches earth "
            "too: take it off{instead}",
            "A dead short: the fuse blows or the transformer burns out as soon as power is on.",
        ),
        "alone": Fault(
            "the lead {lead} puts the hot side {hot} on {metal}: take it off; what belongs on "
            "earth, if anything, is {common}",
            "It works until a lead past a switch touches metal: then what lies past that switch "
            "is energised, whatever the switch says.",
        ),
    },
    bad=(
        Example(_BAD, (("short", "earth"),)),
        Example(_ALONE, (("alone", "earth"),)),
    ),
    good=(Example(_BAD.replace("wire xfmr.R to earth: green\n", "")),),
    stands_back_for=(
        "hot-and-common-exchanged",
        "own-supply-tied",
        "burner-ground-on-wrong-terminal",
        "line-and-24-volts-joined",
    ),
)


def check(facts: Facts) -> Iterator[Finding]:
    """Find supplies whose hot conductor meets earth, a burner ground or grounded metal."""
    sides = facts.sides
    for supply in facts.supplies:
        touches = sides.touches(supply.hot)
        if touches and not sides.same(supply.hot, supply.common):
            shorted = facts.joined(supply.hot, supply.common) or facts.is_grounded(supply.common)
            first = touches[0]
            path = sides.path(supply.hot, near_end(facts, first))
            yield RULE.finding(
                facts,
                "short" if shorted else "alone",
                place(facts, first),
                leads=dict.fromkeys(
                    (*(touch.lead for touch in touches), *(path.leads if path else ()))
                ),
                terminals=dict.fromkeys(
                    (
                        supply.hot,
                        supply.common,
                        *(near_end(facts, touch) for touch in touches),
                        *_jumped(facts, path),
                    )
                ),
                instead=(
                    ""
                    if _is_earthed_by_lead(facts, supply)
                    else f"; what belongs on earth is {facts.show(supply.common)}"
                ),
                edits=_mend(facts, supply, touches),
                lead=facts.lead(first.lead),
                hot=facts.show(supply.hot),
                common=facts.show(supply.common),
                metal=metal(facts, first),
            )


def _jumped(facts: Facts, path: Trace | None) -> tuple[Terminal, ...]:
    """The two ends of a jumper on the way to earth."""
    leads = [facts.diagram.leads[number] for number in (path.leads if path else ())]
    return tuple(end for lead in leads if lead.role is LeadRole.JUMPER for end in (lead.a, lead.b))


def _is_earthed_by_lead(facts: Facts, supply: Supply) -> bool:
    """Whether the common has a lead to earth already, and needs no second one."""
    return any(touch.at == EARTH for touch in facts.sides.touches(supply.common))


def _mend(facts: Facts, supply: Supply, touches: list[Touch]) -> tuple[Edit, ...]:
    """Take off the one earth lead of the transformer, to its common if that has no earth."""
    touch = touches[0]
    lead = facts.diagram.leads[touch.lead]
    if len(touches) > 1 or touch.at != EARTH or supply.hot not in (lead.a, lead.b):
        return ()
    if _is_earthed_by_lead(facts, supply):
        return (remove_lead(facts.diagram, touch.lead),)
    edit = move_end(facts.diagram, touch.lead, supply.hot, supply.common)
    return (edit,) if edit else ()
