"""Nothing joins the line-voltage circuit to the 24 V circuit: the transformer stands between them.

Line volts on a thermostat, a limit's 24 V side or a control destroy them, and put the line on bare
screws that people touch.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from wirecheck.language.edit import move_end, swap_ends
from wirecheck.model.diagram import Terminal
from wirecheck.model.finding import Breaks, Finding
from wirecheck.rules.facts import Facts
from wirecheck.rules.legs import Legs
from wirecheck.rules.line_voltage.cautions import LINE_VOLTAGE
from wirecheck.rules.line_voltage.closing import closing
from wirecheck.rules.line_voltage.crossings import Crossing, crossings
from wirecheck.rules.line_voltage.misplaced import misplaced
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule, Source

#: Families that many circuits have in common.
_SHARED: Final = frozenset({"mains", "strip"})

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
        "line-on-earthed": Fault(
            "the lead {lead} brings line voltage from {line} to {low} of the 24 V circuit, which "
            "is earthed: a dead short of the line; take it off{hint}",
            "The breaker trips {when}, or the thin lead to earth burns; with the earth open, "
            "every screw of the common is live.",
        ),
        "exchanged": Fault(
            "at {part} a lead of the line is on {low} and a lead of the 24 V circuit on {other}: "
            "exchange them",
            "Shock at bare screws; controls, thermostat and transformer are destroyed.",
        ),
        "24-on-line": Fault(
            "the lead {lead} feeds {line}, made for line voltage, from the 24 V circuit at {low}: "
            "switch it by a relay, and feed it from the line",
            "{part} does not run on 24 V, and loads the transformer down.",
            Breaks.OPERATION,
        ),
        "24-through-contact": Fault(
            "{contact} is fed from {low}, 24 V, and feeds {line}, made for line voltage: feed "
            "{contact} from {hot}",
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
            _GOOD.replace("fan to xfmr.C", "fan\nwire line.L1 to xfmr.C")
            + "wire fan.B to xfmr.C\nwire xfmr.C to earth: green\n",
            (("line-on-earthed", "line.L1 to xfmr.C"),),
        ),
        Example(
            _PUMP.replace("line.L1 to fan.COM", "line.L1 to fan.A").replace(
                "stat to fan to", "stat to fan.COM\nwire fan.B to"
            ),
            (("exchanged", "fan.A"),),
        ),
        Example(
            _PUMP.replace("line.N to pump.N: white", "xfmr.C to pump.N").replace(
                "line.L1 to fan.COM: black", "xfmr.R to fan.COM"
            ),
            (("24-on-line", "fan.NO to pump.L"),),
        ),
        Example(
            _PUMP.replace("line.L1 to fan.COM: black", "xfmr.R to fan.COM"),
            (("24-through-contact", "fan.COM"),),
        ),
    ),
    good=(Example(_GOOD), Example(_PUMP)),
)


def check(facts: Facts) -> Iterator[Finding]:
    """Find ways between the two circuits; those at one device are one finding."""
    for group in _at_one_device(facts, facts.once(crossings)):
        yield (_exchanged(facts, group) or _through_contact(facts, group) or _joined(facts, group))


def _at_one_device(facts: Facts, found: tuple[Crossing, ...]) -> list[list[Crossing]]:
    groups: list[list[Crossing]] = []
    group_of: dict[str, list[Crossing]] = {}
    for crossing in found:
        devices = [end.part for _number, end in _landings(facts, crossing)]
        group = next((group_of[device] for device in devices if device in group_of), None)
        if group is None:
            group = []
            groups.append(group)
        group.append(crossing)
        for device in devices:
            group_of.setdefault(device, group)
    return groups


def _landings(facts: Facts, crossing: Crossing) -> Iterator[tuple[int, Terminal]]:
    """Leads of a crossing with the devices they land on."""
    for number in crossing.trace.leads:
        for end in facts.diagram.leads[number][:2]:
            part = facts.part(end)
            if part is not None and part.family not in _SHARED:
                yield number, end


def _exchanged(facts: Facts, group: list[Crossing]) -> Finding | None:
    """A device where a lead of each circuit is on a terminal of the other."""
    landings = [landing for crossing in group for landing in _landings(facts, crossing)]
    for first, low in landings:
        for second, other in reversed(landings):
            at_one_device = low.part == other.part and first != second
            if (
                not at_one_device
                or _circuit(facts, low) != "24V"
                or _circuit(facts, other) == "24V"
            ):
                continue
            if _comes_from(facts, first, low, "line") and _comes_from(facts, second, other, "24V"):
                ends = (end for one in group for end in (one.trace.start, one.trace.end))
                return RULE.finding(
                    facts,
                    "exchanged",
                    facts.end_span(first, low),
                    leads=dict.fromkeys(
                        (first, second, *(n for c in group for n in c.trace.leads))
                    ),
                    terminals=dict.fromkeys((low, other, *ends)),
                    edits=swap_ends(facts.diagram, first, low, second, other),
                    part=facts.diagram.parts[low.part].name,
                    low=facts.show(low),
                    other=facts.show(other),
                )
    return None


def _comes_from(facts: Facts, number: int, end: Terminal, circuit: str) -> bool:
    """Whether a lead brings a circuit to its end from elsewhere than the device it lands on."""
    far = facts.other_end(number, end)

    def is_of_circuit(terminal: Terminal) -> bool:
        return terminal.part != end.part and _circuit(facts, terminal) == circuit

    way = facts.sides.search((far,), is_of_circuit, without=end)
    return far.part != end.part and way is not None


def _circuit(facts: Facts, end: Terminal) -> str:
    spec = facts.diagram.spec(end)
    return spec.circuit if spec else ""


def _through_contact(facts: Facts, group: list[Crossing]) -> Finding | None:
    """A load across the line but for the relay contact that feeds it, which is on 24 V."""
    trace = group[0].trace
    relays = [contact for contact in trace.contacts if contact.part.family == "relay"]
    hots = {source.a for source in facts.once(Legs).sources}
    if len(group) > 1 or len(trace.leads) != 2 or len(relays) != 1 or len(hots) != 1:
        return None
    number = trace.leads[-1]
    feed, load, hot = facts.other_end(number, trace.end), trace.start, hots.pop()
    if feed not in (relays[0].a, relays[0].b) or not _is_back_on_neutral(facts, load):
        return None
    edit = move_end(facts.diagram, number, trace.end, hot)
    alone = all(len(facts.nets.leads_at(end)) == 1 for end in (relays[0].a, relays[0].b, load))
    return RULE.finding(
        facts,
        "24-through-contact",
        facts.end_span(number, feed),
        leads=trace.leads,
        terminals=(feed, trace.end, load, *_left_empty(facts)),
        edits=(edit,) if edit and alone else (),
        contact=facts.show(feed),
        low=facts.show(trace.end),
        line=facts.show(load),
        hot=facts.show(hot),
        part=facts.diagram.parts[load.part].name,
    )


def _is_back_on_neutral(facts: Facts, load: Terminal) -> bool:
    """Whether the other end of the load at a terminal is on the neutral."""
    legs = facts.once(Legs)
    return any(
        legs.is_neutral(element.b if element.a == load else element.a)
        for element in facts.nets.elements_of[load.part]
        if element.type == "load" and load in (element.a, element.b)
    )


def _joined(facts: Facts, group: list[Crossing]) -> Finding:
    crossing = max(group, key=lambda one: not one.only_24_v)
    trace = crossing.trace
    cause = misplaced(facts, trace)
    cause = facts.sides.cause(trace.leads) if cause is None else cause
    low = facts.diagram.parts[trace.end.part]
    could_be_line = "volts" in low.kind.attributes and "volts" not in low.given
    others = (end for one in group for end in (one.trace.start, one.trace.end))
    is_short = facts.once(Legs).is_hot(trace.start) and bool(facts.sides.touches(trace.end))
    on_24 = "line-on-earthed" if is_short else "line-on-24"
    return RULE.finding(
        facts,
        "24-on-line" if crossing.only_24_v else on_24,
        facts.lead_span(cause),
        leads=dict.fromkeys((cause, *trace.leads, *(n for one in group for n in one.trace.leads))),
        terminals=dict.fromkeys(
            (*facts.diagram.leads[cause][:2], trace.start, trace.end, *others, *_left_empty(facts))
        ),
        lead=facts.lead(cause),
        line=facts.show(trace.start),
        low=facts.show(trace.end),
        part=facts.diagram.parts[trace.start.part].name,
        when=closing(trace.contacts),
        hint=f", or type the volts of {low.name} if it is made for them" if could_be_line else "",
    )


def _left_empty(facts: Facts) -> tuple[Terminal, ...]:
    """The side of the one transformer that has no lead: its lead may be the one on the line."""
    transformers = [supply for supply in facts.supplies if supply.part.family == "transformer"]
    if len(transformers) != 1:
        return ()
    sides = (transformers[0].hot, transformers[0].common)
    return tuple(side for side in sides if not facts.is_wired(side))
