"""The gradebook as comma-separated values (RFC 4180), one line a submission.

No cell begins as a formula of a spreadsheet does, whatever a file or an apprentice is called.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from wirecheck.compare.circuits import Circuit
from wirecheck.grade.points import WORKMANSHIP
from wirecheck.grade.record import Record
from wirecheck.report.spreadsheet import csv_table

CIRCUITS = (*(circuit.value for circuit in Circuit), WORKMANSHIP)
HEADER = (
    "name",
    "file",
    "status",
    "mark",
    "out of",
    "if it were safe",
    "unsafe",
    "key",
    *CIRCUITS,
    "mistakes",
    "dearest mistake",
    "problems",
)


def gradebook_csv(records: Sequence[Record]) -> str:
    """Return the gradebook, in the order of the submissions."""
    return csv_table(HEADER, (dict(_cells(record)) for record in records))


def _cells(record: Record) -> Iterator[tuple[str, str]]:
    yield "name", record.name
    yield "file", record.file
    yield "status", record.status
    yield "unsafe", "; ".join(record.unsafe)
    yield "key", record.key
    yield (
        "problems",
        record.reason or "; ".join(f"line {each.line}: {each.message}" for each in record.problems),
    )
    if record.mark is not None and record.before_cap is not None:
        yield "mark", f"{record.mark:g}"
        yield "out of", f"{record.out_of:g}"
        yield "if it were safe", f"{record.before_cap:g}"
        yield "mistakes", str(len(record.lost))
        dearest = max(record.lost, key=lambda each: each.points, default=None)
        yield "dearest mistake", dearest.reason if dearest else ""
    for each in record.circuits:
        yield each.circuit, f"{each.points:.1f}"
