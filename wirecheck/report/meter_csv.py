"""Meter sheets as plain comma-separated values (RFC 4180), one line a caution or a reading."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from wirecheck.meter.reading import UNITS, Group, MeterSheet, Reading, Section
from wirecheck.report.meter_files import MeterFile
from wirecheck.report.meter_text import LINE_VOLTAGE, not_good
from wirecheck.report.spreadsheet import csv_table

HEADER = (
    "file",
    "row",
    "step",
    "stage",
    "at",
    "meter",
    "red",
    "black",
    "in_series",
    "first",
    "shows",
    "value",
    "unit",
    "otherwise",
    "caution",
)

_Row = dict[str, str]


def meters_csv(files: Sequence[MeterFile]) -> str:
    """Return the table of a run; cautions and what is wrong come before the readings."""
    return csv_table(HEADER, (row for file in files for row in _rows(file)))


def _rows(file: MeterFile) -> Iterator[_Row]:
    named = {"file": file.file}
    for problem in file.problems:
        yield {**named, "row": "problem", "first": f"{problem.span}: {problem.message}"}
    if file.sheet is None:
        return
    for row in _head(file.sheet):
        yield {**named, **row}
    for section in file.sheet.sections:
        for row in _section(section):
            yield {**named, "stage": section.stage.value, **row}


def _head(sheet: MeterSheet) -> Iterator[_Row]:
    for caution in sheet.cautions:
        yield {"row": "caution", "caution": caution}
    if not sheet.is_good:
        yield {"row": "caution", "caution": not_good(sheet)}
    for finding in sheet.mistakes:
        yield {"row": "finding", "first": f"{finding.span}: {finding.breaks}: {finding.message}"}
    for danger in sheet.dangers:
        yield {"row": "danger", "first": danger}
    for remark in (*sheet.as_drawn, *sheet.remarks):
        yield {"row": "note", "first": remark}


def _section(section: Section) -> Iterator[_Row]:
    for line in section.set_up:
        yield {"row": "note", "first": line}
    for group in section.groups:
        for note in group.notes:
            yield {"row": "note", "at": group.name, "first": note}
        for reading in group.readings:
            yield _reading(reading, group)


def _reading(reading: Reading, group: Group) -> _Row:
    return {
        "row": "reading",
        "step": str(reading.step),
        "at": group.name,
        "meter": reading.meter,
        "red": reading.red.shown,
        "black": reading.black.shown if reading.black else "",
        "in_series": "yes" if reading.in_series else "",
        "first": reading.how,
        "shows": reading.good,
        "value": f"{reading.value:.6g}",
        "unit": UNITS[reading.meter],
        "otherwise": "; ".join(f"{wrong.reading}: {wrong.means}" for wrong in reading.wrong),
        "caution": LINE_VOLTAGE if reading.line_voltage else "",
    }
