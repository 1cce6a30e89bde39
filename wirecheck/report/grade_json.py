"""The marks of a class as JSON: the form is published as ``shared/schemas/grade.json``."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from wirecheck.grade.classroom import Classroom
from wirecheck.grade.record import Record
from wirecheck.report.check_json import SCHEMA

Json = dict[str, Any]


def grades_json(found: Classroom, keys: Sequence[str], pictures: Sequence[str]) -> Json:
    """Return the document of a class.

    Args:
        found: the class.
        keys: names of the keys.
        pictures: paths of the summary sheets.
    """
    return {
        "schema": SCHEMA,
        "keys": list(keys),
        "submissions": [_record(each) for each in found.records],
        "summary": {
            "submissions": len(found.records),
            "marked": len(found.marks),
            "capped": found.capped,
            "mean": _rounded(found.average),
            "median": _rounded(found.middle),
            "out_of": found.out_of,
            "marks_by_tenth": list(found.steps),
            "right_by_circuit": {each.circuit: round(each.share, 4) for each in found.circuits},
            "commonest_mistakes": [each._asdict() for each in found.common],
            "pictures": list(pictures),
        },
    }


def _rounded(value: float | None) -> float | None:
    return None if value is None else round(value, 2)


def _record(record: Record) -> Json:
    return {
        "file": record.file,
        "name": record.name,
        "status": record.status,
        "reason": record.reason,
        "problems": [each._asdict() for each in record.problems],
        "key": record.key or None,
        "same_as_key": record.how or None,
        "mark": record.mark,
        "out_of": record.out_of,
        "if_it_were_safe": record.before_cap,
        "unsafe": list(record.unsafe),
        "circuits": [
            {**each._asdict(), "points": round(each.points, 2), "out_of": round(each.out_of, 2)}
            for each in record.circuits
        ],
        "lost": [
            {
                **each._asdict(),
                "points": round(each.points, 2),
                "leads": list(each.leads),
                "places": list(each.places),
            }
            for each in record.lost
        ],
        "does": list(record.does),
        "key_does": list(record.key_does),
        "remarks": list(record.remarks),
        "sheets": list(record.sheets),
    }
