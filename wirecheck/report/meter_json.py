"""Meter sheets as JSON: the form is published as ``shared/schemas/meter.json``."""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import Any

from wirecheck.meter.reading import UNITS, Group, MeterSheet, Probe, Reading, Section
from wirecheck.report.check_json import SCHEMA, finding_json, problem_json
from wirecheck.report.meter_files import MeterFile, summary
from wirecheck.report.meter_text import LINE_VOLTAGE

Json = dict[str, Any]


def meters_json(files: Sequence[MeterFile]) -> Json:
    """Return the document of a run."""
    return {
        "schema": SCHEMA,
        "files": [_file(file) for file in files],
        "summary": {
            "files": len(files),
            "readings": sum(file.readings for file in files),
            "problems": sum(len(file.problems) for file in files),
            "sentence": summary(files),
        },
    }


def _file(file: MeterFile) -> Json:
    return {
        "file": file.file,
        "variant": file.variant,
        "problems": [problem_json(problem) for problem in file.problems],
        "sheet": _sheet(file.sheet) if file.sheet else None,
        "pictures": list(file.pictures),
    }


def _sheet(sheet: MeterSheet) -> Json:
    return {
        "title": sheet.checked.diagram.title,
        "cautions": list(sheet.cautions),
        "values_are": "good-unit" if sheet.is_good else "as-drawn",
        "findings": [finding_json(finding) for finding in sheet.mistakes],
        "dangers": list(sheet.dangers),
        "as_drawn": list(sheet.as_drawn),
        "remarks": list(sheet.remarks),
        "stages": [_section(section) for section in sheet.sections],
    }


def _section(section: Section) -> Json:
    return {
        "stage": section.stage.value,
        "title": section.title,
        "set_up": list(section.set_up),
        "groups": [_group(group) for group in section.groups],
    }


def _group(group: Group) -> Json:
    return {
        "control": group.name or None,
        "notes": list(group.notes),
        "readings": [_reading(reading) for reading in group.readings],
    }


def _reading(reading: Reading) -> Json:
    """A reading; its value is null where nothing conducts."""
    return {
        "step": reading.step,
        "meter": reading.meter,
        "red": _probe(reading.red),
        "black": _probe(reading.black) if reading.black else None,
        "in_series": reading.in_series,
        "first": reading.how,
        "value": None if math.isinf(reading.value) else reading.value,
        "unit": UNITS[reading.meter],
        "shows": reading.good,
        "otherwise": [{"reading": wrong.reading, "means": wrong.means} for wrong in reading.wrong],
        "caution": LINE_VOLTAGE if reading.line_voltage else "",
    }


def _probe(probe: Probe) -> Json:
    return {"place": probe.shown, "lead_taken_off": probe.lead is not None}
