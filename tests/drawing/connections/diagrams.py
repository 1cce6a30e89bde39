"""Wirings to draw: the usual small one, a furnace with a damper, and large ones made at random."""

import random

from wirecheck import load_text
from wirecheck.check.engine import Checked
from wirecheck.circuit.nets import Nets
from wirecheck.model.diagram import Diagram
from wirecheck.model.finding import Breaks, Finding

HEATER = """
diagram "Greenhouse heater 3, as found"
part line is mains: 120 V
part xfmr is transformer: primary 120 V, secondary 24 V, rating 40 VA
part limit is high-limit
part stat is thermostat: anticipator 0.75 A
part box is pilot-ignition-control: pilot two-rod, trial 90 s, wait 5 min
part valve is gas-valve-3-wire: pilot 0.2 A, main 0.4 A
part pilot is pilot-burner: two-rod
wire line.L1 to xfmr.L1: black, 14 AWG
wire line.N to xfmr.N: white, 14 AWG
wire line.G to earth: green
wire xfmr.R to limit to stat to box.TH: red, 18 AWG, 12 ft
wire xfmr.C to box.COM: blue, 18 AWG
wire xfmr.C to earth: green
plug box to valve: PV, MV, VC to C
wire box.SPARK to pilot.SPARK: ignition-cable, 24 in
wire box.SENSE to pilot.ROD
wire box.GND to pilot.HOOD: green
"""

FURNACE = """
part line is mains: 120 V
part sw is service-switch
part fuse is fuse: 5 A
part xfmr is transformer: primary 120 V, secondary 24 V, rating 40 VA
part flc is fan-limit-control
part blower is blower
part fanrelay is relay
part rollout is rollout-switch
part spill is spill-switch
part stat is thermostat
part box is pilot-ignition-control: pilot two-rod
part damper is vent-damper
part valve is gas-valve-3-wire
part pilot is pilot-burner: two-rod
splice s1: wire-nut
splice s2
cable run: 18/5, 40 ft
wire line.L1 to sw to s1: black, 14 AWG
wire line.N to s2: white, 14 AWG
wire line.G to earth: green
wire s1 to xfmr.L1: black
wire s2 to xfmr.N: white
wire s1 to fanrelay.COM: black, 14 AWG
wire fanrelay.NO to blower.HI: black, 14 AWG
wire s2 to blower.N: white, 14 AWG
wire xfmr.R to fuse to rollout to spill to flc.LIMIT-1: red, 18 AWG
wire flc.LIMIT-2 to stat.R: red, in run
wire stat.W to box.TH: white/red, in run
wire stat.G to fanrelay.A: green, in run
wire stat.Y to open: yellow, in run
wire fanrelay.B to xfmr.C: blue
wire xfmr.C to box.COM: blue, 18 AWG
wire xfmr.C to earth: green/yellow
plug box to valve: PV, MV, VC to C
plug box to damper: D-HOT to HOT, D-CALL to CALL, D-PROVED to PROVED, D-COM to COM
wire box.SPARK to pilot.SPARK: ignition-cable, 24 in
wire box.SENSE to pilot.ROD: orange
wire box.GND to unknown
jumper box.24V to box.TH: broken
"""

_KINDS = (
    "high-limit",
    "thermostat",
    "relay",
    "zone-valve",
    "circulator",
    "pressure-switch",
    "transformer",
    "pilot-ignition-control",
    "gas-valve-3-wire",
    "pilot-burner",
    "terminal-strip",
    "vent-damper",
    "lamp",
)
_LOOKS = ("red, 18 AWG", "white", "green/yellow", "pink, 0.75 mm2", "tan", "black", "broken")


def read(text: str) -> Checked:
    """Read a text; what could not be read is left out, as everywhere. No rule is run."""
    diagram = load_text(text, "test.wiring").diagram
    return Checked(diagram, Nets(diagram), (), (), ())


def finding(checked: Checked, *, leads: tuple[int, ...] = (), at: tuple[str, ...] = ()) -> Finding:
    """A finding that speaks of these leads and terminals (as ``box.GND``)."""
    terminals = {checked.diagram.show(terminal): terminal for terminal in checked.nets.net_of}
    return Finding(
        rule="made-up",
        fault="made-up",
        breaks=Breaks.SAFETY,
        also_breaks=(),
        message=f"something about leads {leads} and terminals {at}",
        span=checked.diagram.parts["box"].kind_span,
        seen_at_unit="",
        leads=tuple(checked.diagram.lead_name(checked.diagram.leads[lead]) for lead in leads),
        lead_numbers=leads,
        terminals=at,
        at_terminals=tuple(terminals[name] for name in at),
        caution="",
        source="",
    )


def miswired(text: str, seed: int) -> Checked:
    """Take leads out at random and put others in anywhere."""
    chance = random.Random(seed)  # noqa: S311 - a test's own dice
    lines = text.splitlines()
    ends = _ends(load_text(text, "test.wiring").diagram)
    for _ in range(chance.choice((2, 6, 15))):
        typed = [at for at, line in enumerate(lines) if line.startswith(("wire", "plug"))]
        if typed and chance.random() < 0.4:
            lines.pop(chance.choice(typed))
        else:
            word = chance.choice(("wire", "wire", "jumper"))
            lines.append(
                f"{word} {chance.choice(ends)} to {chance.choice(ends)}: {chance.choice(_LOOKS)}"
            )
    return read("\n".join(lines))


def at_random(parts: int, leads: int, seed: int) -> Checked:
    """Make up so many devices with leads between any two terminals."""
    chance = random.Random(seed)  # noqa: S311 - a test's own dice
    lines = [f"part p{number} is {chance.choice(_KINDS)}" for number in range(parts)]
    ends = _ends(load_text("\n".join(lines), "test.wiring").diagram)
    lines += [
        f"wire {chance.choice(ends)} to {chance.choice(ends)}: {chance.choice(_LOOKS)}"
        for _ in range(leads)
    ]
    return read("\n".join(lines))


def _ends(diagram: Diagram) -> list[str]:
    named = [
        diagram.show(part.terminal(name))
        for part in diagram.parts.values()
        for name, spec in part.structure.terminals.items()
        if not spec.inner
    ]
    strips = [f"{p.name}.{n}" for p in diagram.parts.values() if p.kind.numbered for n in (1, 2, 3)]
    return [
        *named,
        *strips,
        *(s.name for s in diagram.splices.values()),
        "earth",
        "open",
        "unknown",
    ]
