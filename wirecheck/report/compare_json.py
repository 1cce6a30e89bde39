"""A comparison as JSON: the form is published as ``shared/schemas/compare.json``."""

from __future__ import annotations

from typing import Any

from wirecheck.compare.result import Comparison, Difference, Seen
from wirecheck.model.diagram import Diagram
from wirecheck.report.check_json import SCHEMA, place_json, problem_json
from wirecheck.report.compared import ComparedFiles, verdict

Json = dict[str, Any]


def compare_json(files: ComparedFiles) -> Json:
    """Return the document of a comparison."""
    found = files.comparison
    return {
        "schema": SCHEMA,
        "first": files.first,
        "second": files.second,
        "problems": [problem_json(problem) for problem in files.problems],
        "same": found.same if found else None,
        "how": (found.how or None) if found else None,
        "parts": _parts(found) if found else [],
        "differences": [difference_json(each, found) for each in found.differences]
        if found
        else [],
        "seen": [_seen(each) for each in found.seen] if found else [],
        "does_first": list(found.does_first) if found else [],
        "does_second": list(found.does_second) if found else [],
        "remarks": list(found.remarks) if found else [],
        "sentence": verdict(files),
    }


def _parts(found: Comparison) -> list[Json]:
    return [
        {
            "first": found.first.parts[pair.one].name,
            "second": found.second.parts[pair.other].name,
            "by": pair.how,
        }
        for pair in found.pairs
    ]


def difference_json(difference: Difference, found: Comparison) -> Json:
    """Return one difference, with the leads it is about."""
    return {
        "circuit": difference.circuit.value,
        "message": difference.message,
        "first_leads": leads_json(found.first, difference.first_leads),
        "second_leads": leads_json(found.second, difference.leads),
    }


def leads_json(diagram: Diagram, numbers: tuple[int, ...]) -> list[Json]:
    """Return leads of a diagram by their numbers, each with its place."""
    leads = [diagram.leads[number] for number in numbers]
    return [{"lead": diagram.lead_name(each), **place_json(each.span)} for each in leads]


def _seen(seen: Seen) -> Json:
    return {"when": seen.when, "first": seen.first, "second": seen.second}
