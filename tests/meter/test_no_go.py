"""No probe where one must not go: over all examples, and over heaters wired at random."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import given, settings

from tests.contract.source import ROOT
from tests.sequence.test_rewired import rewired
from wirecheck import check, load, load_text, meter
from wirecheck.circuit.nets import Nets
from wirecheck.meter.reading import MeterSheet, Probe, Reading, Stage
from wirecheck.model.diagram import EARTH, Diagram, Terminal
from wirecheck.model.finding import Breaks

EXAMPLES = sorted((ROOT / "examples").glob("*.wiring"))
VOLTS = ("volts AC",)


class Hazards:
    """What the sheet of one diagram must keep away from, worked out from the text alone."""

    def __init__(self, diagram: Diagram) -> None:
        self.diagram = diagram
        self.nets = Nets(diagram)
        parts = diagram.parts.values()
        self.spark = {end for part in parts for end in part.with_role("spark", "electrode")}
        self.flame = {end for part in parts for end in part.with_role("sense", "rod")}
        grounds = [end for part in parts for end in part.with_role("burner-ground")]
        self.grounded = {self.nets.net(end) for end in grounds}

    def joined(self, terminal: Terminal, others: set[Terminal]) -> bool:
        """Whether it is one conductor with one of them, and not with a control's ground."""
        net = self.nets.net(terminal)
        if terminal in others:
            return True
        return net not in self.grounded and net in {self.nets.net(other) for other in others}

    def on_the_spark_lead(self, probe: Probe) -> bool:
        if probe.lead is None:
            return self.joined(probe.terminal, self.spark)
        lead = self.diagram.leads[probe.lead]
        return any(self.joined(end, self.spark) for end in (lead.a, lead.b))

    def is_line(self, terminal: Terminal) -> bool:
        spec = self.diagram.spec(terminal)
        return spec is not None and spec.circuit == "line"


def assert_nothing_forbidden(sheet: MeterSheet) -> None:
    hazards = Hazards(sheet.checked.diagram)
    for section in sheet.sections:
        for group in section.groups:
            for reading in group.readings:
                assert_allowed(reading, section.stage, hazards)
    if any(finding.breaks is Breaks.SAFETY for finding in sheet.mistakes):
        assert not [
            reading
            for section in sheet.sections
            if section.stage is Stage.RUN
            for group in section.groups
            for reading in group.readings
        ]


def assert_allowed(reading: Reading, stage: Stage, hazards: Hazards) -> None:
    probes = [each for each in (reading.red, reading.black) if each]
    for probe in probes:
        assert not hazards.on_the_spark_lead(probe), reading
        spec = hazards.diagram.spec(probe.terminal)
        assert probe.terminal == EARTH or (spec is not None and not spec.inner), reading
    ends = [each.terminal for each in probes]
    if reading.meter in VOLTS:
        assert not [end for end in ends if hazards.joined(end, hazards.flame)], reading
    if reading.meter == "ohms":
        assert stage is Stage.POWER_OFF, reading
    if reading.meter in ("amps AC", "microamps DC"):
        assert stage in (Stage.RUN, Stage.CALL), reading
        assert reading.in_series or reading.black is None, reading
    if reading.meter == "microamps DC":
        assert_two_rods(ends, hazards)
    if any(hazards.is_line(end) for end in ends):
        assert reading.line_voltage, reading


def assert_two_rods(ends: list[Terminal], hazards: Hazards) -> None:
    """The meter is in the lead of SENSE, which is apart from the spark coil."""
    (sense,) = set(ends)
    control = hazards.diagram.parts[sense.part]
    assert sense in control.with_role("sense")
    assert control.values.get("sense-link") != "fitted"
    assert not hazards.joined(sense, hazards.spark)


@pytest.mark.parametrize("file", EXAMPLES, ids=lambda file: file.stem)
def test_no_example_has_a_forbidden_reading(file: Path) -> None:
    assert_nothing_forbidden(meter(check(load(file).diagram)))


@settings(max_examples=120, deadline=None, derandomize=True)
@given(rewired())
def test_no_wiring_at_all_has_a_forbidden_reading(text: str) -> None:
    sheet = meter(check(load_text(text).diagram))
    assert_nothing_forbidden(sheet)
    assert [each.step for each in sheet.readings] == list(range(1, len(sheet.readings) + 1))
