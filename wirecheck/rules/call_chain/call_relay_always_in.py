"""A relay that passes the call on is pulled in by a call.

Its coil straight on the supply, the contact that should close on a call is closed for good: the
burner fires as soon as there is power, whatever the thermostats say.
"""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.circuit.nets import Element
from wirecheck.model.finding import Breaks, Finding
from wirecheck.rules.call_chain.burners import Burners
from wirecheck.rules.call_chain.chain import Chain
from wirecheck.rules.call_chain.contacts import contacts, is_drawn, is_thermostat
from wirecheck.rules.call_chain.words import UNCALLED_CAUTION, called
from wirecheck.rules.facts import Facts
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule

_GOOD = """\
part line is mains: 120 V
part xfmr is transformer
part boiler is boiler-control
part stat is thermostat
part box is pilot-ignition-control
wire line.L1 to boiler.L1 to xfmr.L1: black
wire line.N to boiler.N to xfmr.N: white
wire line.G to earth: green
wire boiler.R to stat to boiler.W
wire xfmr.R to boiler.BURNER-1
wire boiler.BURNER-2 to box.TH
wire xfmr.C to box.COM
wire box.GND to earth: green
"""

RULE = Rule(
    name="call-relay-always-in",
    title="A relay that passes the call on is pulled in by a call",
    family="call and safety chain",
    breaks=Breaks.SAFETY,
    why="The burner runs until a limit or another safety stops it, which is no control.",
    blind_spots="A burner that is to run whenever there is power.",
    caution=UNCALLED_CAUTION,
    sources=(PRACTICE,),
    faults={
        "straight": Fault(
            "{coil} is fed from {hot} with nothing between that calls, and so {call} is called "
            "for good: bring {coil} to what is to call",
            "The burner fires as soon as there is power, with every thermostat open.",
        ),
    },
    bad=(
        Example(
            _GOOD + "wire boiler.R to boiler.W\n",
            (("straight", "boiler.W"),),
        ),
    ),
    good=(Example(_GOOD),),
    stands_back_for=(
        "switch-jumpered", "thermostat-bypassed", "relay-contact-jumpered", "hot-straight-to-call",
        "thermostat-not-in-call", "zone-motor-always-on", "call-from-another-terminal",
    ),
)  # fmt: skip


def check(facts: Facts) -> Iterator[Finding]:
    """Find coils on the supply itself whose contacts call a burner that no call can stop."""
    wired = facts.as_wired
    thermostats = [c for c in contacts(wired) if is_thermostat(c) and is_drawn(wired, c)]
    told: set[int] = set()
    for chain in facts.once(Burners).chains if thermostats else ():
        for coil in _always_in(chain) if chain.runs_uncalled() else ():
            if id(coil) in told:
                continue
            told.add(id(coil))
            feed = next(feed for own, feeds in chain.coils() if own is coil for feed in feeds)
            trace = wired.sides.path(feed.source[0], coil.a)
            yield RULE.finding(
                facts,
                "straight",
                facts.place(coil.a),
                leads=trace.leads if trace else (),
                terminals=(coil.a, feed.source[0]),
                coil=facts.show(coil.a),
                hot=facts.show(feed.source[0]),
                call=called(facts, chain),
            )


def _always_in(chain: Chain) -> Iterator[Element]:
    """Coils on the way of a burner that are on the hot side itself."""
    for coil, feeds in chain.coils():
        if coil.part.family != "zone-valve" and any(feed.straight for feed in feeds):
            yield coil
