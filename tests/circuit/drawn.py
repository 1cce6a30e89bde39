"""Diagrams as text, their circuits, and what is measured on them in the tests."""

from __future__ import annotations

from typing import NamedTuple

import wirecheck
from wirecheck.circuit.elimination import Elimination, Rest
from wirecheck.circuit.netlist import Netlist, netlist
from wirecheck.circuit.nets import Nets
from wirecheck.circuit.numbered import Branch, Case
from wirecheck.circuit.stages import Stage, each_safety_open, positions
from wirecheck.model.diagram import Diagram, Terminal

#: A burner without its valve leads: its sources behind nothing but the usual impedances.
UNIT = """\
part line is mains: 120 V
part xfmr is transformer: primary 120 V, secondary 24 V, rating 40 VA
part stat is thermostat
part box is pilot-ignition-control: two-rod
part valve is gas-valve-3-wire: pilot 0.2 A, main 0.4 A
part pilot is pilot-burner: two-rod
wire line.L1 to xfmr.L1
wire line.N to xfmr.N
wire line.G to earth
wire xfmr.R to stat to box.TH
wire xfmr.C to box.COM
wire xfmr.C to earth
wire box.SPARK to pilot.SPARK
wire box.SENSE to pilot.ROD
wire box.GND to pilot.HOOD
"""


class Drawn(NamedTuple):
    """A diagram and its circuit."""

    diagram: Diagram
    nets: Nets
    net: Netlist

    def case(
        self, stage: Stage = Stage.RUN, *, bonds: bool = True, closed: dict[str, bool] | None = None
    ) -> Case:
        """A stage; ``closed`` puts the contacts of some parts otherwise."""
        flags = [
            (closed or {}).get(key.part, flag)
            for key, flag in zip(
                self.net.switches, positions(self.nets, self.net.switches, stage), strict=True
            )
        ]
        return Case((*flags, *[bonds] * len(self.net.bonds)))

    def cases(self) -> list[Case]:
        """Every stage, and the run with each safety open."""
        bonds = (True,) * len(self.net.bonds)
        cases = [self.case(stage) for stage in Stage]
        opened = each_safety_open(self.nets, self.net.switches)
        return cases + [Case((*flags, *bonds)) for _key, flags in opened]

    def solved(self, case: Case) -> Rest:
        """The solved case."""
        return Elimination(self.net.circuit).solve(case)

    def volts(self, case: Case, a: str, b: str) -> float:
        """Between two terminals written ``part.terminal``; 0 where no conductor joins them."""
        volts = self.solved(case).across(self.node(a), self.node(b))
        return abs(volts) if volts is not None else 0.0

    def node(self, terminal: str) -> int:
        """Of a terminal written ``part.terminal``, or ``earth``."""
        part, _dot, name = terminal.partition(".")
        return self.net.node_of[Terminal(part, name)]

    def fault(self, a: str, b: str, ohms: float = 1e-3) -> Branch:
        """Two terminals that touch."""
        return Branch(self.node(a), self.node(b), ohms)

    def secondary_amps(self, case: Case, part: str = "xfmr") -> float:
        """Through the secondary of a transformer."""
        key = next(key for key in self.net.series if key.part == part)
        return abs(self.solved(case).winding_amps[self.net.series[key]])


def drawn(text: str, *, temperature_c: float = 20.0) -> Drawn:
    """The circuit of a diagram that has no problem."""
    loaded = wirecheck.load_text(text, "test.wiring")
    assert loaded.problems == (), [problem.message for problem in loaded.problems]
    nets = Nets(loaded.diagram)
    return Drawn(loaded.diagram, nets, netlist(nets, temperature_c=temperature_c))
