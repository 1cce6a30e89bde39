"""What single faults come to, as JSON and as CSV."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from wirecheck.faults.campaign import Campaign, Tried
from wirecheck.report.check_json import SCHEMA, place_json, problem_json
from wirecheck.report.faults_files import FaultsFile
from wirecheck.report.spreadsheet import plain_cell

COLUMNS = ("file", "line", "column", "class", "noticed", "fault", "at", "reason")


def faults_json(files: Sequence[FaultsFile]) -> dict[str, Any]:
    """Return the document of a run."""
    return {
        "schema": SCHEMA,
        "files": [
            {
                "file": file.file,
                "problems": [problem_json(problem) for problem in file.problems],
                "counted": _counted(file.campaign),
                "already": list(file.campaign.already) if file.campaign else [],
                "faults": [_fault(each) for each in file.campaign.tried] if file.campaign else [],
            }
            for file in files
        ],
    }


def _counted(campaign: Campaign | None) -> dict[str, int]:
    return {str(each): count for each, count in campaign.counted.items()} if campaign else {}


def _fault(tried: Tried) -> dict[str, Any]:
    place = place_json(tried.fault.span)
    return {
        "fault": tried.fault.kind,
        "at": tried.fault.name,
        "file": place["file"],
        "line": place["line"],
        "column": place["column"],
        "class": str(tried.effect.severity),
        "noticed": tried.effect.detected,
        "reason": tried.effect.reason,
    }


def faults_csv(files: Sequence[FaultsFile]) -> str:
    """Return one table of all files: a header, then a line for each fault, the worst first.

    A cell that a spreadsheet would take for a formula begins with an apostrophe.
    """
    import csv
    import io

    text = io.StringIO()
    writer = csv.writer(text, lineterminator="\n")
    writer.writerow(COLUMNS)
    for file in files:
        for each in file.campaign.tried if file.campaign else ():
            row = _fault(each)
            writer.writerow([plain_cell(str(row[column])) for column in COLUMNS])
    return text.getvalue()
