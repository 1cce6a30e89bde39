"""What a load takes goes back to the transformer by a lead, not through sheet metal.

With the secondary earthed a common landed on the cabinet works, until paint, rust or a loose screw
is in the way; and what comes back through the metal cannot be followed by anybody.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from wirecheck.circuit.nets import Element
from wirecheck.language.edit import move_end
from wirecheck.model.diagram import Part, Terminal
from wirecheck.model.finding import Breaks, Edit, Finding
from wirecheck.model.kind import LoadSpec
from wirecheck.rules.cautions import MOVING_LEADS
from wirecheck.rules.earthed_leads import metal, near_end, place
from wirecheck.rules.facts import Facts
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule
from wirecheck.rules.sides import Touch

_GOOD = """\
part xfmr is transformer
part stat is thermostat
part fan is relay
wire xfmr.R to stat.R
wire stat.W to fan.A
wire fan.B to xfmr.C
wire xfmr.C to earth: green
"""

#: Loads that are switched and take what must come back.
_TYPES: Final = frozenset({"coil", "operator", "motor"})

RULE = Rule(
    name="common-over-metal",
    title="The common of every 24 V load goes back by a lead",
    family="common",
    breaks=Breaks.WORKMANSHIP,
    why=(
        "Current that comes back through the cabinet depends on paint, rust and screws. It puts "
        "volts on the metal that the flame signal comes back by, and nobody finds the joint."
    ),
    blind_spots="An earth sign that stands for a common bus which was not drawn.",
    caution=MOVING_LEADS,
    sources=(PRACTICE,),
    faults={
        "no-lead-back": Fault(
            "{end} goes back to {common} only by way of {metal}: run a lead from it to {right}",
            "It works while the metal carries the current; with a bad joint {load} chatters or "
            "stays off.",
        ),
    },
    bad=(
        Example(_GOOD.replace("fan.B to xfmr.C", "fan.B to earth"), (("no-lead-back", "earth"),)),
    ),
    good=(Example(_GOOD),),
    stands_back_for=(
        "hot-and-common-exchanged",
        "control-common-missing",
        "burner-ground-on-wrong-terminal",
        "valve-leads-out-of-order",
        "damper-lead-missing",
    ),
)


def check(facts: Facts) -> Iterator[Finding]:
    """Find loads whose one side meets earth and no common but over it."""
    wired = facts.as_wired
    earthed = [
        supply.common for supply in wired.supplies if wired.net(supply.common) == wired.earth
    ]
    if not earthed:
        return
    told: set[int] = set()
    for load in _loads(wired):
        for end, other in ((load.b, load.a), (load.a, load.b)):
            conductor = wired.sides.conductor(end)
            touches = wired.sides.touched.get(conductor, [])
            if (
                _over_metal(wired, touches)
                and conductor not in told
                and _is_way_back(wired, end, other)
            ):
                told.add(conductor)
                yield _finding(facts, load, end, earthed[0], touches)


def _loads(facts: Facts) -> Iterator[Element]:
    for elements in facts.nets.elements_of.values():
        for load in elements:
            if isinstance(load.spec, LoadSpec) and load.spec.type in _TYPES:
                spec = facts.diagram.spec(load.a)
                if spec is not None and spec.circuit == "24V":
                    yield load


def _over_metal(facts: Facts, touches: list[Touch]) -> bool:
    """Whether it meets earth, and not by a control's own ground terminal: that is its common."""
    return bool(touches) and all(facts.role(touch.at) != "burner-ground" for touch in touches)


def _is_way_back(facts: Facts, end: Terminal, other: Terminal) -> bool:
    """Whether an end is on no supply but over earth, and the other end is not there as well."""
    sides = facts.sides
    on_supply = sides.hot_beyond(end) or sides.common_beyond(end)
    return facts.is_traced(end) and not on_supply and not facts.joined(end, other)


def _finding(
    facts: Facts, load: Element, end: Terminal, common: Terminal, touches: list[Touch]
) -> Finding:
    first = touches[0]
    right = _right(facts, load, end, common)
    return RULE.finding(
        facts,
        "no-lead-back",
        place(facts, first),
        leads=[touch.lead for touch in touches],
        terminals=(end, right),
        edits=_moved(facts, first, end, right),
        end=facts.show(end),
        load=load.part.name,
        common=facts.show(common),
        metal=metal(facts, first),
        right=facts.show(right),
    )


def _right(facts: Facts, load: Element, end: Terminal, common: Terminal) -> Terminal:
    """Where the lead belongs: at the control for its own valve, else at the transformer."""
    control = facts.once(_controls_of_valves).get(load.part.key)
    if control is not None and facts.role(end) == "operator-common":
        return control.with_role("valve-common")[0]
    return common


def _controls_of_valves(facts: Facts) -> dict[str, Part]:
    """The ignition control of each valve, by the valve's key."""
    found: dict[str, Part] = {}
    for control in facts.of("ignition-control"):
        valve = facts.companion(control, "gas-valve")
        if valve is not None:
            found.setdefault(valve.key, control)
    return found


def _moved(facts: Facts, touch: Touch, end: Terminal, right: Terminal) -> tuple[Edit, ...]:
    """The end that lands on metal, where it is the load's own lead."""
    lead = facts.diagram.leads[touch.lead]
    if near_end(facts, touch) != end or "touches" in lead.given:
        return ()
    edit = move_end(facts.diagram, touch.lead, facts.other_end(touch.lead, end), right)
    return (edit,) if edit else ()
