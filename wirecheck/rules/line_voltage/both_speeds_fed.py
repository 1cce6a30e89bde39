"""A blower of two speeds is fed at one of them at a time.

High for cooling and low for heating are two windings on one shaft: the relay that feeds the one has
to open the other.
"""

from __future__ import annotations

from collections.abc import Iterator

import networkx as nx

from wirecheck.circuit.nets import Element
from wirecheck.model.diagram import Terminal
from wirecheck.model.finding import Breaks, Finding
from wirecheck.model.kind import SwitchSpec
from wirecheck.rules.facts import Facts
from wirecheck.rules.legs import Legs
from wirecheck.rules.line_voltage.cautions import LINE_VOLTAGE
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule

_GOOD = """\
part line is mains: 120 V
part plenum is fan-limit-control: link removed
part call is thermostat: volts 120 V
part cool is relay: 120 V
part air is blower
wire line.L1 to call to cool to line.N
wire line.L1 to cool.COM: black
wire cool.NO to air.HI: black
wire cool.NC to plenum.FAN-1..FAN-2 to air.LO: red
wire line.N to air.N: white
wire line.G to earth: green
"""
_ALONE = """\
part line is mains: 120 V
part air is blower
wire line.L1 to air.HI: black
wire line.L1 to air.LO: red
wire line.N to air.N: white
wire line.G to earth: green
"""

RULE = Rule(
    name="both-speeds-fed",
    title="A blower of two speeds is fed at one of them at a time",
    family="line voltage",
    breaks=Breaks.OPERATION,
    why="Two windings fed at once work against each other: the motor overheats and burns out.",
    blind_spots=(
        "Ways that different relays or thermostats open: whether these ever call together is not "
        "looked at."
    ),
    caution=LINE_VOLTAGE,
    sources=(PRACTICE,),
    faults={
        "joined": Fault(
            "{high} and {low} are one conductor, and {part} is made to be fed at one of them: take "
            "the lead off the speed that is not wanted, and cap it",
            "Both windings of {part} work against each other: it hums, overheats and burns out.",
        ),
        "together": Fault(
            "{high} and {low} can be fed at the same time: feed {low} over a resting contact of "
            "the relay that feeds {high}, or the other way round",
            "With both windings of {part} fed it hums, overheats and burns out.",
        ),
    },
    bad=(
        Example(_ALONE, (("joined", "air"),)),
        Example(
            _GOOD.replace("wire cool.NC to plenum", "wire line.L1 to plenum"),
            (("together", "air"),),
        ),
    ),
    good=(Example(_GOOD),),
)


def check(facts: Facts) -> Iterator[Finding]:
    """Find loads with two hot terminals that are joined, or fed by ways that do not exclude."""
    for part in facts.of("load"):
        ends = [end for end in part.with_role("load-hot") if facts.is_wired(end)]
        if len(ends) != 2:
            continue
        joined = facts.sides.same(*ends)
        ways = _ways(facts, *ends)
        if joined or _can_both_be_fed(facts, ways, *ends):
            on_ways = [end for contact in ways for end in (contact.a, contact.b)]
            leads = [n for end in (*ends, *on_ways) for n in facts.nets.leads_at(end)]
            yield RULE.finding(
                facts,
                "joined" if joined else "together",
                part.name_span,
                leads=dict.fromkeys(leads),
                terminals=dict.fromkeys((*ends, *on_ways)),
                high=facts.show(ends[0]),
                low=facts.show(ends[1]),
                part=part.name,
            )


def _ways(facts: Facts, *ends: Terminal) -> list[Element]:
    """The contacts on the ways from the line to some terminals."""
    found: dict[tuple[Terminal, Terminal], Element] = {}
    for end in ends:
        for leg in facts.once(Legs).at(end):
            if leg.hot:
                way = facts.conduction.way(facts.net(leg.terminal), facts.net(end))
                found.update({(contact.a, contact.b): contact for contact in way.contacts})
    return list(found.values())


def _can_both_be_fed(facts: Facts, ways: list[Element], high: Terminal, low: Terminal) -> bool:
    """Whether both are fed with all that decides at rest, or with one of it acting.

    What two relays or two thermostats open together, another circuit may keep apart.
    """
    hots = {facts.net(leg.terminal) for leg in facts.once(Legs).at(high) if leg.hot}
    movers = dict.fromkeys(contact.part.key for contact in ways if _is_commanded(contact))
    for acting in (None, *movers):
        joined: nx.utils.UnionFind[int] = nx.utils.UnionFind()
        for contact in ways:
            if not _is_commanded(contact) or _is_closed(contact, contact.part.key == acting):
                joined.union(contact.net_a, contact.net_b)
        at = [joined[facts.net(end)] for end in (high, low)]
        if any(at == [joined[hot], joined[hot]] for hot in hots):
            return True
    return False


def _is_commanded(contact: Element) -> bool:
    """Whether a relay or a thermostat decides, which another circuit may keep apart."""
    has_coil = isinstance(contact.spec, SwitchSpec) and bool(contact.spec.coil)
    return has_coil or contact.part.family == "thermostat"


def _is_closed(contact: Element, acting: bool) -> bool:  # noqa: FBT001
    """Whether the contact of a relay or thermostat is closed while that acts, or at rest."""
    is_open = isinstance(contact.spec, SwitchSpec) and contact.spec.normal == "open"
    return is_open == acting
