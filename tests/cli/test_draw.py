"""``wirecheck draw``: which files it writes, and what it says of them."""

import os
from pathlib import Path
from xml.etree import ElementTree as ET

import pytest

from tests.cli.command_line import (
    BURNER_GROUND,
    NO_BURNER_GROUND,
    UNKNOWN_KIND,
    CommandLine,
    process,
)
from wirecheck.drawing import engine

LADDER, CONNECTIONS = "heater-ladder.svg", "heater-connections.svg"


def written(wirecheck: CommandLine) -> set[str]:
    files = {file for file in wirecheck.folder.rglob("*") if file.is_file()}
    names = {file.relative_to(wirecheck.folder).as_posix() for file in files}
    return {name for name in names if not name.endswith(".wiring")}


def test_both_sheets_are_written_beside_the_caller(wirecheck: CommandLine) -> None:
    wirecheck.file("job/heater.wiring", NO_BURNER_GROUND)
    answer = wirecheck("draw", "job/heater.wiring")
    assert answer.code == 0
    assert written(wirecheck) == {LADDER, CONNECTIONS}
    assert "job/heater.wiring: 2 leads drawn, with 1 operation finding" in answer.out
    assert answer.out.endswith(f"  {LADDER}\n  {CONNECTIONS}\n")


def test_the_finding_and_the_date_stand_on_both_sheets(wirecheck: CommandLine) -> None:
    wirecheck.file("heater.wiring", NO_BURNER_GROUND)
    wirecheck("draw", "heater.wiring", "--date", "2026-02-28")
    for name in (LADDER, CONNECTIONS):
        sheet = (wirecheck.folder / name).read_text(encoding="utf-8")
        assert "2026&#45;02&#45;28" in sheet or "2026-02-28" in sheet
        assert "no lead runs from box.GND to pilot.HOOD" in sheet


def test_without_a_date_the_same_diagram_gives_the_same_bytes(wirecheck: CommandLine) -> None:
    wirecheck.file("heater.wiring", BURNER_GROUND)
    for folder in ("one", "two"):
        assert wirecheck("draw", "heater.wiring", "--date", "none", "--out", folder).code == 0
    for name in (LADDER, CONNECTIONS):
        one, two = (wirecheck.folder / folder / name for folder in ("one", "two"))
        assert one.read_bytes() == two.read_bytes()


@pytest.mark.parametrize(
    ("sheet", "expected"), [("ladder", {LADDER}), ("connections", {CONNECTIONS})]
)
def test_one_sheet_can_be_chosen(wirecheck: CommandLine, sheet: str, expected: set[str]) -> None:
    wirecheck.file("heater.wiring", BURNER_GROUND)
    assert wirecheck("draw", "heater.wiring", "--sheet", sheet).code == 0
    assert written(wirecheck) == expected


def test_a_sheet_can_be_a_png(wirecheck: CommandLine) -> None:
    wirecheck.file("heater.wiring", BURNER_GROUND)
    words = ("--format", "png", "--sheet", "ladder", "--out", "a/b")
    assert wirecheck("draw", "heater.wiring", *words).code == 0
    assert written(wirecheck) == {"a/b/heater-ladder.png"}
    picture = wirecheck.folder / "a" / "b" / "heater-ladder.png"
    assert picture.read_bytes().startswith(b"\x89PNG")


def test_json_names_what_was_written(wirecheck: CommandLine) -> None:
    wirecheck.file("heater.wiring", NO_BURNER_GROUND)
    answer = wirecheck("draw", "heater.wiring", "--sheet", "ladder", "--as", "json")
    (file,) = answer.document["files"]
    assert file["drawings"] == [{"sheet": "ladder", "format": "svg", "path": LADDER}]
    assert file["findings"]["operation"] >= 1
    assert answer.document["summary"] == {"files": 1, "drawings": 1, "problems": 0}


def test_a_diagram_with_problems_is_drawn_as_far_as_it_goes(wirecheck: CommandLine) -> None:
    wirecheck.file("heater.wiring", f"{BURNER_GROUND}wire box.PV to vale.PV\n")
    answer = wirecheck("draw", "heater.wiring")
    assert answer.code == 2
    assert "heater.wiring:7:16: problem: " in answer.out
    assert written(wirecheck) == {LADDER, CONNECTIONS}


def test_standard_input_is_drawn_as_stdin(tmp_path: Path) -> None:
    words = ("draw", "-", "--sheet", "ladder")
    assert process(*words, given=BURNER_GROUND.encode(), folder=tmp_path).code == 0
    assert [file.name for file in tmp_path.iterdir()] == ["stdin-ladder.svg"]


