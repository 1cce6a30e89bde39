"""The meter's volts against ngspice, and against the solver for many states."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.circuit.spice import needs_ngspice, node_volts
from tests.contract.source import ROOT
from wirecheck import load
from wirecheck.circuit.elimination import Elimination
from wirecheck.circuit.instrument import Voltmeter
from wirecheck.circuit.metering import meter_volts
from wirecheck.circuit.netlist import netlist
from wirecheck.circuit.nets import Nets
from wirecheck.model.diagram import EARTH, Terminal
from wirecheck.sequence.calls import Runs
from wirecheck.sequence.control import Phase
from wirecheck.sequence.trace import Rest

EXAMPLES = ("furnace-room-heater", "boiler-with-vent-damper", "make-up-air-heater")


class Measured:
    """An example in its stages, and where it is read in each."""

    def __init__(self, name: str) -> None:
        self.nets = Nets(load(ROOT / "examples" / f"{name}.wiring").diagram)
        self.meter = Voltmeter(self.nets)

    def moments(self) -> list[Rest]:
        runs = Runs(self.nets)
        (control,) = runs.controls
        found = [
            runs.dry.idle(),
            runs.in_phase(control, Phase.TRIAL),
            runs.in_phase(control, Phase.WAIT, Phase.LOCKOUT),
            runs.running(control),
            runs.opened(self.nets.diagram.parts["limit"], ""),
        ]
        moments = [rest for rest in found if rest]
        assert len(moments) == len(found)
        return moments

    def pairs(self) -> list[tuple[Terminal, Terminal]]:
        xfmr, stat, limit, box = (
            self.nets.diagram.parts[name] for name in ("xfmr", "stat", "limit", "box")
        )
        return [
            (xfmr.terminal("R"), xfmr.terminal("C")),
            (xfmr.terminal("R"), EARTH),
            (stat.terminal("R"), stat.terminal("W")),
            (limit.terminal("1"), limit.terminal("2")),
            (box.terminal("TH"), box.terminal("COM")),
        ]


@needs_ngspice
@pytest.mark.parametrize("name", EXAMPLES)
def test_readings_agree_with_ngspice(name: str, tmp_path: Path) -> None:
    unit = Measured(name)
    read = [(rest.closed, a, b) for rest in unit.moments() for a, b in unit.pairs()]
    cases = [unit.meter.case(*each) for each in read]
    solver = Elimination(unit.meter.circuit)
    islands = [solver.solve(case).island for case in cases]
    solved = node_volts(unit.meter.circuit, cases, islands, tmp_path)
    for (closed, a, b), volts in zip(read, solved, strict=True):
        node_a, node_b = unit.meter.nodes(a, b)
        expected = abs(volts[node_a] - volts[node_b])
        assert unit.meter.volts(closed, a, b) == pytest.approx(expected, rel=1e-5, abs=1e-4)


@pytest.mark.parametrize("name", EXAMPLES)
def test_readings_agree_with_those_of_many_states(name: str) -> None:
    unit = Measured(name)
    net = netlist(unit.nets)
    for rest in unit.moments():
        for a, b in unit.pairs():
            bare = unit.meter.case(rest.closed, a, b)._replace(added=())
            (expected,) = meter_volts(net, [bare], [(a, b)])[0]
            assert unit.meter.volts(rest.closed, a, b) == pytest.approx(expected, abs=1e-6)
