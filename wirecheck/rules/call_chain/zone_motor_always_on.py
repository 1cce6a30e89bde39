"""The motor of a zone valve is switched by the thermostat of its zone.

Put straight across the supply it holds the valve open, and its end switch calls the boiler all
the time.
"""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.model.finding import Breaks, Finding
from wirecheck.rules.call_chain.calls import Calls
from wirecheck.rules.call_chain.zone_motors import always_fed
from wirecheck.rules.facts import Facts
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule

_GOOD = """\
part xfmr is transformer
part stat-1 is thermostat
part stat-2 is thermostat
part zone-1 is zone-valve
part zone-2 is zone-valve
part boiler is boiler-call
wire xfmr.R to stat-1 to zone-1.M1
wire xfmr.R to stat-2 to zone-2.M1
wire xfmr.C to zone-1.M2 to zone-2.M2
wire zone-1.E1 to zone-2.E1 to boiler.1
wire zone-1.E2 to zone-2.E2 to boiler.2
"""

RULE = Rule(
    name="zone-motor-always-on",
    title="A zone valve's motor is fed through the thermostat of its zone",
    family="call and safety chain",
    breaks=Breaks.OPERATION,
    why=(
        "A zone valve on constant 24 V never closes: the zone is heated whenever there is hot "
        "water, and the end switch keeps calling the boiler."
    ),
    blind_spots="A valve meant to stay open whenever there is power.",
    caution="",
    sources=(PRACTICE,),
    faults={
        "constant": Fault(
            "{motor} is on {hot} with no thermostat between: feed it through the thermostat of "
            "its zone",
            "{valve} is always open, and its end switch calls all the time.",
        ),
    },
    bad=(
        Example(
            _GOOD.replace("R to stat-2 to", "R to").replace("part stat-2 is thermostat\n", ""),
            (("constant", "zone-2.M1"),),
        ),
    ),
    good=(Example(_GOOD),),
)


def check(facts: Facts) -> Iterator[Finding]:
    """Find motors of zone valves that are fed with no call."""
    thermostats = facts.once(Calls).idle_thermostats
    idle = [side for contact in thermostats for side in (contact.a, contact.b)]
    for found in facts.once(always_fed):
        motor, feed = found.motor, found.chain.feeds[0]
        fed = motor.b if feed.reversed else motor.a
        yield RULE.finding(
            facts,
            "constant",
            facts.place(fed),
            leads=facts.nets.leads_at(fed),
            terminals=(motor.a, motor.b, *idle),
            motor=facts.show(fed),
            hot=facts.show(feed.source[0]),
            valve=motor.part.name,
        )
