"""A blower of two speeds is fed at one of them at a time.

High for cooling and low for heating are two windings on one shaft: the relay that feeds the one has
to open the other.
"""

from __future__ import annotations

from collections.abc import Iterator

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
        "looked at. Of several ways to a speed only the shortest."
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
        if joined or _can_both_be_fed(facts, *ends):
            yield RULE.finding(
                facts,
                "joined" if joined else "together",
                part.name_span,
                leads=[number for end in ends for number in facts.nets.leads_at(end)],
                terminals=ends,
                high=facts.show(ends[0]),
                low=facts.show(ends[1]),
                part=part.name,
            )


def _can_both_be_fed(facts: Facts, high: Terminal, low: Terminal) -> bool:
    hots = {leg.terminal for leg in facts.once(Legs).at(high) if leg.hot}
    ways = [facts.sides.search((end,), hots.__contains__) for end in (high, low)]
    if ways[0] is None or ways[1] is None:
        return False
    first, second = ways[0].contacts, ways[1].contacts
    commanded = [{id(c) for c in contacts if _is_commanded(c)} for contacts in (first, second)]
    apart = all(commanded) and not (commanded[0] <= commanded[1] or commanded[1] <= commanded[0])
    return not apart and _can_close((*first, *second))


def _is_commanded(contact: Element) -> bool:
    """Whether a relay or a thermostat decides, which another circuit may keep apart."""
    return _has_coil(contact) or contact.part.family == "thermostat"


def _has_coil(contact: Element) -> bool:
    return isinstance(contact.spec, SwitchSpec) and bool(contact.spec.coil)


def _can_close(contacts: tuple[Element, ...]) -> bool:
    """Whether no relay has to be pulled in and at rest at once."""
    positions: dict[str, set[str]] = {}
    for contact in contacts:
        if isinstance(contact.spec, SwitchSpec) and contact.spec.coil:
            positions.setdefault(contact.part.key, set()).add(contact.spec.normal)
    return all(len(normals) == 1 for normals in positions.values())
