"""``wirecheck lists``: its forms, its pages and how it ends."""

import csv
import io

import pytest

from tests.cli.command_line import UNKNOWN_KIND, CommandLine
from tests.sequence.heater import HEATER
from wirecheck.report.lists_csv import HEADERS

HOSTILE = HEATER.replace("box", '"=1+1"').replace('""=1+1""', '"=1+1"')


def table(text: str) -> list[dict[str, str]]:
    return list(csv.DictReader(io.StringIO(text)))


def test_text_has_all_lists_behind_the_cautions(wirecheck: CommandLine) -> None:
    wirecheck.file("heater.wiring", HEATER)
    answer = wirecheck("lists", "heater.wiring")
    assert (answer.code, answer.err) == (0, "")
    places = [answer.out.index(each) for each in ("! Gas off", "WIRE LIST", "PARTS", "TERMINALS")]
    assert places == sorted(places)
    assert answer.out.endswith("A list says what is drawn, not that it is right.\n")
    assert "A check has" not in answer.out


def test_a_wrong_unit_is_listed_as_drawn_and_said_to_be_so(wirecheck: CommandLine) -> None:
    wirecheck.file("heater.wiring", HEATER.replace("wire box.GND to pilot.HOOD\n", ""))
    answer = wirecheck("lists", "heater.wiring", "--what", "wires")
    assert answer.code == 0
    assert "A check has 1 finding on this diagram" in answer.out
    assert "PARTS LIST" not in answer.out


def test_what_cannot_be_read_ends_with_2(wirecheck: CommandLine) -> None:
    wirecheck.file("odd.wiring", UNKNOWN_KIND)
    answer = wirecheck("lists", "odd.wiring", "nowhere.wiring")
    assert answer.code == 2
    assert "odd.wiring:2:13: problem" in answer.out
    assert "nowhere.wiring: not listed" in answer.out
    aside = wirecheck("lists", "odd.wiring", "--as", "csv", "--what", "parts")
    assert aside.code == 2
    assert "odd.wiring:2:13: problem" in aside.err
    assert table(aside.out) == []


@pytest.mark.parametrize("what", ["wires", "parts", "terminals"])
def test_csv_is_one_table_with_its_header(wirecheck: CommandLine, what: str) -> None:
    wirecheck.file("heater.wiring", HEATER)
    answer = wirecheck("lists", "heater.wiring", "--as", "csv", "--what", what)
    assert answer.code == 0
    rows = table(answer.out)
    assert tuple(rows[0]) == HEADERS[what]  # type: ignore[index]
    assert all(len(row) == len(rows[0]) and None not in row for row in rows)


def test_csv_needs_to_know_which_list(wirecheck: CommandLine) -> None:
    wirecheck.file("heater.wiring", HEATER)
    answer = wirecheck("lists", "heater.wiring", "--as", "csv")
    assert answer.code == 2
    assert "say which, as in --what wires" in answer.err


@pytest.mark.parametrize("what", ["wires", "parts", "terminals"])
def test_csv_gives_a_spreadsheet_no_formula(wirecheck: CommandLine, what: str) -> None:
    wirecheck.file("heater.wiring", HOSTILE)
    answer = wirecheck("lists", "heater.wiring", "--as", "csv", "--what", what)
    cells = [cell for row in table(answer.out) for cell in row.values()]
    assert any(cell.startswith("'=1+1") for cell in cells)
    assert not [cell for cell in cells if cell.lstrip().startswith(("=", "+", "-", "@"))]


def test_json_leaves_out_what_was_not_asked_for(wirecheck: CommandLine) -> None:
    wirecheck.file("heater.wiring", HEATER)
    answer = wirecheck("lists", "heater.wiring", "--as", "json", "--what", "parts")
    (file,) = answer.document["files"]
    assert file["lists"]["wires"] is None
    assert file["lists"]["terminals"] is None
    assert [part["name"] for part in file["lists"]["parts"]][:2] == ["xfmr", "limit"]


def test_every_variant_is_listed(wirecheck: CommandLine) -> None:
    variant = 'variant "no ground"\n    remove wire box.GND to pilot.HOOD\nend\n'
    wirecheck.file("heater.wiring", f"{HEATER}{variant}")
    call = ("lists", "heater.wiring", "--what", "wires")
    answer = wirecheck(*call, "--picture", "svg")
    assert answer.code == 0
    assert "heater.wiring: heater, variant no ground\n" in answer.out
    assert "A check has 1 finding on this diagram" in answer.out
    assert (wirecheck.folder / "heater-variant-1-lists-1.svg").exists()
    rows = table(wirecheck(*call, "--as", "csv").out)
    counts = [sum(row["variant"] == name for row in rows) for name in ("", "no ground")]
    assert counts[0] == counts[1] + 1
    files = wirecheck(*call, "--as", "json").document["files"]
    assert [file["variant"] for file in files] == [None, "no ground"]


def test_pages_are_drawn_and_named(wirecheck: CommandLine) -> None:
    for name in ("a/heater.wiring", "b/heater.wiring"):
        wirecheck.file(name, HEATER)
    answer = wirecheck("lists", "a", "--picture", "svg", "--out", "pages")
    assert answer.code == 0
    names = sorted(path.name for path in (wirecheck.folder / "pages").iterdir())
    assert names == [f"heater-lists-{number}.svg" for number in range(1, len(names) + 1)]
    twice = wirecheck("lists", "a", "b", "--picture", "svg", "--out", "pages")
    assert twice.code == 2
    assert "heater-lists is the sheet of a/heater.wiring already" in twice.out


def test_a_page_that_cannot_be_written_is_told(wirecheck: CommandLine) -> None:
    wirecheck.file("heater.wiring", HEATER)
    wirecheck.file("taken", "")
    answer = wirecheck("lists", "heater.wiring", "--picture", "svg", "--out", "taken/below")
    assert answer.code == 2
    assert "cannot be written" in answer.out
