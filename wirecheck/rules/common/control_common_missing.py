"""A lead of its own brings the common from the transformer to the control.

Without it an earthed unit runs on: the current finds its way back through burner ground, hood and
cabinet, and nobody sees that the ground lead has become a power lead.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from wirecheck.language.edit import add_lead, move_end, swap_ends
from wirecheck.model.diagram import EARTH, Part, Terminal
from wirecheck.model.finding import Breaks, Edit, Finding
from wirecheck.rules.cautions import MOVING_LEADS
from wirecheck.rules.facts import Facts, Supply
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule

_GOOD = """\
part xfmr is transformer
part stat is thermostat
part box is pilot-ignition-control
part pilot is pilot-burner: two-rod
wire xfmr.R to stat to box.TH
wire xfmr.C to earth: green
wire box.GND to pilot.HOOD: green
wire box.SPARK to pilot.SPARK: ignition-cable
wire box.SENSE to pilot.ROD
"""
_COMMON = "wire xfmr.C to box.COM\n"

RULE = Rule(
    name="control-common-missing",
    title="A lead brings the common from the transformer to the control",
    family="common",
    breaks=Breaks.SAFETY,
    why=(
        "Earthed, the unit runs on through the burner ground: when that lead is taken off or rusts "
        "through, the burner's metal stands at 24 V, the flame signal fails, and whoever opens "
        "the ground breaks a loaded circuit. Not earthed, the control is dead."
    ),
    blind_spots="A common that comes back by sheet metal on purpose.",
    caution=MOVING_LEADS,
    sources=(PRACTICE,),
    faults={
        "through-ground": Fault(
            "no lead brings {common} to {com}: {mend}; now the burner ground carries the "
            "control's whole current",
            "Where the burner is bolted to clean metal it runs and hides the mistake: the current "
            "comes back through burner ground, hood and earth. Where rust parts them it is dead.",
        ),
        "dead": Fault(
            "no lead brings {common} to {com}: {mend}",
            "Dead: the control gets no power.",
            Breaks.OPERATION,
        ),
        "on-burner-ground": Fault(
            "the lead {lead} brings the common to the burner ground {ground}: move it to {com} "
            "and leave {ground} to the burner",
            "It works; the next one who takes the burner ground off opens the common.",
            Breaks.WORKMANSHIP,
        ),
    },
    bad=(
        Example(_GOOD, (("through-ground", "box"),)),
        Example(
            _GOOD.replace("wire xfmr.C to earth", "wire xfmr.C to spare").replace(
                "green\nwire box.GND", "blue\nwire box.GND"
            )
            + "splice spare\n",
            (("dead", "box"),),
        ),
        Example(
            _GOOD + _COMMON.replace("box.COM", "box.GND"),
            (("on-burner-ground", "box.GND"),),
        ),
    ),
    good=(Example(_GOOD + _COMMON),),
    stands_back_for=(
        "secondary-shorted",
        "secondary-shorted-on-call",
        "line-and-24-volts-joined",
    ),
    covers=True,
)


class _Stray(NamedTuple):
    """A lead that brings the common to another terminal of the control."""

    lead: int
    at: Terminal


def check(facts: Facts) -> Iterator[Finding]:
    """Find controls that a supply's hot side reaches and its common does not."""
    for control in facts.of("ignition-control"):
        com = facts.terminal(control, "control-common")
        supply = _hot_from(facts, control)
        if com is not None and supply is not None and not _has_common(facts, com, supply):
            ground = _on_burner_ground(facts, control, supply)
            stray = ground or _on_another_terminal(facts, control, supply)
            fault = "through-ground" if _earth_closes(facts, com, supply) else "dead"
            yield _finding(facts, "on-burner-ground" if ground else fault, com, supply, stray)


def _finding(
    facts: Facts, fault: str, com: Terminal, supply: Supply, stray: _Stray | None
) -> Finding:
    leads = dict.fromkeys(facts.nets.leads_at(com))
    at, mend = facts.place(com), "run one"
    terminals = [com, supply.common]
    if stray is not None:
        leads[stray.lead] = None
        terminals.append(stray.at)
        mend = f"move the lead {facts.lead(stray.lead)} to {facts.show(com)}"
        if fault == "on-burner-ground":
            at = facts.end_span(stray.lead, stray.at)
    return RULE.finding(
        facts,
        fault,
        at,
        leads=leads,
        terminals=terminals,
        edits=_edits(facts, com, supply, stray),
        com=facts.show(com),
        common=facts.show(supply.common),
        mend=mend,
        lead=facts.lead(stray.lead) if stray else "",
        ground=facts.show(stray.at) if stray else "",
    )


def _edits(facts: Facts, com: Terminal, supply: Supply, stray: _Stray | None) -> tuple[Edit, ...]:
    """Bring the stray lead to COM, in exchange for what is there; or run a lead."""
    at_com = facts.nets.leads_at(com)
    if stray is None:
        return () if at_com else (add_lead(facts.diagram, supply.common, com, "blue"),)
    if len(at_com) == 1 and facts.role(stray.at) != "burner-ground":
        return swap_ends(facts.diagram, stray.lead, stray.at, at_com[0], com)
    moved = move_end(facts.diagram, stray.lead, stray.at, com)
    return (moved,) if moved else ()


def _hot_from(facts: Facts, control: Part) -> Supply | None:
    """The supply whose hot side reaches the control."""
    for terminal in control.with_role("call", "control-hot", "damper-proved"):
        for supply in facts.sides.hot_beyond(terminal):
            if supply.part.family != "boiler-call":
                return supply
    return None


def _has_common(facts: Facts, com: Terminal, supply: Supply) -> bool:
    """Whether leads, contacts or one earth stud bring some common to COM, or may do so."""
    sides = facts.sides
    if sides.common_beyond(com) or sides.hot_beyond(com):
        return True
    studs = [any(touch.at == EARTH for touch in sides.touches(end)) for end in (com, supply.common)]
    return all(studs) or not (facts.is_traced(com) and facts.is_traced(supply.common))


def _earth_closes(facts: Facts, com: Terminal, supply: Supply) -> bool:
    joined = facts.joined(com, supply.common)
    return joined or (facts.is_grounded(com) and facts.is_grounded(supply.common))


def _on_burner_ground(facts: Facts, control: Part, supply: Supply) -> _Stray | None:
    for touch in facts.sides.touches(supply.common):
        if touch.at in control.with_role("burner-ground"):
            return _Stray(touch.lead, touch.at)
    return None


def _on_another_terminal(facts: Facts, control: Part, supply: Supply) -> _Stray | None:
    for name in control.structure.terminals:
        terminal = control.terminal(name)
        leads = facts.nets.leads_at(terminal)
        if leads and supply in facts.sides.common_on(terminal):
            return _Stray(leads[0], terminal)
    return None
