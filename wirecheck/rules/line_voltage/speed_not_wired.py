"""Both speeds of a blower that is said to have two are wired.

The relay throws, the slow speed goes off, and the fast one has no lead: the blower stops on the
call for the fan.
"""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.model.diagram import Terminal
from wirecheck.model.finding import Breaks, Finding
from wirecheck.rules.call_chain.contacts import switch
from wirecheck.rules.empty import may_be_untraced
from wirecheck.rules.facts import Facts
from wirecheck.rules.legs import Legs
from wirecheck.rules.line_voltage.cautions import LINE_VOLTAGE
from wirecheck.rules.line_voltage.idle import idle_ends
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule

_GOOD = """\
part line is mains: 120 V
part xfmr is transformer
part stat is thermostat
part fan is relay
part air is blower: two-speed
wire line.L1 to xfmr.L1: black
wire line.L1 to fan.COM..NO to air.HI: black
wire fan.NC to air.LO: red
wire line.N to xfmr.N to air.N: white
wire line.G to earth: green
wire xfmr.R to stat to fan to xfmr.C
wire xfmr.C to earth: green
"""

RULE = Rule(
    name="speed-not-wired",
    title="Both speeds of a blower typed with two are wired",
    family="line voltage",
    breaks=Breaks.OPERATION,
    why="What is to run the blower at the speed that has no lead stops it instead.",
    blind_spots="A blower for which the file does not say two-speed.",
    caution=LINE_VOLTAGE,
    sources=(PRACTICE,),
    faults={
        "no-lead": Fault(
            "{part} is typed with two speeds, and {speed} has no lead: run it, or leave two-speed "
            "out if only the other is used",
            "{part} does not run at that speed.",
            Breaks.WORKMANSHIP,
        ),
        "stops": Fault(
            "{part} is typed with two speeds; a relay takes {wired} off, and {speed} has no lead: "
            "run it, or leave two-speed out if only the other is used",
            "{part} stops when the relay pulls in, and does not run at that speed.",
        ),
        "beside": Fault(
            "{part} is typed with two speeds; {speed} has no lead, and neither has {idle}, where "
            "a contact brings the line to: run one between them",
            "{part} does not run at that speed.",
        ),
    },
    bad=(
        Example(_GOOD.replace("wire fan.NC to air.LO: red\n", ""), (("no-lead", "air"),)),
        Example(
            _GOOD.replace("to air.LO: red", "to plenum.FAN-1: red").replace(
                "part fan", "part plenum is fan-limit-control: link removed\npart fan"
            ),
            (("beside", "air"),),
        ),
        Example(_GOOD.replace("COM..NO to air.HI: black", "COM: black"), (("stops", "air"),)),
    ),
    good=(Example(_GOOD),),
)


def check(facts: Facts) -> Iterator[Finding]:
    """Find blowers typed two-speed with a lead at one speed alone."""
    for part in facts.of("load"):
        typed = part.given.get("speeds")
        if typed is None or typed.value != "two-speed":
            continue
        speeds = part.with_role("load-hot")
        empty = [end for end in speeds if not facts.is_wired(end)]
        if len(empty) != 1 or may_be_untraced(facts, empty[0]):
            continue
        wired = next(end for end in speeds if end != empty[0])
        idle = facts.once(idle_ends)
        beside = idle[0] if len(idle) == 1 else None
        fault = "stops" if _is_taken_off(facts, wired) else "beside" if beside else "no-lead"
        yield RULE.finding(
            facts,
            fault,
            part.name_span,
            terminals=(*empty, *idle[:1]),
            idle=facts.show(beside) if beside else "",
            part=part.name,
            speed=facts.show(empty[0]),
            wired=facts.show(wired),
        )


def _is_taken_off(facts: Facts, speed: Terminal) -> bool:
    """Whether a relay that pulls in opens a way to a speed."""
    return any(
        switch(contact).coil and switch(contact).normal == "closed"
        for source in facts.once(Legs).sources
        for contact in facts.conduction.way(facts.net(source.a), facts.net(speed)).contacts
    )
