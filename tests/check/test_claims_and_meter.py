"""A claim reads what the meter sheet reads: the same volts and microamps, in the same phase."""

from __future__ import annotations

import math

import pytest

import wirecheck
from tests.contract.source import ROOT
from wirecheck.check.claims import Bench
from wirecheck.meter.reading import MeterSheet, Reading, Stage
from wirecheck.model.claim import Bounds, Claim
from wirecheck.model.diagram import Terminal
from wirecheck.model.text import Span

#: Those with one control: of several the sheet's stages are not at one time.
EXAMPLES = [
    file
    for file in sorted((ROOT / "examples").glob("*.wiring"))
    if file.read_text(encoding="utf-8").count("-ignition-control") == 1
]
PHASES = {
    Stage.IDLE: "idle",
    Stage.DAMPER_OPENING: "damper-opening",
    Stage.TRIAL: "trial",
    Stage.RUN: "run",
}


def readings(sheet: MeterSheet) -> list[tuple[str, Reading]]:
    """Each reading that a claim can make too, with its phase."""
    return [
        (PHASES[section.stage], reading)
        for section in sheet.sections
        if section.stage in PHASES
        for group in section.groups
        for reading in group.readings
        if reading.meter in ("volts AC", "microamps DC") and reading.black
    ]


def claim(phase: str, reading: Reading) -> Claim:
    """What a reading says, as a claim about its very value."""
    black = reading.black.terminal if reading.black else reading.red.terminal
    is_volts = reading.meter == "volts AC"
    value = reading.value if is_volts else reading.value * 1e-6
    bounds = Bounds(value * 0.999 - 1e-3, value * 1.001 + 1e-3, f"{value} V")
    ends: tuple[Terminal, Terminal] = (reading.red.terminal, black)
    span = Span(wirecheck.load_text("").diagram.source, 0, 0)
    return Claim(
        word="expect",
        about="volts" if is_volts else "amps",
        text=bounds.text,
        state=None,
        ends=ends,
        bounds=bounds,
        continuity=False,
        when=(),
        phase=phase,
        span=span,
        statement=span,
    )


@pytest.mark.parametrize("file", EXAMPLES, ids=lambda file: file.stem)
def test_a_claim_of_what_the_sheet_shows_is_proved(file: object) -> None:
    diagram = wirecheck.load(str(file)).diagram
    checked = wirecheck.check(diagram)
    bench = Bench(checked.nets)
    sheet = wirecheck.meter(checked)
    told = readings(sheet)
    for phase, reading in told:
        answer = bench.answer(claim(phase, reading))
        if answer.verdict == "never" and not sheet.is_good:
            continue  # the sheet says what belongs there
        assert answer.verdict == "proved", (phase, reading.red, reading.black, answer)
        unit = 1 if reading.meter == "volts AC" else 1e-6
        assert answer.value is not None
        assert math.isclose(answer.value, reading.value * unit, rel_tol=1e-6, abs_tol=1e-9)
    assert told or checked.findings
