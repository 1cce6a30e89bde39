"""Slips of the pen: read as what stands nearest, told, and they cost nothing."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.sequence.heater import HEATER
from wirecheck import load_text
from wirecheck.grade.key import Key
from wirecheck.grade.record import Record
from wirecheck.grade.rubric import default_rubric
from wirecheck.grade.submission import Submission, grade, read

KEY = Key(load_text(HEATER).diagram, "key")


def graded(folder: Path, text: str) -> Record:
    path = folder / "a.wiring"
    path.write_text(text, encoding="utf-8")
    submission = Submission(str(path), "A", "a")
    return grade(submission, read(submission), [KEY], default_rubric()).record


@pytest.mark.parametrize(
    ("right", "typed"),
    [
        ("limit is high-limit", "limit is hihg-limit"),
        ("box.SENSE to", "box.SENS to"),
        ("wire box.GND to", "wire box.GND too"),
    ],
)
def test_a_slip_costs_nothing_and_is_told(tmp_path: Path, right: str, typed: str) -> None:
    assert right in HEATER
    record = graded(tmp_path, HEATER.replace(right, typed))
    assert (record.mark, record.status) == (100, "mended")
    assert record.problems


def test_what_cannot_be_read_costs_its_unit_and_is_not_called_unsafe(tmp_path: Path) -> None:
    record = graded(tmp_path, HEATER.replace("part limit is high-limit", "part limit is a thing"))
    assert record.status == "partly read"
    assert not record.unsafe
    assert 40 < (record.mark or 0) < 100


def test_a_mistake_beside_a_slip_still_counts(tmp_path: Path) -> None:
    text = HEATER.replace("box.SENSE to", "box.SENS to")
    record = graded(tmp_path, text.replace("wire box.GND to pilot.HOOD\n", ""))
    assert [each.circuit for each in record.lost] == ["burner ground"]