def test_two_files_of_one_name_do_not_overwrite_each_other(wirecheck: CommandLine) -> None:
    wirecheck.file("a/heater.wiring", BURNER_GROUND)
    wirecheck.file("b/heater.wiring", NO_BURNER_GROUND)
    answer = wirecheck("draw", "a", "b", "--sheet", "ladder")
    assert answer.code == 2
    assert f"{LADDER} is a sheet of a/heater.wiring already" in answer.out
    sheet = (wirecheck.folder / LADDER).read_text(encoding="utf-8")
    assert "no lead runs" not in sheet


@pytest.mark.parametrize(
    ("words", "message"),
    [
        (("--date", "28.2.2026"), "'28.2.2026' is no date; write it like 2026-11-25"),
        (("--date", "2026-02-30"), "'2026-02-30' is no date"),
        (("--format", "pdf"), "the embedded engine draws SVG and PNG, not PDF"),
        (("--out", "heater.wiring"), "Directory 'heater.wiring' is a file"),
        (("--out", "heater.wiring/below"), "heater.wiring/below cannot be made"),
    ],
)
def test_what_cannot_be_done_is_said_and_writes_nothing(
    wirecheck: CommandLine, words: tuple[str, ...], message: str
) -> None:
    wirecheck.file("heater.wiring", BURNER_GROUND)
    answer = wirecheck("draw", "heater.wiring", *words)
    assert answer.code == 2
    assert message in " ".join(answer.err.split())
    assert not written(wirecheck)


def test_an_engine_that_is_missing_is_said(
    wirecheck: CommandLine, monkeypatch: pytest.MonkeyPatch
) -> None:
    wirecheck.file("heater.wiring", BURNER_GROUND)
    monkeypatch.setattr(engine, "SYSTEM_PROGRAM", "no-such-program")
    answer = wirecheck("draw", "heater.wiring", "--engine", "system", "--format", "pdf")
    assert answer.code == 2
    assert "no Graphviz is installed on this machine" in " ".join(answer.err.split())


def test_a_sheet_that_cannot_be_written_is_a_problem(wirecheck: CommandLine) -> None:
    wirecheck.file("heater.wiring", BURNER_GROUND)
    (wirecheck.folder / LADDER).mkdir()
    answer = wirecheck("draw", "heater.wiring")
    assert answer.code == 2
    assert f"{LADDER} cannot be written" in answer.out
    assert written(wirecheck) == {CONNECTIONS}


def test_a_failed_drawing_leaves_the_old_one(
    wirecheck: CommandLine, monkeypatch: pytest.MonkeyPatch
) -> None:
    def fail(_handle: int) -> None:
        raise OSError(28, "No space left on device")

    wirecheck.file("heater.wiring", BURNER_GROUND)
    wirecheck.file(LADDER, "old")
    monkeypatch.setattr(os, "fsync", fail)
    assert wirecheck("draw", "heater.wiring", "--sheet", "ladder").code == 2
    assert (wirecheck.folder / LADDER).read_text(encoding="utf-8") == "old"
    assert written(wirecheck) == {LADDER}


HOSTILE = (
    "<script>alert(1)</script>",
    "&amp; ]]> -->",
    'x""; node [shape=box]; ""',
    "\\N\\G\\l %s {|}",
    "<b>bold</b>",
)


@pytest.mark.parametrize("label", HOSTILE)
def test_a_hostile_label_is_drawn_as_letters(wirecheck: CommandLine, label: str) -> None:
    text = f'{BURNER_GROUND}labels box: GND as "{label}"\nnote "{label}"\n'
    wirecheck.file("heater.wiring", text.replace("Bench heater", label))
    assert wirecheck("draw", "heater.wiring").code in (0, 2)
    for name in (LADDER, CONNECTIONS):
        root = ET.parse(wirecheck.folder / name).getroot()  # noqa: S314 - our own
        kinds = {element.tag.rpartition("}")[2] for element in root.iter()}
        assert kinds <= {"svg", "g", "title", "text", "polygon", "path", "ellipse", "polyline"}
        letters = "".join(element.text or "" for element in root.iter())
        assert label.replace('""', '"')[:8] in letters.replace("\u00a0", " ")


def test_a_file_of_nothing_usable_is_still_drawn(wirecheck: CommandLine) -> None:
    wirecheck.file("heater.wiring", UNKNOWN_KIND)
    assert wirecheck("draw", "heater.wiring").code == 2
    assert written(wirecheck) == {LADDER, CONNECTIONS}
