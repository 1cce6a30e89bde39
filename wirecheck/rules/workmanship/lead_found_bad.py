"""Leads are whole, tight and clear of metal.

What was found broken, loose or chafed is a finding by itself, wherever the lead runs.
"""

from __future__ import annotations

from collections.abc import Collection, Iterator
from typing import NamedTuple

from wirecheck.model.diagram import EARTH, Lead, Terminal
from wirecheck.model.finding import Breaks, Finding
from wirecheck.model.text import Span
from wirecheck.rules.cautions import MOVING_LEADS
from wirecheck.rules.facts import Facts
from wirecheck.rules.ignition_leads.hookup import Hookup, hookups
from wirecheck.rules.legs import Legs
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule

_GOOD = """\
part line is mains: 120 V
part pump is circulator
part xfmr is transformer
part stat is thermostat
part fan is relay
splice joint: crimp
wire line.L1 to pump.L: black
wire line.N to pump.N: white
wire line.G to earth: green
wire line.L1 to xfmr.L1: black
wire line.N to xfmr.N: white
wire xfmr.R to joint to stat.R: red
wire stat.W to fan to xfmr.C
wire xfmr.C to earth: green
"""
_BURNER = """\
part box is pilot-ignition-control
part pilot is pilot-burner: two-rod
wire box.SPARK to pilot.SPARK: ignition-cable
wire box.SENSE to pilot.ROD
wire box.GND to pilot.HOOD: green
"""

RULE = Rule(
    name="lead-found-bad",
    title="Leads are whole, tight and clear of metal",
    family="workmanship",
    breaks=Breaks.OPERATION,
    why="What is found is mended before anything else is judged by how the unit behaves.",
    blind_spots="Only what was typed: broken, loose, touches earth.",
    caution=MOVING_LEADS,
    sources=(PRACTICE,),
    faults={
        "broken": Fault(
            "{lead} is recorded as broken: replace it",
            "What hangs on it does not work.",
        ),
        "broken-spark": Fault(
            "{lead} is recorded as broken: replace it",
            "No spark at the {flame}, or one that jumps the break; unlit {gas} until the trial "
            "ends.",
            Breaks.SAFETY,
        ),
        "broken-signal": Fault(
            "{lead} is recorded as broken: replace it",
            "The {flame} lights and the spark goes on, but the flame is not proved; the trial "
            "ends.",
        ),
        "broken-doubled": Fault(
            "{lead} is recorded as broken, and another way joins its ends: replace it or take it "
            "out",
            "It works over the other way.",
            Breaks.WORKMANSHIP,
        ),
        "broken-earth": Fault(
            "{lead} is recorded as broken: replace it",
            "It works; what it is to earth is not earthed by it.",
            Breaks.WORKMANSHIP,
        ),
        "loose": Fault(
            "{lead} is recorded as loose, with {ohms}: make the joint again",
            "Weak or erratic: what hangs on it chatters or drops out.",
        ),
        "loose-line": Fault(
            "{lead}, at line voltage, is recorded as loose, with {ohms}: make the joint again",
            "It heats, and burns in the end.",
            Breaks.SAFETY,
        ),
        "touches": Fault(
            "{lead} is recorded as touching metal: replace it and keep it clear",
            "It works as long as this side is the earthed one.",
            Breaks.WORKMANSHIP,
        ),
    },
    bad=(
        Example(
            _GOOD.replace("stat.R: red", "stat.R (broken): red"), (("broken", "joint to stat.R"),)
        ),
        Example(
            _BURNER.replace("ignition-cable", "ignition-cable, broken"),
            (("broken-spark", "box.SPARK to pilot.SPARK"),),
        ),
        Example(
            _BURNER.replace("green", "green, broken"),
            (("broken-signal", "box.GND to pilot.HOOD"),),
        ),
        Example(_GOOD + "wire xfmr.R to joint: broken\n", (("broken-doubled", "xfmr.R to joint"),)),
        Example(
            _GOOD.replace("xfmr.C to earth: green", "xfmr.C to earth: green, broken"),
            (("broken-earth", "xfmr.C to earth"),),
        ),
        Example(
            _GOOD.replace("joint: crimp", "joint: crimp, loose 20 ohm"),
            (("loose", "loose 20 ohm"),),
        ),
        Example(
            _GOOD.replace("pump.L: black", "pump.L: black, loose 2 ohm"),
            (("loose-line", "line.L1 to pump.L"),),
        ),
        Example(
            _GOOD.replace("xfmr.C\nwire", "xfmr.C (touches earth)\nwire"),
            (("touches", "fan to xfmr.C"),),
        ),
    ),
    good=(Example(_GOOD),),
    general=True,
)


