"""A batch ends, in order, whatever becomes of one of its submissions."""

from __future__ import annotations

import os

import pytest

from wirecheck.grade.batch import batch
from wirecheck.grade.record import Record, as_data, from_data
from wirecheck.grade.submission import Submission, submissions


def work(made: str, submission: Submission) -> Record:
    """Do what the submission's name says."""
    if submission.name == "fails":
        raise ValueError("no such thing")
    if submission.name == "goes on":
        while True:
            pass
    if submission.name == "dies":
        os._exit(1)
    return Record(*submission, "marked", made)


def made() -> str:
    """What a process is made ready with."""
    return "ready"


@pytest.mark.parametrize("processes", [1, 2])
def test_every_submission_is_told_in_order(processes: int) -> None:
    names = ["a", "fails", "b", "goes on", "c"]
    meant = [Submission(name, name, name) for name in names]
    records = list(batch(work, made, meant, processes=processes, seconds=0.3))
    assert [each.file for each in records] == names
    assert [each.status for each in records] == [
        "marked", "not marked", "marked", "not marked", "marked",
    ]  # fmt: skip
    assert records[0].reason == "ready"
    assert records[1].reason == "an error of ours: ValueError: no such thing"
    assert records[3].reason == "it was given up after 0.3 s"


def test_one_that_ends_its_process_takes_no_other_with_it() -> None:
    meant = [Submission(name, name, name) for name in ("a", "dies", "b", "c")]
    records = list(batch(work, made, meant, processes=2, seconds=5))
    assert [each.status for each in records] == ["marked", "not marked", "marked", "marked"]
    assert records[1].reason == "the process that marked it has ended"


def test_files_made_for_submissions_do_not_meet() -> None:
    files = ["x/heater.wiring", "y/Heater.wiring", "=cmd|'x'.wiring", "\n.wiring", "gradebook.csv"]
    stems = [each.stem for each in submissions(files, lambda file: file)]
    assert stems == ["heater", "Heater~2", "cmd-x", "submission", "gradebook-submission"]


def test_a_record_reads_back() -> None:
    record = Record("a", "A", "a", "marked", unsafe=("x",), does=("runs",), sheets=("a.txt",))
    assert from_data(as_data(record)) == record
