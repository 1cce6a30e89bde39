"""``wirecheck format``: print, look or change, and never half a file."""

import os
from pathlib import Path

import pytest

from tests.cli.command_line import NO_BURNER_GROUND, CommandLine, process

MESSY = NO_BURNER_GROUND.replace("part box is", "PART   box   IS").replace("\n", " # kept\n", 1)


@pytest.fixture
def tidy(wirecheck: CommandLine) -> str:
    """The canonical form of the messy file."""
    wirecheck.file("messy.wiring", MESSY)
    answer = wirecheck("format", "messy.wiring")
    assert answer.code == 0
    return answer.out


def test_the_canonical_form_is_printed_and_the_file_left_alone(
    wirecheck: CommandLine, tidy: str
) -> None:
    assert "part box" in tidy
    assert "# kept" in tidy
    assert (wirecheck.folder / "messy.wiring").read_text(encoding="utf-8") == MESSY


def test_formatting_twice_changes_nothing(wirecheck: CommandLine, tidy: str) -> None:
    wirecheck.file("tidy.wiring", tidy)
    assert wirecheck("format", "tidy.wiring") == (0, tidy, "")
    assert wirecheck("format", "--check", "tidy.wiring") == (0, "", "")
    assert wirecheck("format", "--diff", "tidy.wiring") == (0, "", "")


def test_standard_input_is_formatted_to_standard_output(tmp_path: Path, tidy: str) -> None:
    answer = process("format", "-", given=MESSY.encode(), folder=tmp_path)
    assert answer == (0, tidy, "")


def test_check_names_what_would_change_and_ends_with_1(wirecheck: CommandLine, tidy: str) -> None:
    wirecheck.file("tidy.wiring", tidy)
    answer = wirecheck("format", "--check", ".")
    assert answer == (1, "messy.wiring\n", "")


def test_diff_shows_what_would_change_and_ends_with_1(wirecheck: CommandLine, tidy: str) -> None:
    answer = wirecheck("format", "--diff", "messy.wiring")
    assert answer.code == 1
    lines = answer.out.splitlines()
    assert lines[:2] == ["--- messy.wiring", "+++ messy.wiring (formatted)"]
    assert "-PART   box   IS pilot-ignition-control" in lines
    assert {line[1:] for line in lines if line.startswith("+part")} <= set(tidy.splitlines())


def test_write_changes_the_file_in_place(wirecheck: CommandLine, tidy: str) -> None:
    answer = wirecheck("format", "--write", "messy.wiring")
    assert answer == (0, "messy.wiring\n", "")
    assert (wirecheck.folder / "messy.wiring").read_bytes() == tidy.encode()
    assert wirecheck("format", "--write", "messy.wiring") == (0, "", "")


def test_a_write_that_fails_leaves_the_file(
    wirecheck: CommandLine, tidy: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    def fail(_handle: int) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(os, "fsync", fail)
    answer = wirecheck("format", "--write", "messy.wiring")
    assert answer.code == 2
    assert "messy.wiring:1:1: problem: cannot be written: no space left on device" in answer.err
    assert tidy
    assert (wirecheck.folder / "messy.wiring").read_bytes() == MESSY.encode()


def test_a_byte_order_mark_goes(wirecheck: CommandLine, tidy: str) -> None:
    wirecheck.file("marked.wiring", b"\xef\xbb\xbf" + tidy.encode())
    assert wirecheck("format", "--check", "marked.wiring").code == 1
    assert wirecheck("format", "--write", "marked.wiring").code == 0
    assert (wirecheck.folder / "marked.wiring").read_bytes() == tidy.encode()


def test_line_ends_stay_what_they_are(wirecheck: CommandLine, tidy: str) -> None:
    data = tidy.encode().replace(b"\n", b"\r\n")
    wirecheck.file("other.wiring", data)
    assert wirecheck("format", "--check", "other.wiring") == (0, "", "")


def test_a_statement_that_cannot_be_read_stays_and_ends_the_call_with_2(
    wirecheck: CommandLine, tidy: str
) -> None:
    wirecheck.file("odd.wiring", f"{MESSY}wyre  box.GND  to pilot.HOOD\n")
    answer = wirecheck("format", "--write", "odd.wiring")
    assert answer.code == 2
    assert "odd.wiring:6:1: problem: " in answer.err
    written = (wirecheck.folder / "odd.wiring").read_text(encoding="utf-8")
    assert written == f"{tidy}wyre  box.GND  to pilot.HOOD\n"


def test_a_file_that_is_no_text_stays_as_it_is(wirecheck: CommandLine) -> None:
    data = NO_BURNER_GROUND.encode() + b'note "\xff"\n'
    wirecheck.file("odd.wiring", data)
    answer = wirecheck("format", "--write", "odd.wiring")
    assert answer.code == 2
    assert "odd.wiring:6:7: problem: " in answer.err
    assert (wirecheck.folder / "odd.wiring").read_bytes() == data


def test_json_holds_the_text_and_whether_it_changes(wirecheck: CommandLine, tidy: str) -> None:
    answer = wirecheck("format", "--as", "json", "messy.wiring")
    assert answer.code == 0
    (file,) = answer.document["files"]
    assert file == {"file": "messy.wiring", "changes": True, "text": tidy, "problems": []}


@pytest.mark.parametrize(
    ("words", "message"),
    [
        (("--write", "--check", "messy.wiring"), "--write changes the files"),
        (("--write", "-"), "standard input cannot be changed in place"),
    ],
)
def test_what_makes_no_sense_is_refused(
    wirecheck: CommandLine, words: tuple[str, ...], message: str
) -> None:
    wirecheck.file("messy.wiring", MESSY)
    answer = wirecheck("format", *words)
    assert answer.code == 2
    assert message in " ".join(answer.err.split())
    assert (wirecheck.folder / "messy.wiring").read_bytes() == MESSY.encode()
