"""A relay that passes the call on is pulled in by a call.

Its coil straight on the supply, the contact that should close on a call is closed for good: the
burner fires as soon as there is power, whatever the thermostats say.
"""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.circuit.nets import Element
from wirecheck.model.finding import Breaks, Finding
from wirecheck.model.kind import LoadSpec
from wirecheck.rules.call_chain.burners import Burners
from wirecheck.rules.call_chain.chain import Chain
from wirecheck.rules.call_chain.contacts import contacts, is_drawn, is_safety, is_thermostat
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

_INDUCER = """\
part line is mains: 120 V
part xfmr is transformer
part stat is thermostat
part draw is relay
part fan is inducer
part draft is pressure-switch
part box is pilot-ignition-control
wire line.L1 to xfmr.L1: black
wire line.L1 to draw.COM..NO to fan.L: black
wire line.N to xfmr.N to fan.N: white
wire line.G to earth: green
wire xfmr.R to stat to draft to box.TH
wire stat.W to draw to xfmr.C to box.COM
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
        "inducer": Fault(
            "{coil} is fed from {hot} with nothing between that calls, and so {motor} runs for "
            "good: bring {coil} to the call",
            "{motor} runs as long as there is power, and its air is proved with no call.",
            Breaks.OPERATION,
        ),
    },
    bad=(
        Example(
            _GOOD + "wire boiler.R to boiler.W\n",
            (("straight", "boiler.W"),),
        ),
        Example(
            _INDUCER.replace("stat.W to draw", "xfmr.R to draw"),
            (("inducer", "draw"),),
        ),
    ),
    good=(Example(_GOOD), Example(_INDUCER)),
    stands_back_for=(
        "switch-jumpered", "thermostat-bypassed", "relay-contact-jumpered", "hot-straight-to-call",
        "thermostat-not-in-call", "zone-motor-always-on", "call-from-another-terminal",
    ),
)  # fmt: skip


def check(facts: Facts) -> Iterator[Finding]:
    """Find coils on the supply itself whose contacts call a burner that no call can stop."""
    wired = facts.as_wired
    thermostats = [c for c in contacts(wired) if is_thermostat(c) and is_drawn(wired, c)]
    if any(facts.once(Burners).on(contact) for contact in thermostats):
        yield from _inducers(facts)
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


def _inducers(facts: Facts) -> Iterator[Finding]:
    """Find motors for the burner's air whose relay is in with nothing calling."""
    wired = facts.as_wired
    for elements in wired.nets.elements_of.values():
        for motor in elements:
            if not isinstance(motor.spec, LoadSpec) or motor.spec.moves != "combustion-air":
                continue
            chain = Chain(wired, motor.part, motor.a, motor.b)
            coils = [coil for coil, _feeds in chain.coils()] if chain.runs_uncalled() else []
            for coil in coils:
                own = Chain(wired, coil.part, coil.a, coil.b)
                if own.feeds and _is_called_by_nothing(own):
                    hot = own.feeds[0].source[0]
                    trace = wired.sides.trace(hot, coil.a)
                    yield RULE.finding(
                        facts,
                        "inducer",
                        facts.place(coil.a),
                        leads=dict.fromkeys(
                            (*facts.nets.leads_at(coil.a), *(trace.leads if trace else ()))
                        ),
                        terminals=(coil.a, hot),
                        coil=facts.show(coil.a),
                        hot=facts.show(hot),
                        motor=motor.part.name,
                    )


def _is_called_by_nothing(chain: Chain) -> bool:
    """Whether nothing but safeties and fuses stands in the circuit of a coil itself."""
    return all(
        is_safety(contact) or contact.part.family == "overcurrent"
        for contact in chain.contacts.values()
        if chain.is_direct(contact)
    )


def _always_in(chain: Chain) -> Iterator[Element]:
    """Coils on the way of a burner that are on the hot side itself."""
    for coil, feeds in chain.coils():
        if coil.part.family != "zone-valve" and any(feed.straight for feed in feeds):
            yield coil
