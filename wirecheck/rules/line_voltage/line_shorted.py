"""The legs of the line meet each other, and earth, only through loads.

A lead from the hot leg to the neutral trips the breaker at once; a contact there trips it when it
closes.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations

from wirecheck.model.diagram import Terminal
from wirecheck.model.finding import Breaks, Finding
from wirecheck.rules.earthed_leads import metal, near_end, place
from wirecheck.rules.facts import Facts
from wirecheck.rules.legs import Legs
from wirecheck.rules.line_voltage.cautions import LINE_VOLTAGE
from wirecheck.rules.line_voltage.closing import closing
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule
from wirecheck.rules.sides import Touch

_GOOD = """\
part line is mains: 120 V
part disc is service-switch
part pump is circulator
wire line.L1 to disc to pump.L: black
wire line.N to pump.N: white
wire line.G to earth: green
"""

RULE = Rule(
    name="line-shorted",
    title="The legs of the line meet each other, and earth, only through loads",
    family="line voltage",
    breaks=Breaks.SAFETY,
    why="A short at line voltage burns contacts and leads before the breaker opens it.",
    blind_spots="Of several leads on the way from one leg to the other, it names the likeliest.",
    caution=LINE_VOLTAGE,
    sources=(PRACTICE,),
    faults={
        "joined": Fault(
            "the lead {lead} joins {hot} to {other} with no load between: take it off and land it "
            "where it belongs",
            "The breaker trips {when}.",
        ),
        "earthed": Fault(
            "the lead {lead}, hot at line voltage, is on {metal}: take it off, and renew it where "
            "it is chafed",
            "The breaker trips {when}; if the ground is open, the cabinet is live.",
        ),
        "neutral-earthed": Fault(
            "the neutral lead {lead} is on {metal}: take it off and land it on the neutral of the "
            "supply; neutral and earth meet in the service panel alone",
            "It runs, and the ground leads and the cabinet carry the current of the neutral.",
        ),
    },
    bad=(
        Example(
            _GOOD.replace("line.N to pump.N", "line.N to pump.L"), (("joined", "line.N to pump.L"),)
        ),
        Example(
            _GOOD.replace("to disc to", "to disc (touches earth) to"),
            (("earthed", "line.L1 to disc"),),
        ),
        Example(
            _GOOD.replace("line.N to pump.N", "earth to pump.N"), (("neutral-earthed", "earth"),)
        ),
    ),
    good=(Example(_GOOD),),
    stands_back_for=("line-and-24-volts-joined", "fan-limit-link-left-in"),
)


def check(facts: Facts) -> Iterator[Finding]:
    """Find ways from one leg to another and from a hot leg to earth that pass no load."""
    legs_of: dict[str, dict[Terminal, None]] = {}
    for source in facts.once(Legs).sources:
        legs_of.setdefault(source.part.key, {}).update({source.a: None, source.b: None})
    for legs in legs_of.values():
        for one, other in combinations(legs, 2):
            yield from _joined(facts, one, other)
    if legs_of:
        yield from _earthed(facts)


def _joined(facts: Facts, one: Terminal, other: Terminal) -> Iterator[Finding]:
    if not facts.sides.may_join(one, other):
        return
    trace = facts.sides.trace(one, other)
    if trace is not None and trace.leads and trace.can_close:
        cause = facts.sides.cause(trace.leads)
        yield RULE.finding(
            facts,
            "joined",
            facts.lead_span(cause),
            leads=dict.fromkeys((cause, *trace.leads)),
            terminals=dict.fromkeys((*facts.diagram.leads[cause][:2], one, other)),
            lead=facts.lead(cause),
            hot=facts.show(one),
            other=facts.show(other),
            when=closing(trace.contacts),
        )


def _earthed(facts: Facts) -> Iterator[Finding]:
    """Conductors of the line that meet earth, one finding each."""
    legs, neutrals = facts.once(Legs), facts.once(_neutrals)
    for touches in facts.sides.touched.values():
        end = near_end(facts, touches[0])
        at, cut_off = legs.at(end), neutrals.get(facts.sides.area(end), [])
        if legs.is_hot(end) or legs.is_neutral(end) or (cut_off and not at):
            start = at[0].terminal if at else cut_off[0]
            yield _on_metal(facts, touches, start, is_hot=legs.is_hot(end))


def _on_metal(facts: Facts, touches: list[Touch], start: Terminal, *, is_hot: bool) -> Finding:
    """Tell of the lead that brings a leg to earth: not of the ground lead it was landed on."""
    first = touches[0]
    end = near_end(facts, first)
    trace = facts.sides.trace(start, end)
    cause, at, on = first.lead, place(facts, first), metal(facts, first)
    if _circuit(facts, end) == "earth" and trace is not None and trace.leads:
        cause, at, on = trace.leads[-1], facts.end_span(trace.leads[-1], end), facts.show(end)
    return RULE.finding(
        facts,
        "earthed" if is_hot else "neutral-earthed",
        at,
        leads=dict.fromkeys((cause, *(touch.lead for touch in touches))),
        terminals=(end, start),
        lead=facts.lead(cause),
        metal=on,
        when=closing(trace.contacts if trace else ()),
    )


def _neutrals(facts: Facts) -> dict[int, list[Terminal]]:
    """The wired neutral terminals of what the line feeds, by area."""
    found: dict[int, list[Terminal]] = {}
    for part in facts.diagram.parts.values():
        for end in part.with_role("line-neutral", "load-neutral"):
            if _circuit(facts, end) == "line" and facts.is_wired(end):
                found.setdefault(facts.sides.area(end), []).append(end)
    return found


def _circuit(facts: Facts, end: Terminal) -> str:
    spec = facts.diagram.spec(end)
    return spec.circuit if spec else ""
