"""``wirecheck meter``: its forms, its pages and how it ends."""

import csv
import io
import json
from pathlib import Path

import pytest

from tests.cli.command_line import NO_BURNER_GROUND, UNKNOWN_KIND, CommandLine, process
from tests.sequence.heater import HEATER
from wirecheck.report.meter_csv import HEADER

WRONG = HEATER.replace("wire box.GND to pilot.HOOD\n", "")


def table(text: str) -> list[dict[str, str]]:
    return list(csv.DictReader(io.StringIO(text)))


def test_a_right_unit_ends_with_0_and_no_word_of_safety(wirecheck: CommandLine) -> None:
    wirecheck.file("heater.wiring", HEATER)
    answer = wirecheck("meter", "heater.wiring")
    assert (answer.code, answer.err) == (0, "")
    assert answer.out.index("! No meter on the spark terminal") < answer.out.index("POWER OFF")
    assert "  V~   stat.R to stat.W ...." in answer.out
    assert answer.out.endswith("A unit that reads right is not thereby safe.\n")
    assert "as drawn" not in answer.out


def test_a_wrong_unit_says_so_first_and_ends_with_1(wirecheck: CommandLine) -> None:
    wirecheck.file("heater.wiring", WRONG)
    answer = wirecheck("meter", "heater.wiring")
    assert answer.code == 1
    said = answer.out.index("1 operation finding: all values are those of the unit as drawn")
    place = answer.out.index("heater.wiring:4:6: operation: no lead runs from box.GND")
    assert said < place < answer.out.index("POWER OFF")


def test_workmanship_alone_spoils_no_value(wirecheck: CommandLine) -> None:
    upside_down = "pilot-ignition-control: terminals-up, two-rod"
    wirecheck.file("heater.wiring", HEATER.replace("pilot-ignition-control: two-rod", upside_down))
    assert "1 workmanship finding" in wirecheck("check", "heater.wiring").out
    answer = wirecheck("meter", "heater.wiring")
    assert answer.code == 0
    assert "as drawn" not in answer.out


def test_a_text_with_a_problem_ends_with_2(wirecheck: CommandLine) -> None:
    wirecheck.file("odd.wiring", UNKNOWN_KIND)
    answer = wirecheck("meter", "odd.wiring", "nowhere.wiring")
    assert answer.code == 2
    assert "odd.wiring:2:13: problem" in answer.out
    assert "nowhere.wiring: not measured" in answer.out


def test_standard_input_and_folders_are_read(wirecheck: CommandLine) -> None:
    for name in ("job/one.wiring", "job/deep/two.wiring"):
        wirecheck.file(name, HEATER)
    answer = wirecheck("meter", "job")
    assert "job/deep/two.wiring: two" in answer.out
    assert "2 meter sheets" in answer.out
    piped = process("meter", "-", "--as", "json", given=NO_BURNER_GROUND.encode())
    assert piped.code == 1
    assert piped.document["files"][0]["sheet"]["title"] == "Bench heater"


def test_json_has_every_reading_with_its_value(wirecheck: CommandLine) -> None:
    wirecheck.file("heater.wiring", HEATER)
    document = wirecheck("meter", "heater.wiring", "--as", "json").document
    (file,) = document["files"]
    assert file["sheet"]["values_are"] == "good-unit"
    readings = [
        reading
        for stage in file["sheet"]["stages"]
        for group in stage["groups"]
        for reading in group["readings"]
    ]
    assert [reading["step"] for reading in readings] == list(range(1, len(readings) + 1))
    assert document["summary"]["readings"] == len(readings)
    opened = next(reading for reading in readings if reading["shows"] == "open (OL)")
    assert opened["value"] is None
    (signal,) = [reading for reading in readings if reading["unit"] == "uA"]
    assert signal["value"] == pytest.approx(3.6, abs=0.01)
    assert signal["black"] == {
        "place": "end of the lead taken off box.SENSE",
        "lead_taken_off": True,
    }


def test_json_of_a_wrong_unit_has_its_findings(wirecheck: CommandLine) -> None:
    wirecheck.file("heater.wiring", WRONG)
    sheet = wirecheck("meter", "heater.wiring", "--as", "json").document["files"][0]["sheet"]
    assert sheet["values_are"] == "as-drawn"
    assert [finding["rule"] for finding in sheet["findings"]] == ["burner-ground-missing"]