def check(facts: Facts) -> Iterator[Finding]:
    """Find what was recorded about leads and splices, one finding for each record."""
    told: set[Span] = set()
    for number, lead in enumerate(facts.diagram.leads):
        for name in ("broken", "loose", "touches"):
            record = lead.given.get(name)
            if record is not None and record.span not in told:
                told.add(record.span)
                fault, breaks, hookup = _judged(facts, number, name)
                yield RULE.finding(
                    facts,
                    fault,
                    facts.lead_span(number),
                    leads=(number,),
                    terminals=(lead.a, lead.b),
                    breaks=breaks,
                    lead=f"the lead {facts.lead(number)}",
                    flame=hookup.flame if hookup else "",
                    gas=hookup.gas if hookup else "",
                    ohms=str(record.value),
                )
    for splice in facts.diagram.splices.values():
        record = splice.given.get("loose")
        if record is not None:
            end = Terminal(splice.key, "")
            yield RULE.finding(
                facts,
                "loose-line" if facts.once(Legs).at(end) else "loose",
                record.span,
                terminals=(end,),
                lead=f"the splice {splice.name}",
                ohms=str(record.value),
            )


class _Judged(NamedTuple):
    """The fault of a lead, what it breaks if that is not the fault's own, and whose lead it is."""

    fault: str
    breaks: Breaks | None = None
    hookup: Hookup | None = None


def _judged(facts: Facts, number: int, name: str) -> _Judged:
    lead = facts.diagram.leads[number]
    fault = _fault(facts, lead, name)
    if fault == "broken":
        of_part = facts.as_wired.once(_hookups_of)
        for hookup in (*of_part.get(lead.a.part, ()), *of_part.get(lead.b.part, ())):
            if number in _way(facts, hookup.spark, hookup.electrode):
                return _Judged("broken-spark", hookup.sparkless, hookup)
            signal = [(hookup.ground, hookup.metal)]
            if hookup.rod is not None:
                signal.append((hookup.sense, hookup.rod))
            if any(number in _way(facts, *ends) for ends in signal):
                return _Judged("broken-signal", None, hookup)
    return _Judged(fault)


def _hookups_of(facts: Facts) -> dict[str, list[Hookup]]:
    """The burners and their controls, by the key of either."""
    found: dict[str, list[Hookup]] = {}
    for hookup in facts.once(hookups):
        found.setdefault(hookup.control.key, []).append(hookup)
        found.setdefault(hookup.burner.key, []).append(hookup)
    return found


def _way(facts: Facts, a: Terminal, b: Terminal) -> Collection[int]:
    """The leads that would join two terminals if none were broken."""
    wired = facts.as_wired
    return wired.nets.path(a, b) if wired.joined(a, b) else ()


def _fault(facts: Facts, lead: Lead, name: str) -> str:
    if name == "broken" and EARTH in (lead.a, lead.b):
        return "broken-earth"
    if name == "broken":
        return "broken-doubled" if facts.joined(lead.a, lead.b) else "broken"
    return "loose-line" if name == "loose" and facts.once(Legs).at(lead.a) else name
