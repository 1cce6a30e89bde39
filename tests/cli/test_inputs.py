"""Which files a call means, and what is said of those that cannot be read."""

import io
import os
import sys
from pathlib import Path

import pytest

from tests.cli.command_line import (
    BURNER_GROUND,
    NO_BURNER_GROUND,
    UNKNOWN_KIND,
    CommandLine,
    process,
)


def files(wirecheck: CommandLine, *words: str) -> list[str]:
    document = wirecheck("check", "--as", "json", *words).document
    return [file["file"] for file in document["files"]]


def test_a_folder_means_every_wiring_file_below_it_in_order(wirecheck: CommandLine) -> None:
    for name in ("job/b.wiring", "job/a.wiring", "job/deep/er/c.wiring", "job/notes.txt"):
        wirecheck.file(name, BURNER_GROUND)
    expected = ["job/a.wiring", "job/b.wiring", "job/deep/er/c.wiring"]
    assert files(wirecheck, "job") == expected


def test_a_file_named_twice_is_checked_once(wirecheck: CommandLine) -> None:
    wirecheck.file("job/a.wiring", BURNER_GROUND)
    assert files(wirecheck, "job/a.wiring", "job", "./job/a.wiring") == ["job/a.wiring"]


def test_files_keep_the_order_given(wirecheck: CommandLine) -> None:
    for name in ("z.wiring", "a.wiring", "any-name.txt"):
        wirecheck.file(name, BURNER_GROUND)
    given = ["z.wiring", "any-name.txt", "a.wiring"]
    assert files(wirecheck, *given) == given


def test_standard_input_is_checked_as_a_file_is(tmp_path: Path) -> None:
    answer = process("check", "-", given=NO_BURNER_GROUND.encode(), folder=tmp_path)
    assert answer.code == 1
    assert "\n-:2:6: operation: " in answer.out


def test_bytes_on_standard_input_that_are_no_text_are_a_problem(tmp_path: Path) -> None:
    given = NO_BURNER_GROUND.encode() + b'note "\xff\xfe"\n'
    answer = process("check", "-", given=given, folder=tmp_path)
    assert answer.code == 2
    assert "-:6:7: problem: " in answer.out
    assert "-:2:6: operation: " in answer.out


def test_closed_standard_input_is_a_problem(
    wirecheck: CommandLine, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(sys, "stdin", None)
    answer = wirecheck("check", "-")
    assert answer.code == 2
    assert "-:1:1: problem: cannot be read: standard input is closed" in answer.out


def test_a_flood_on_standard_input_is_refused(
    wirecheck: CommandLine, monkeypatch: pytest.MonkeyPatch
) -> None:
    flood = io.TextIOWrapper(io.BytesIO(b"#" * (17 * 1024 * 1024)))
    monkeypatch.setattr(sys, "stdin", flood)
    answer = wirecheck("check", "-")
    assert answer.code == 2
    assert "-:1:1: problem: cannot be read: it has more than" in answer.out


@pytest.mark.parametrize("command", ["check", "draw", "format"])
def test_a_file_that_is_not_there_is_a_problem_and_the_others_are_done(
    wirecheck: CommandLine, command: str
) -> None:
    wirecheck.file("there.wiring", BURNER_GROUND)
    answer = wirecheck(command, "gone.wiring", "there.wiring")
    assert answer.code == 2
    said = answer.out + answer.err
    assert "gone.wiring:1:1: problem: cannot be read: no such file or directory" in said
    assert "there" in answer.out or "part box" in answer.out


@pytest.mark.skipif(os.name == "nt", reason="a ring of links")
def test_a_file_that_cannot_be_opened_is_a_problem(wirecheck: CommandLine) -> None:
    (wirecheck.folder / "ring.wiring").symlink_to("ring.wiring")
    answer = wirecheck("check", "ring.wiring")
    assert answer.code == 2
    assert "ring.wiring:1:1: problem: cannot be read: " in answer.out


def test_a_folder_without_a_wiring_file_is_a_problem(wirecheck: CommandLine) -> None:
    (wirecheck.folder / "empty").mkdir()
    answer = wirecheck("check", "empty")
    assert answer.code == 2
    assert "empty:1:1: problem: cannot be read: no .wiring file is in this folder" in answer.out


def test_a_folder_that_cannot_be_entered_is_a_problem(
    wirecheck: CommandLine, monkeypatch: pytest.MonkeyPatch
) -> None:
    wirecheck.file("job/a.wiring", BURNER_GROUND)
    wirecheck.file("job/locked/b.wiring", BURNER_GROUND)
    scandir = os.scandir

    def refuse(path: str) -> object:
        if str(path).endswith("locked"):
            raise PermissionError(13, "Permission denied", path)
        return scandir(path)

    monkeypatch.setattr(os, "scandir", refuse)
    answer = wirecheck("check", "job")
    assert answer.code == 2
    assert "job/locked:1:1: problem: cannot be read: permission denied" in answer.out
    assert "job/a.wiring: 3 leads: nothing found" in answer.out


@pytest.mark.skipif(sys.platform != "linux", reason="names of any bytes")
def test_a_name_that_is_no_text_is_shown_by_its_code(tmp_path: Path) -> None:
    name = os.fsdecode(b"h\xff.wiring")
    (tmp_path / name).write_text(UNKNOWN_KIND, encoding="utf-8")
    answer = process("check", name, folder=tmp_path)
    assert answer.code == 2
    assert "h\\udcff.wiring:2:13: problem: " in answer.out
    assert process("check", name, "--as", "json", folder=tmp_path).code == 2


def test_a_call_without_files_names_what_is_missing(wirecheck: CommandLine) -> None:
    answer = wirecheck("check")
    assert answer.code == 2
    assert "Missing argument" in answer.err


@pytest.mark.parametrize("text", ["", "\n \n", "# a remark alone\n"])
def test_a_file_in_which_nothing_is_typed_passes_nothing(wirecheck: CommandLine, text: str) -> None:
    wirecheck.file("empty.wiring", text)
    for command in ("check", "report"):
        answer = wirecheck(command, "empty.wiring")
        assert answer.code == 2
        assert "empty.wiring:1:1: problem: nothing is typed here" in answer.out + answer.err
        assert "nothing found" not in answer.out
