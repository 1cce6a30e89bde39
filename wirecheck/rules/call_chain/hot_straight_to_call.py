"""No lead runs from the hot side straight to the call of a burner.

Then the burner fires as soon as there is power, past every switch in the call lead.
"""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.model.finding import Breaks, Finding
from wirecheck.rules.call_chain.bridge import Bridge
from wirecheck.rules.call_chain.calls import Calls, Straight, breaks_uncalled
from wirecheck.rules.call_chain.contacts import is_safety, is_thermostat, names, sides
from wirecheck.rules.call_chain.loops import Bridged
from wirecheck.rules.call_chain.words import UNCALLED_CAUTION, called
from wirecheck.rules.facts import Facts
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule

_GOOD = """\
part xfmr is transformer
part limit is high-limit
part stat is thermostat
part box is pilot-ignition-control
part pilot is pilot-burner
wire xfmr.R to limit to stat to box.TH
wire xfmr.C to box.COM
wire box.GND to pilot.HOOD: green
wire box.SENSE to pilot.ROD
wire box.SPARK to pilot.SPARK: ignition-cable
"""

RULE = Rule(
    name="hot-straight-to-call",
    title="The call comes through its switches, not straight from the hot side",
    family="call and safety chain",
    breaks=Breaks.SAFETY,
    why=(
        "Joined to the hot side, the call is there as long as there is power: the burner fires "
        "with no call, and no switch in the call lead stops it."
    ),
    blind_spots="A unit meant to run whenever it has power, drawn with a thermostat it ignores.",
    caution=UNCALLED_CAUTION,
    sources=(PRACTICE,),
    faults={
        "past": Fault(
            "{way} joins {hot} straight to {call}, past {past}: take it off, so that the call "
            "goes through {past}",
            "The burner fires as soon as there is power; nothing in the call lead stops it.",
        ),
    },
    bad=(
        Example(
            _GOOD + "wire xfmr.R to box.TH\n",
            (("past", "xfmr.R to box.TH"),),
        ),
        Example(
            _GOOD.replace("stat to box.TH", "stat.R") + "wire xfmr.R to box.TH\n",
            (("past", "xfmr.R to box.TH"),),
        ),
    ),
    good=(Example(_GOOD),),
)


def check(facts: Facts) -> Iterator[Finding]:
    """Find burners whose call is one conductor with the hot side, with switches drawn beside."""
    wired = facts.as_wired
    for straight in facts.once(Calls).straight:
        hot, call, past = straight.hot, straight.chain.call, straight.past
        bridge = Bridge(facts, Bridged((), (hot, call), wired.net(call)))
        yield RULE.finding(
            facts,
            "past",
            bridge.span,
            leads=(*bridge.leads, *_dangling(facts, straight)),
            terminals=dict.fromkeys(
                (hot, call, *(s for contact in past for s in sides(wired, contact)), *bridge.ends)
            ),
            edits=bridge.edits if straight.beside else (),
            breaks=breaks_uncalled(straight.chain, past_safeties=any(map(is_safety, past))),
            way=bridge.words,
            hot=facts.show(hot),
            call=called(facts, straight.chain),
            past=names(wired, past),
        )


def _dangling(facts: Facts, straight: Straight) -> Iterator[int]:
    """Leads of thermostats that run nothing because of it."""
    for contact in straight.past if not straight.beside else ():
        if is_thermostat(contact):
            for side in (contact.a, contact.b):
                yield from facts.nets.leads_at(side)
