"""One side of the 24 V secondary is earthed, at the transformer or over the burner ground.

A floating circuit works.  Its first earth fault changes nothing that anybody would see; the second
one blows a fuse or jumps a switch.
"""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.language.edit import add_lead
from wirecheck.model.diagram import EARTH
from wirecheck.model.finding import Breaks, Finding
from wirecheck.model.kind import SwitchSpec
from wirecheck.rules.facts import Facts, Supply
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule, Source

_BAD = """\
part line is mains: 120 V
part xfmr is transformer: primary 120 V
part limit is high-limit
part stat is thermostat
part fan is relay
wire line.L1 to xfmr.L1: black
wire line.N to xfmr.N: white
wire line.G to earth: green
wire xfmr.R to limit to stat to fan to xfmr.C
"""

RULE = Rule(
    name="secondary-not-earthed",
    title="The common side of the 24 V secondary is earthed",
    family="supply",
    breaks=Breaks.WORKMANSHIP,
    why=(
        "With the common earthed the first earth fault in a call lead blows the fuse and is found. "
        "Without, it waits unseen for the second."
    ),
    blind_spots=(
        "Not required at 24 V from a grounded supply of 120 V, and not asked for where neither an "
        "ignition control nor a safety hangs on the transformer. An earth made by a mounting screw "
        "or inside a device is not drawn and not seen."
    ),
    caution="",
    sources=(
        PRACTICE,
        Source("29 CFR 1926.404", "law", "(f)(1)(iii), which asks for it above 150 V to ground"),
    ),
    faults={
        "floating": Fault(
            "neither side of {supply} reaches earth, by a lead or by a burner ground: earth "
            "{common} beside the transformer, unless its maker's instructions say otherwise",
            "It works; the first earth fault goes unnoticed.",
        ),
    },
    bad=(Example(_BAD, (("floating", "xfmr.C"),)),),
    good=(Example(_BAD + "wire xfmr.C to earth: green\n"),),
    stands_back_for=(
        "hot-and-common-exchanged",
        "control-common-missing",
        "secondary-shorted",
        "burner-ground-missing",
        "line-and-24-volts-joined",
        # An earth would bypass what stands in the common: that is to be moved first.
        "safety-in-common",
        "call-in-common",
    ),
)


def check(facts: Facts) -> Iterator[Finding]:
    """Find transformers whose secondary reaches earth nowhere, one finding a circuit."""
    facts = facts.as_wired
    if not _earth_is_drawn(facts):
        return
    open_ended, guarding = _with_open_grounds(facts), _guarding_areas(facts)
    told: set[int] = set()
    for supply in facts.supplies:
        net = facts.net(supply.common)
        if supply.part.family == "transformer" and _floats(facts, supply) and net not in told:
            told.add(net)
            areas = {facts.sides.area(supply.hot), facts.sides.area(supply.common)}
            if net not in open_ended and not areas.isdisjoint(guarding):
                yield RULE.finding(
                    facts,
                    "floating",
                    facts.place(supply.common),
                    leads=facts.nets.leads_at(supply.common)[:1],
                    terminals=(supply.common,),
                    edits=(add_lead(facts.diagram, supply.common, EARTH, "green"),),
                    supply=supply.part.name,
                    common=facts.show(supply.common),
                )


def _earth_is_drawn(facts: Facts) -> bool:
    """Whether the diagram shows the earthing at all: a sketch may leave it out."""
    return (
        facts.is_wired(EARTH)
        or any(True for _ in facts.of("mains"))
        or any("bond" in burner.given for burner in facts.of("burner"))
    )


def _floats(facts: Facts, supply: Supply) -> bool:
    sides = (supply.hot, supply.common)
    return all(
        facts.is_wired(side) and facts.is_traced(side) and not facts.is_grounded(side)
        for side in sides
    )


def _guarding_areas(facts: Facts) -> set[int]:
    """Areas with a safety or an ignition control: there an earth fault unseen can bypass one."""
    controls = (
        end
        for control in facts.of("ignition-control")
        for end in control.with_role("control-common")
    )
    safeties = (
        contact.a
        for elements in facts.nets.elements_of.values()
        for contact in elements
        if isinstance(contact.spec, SwitchSpec) and contact.spec.safety
    )
    return {facts.sides.area(end) for end in (*controls, *safeties)}


def _with_open_grounds(facts: Facts) -> set[int]:
    """Nets of controls whose burner ground was not drawn: it may be what earths them."""
    return {
        facts.net(ground)
        for control in facts.of("ignition-control")
        for ground in control.with_role("burner-ground")
        if not facts.is_wired(ground)
    }
