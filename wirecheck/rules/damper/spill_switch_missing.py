"""A unit with a draft hood and a vent damper has a spill switch in its call.

Where the damper sticks half shut, or the chimney is blocked, combustion products come out of the
draft hood unseen; the spill switch is what notices.
"""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.model.diagram import Part
from wirecheck.model.finding import Breaks, Finding
from wirecheck.parts.library import kind
from wirecheck.rules.call_chain.burners import Burners
from wirecheck.rules.call_chain.contacts import contacts
from wirecheck.rules.damper.hookup import hookups
from wirecheck.rules.damper.words import SHUT_VENT
from wirecheck.rules.facts import Facts
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule, Source

_GOOD = """\
part xfmr is transformer
part spill is spill-switch
part stat is thermostat
part box is pilot-ignition-control
part vent is vent-damper: draft-hood yes
part pilot is pilot-burner
wire xfmr.R to spill to stat to box.TH
wire xfmr.R to box.24V
wire xfmr.C to box.COM
plug box to vent: D-HOT to HOT, D-CALL to CALL, D-PROVED to PROVED, D-COM to COM
wire box.GND to pilot.HOOD: green
wire box.SENSE to pilot.ROD
wire box.SPARK to pilot.SPARK: ignition-cable
"""
_BAD = _GOOD.replace("part spill is spill-switch\n", "").replace("spill to ", "")

RULE = Rule(
    name="spill-switch-missing",
    title="A unit with draft hood and damper has a spill switch in its call",
    family="vent damper",
    breaks=Breaks.SAFETY,
    why=(
        "The end switch proves that the blade stands open, not that the vent draws. Behind a "
        "draft hood only a spill switch sees that it does not."
    ),
    blind_spots=(
        "A damper for which the file does not say draft-hood yes; a spill switch that is there and "
        "was not drawn."
    ),
    caution=SHUT_VENT,
    sources=(
        PRACTICE,
        Source("City code of Belleville, Illinois (amending NFPA 54)", "law", "153.03"),
        Source("ICC Performance Code 2009", "standard", "chapter 13"),
    ),
    faults={
        "none": Fault(
            "{damper} is on a unit with a draft hood, and the call to {call} has no spill switch: "
            "fit one at the draft hood and wire it into the call lead",
            "With the vent blocked or the damper not fully open, combustion products spill into "
            "the room and the burner goes on.",
        ),
    },
    bad=(Example(_BAD, (("none", "draft-hood yes"),)),),
    good=(Example(_GOOD), Example(_BAD.replace("yes", "no"))),
)


def check(facts: Facts) -> Iterator[Finding]:
    """Find units said to have a draft hood whose call has no spill switch drawn."""
    burners = facts.once(Burners)
    for hookup in facts.once(hookups):
        hood = hookup.damper.given.get("draft-hood")
        if hood is None or hood.value != "yes":
            continue
        chain = next(c for c in burners.chains if c.part is hookup.control)
        if chain.feeds and not _has_spill_switch(facts, hookup.control):
            yield RULE.finding(
                facts,
                "none",
                hood.span,
                terminals=(chain.call,),
                damper=hookup.damper.name,
                call=facts.show(chain.call),
            )


def _has_spill_switch(facts: Facts, control: Part) -> bool:
    """Whether a spill switch stands ahead of a control, or of nothing, which is told elsewhere."""
    burners = facts.once(Burners)
    inside = kind("spill-switch").switches  # a kind of the user's own keeps its inside
    for contact in contacts(facts.as_wired):
        if contact.part.kind.switches is inside:
            ahead_of = burners.on(contact)
            if not ahead_of or any(chain.part is control for chain in ahead_of):
                return True
    return False
