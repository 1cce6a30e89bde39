"""What a contact is to start is fed through it, and not beside it.

The lead to the fan taken from the screw in front of the contact instead of the one behind it: the
fan runs from the moment the power is on, and the contact switches nothing.
"""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.circuit.nets import Element
from wirecheck.model.diagram import Part, Terminal
from wirecheck.model.finding import Breaks, Finding
from wirecheck.model.kind import LoadSpec, SwitchSpec
from wirecheck.rules.call_chain.chain import Chain
from wirecheck.rules.call_chain.contacts import switch
from wirecheck.rules.facts import Facts
from wirecheck.rules.legs import Legs
from wirecheck.rules.line_voltage.cautions import LINE_VOLTAGE
from wirecheck.rules.line_voltage.idle import empty_side, idle_contacts
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule

_GOOD = """\
part line is mains: 120 V
part xfmr is transformer
part stat is thermostat
part aid is relay
part pump is circulator
wire line.L1 to xfmr.L1: black
wire line.L1 to aid.COM..NO to pump.L: black
wire line.N to xfmr.N to pump.N: white
wire line.G to earth: green
wire xfmr.R to stat to aid to xfmr.C
wire xfmr.C to earth: green
"""

_BOILER = """\
part line is mains: 120 V
part boiler is boiler-control
part xfmr is transformer
part stat is thermostat
part aid is relay
part pump is circulator
wire line.L1 to boiler.L1 to xfmr.L1: black
wire line.N to boiler.N to xfmr.N: white
wire line.G to earth: green
wire boiler.R to stat to boiler.W
wire boiler.PUMP to pump.L: black
wire boiler.PUMP-N to pump.N: white
wire xfmr.R to aid to xfmr.C
wire xfmr.C to earth: green
"""

RULE = Rule(
    name="motor-always-on",
    title="A motor that a contact is to start is fed through it",
    family="line voltage",
    breaks=Breaks.OPERATION,
    why="It runs day and night, and what its switch should prove is proved with no call.",
    blind_spots=(
        "A motor that is meant to run all the time, beside a relay with a contact wired at one "
        "side and left so."
    ),
    caution=LINE_VOLTAGE,
    sources=(PRACTICE,),
    faults={
        "past-contact": Fault(
            "{motor} is fed at {end} with nothing calling for it, and {empty} of {relay} has no "
            "lead: feed {end} from {empty}",
            "{motor} runs as long as there is power.",
        ),
        "pump-elsewhere": Fault(
            "{motor} is fed at {end} with nothing calling for it, and {empty} of {relay}, which "
            "could start it, feeds something else: exchange the leads of {end} and {empty}",
            "{motor} runs as long as there is power.",
        ),
    },
    bad=(
        Example(
            _GOOD.replace("to aid.COM..NO to pump.L", "to aid.COM: black\nwire xfmr.L1 to pump.L"),
            (("past-contact", "pump.L"),),
        ),
        Example(
            _BOILER.replace("to boiler.L1 to xfmr.L1", "to boiler.L1 to pump.L").replace(
                "boiler.PUMP to pump.L", "boiler.PUMP to xfmr.L1"
            ),
            (("pump-elsewhere", "pump.L"),),
        ),
    ),
    good=(Example(_GOOD), Example(_BOILER)),
)


def check(facts: Facts) -> Iterator[Finding]:
    """Find motors of the line that run with all at rest, beside a contact that leads nowhere."""
    wired = facts.as_wired
    idle = wired.once(idle_contacts) or (*_without_pump(wired), *_in_line(wired))
    if len(idle) != 1 or any(_lacks_its_hot_lead(part, wired) for part in wired.of("load")):
        return  # which of several belongs to the motor, or what the contact is for, is not known
    contact = idle[0]
    pump = next((e for e in (contact.a, contact.b) if wired.role(e) == "pump-feed"), None)
    is_taken = all(wired.is_wired(end) for end in (contact.a, contact.b))
    empty = empty_side(wired, contact) if not is_taken else pump or contact.b
    always_on = [motor for motor in _motors(wired) if _runs_for_good(wired, motor, contact)]
    hot = _hot_end(wired, always_on[0]) if len(always_on) == 1 else None
    if hot is not None:
        motor = always_on[0]
        yield RULE.finding(
            facts,
            "pump-elsewhere" if is_taken else "past-contact",
            facts.place(hot),
            leads=dict.fromkeys((*facts.nets.leads_at(hot), *facts.nets.leads_at(empty))),
            terminals=(hot, empty),
            motor=motor.part.name,
            end=facts.show(hot),
            empty=facts.show(empty),
            relay=contact.part.name,
        )


def _without_pump(facts: Facts) -> Iterator[Element]:
    """Contacts for a pump whose terminal is wired to what is no motor."""
    for part in facts.of("boiler-control"):
        for contact in facts.nets.elements_of[part.key] if part.with_role("pump-feed") else ():
            ends = [end for end in (contact.a, contact.b) if facts.role(end) == "pump-feed"]
            if contact.type != "switch" or not ends or not facts.is_wired(ends[0]):
                continue
            edges = facts.nets.elements.edges(facts.net(ends[0]), data="element")
            if facts.is_traced(ends[0]) and not any(_is_motor(e) for _a, _b, e in edges):
                yield contact


def _in_line(facts: Facts) -> Iterator[Element]:
    """Poles of a relay that feed nothing but another pole of the same relay."""
    for part in facts.of("relay"):
        poles = [c for c in facts.nets.elements_of[part.key] if _is_working_contact(c)]
        for one in poles:
            for other in poles:
                if one is not other and one.net_b == other.net_a and one.net_a != one.net_b:
                    edges = facts.nets.elements.edges(one.net_b, data="element")
                    at = [e for _a, _b, e in edges if e is not one and e is not other]
                    if not at and facts.once(Legs).is_hot(one.a):
                        yield one


def _is_working_contact(element: Element) -> bool:
    """Whether an element is a contact that a coil closes."""
    spec = element.spec
    return isinstance(spec, SwitchSpec) and spec.coil is not None and spec.normal == "open"


def _is_motor(element: Element) -> bool:
    return isinstance(element.spec, LoadSpec) and element.spec.type == "motor"


def _lacks_its_hot_lead(part: Part, facts: Facts) -> bool:
    """Whether a load without a hot lead may be what a contact is to feed."""
    hots = part.with_role("load-hot")
    return bool(hots) and not any(facts.is_wired(end) for end in hots)


def _motors(facts: Facts) -> Iterator[Element]:
    for elements in facts.nets.elements_of.values():
        for load in elements:
            if _is_motor(load) and facts.is_wired(load.a) and facts.is_wired(load.b):
                yield load


def _hot_end(facts: Facts, motor: Element) -> Terminal | None:
    legs = facts.once(Legs)
    return next((end for end in (motor.a, motor.b) if legs.is_hot(end)), None)


def _runs_for_good(facts: Facts, motor: Element, idle: Element) -> bool:
    """Whether it is fed with every contact at rest, but for switches that a hand has closed.

    One that the same relay feeds at rest may be meant to run slowly for good.
    """
    chain = Chain(facts, motor.part, motor.a, motor.b)
    if any(contact.part is idle.part for contact in chain.contacts.values()):
        return False
    at_rest = {
        key
        for key, contact in chain.contacts.items()
        if switch(contact).normal == "open" and switch(contact).moved_by not in ("hand", "door")
    }
    return bool(chain.feeds) and chain.runs(at_rest)
