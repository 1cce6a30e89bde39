"""``wirecheck grade``: its forms, its files, hostile submissions, and how it ends."""

import csv
import io
import json
from pathlib import Path

import pytest

from tests.cli.command_line import CommandLine
from tests.sequence.heater import HEATER

WRONG = HEATER.replace("wire box.GND to pilot.HOOD\n", "")
UNSAFE = f"{HEATER}jumper limit.1 to limit.2\n"


@pytest.fixture
def school(wirecheck: CommandLine) -> CommandLine:
    wirecheck.file("key.wiring", HEATER)
    for name, text in (("ada", HEATER), ("bea", WRONG), ("cem", UNSAFE)):
        wirecheck.file(f"class/{name}.wiring", text)
    return wirecheck


def test_a_class_is_marked_in_order(school: CommandLine) -> None:
    answer = school("grade", "--key", "key.wiring", "--sheets", "none", "--jobs", "2", "class")
    assert (answer.code, answer.err) == (1, "")
    assert answer.out.startswith(
        "class/ada.wiring: ada: 100 of 100\n"
        "class/bea.wiring: bea: 90 of 100\n"
        "class/cem.wiring: cem: 40 of 100, capped: unsafe\n"
    )
    assert "box.GND to pilot.HOOD not joined (burner ground)" in answer.out
    made = {path.name for path in (school.folder / "marks").iterdir()}
    assert made == {
        ".marked", "ada.txt", "bea.txt", "cem.txt", "gradebook.csv", "grades.json",
    }  # fmt: skip
    sheet = (school.folder / "marks" / "bea.txt").read_text(encoding="utf-8")
    assert "1. burner ground, -10.0 (line 4): no lead joins box.GND to pilot.HOOD" in sheet
    assert "the unit: box: pilot lights, spark goes on, main never" in sheet
    assert "Local codes, the appliance maker's instructions" in sheet


def test_one_drawing_is_told_in_full_and_full_marks_end_with_0(school: CommandLine) -> None:
    words = ("grade", "--key", "key.wiring", "--sheets", "none", "--jobs", "1")
    answer = school(*words, "class/ada.wiring")
    assert answer.code == 0
    assert "wired as the key is" in answer.out
    assert "lost points" not in answer.out


def test_sheets_and_summary_are_drawn_and_the_same_every_time(school: CommandLine) -> None:
    words = ("grade", "--key", "key.wiring", "--jobs", "1", "class/bea.wiring", "class/cem.wiring")
    for folder in ("one", "two"):
        assert school(*words, "--out", folder).code == 1
    names = sorted(path.name for path in (school.folder / "one").glob("*.svg"))
    assert names == [
        "bea-drawing.svg", "bea-mark-1.svg", "cem-drawing.svg", "cem-mark-1.svg", "summary.svg",
    ]  # fmt: skip
    for name in (*names, "gradebook.csv", "bea.txt"):
        one, two = (school.folder / folder / name for folder in ("one", "two"))
        assert one.read_bytes() == two.read_bytes()


def test_what_is_marked_already_is_not_marked_again(
    school: CommandLine, monkeypatch: pytest.MonkeyPatch
) -> None:
    words = ("grade", "--key", "key.wiring", "--sheets", "none", "--jobs", "1", "class")
    first = school(*words)
    marked = []
    with monkeypatch.context() as patched:
        patched.setattr(
            "wirecheck.report.grades.grade", lambda submission, *_: marked.append(submission)
        )
        assert school(*words).out == first.out
    assert not marked
    school.file("class/bea.wiring", HEATER)
    school.file("rubric.toml", school("grade", "--show-rubric").out.replace("cap = 40", "cap = 20"))
    again = school(*words, "--rubric", "rubric.toml")
    assert "bea: 100 of 100" in again.out
    assert "cem: 20 of 100" in again.out