def test_csv_is_a_table_with_the_cautions_first(wirecheck: CommandLine) -> None:
    wirecheck.file("heater.wiring", HEATER)
    answer = wirecheck("meter", "heater.wiring", "--as", "csv")
    assert answer.code == 0
    rows = table(answer.out)
    assert tuple(rows[0]) == HEADER
    kinds = [row["row"] for row in rows]
    assert kinds[0] == "caution"
    assert kinds.index("reading") > max(n for n, kind in enumerate(kinds) if kind == "caution")
    readings = [row for row in rows if row["row"] == "reading"]
    assert [int(row["step"]) for row in readings] == list(range(1, len(readings) + 1))
    line = next(row for row in readings if row["red"] == "xfmr.L1" and row["stage"] == "idle")
    assert (line["black"], line["shows"], line["unit"]) == ("xfmr.N", "120 V", "V")
    assert float(line["value"]) == pytest.approx(120, abs=1)
    assert line["caution"].startswith("line voltage")


def test_csv_gives_a_spreadsheet_no_formula(wirecheck: CommandLine) -> None:
    named = HEATER.replace("box", '"=1+1"').replace('""=1+1""', '"=1+1"')
    wirecheck.file("heater.wiring", named)
    answer = wirecheck("meter", "heater.wiring", "--as", "csv")
    assert answer.code == 0
    cells = [cell for row in table(answer.out) for cell in row.values()]
    assert any(cell.startswith("'=1+1") for cell in cells)
    assert not [cell for cell in cells if cell.startswith(("=", "+", "-", "@"))]


@pytest.mark.parametrize(("form", "begins"), [("svg", b"<?xml"), ("png", b"\x89PNG")])
def test_pages_are_drawn_and_named(wirecheck: CommandLine, form: str, begins: bytes) -> None:
    wirecheck.file("heater.wiring", HEATER)
    answer = wirecheck("meter", "heater.wiring", "--picture", form, "--out", "pages")
    assert answer.code == 0
    pages = sorted((wirecheck.folder / "pages").iterdir())
    assert [page.name for page in pages] == [
        f"heater-meter-{number}.{form}" for number in range(1, len(pages) + 1)
    ]
    for page in pages:
        assert page.read_bytes().startswith(begins)
        assert f"drawn: {Path('pages') / page.name}" in answer.out


def test_the_same_diagram_gives_the_same_bytes(wirecheck: CommandLine) -> None:
    wirecheck.file("heater.wiring", HEATER)
    answers = [
        wirecheck("meter", "heater.wiring", "--picture", "svg", "--out", folder)
        for folder in ("one", "two")
    ]
    assert answers[0].out.replace("one/", "") == answers[1].out.replace("two/", "")
    for page in (wirecheck.folder / "one").iterdir():
        assert page.read_bytes() == (wirecheck.folder / "two" / page.name).read_bytes()


def test_two_files_of_one_name_do_not_overwrite_each_other(wirecheck: CommandLine) -> None:
    for folder in ("a", "b"):
        wirecheck.file(f"{folder}/heater.wiring", HEATER)
    answer = wirecheck("meter", "a", "b", "--picture", "svg")
    assert answer.code == 2
    assert "heater-meter is the sheet of a/heater.wiring already" in answer.out


def test_a_page_that_cannot_be_written_is_told(wirecheck: CommandLine) -> None:
    wirecheck.file("heater.wiring", HEATER)
    wirecheck.file("taken", "")
    answer = wirecheck("meter", "heater.wiring", "--picture", "svg", "--out", "taken/below")
    assert answer.code == 2
    assert "cannot be written" in answer.out


def test_the_document_is_json(wirecheck: CommandLine) -> None:
    wirecheck.file("odd.wiring", UNKNOWN_KIND)
    answer = wirecheck("meter", "odd.wiring", "nowhere.wiring", "--as", "json")
    files = json.loads(answer.out)["files"]
    assert [file["sheet"] is None for file in files] == [False, True]
