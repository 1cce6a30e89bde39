"""Nothing joins the line-voltage circuit to the 24 V circuit: the transformer stands between them.

Line volts on a thermostat, a limit's 24 V side or a control destroy them, and put the line on bare
screws that people touch.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from wirecheck.model.diagram import Terminal
from wirecheck.model.finding import Breaks, Finding
from wirecheck.model.structure import Structure
from wirecheck.rules.facts import Facts
from wirecheck.rules.legs import Legs
from wirecheck.rules.line_voltage.cautions import LINE_VOLTAGE
from wirecheck.rules.line_voltage.fan_limit_link_left_in import LINK
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule, Source
from wirecheck.rules.sides import Trace

#: Of what a device takes line volts in by.
_PRIMARY: Final = frozenset({"line-hot", "line-neutral"})

_GOOD = """\
part line is mains: 120 V
part xfmr is transformer
part limit is high-limit
part stat is thermostat
part fan is relay
wire line.L1 to xfmr.L1: black
wire line.N to xfmr.N: white
wire line.G to earth: green
wire xfmr.R to limit to stat to fan to xfmr.C
wire xfmr.C to earth: green
"""
_PUMP = (
    _GOOD
    + """\
part pump is circulator: 120 V
wire line.N to pump.N: white
wire line.L1 to fan.COM: black
wire fan.NO to pump.L: black
"""
)

RULE = Rule(
    name="line-and-24-volts-joined",
    title="Nothing joins the line-voltage circuit to the 24 V circuit",
    family="line voltage",
    breaks=Breaks.SAFETY,
    why=(
        "Parts of the 24 V circuit have bare terminals and thin insulation; line volts destroy "
        "them and can kill whoever touches them."
    ),
    blind_spots=(
        "Which circuit a switch is made for, unless its volts are typed. A part whose volts are "
        "not typed is taken as what its kind usually is."
    ),
    caution=LINE_VOLTAGE,
    sources=(PRACTICE, Source("NEC", "law", "725.136")),
    faults={
        "line-on-24": Fault(
            "the lead {lead} brings line voltage from {line} to {low} of the 24 V circuit: take "
            "it off{hint}",
            "Shock at bare screws; controls, thermostat and transformer are destroyed.",
        ),
        "24-on-line": Fault(
            "the lead {lead} feeds {line}, made for line voltage, from the 24 V circuit at {low}: "
            "switch it by a relay, and feed it from the line",
            "{part} does not run on 24 V, and loads the transformer down.",
            Breaks.OPERATION,
        ),
    },
    bad=(
        Example(
            _GOOD.replace("xfmr.R to limit", "line.L1 to limit"),
            (("line-on-24", "limit to stat"),),
        ),
        Example(
            _PUMP.replace("line.N to pump.N: white", "xfmr.C to pump.N").replace(
                "line.L1 to fan.COM: black", "xfmr.R to fan.COM"
            ),
            (("24-on-line", "fan.NO to pump.L"),),
        ),
    ),
    good=(Example(_GOOD), Example(_PUMP)),
)


def check(facts: Facts) -> Iterator[Finding]:
    """Find the areas that hold terminals of both circuits; one finding for each device."""
    circuits = facts.once(_Circuits)
    told: set[str] = set()
    for area, starts in circuits.line.items():
        goals = set(circuits.low.get(area, ()))
        trace = facts.sides.search(starts, goals.__contains__) if goals else None
        if trace is None or not trace.leads or LINK in trace.links:
            continue
        is_fed = _is_at_line_volts(facts, starts)
        has_24_v = bool(facts.sides.hot_beyond(trace.end) or facts.sides.common_beyond(trace.end))
        only_24_v = has_24_v and not is_fed
        device = trace.start.part if only_24_v else trace.end.part
        if device not in told:
            told.add(device)
            yield _finding(facts, "24-on-line" if only_24_v else "line-on-24", trace)


def mixed_areas(facts: Facts) -> frozenset[int]:
    """The areas with terminals of both circuits; use it as ``facts.once(mixed_areas)``."""
    circuits = facts.once(_Circuits)
    return frozenset(circuits.line.keys() & circuits.low.keys())


class _Circuits:
    """The wired terminals of the line and of the 24 V circuit, by area."""

    def __init__(self, facts: Facts) -> None:
        self.line: dict[int, list[Terminal]] = {}
        self.low: dict[int, list[Terminal]] = {}
        names: dict[Structure, list[tuple[str, dict[int, list[Terminal]]]]] = {}
        circuits = {"line": self.line, "24V": self.low}
        for part in facts.diagram.parts.values():
            if part.structure not in names:
                specs = part.structure.terminals.items()
                names[part.structure] = [
                    (name, circuits[spec.circuit])
                    for name, spec in specs
                    if spec.circuit in circuits
                ]
            for name, areas in names[part.structure]:
                terminal = part.terminal(name)
                if facts.is_wired(terminal):
                    areas.setdefault(facts.sides.area(terminal), []).append(terminal)


def _is_at_line_volts(facts: Facts, terminals: list[Terminal]) -> bool:
    """Whether a supply reaches them, or a primary that some supply left out of a sketch feeds."""
    if facts.once(Legs).at(terminals[0]):
        return True
    return any(facts.role(terminal) in _PRIMARY for terminal in terminals)


def _finding(facts: Facts, fault: str, trace: Trace) -> Finding:
    cause = facts.sides.cause(trace.leads)
    low = facts.diagram.parts[trace.end.part]
    could_be_line = "volts" in low.kind.attributes and "volts" not in low.given
    return RULE.finding(
        facts,
        fault,
        facts.lead_span(cause),
        leads=(cause,),
        terminals=(trace.start, trace.end, *_left_empty(facts)),
        lead=facts.lead(cause),
        line=facts.show(trace.start),
        low=facts.show(trace.end),
        part=facts.diagram.parts[trace.start.part].name,
        hint=f", or type the volts of {low.name} if it is made for them" if could_be_line else "",
    )


def _left_empty(facts: Facts) -> tuple[Terminal, ...]:
    """The side of the one transformer that has no lead: its lead may be the one on the line."""
    transformers = [supply for supply in facts.supplies if supply.part.family == "transformer"]
    if len(transformers) != 1:
        return ()
    sides = (transformers[0].hot, transformers[0].common)
    return tuple(side for side in sides if not facts.is_wired(side))
