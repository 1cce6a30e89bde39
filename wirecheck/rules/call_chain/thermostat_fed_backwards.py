"""The supply comes to a thermostat at its feed, and the call leaves at its heating terminal.

A plain contact passes current either way.  But what else is in the thermostat hangs on the feed:
its own power, the call for the fan, the call for cooling.
"""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.circuit.nets import Element
from wirecheck.model.diagram import Part, Terminal
from wirecheck.model.finding import Breaks, Finding
from wirecheck.rules.call_chain.contacts import contacts, is_drawn, is_thermostat
from wirecheck.rules.cautions import MOVING_LEADS
from wirecheck.rules.facts import Facts
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule

#: What hangs on the feed besides the call for heat.
_ON_FEED = ("thermostat-cool", "thermostat-fan")

_GOOD = """\
part xfmr is transformer
part stat is thermostat
part box is pilot-ignition-control
part fan is relay
wire xfmr.R to stat to box.TH
wire stat.G to fan to xfmr.C to box.COM
wire box.GND to earth: green
"""

RULE = Rule(
    name="thermostat-fed-backwards",
    title="A thermostat gets its supply at its feed",
    family="call and safety chain",
    breaks=Breaks.OPERATION,
    why="Its own power and its other calls are dead until it calls for heat, or for good.",
    blind_spots="A thermostat that takes its own power from either side.",
    caution=MOVING_LEADS,
    sources=(PRACTICE,),
    faults={
        "backwards": Fault(
            "the supply comes to {stat} at {heat}, and {feed} is on the call: exchange the leads "
            "of {feed} and {heat}",
            "What {stat} has besides its heating contact gets no power while that is open.",
        ),
    },
    bad=(
        Example(
            _GOOD.replace("xfmr.R to stat to box.TH", "xfmr.R to stat.W..R to box.TH"),
            (("backwards", "stat.W..R"),),
        ),
    ),
    good=(Example(_GOOD),),
)


def check(facts: Facts) -> Iterator[Finding]:
    """Find thermostats whose supply comes in at the heating terminal, and to which that matters."""
    wired = facts.as_wired
    for contact in contacts(wired):
        if not is_thermostat(contact) or contact.net_a == contact.net_b:
            continue
        feed, heat = contact.a, contact.b
        part = contact.part
        if is_drawn(wired, contact) and _matters(wired, part) and _is_backwards(wired, contact):
            yield RULE.finding(
                facts,
                "backwards",
                facts.place(heat),
                leads=dict.fromkeys((*facts.nets.leads_at(feed), *facts.nets.leads_at(heat))),
                terminals=(feed, heat),
                stat=part.name,
                feed=facts.show(feed),
                heat=facts.show(heat),
            )


def _matters(facts: Facts, part: Part) -> bool:
    """Whether it needs power of its own, or makes other calls."""
    powered = any(facts.is_wired(end) for end in part.with_role("thermostat-common"))
    loads = any(load.type == "electronics" for load in part.structure.loads)
    calls = any(facts.is_wired(end) for end in part.with_role(*_ON_FEED))
    return calls or (powered and loads)


def _is_backwards(facts: Facts, contact: Element) -> bool:
    hots = {supply.hot for supply in facts.supplies}

    def passes(other: Element) -> bool:
        return other.part is not contact.part

    def is_fed(end: Terminal) -> bool:
        return facts.sides.search((end,), hots.__contains__, through=passes) is not None

    ends_traced = facts.is_traced(contact.a) and facts.is_traced(contact.b)
    return ends_traced and is_fed(contact.b) and not is_fed(contact.a)
