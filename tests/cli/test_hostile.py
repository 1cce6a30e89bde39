"""Whatever a person types into a diagram comes out of every format as text, and as nothing else."""

from __future__ import annotations

import csv
import io
import json
import re
from xml.etree import ElementTree as ET

import pytest

import wirecheck as wirecheck_api
from tests.cli.command_line import Answer, CommandLine
from tests.report.hostile import TEXTS, diagram

#: What may act in a terminal: controls but the line end, and marks of reading direction.
ACTS = re.compile("[\x00-\x09\x0b-\x1f\x7f-\x9f\u200e\u200f\u2028\u2029\u202a-\u202e\u2066-\u2069]")
FORMULA = re.compile(r"[=+\-@\t\r]")

#: Those that may act in a terminal or in a table.
ACTING = tuple(text for text in TEXTS if ACTS.search(text) or FORMULA.match(text))

#: Calls on one file that print text.
IN_TEXT = (
    ("check", "--assumed"),
    ("sequence",),
    ("meter",),
    ("lists",),
    ("format",),
)


@pytest.fixture(params=ACTING)
def hostile(wirecheck: CommandLine, request: pytest.FixtureRequest) -> CommandLine:
    """A folder with a diagram that is full of one such text."""
    wirecheck.file("a.wiring", diagram(request.param))
    return wirecheck


def printed(answer: Answer) -> str:
    """The output of a call that did not fail by an error of ours."""
    assert answer.code in (0, 1, 2), answer.err
    return answer.out


def test_nothing_acts_in_a_terminal(hostile: CommandLine) -> None:
    for call in IN_TEXT:
        answer = hostile(*call, "a.wiring")
        if call != ("format",):  # which gives the text back as it was typed
            assert not ACTS.search(printed(answer)), call
        assert not ACTS.search(answer.err), call


@pytest.mark.parametrize("text", TEXTS)
def test_json_gives_back_what_was_typed(wirecheck: CommandLine, text: str) -> None:
    wirecheck.file("a.wiring", diagram(text))
    out = printed(wirecheck("check", "--as", "json", "a.wiring"))
    assert out.isascii()
    read = wirecheck_api.load_text(diagram(text), "a.wiring").diagram
    assert json.loads(out)["files"][0]["title"] == read.title


def test_no_cell_of_a_table_is_a_formula(hostile: CommandLine) -> None:
    for call in (("check", "--faults"), ("meter",), ("lists",)):
        out = printed(hostile(*call, "--as", "csv", "a.wiring"))
        cells = [cell for row in csv.reader(io.StringIO(out)) for cell in row]
        assert not [cell for cell in cells if FORMULA.match(cell) and not _is_number(cell)], call


def test_a_baseline_knows_hostile_names_again(hostile: CommandLine) -> None:
    known = ("check", "--baseline", "known.json")
    found = json.loads(printed(hostile("check", "--as", "json", "a.wiring")))["files"]
    hostile(*known, "--write-baseline", "a.wiring")
    answer = hostile(*known, "--as", "json", "a.wiring")
    entries = json.loads(printed(answer))["files"]
    assert [each["known"] for each in entries] == [each["findings"] for each in found]
    assert not any(each["findings"] for each in entries)
    assert answer.err == ""


@pytest.mark.parametrize("text", [text for text in TEXTS if not re.search("[\x00/]", text)])
def test_a_hostile_file_name_is_shown_harmless(wirecheck: CommandLine, text: str) -> None:
    try:
        wirecheck.file(f"{text}.wiring", "part k is rely\n")
    except (OSError, UnicodeError):
        pytest.skip("no file can be called that here")
    out = printed(wirecheck("check", "."))
    assert not ACTS.search(out)
    for form in ("json", "sarif"):
        json.loads(printed(wirecheck("check", "--as", form, ".")))
    ET.fromstring(printed(wirecheck("check", "--as", "junit", ".")))  # noqa: S314 - our own text


def _is_number(cell: str) -> bool:
    try:
        float(cell)
    except ValueError:
        return False
    return True
