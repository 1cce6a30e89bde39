"""Meter sheets of the heaters that the tests measure, and their readings by place."""

from __future__ import annotations

from wirecheck import check, load_text, meter
from wirecheck.meter.reading import MeterSheet, Reading, Section, Stage


def sheet(text: str) -> MeterSheet:
    """The sheet of a text that has no problem."""
    built = load_text(text, "unit.wiring")
    assert not built.problems, [problem.message for problem in built.problems]
    return meter(check(built.diagram))


def section(of: MeterSheet, stage: Stage) -> Section | None:
    """One stage of a sheet, if it has it."""
    return next((each for each in of.sections if each.stage is stage), None)


def readings(of: MeterSheet, stage: Stage) -> list[Reading]:
    """The readings of a stage."""
    found = section(of, stage)
    return [reading for group in found.groups for reading in group.readings] if found else []


def places(of: MeterSheet, stage: Stage) -> list[str]:
    """Where the probes of a stage go, each as ``red / black``."""
    return [place(reading) for reading in readings(of, stage)]


def place(reading: Reading) -> str:
    """Where the probes go."""
    return " / ".join([reading.red.shown, *([reading.black.shown] if reading.black else [])])


def at(of: MeterSheet, stage: Stage, where: str) -> Reading:
    """The one reading of a stage at a place."""
    (found,) = [reading for reading in readings(of, stage) if place(reading) == where]
    return found


def notes(of: MeterSheet, stage: Stage) -> str:
    """What is noted of a stage."""
    found = section(of, stage)
    return " ".join(note for group in found.groups for note in group.notes) if found else ""


def means(reading: Reading, other: str) -> str:
    """What another reading means."""
    return next(wrong.means for wrong in reading.wrong if wrong.reading == other)