def test_hostile_submissions_are_each_told(school: CommandLine) -> None:
    """None of them ends the batch, none is left out, none gets into a spreadsheet as a formula."""
    folder = school.folder / "class"
    odd = ("=cmd|' C'!A0.wiring", 'a "b" c.wiring', "two\nlines.wiring", "-x.txt")
    for name in odd:
        (folder / name).write_text(WRONG, encoding="utf-8")
    (folder / "binary.wiring").write_bytes(bytes(range(256)) * 40)
    (folder / "ring.wiring").write_text('include "ring.wiring"\n', encoding="utf-8")
    (folder / "empty.wiring").write_text("", encoding="utf-8")
    (folder / "essay.txt").write_text("I did not have the time.\n" * 50, encoding="utf-8")
    huge = "".join(f"part r{n} is relay\nwire r{n}.A to r{n}.B\n" for n in range(300))
    (folder / "huge.wiring").write_text(huge, encoding="utf-8")
    (folder / "half.wiring").write_text(f"{WRONG}wire box.XX to earth\n", encoding="utf-8")
    answer = school("grade", "--key", "key.wiring", "--sheets", "none", "--jobs", "1", "class")
    assert answer.code == 2
    document = json.loads((school.folder / "marks" / "grades.json").read_text(encoding="utf-8"))
    told = {Path(each["file"]).name: each for each in document["submissions"]}
    assert told.keys() == {path.name for path in folder.iterdir()}
    status = {name: each["status"] for name, each in told.items()}
    assert all(status[name] == "marked" and told[name]["mark"] == 90 for name in odd)
    for name in ("binary.wiring", "ring.wiring", "empty.wiring", "essay.txt"):
        assert status[name] == "unreadable"
        assert told[name]["mark"] is None
    assert told["essay.txt"]["problems"][0]["line"] == 1
    assert (status["huge.wiring"], status["half.wiring"]) == ("not marked", "partly read")
    assert told["half.wiring"]["problems"][0]["line"] == 13
    book = (school.folder / "marks" / "gradebook.csv").read_text(encoding="utf-8-sig")
    rows = list(csv.DictReader(io.StringIO(book)))
    assert len(rows) == len(told)
    assert not [
        cell for row in rows for cell in row.values() if cell.startswith(("=", "+", "-", "@"))
    ]
    assert all("\n" not in cell for row in rows for cell in row.values())


def test_a_key_with_a_finding_is_told_and_costs_nobody_anything(school: CommandLine) -> None:
    school.file("odd-key.wiring", WRONG)
    words = ("grade", "--key", "odd-key.wiring", "--sheets", "none", "--jobs", "1")
    answer = school(*words, "class/bea.wiring")
    assert answer.code == 0
    assert answer.err == (
        "odd-key.wiring: the key itself has 1 finding; wirecheck check tells them\n"
    )


def test_a_submission_stands_alone(school: CommandLine) -> None:
    """Neither a neighbour's drawing nor the key can be handed in by including it."""
    school.file("class/dan.wiring", 'include "ada.wiring"\n')
    words = ("grade", "--key", "key.wiring", "--sheets", "none", "--jobs", "1")
    answer = school(*words, "class/dan.wiring")
    assert answer.code == 2
    assert "class/dan.wiring:1:9: problem: " in answer.out
    assert "unreadable" in answer.out


def test_names_come_from_a_roster(school: CommandLine) -> None:
    school.file("roster.csv", "file,name\nbea.wiring,Beatrix Ó Dubhghaill\n")
    words = ("grade", "--key", "key.wiring", "--sheets", "none", "--jobs", "1")
    answer = school(*words, "--roster", "roster.csv", "--as", "csv", "class")
    rows = list(csv.DictReader(io.StringIO(answer.out)))
    assert [row["name"] for row in rows] == ["ada", "Beatrix Ó Dubhghaill", "cem"]
    assert [row["mark"] for row in rows] == ["100", "90", "40"]


@pytest.mark.parametrize(
    ("words", "told"),
    [
        (("--key", "nowhere.wiring", "class"), "nowhere.wiring"),
        (("--key", "odd.wiring", "class"), "odd.wiring:1:9"),
        (("--key", "key.wiring", "--rubric", "bad.toml", "class"), "bad.toml:1:1"),
        (("--key", "key.wiring", "--out", "key.wiring/x", "class"), "key.wiring"),
        (("class",), "--key"),
    ],
)
def test_a_call_that_cannot_be_used_ends_with_2(
    school: CommandLine, words: tuple[str, ...], told: str
) -> None:
    school.file("odd.wiring", "part box\n")
    school.file("bad.toml", "wieghts = 1\n")
    answer = school("grade", "--sheets", "none", "--jobs", "1", *words)
    assert answer.code == 2
    assert told in answer.out + answer.err
