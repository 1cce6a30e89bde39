"""The control's COM is on the common of the transformer, and its call comes from the hot side.

Inside the control COM is the burner ground.  With R on it and the common earthed, the secondary is
shorted through ground lead, hood and earth.  With nothing earthed it works, the wrong way round.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from wirecheck.language.edit import move_end, swap_ends
from wirecheck.model.diagram import Part, Terminal
from wirecheck.model.finding import Breaks, Edit, Finding
from wirecheck.rules.cautions import MOVING_LEADS
from wirecheck.rules.facts import Facts, Supply
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule, Source

_GOOD = """\
part xfmr is transformer
part stat is thermostat
part box is pilot-ignition-control
part pilot is pilot-burner: two-rod
wire xfmr.R to stat to box.TH
wire xfmr.C to box.COM
wire xfmr.C to earth: green
wire box.GND to pilot.HOOD: green
wire box.SPARK to pilot.SPARK: ignition-cable
wire box.SENSE to pilot.ROD
"""
_EXCHANGED = _GOOD.replace("xfmr.R to stat", "xfmr.C to stat").replace(
    "xfmr.C to box.COM", "xfmr.R to box.COM"
)
_CALL = _GOOD.replace("stat to box.TH", "stat to box.COM").replace(
    "xfmr.C to box.COM", "xfmr.C to box.TH"
)
_ON_HOT = _GOOD.replace("xfmr.C to box.COM", "xfmr.R to box.COM")
_NO_EARTH = ("wire xfmr.C to earth: green\n", "")
_INSULATED = ("pilot-burner: two-rod", "pilot-burner: two-rod, bond none")

RULE = Rule(
    name="hot-and-common-exchanged",
    title="COM of the control is on the common of the transformer, and the call on its hot side",
    family="common",
    breaks=Breaks.SAFETY,
    why=(
        "COM and burner ground are one inside the control, and the burner is on earthed metal. A "
        "hot COM is therefore a hot burner: a dead short where the common is earthed."
    ),
    blind_spots=(
        "Labels R and C that do not say what the windings are do no harm by themselves; what "
        "counts is which side is earthed and switched."
    ),
    caution=MOVING_LEADS,
    sources=(PRACTICE, Source("NFPA 79", "standard", "9.1.4")),
    faults={
        "short": Fault(
            "{com} is on {hot} and the call at {call} comes from {common}: hot and common are "
            "exchanged; exchange the two leads at the transformer",
            "A dead short through burner ground, hood and earth: the fuse blows or the "
            "transformer burns out.",
        ),
        "earthed-call": Fault(
            "{com} is on {hot} and the call at {call} comes from {common}, which is earthed: hot "
            "and common are exchanged; exchange the two leads at the transformer",
            "It works, with limits and thermostat in the earthed side: one earth fault past them "
            "fires the burner without them.",
        ),
        "floating": Fault(
            "{com} is on {hot} and the call at {call} comes from {common}: hot and common are "
            "exchanged; exchange the two leads at the transformer",
            "It works; {hot} is the earthed side now, and the next one to land a lead will be "
            "misled.",
            Breaks.WORKMANSHIP,
        ),
        "call-lead-short": Fault(
            "{com} has the call and {call} has {common}: the call lead and the common are "
            "exchanged at the control; exchange them back",
            "Idle until the thermostat calls, then a dead short through burner ground, "
            "hood and earth.",
        ),
        "call-lead-floating": Fault(
            "{com} has the call and {call} has {common}: the call lead and the common are "
            "exchanged at the control; exchange them back",
            "It works, and puts the burner's metal on the hot side during a call.",
            Breaks.WORKMANSHIP,
        ),
        "com-on-hot-short": Fault(
            "{com} is on the hot side, {hot}, as the call is: move its lead to {common}",
            "A dead short through burner ground, hood and earth: the fuse blows or the "
            "transformer burns out.",
        ),
        "com-on-hot-dead": Fault(
            "{com} is on the hot side, {hot}, as the call is: move its lead to {common}",
            "Dead: no volts across the control.{metal}",
            Breaks.OPERATION,
        ),
    },
    bad=(
        Example(_EXCHANGED, (("short", "box.COM"),)),
        Example(_EXCHANGED.replace(*_INSULATED), (("earthed-call", "box.COM"),)),
        Example(_EXCHANGED.replace(*_NO_EARTH), (("floating", "box.COM"),)),
        Example(_CALL, (("call-lead-short", "box.COM"),)),
        Example(_CALL.replace(*_NO_EARTH), (("call-lead-floating", "box.COM"),)),
        Example(_ON_HOT, (("com-on-hot-short", "box.COM"),)),
        Example(_ON_HOT.replace(*_INSULATED), (("com-on-hot-dead", "box.COM"),)),
    ),
    good=(Example(_GOOD), Example(_GOOD.replace(*_NO_EARTH))),
    stands_back_for=("line-and-24-volts-joined",),
)


class _Landing(NamedTuple):
    """How one control lies on one supply."""

    control: Part
    com: Terminal
    call: Terminal
    supply: Supply


def check(facts: Facts) -> Iterator[Finding]:
    """Find controls whose COM is on the hot side of a supply, at once or through contacts."""
    sides = facts.sides
    for control in facts.of("ignition-control"):
        com, call = facts.terminal(control, "control-common"), facts.terminal(control, "call")
        if com is None or call is None or sides.common_on(com):
            continue
        for supply in sides.hot_beyond(com)[:1]:
            landing = _Landing(control, com, call, supply)
            if sides.same(com, supply.hot):
                exchanged = sides.may_join(supply.common, call)
                yield (_exchanged if exchanged else _on_hot)(facts, landing)
            elif sides.same(call, supply.common):
                yield _call_lead(facts, landing)
            else:
                yield _on_hot(facts, landing)


def _is_shorted(facts: Facts, landing: _Landing) -> bool:
    """Whether earth brings the hot COM back to the common."""
    com, common = landing.com, landing.supply.common
    return facts.joined(com, common) or (facts.is_grounded(com) and facts.is_grounded(common))


def _exchanged(facts: Facts, landing: _Landing) -> Finding:
    supply, edits = landing.supply, tuple[Edit, ...]()
    out = facts.sides.path(supply.hot, landing.com)
    back = facts.sides.trace(supply.common, landing.call)
    if out and back and out.leads and back.leads and not facts.sides.is_switched(supply.hot):
        ends = (out.leads[0], supply.hot, back.leads[0], supply.common)
        edits = swap_ends(facts.diagram, *ends)
    fault = "earthed-call" if facts.is_grounded(supply.common) else "floating"
    return _finding(facts, landing, "short" if _is_shorted(facts, landing) else fault, edits)


def _call_lead(facts: Facts, landing: _Landing) -> Finding:
    at_com, at_call = (facts.nets.leads_at(end) for end in (landing.com, landing.call))
    edits: tuple[Edit, ...] = ()
    if len(at_com) == len(at_call) == 1:
        edits = swap_ends(facts.diagram, at_com[0], landing.com, at_call[0], landing.call)
    shorted = _is_shorted(facts, landing)
    return _finding(facts, landing, f"call-lead-{'short' if shorted else 'floating'}", edits)


def _on_hot(facts: Facts, landing: _Landing) -> Finding:
    out = facts.sides.trace(landing.supply.hot, landing.com)
    edit = None
    if out is not None and len(out.leads) == 1 and not out.contacts:
        edit = move_end(facts.diagram, out.leads[0], landing.supply.hot, landing.supply.common)
    shorted = _is_shorted(facts, landing)
    edits = (edit,) if edit else ()
    return _finding(facts, landing, f"com-on-hot-{'short' if shorted else 'dead'}", edits)


def _finding(facts: Facts, landing: _Landing, fault: str, edits: tuple[Edit, ...]) -> Finding:
    com, call, supply = landing.com, landing.call, landing.supply
    on_metal = facts.as_wired.net(com) in facts.as_wired.once(_metal_nets)
    return RULE.finding(
        facts,
        fault,
        facts.place(com),
        leads=(*facts.nets.leads_at(com), *facts.nets.leads_at(call)),
        terminals=(com, call, supply.hot, supply.common),
        edits=edits,
        com=facts.show(com),
        call=facts.show(call),
        hot=facts.show(supply.hot),
        common=facts.show(supply.common),
        metal=" Its burner's metal is on the hot side." if on_metal else "",
    )


def _metal_nets(facts: Facts) -> frozenset[int]:
    """Nets with the metal of a burner on them, by a burner ground or another lead."""
    burners = facts.of("burner")
    return frozenset(facts.net(end) for each in burners for end in each.with_role("burner-metal"))
