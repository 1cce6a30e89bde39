"""``wirecheck replace``: its forms, what it writes and how it ends."""

import json

import pytest

from tests.cli.command_line import UNKNOWN_KIND, CommandLine, process
from tests.replace.units import CONVERSION, EXAMPLES, STANDING
from tests.sequence.heater import HEATER

OTHER = (EXAMPLES / "replacing" / "other-control.parts").read_text(encoding="utf-8")
CAUTIONS = (
    "! Gas off and power off before you move a lead.",
    "! Wait about five minutes and smell for gas",
    "! Turn gas and power on only when every lead is landed; leak-test each joint",
    "! Prove several full cycles, the safeties one by one, and a lockout",
    "! Local codes, the makers' instructions and licensed people decide",
)


@pytest.fixture
def files(wirecheck: CommandLine) -> CommandLine:
    """Lay out a diagram and the new devices for it."""
    wirecheck.file("heater.wiring", HEATER)
    wirecheck.file("other.wiring", OTHER)
    wirecheck.file("standing.wiring", STANDING)
    wirecheck.file("conversion.wiring", CONVERSION)
    return wirecheck


def test_text_says_where_each_lead_goes_between_the_cautions(files: CommandLine) -> None:
    answer = files("replace", "heater.wiring", "--with", "other.wiring")
    assert (answer.code, answer.err) == (0, "")
    for caution in CAUTIONS:
        assert caution in answer.out
    assert answer.out.index("! Gas off") < answer.out.index("lead by lead, wire numbers")
    rows = [line.split() for line in answer.out.splitlines()]
    assert any(row[-2:] == ["box.TH", "box.W"] for row in rows)
    assert any(row[-2:] == ["box.SENSE", "box.FS"] for row in rows)
    assert "does not make the unit safe" in answer.out
    assert (files.folder / "heater.wiring").read_text(encoding="utf-8") == HEATER


def test_a_kind_alone_is_enough(files: CommandLine) -> None:
    answer = files("replace", "heater.wiring", "--with", "gas-valve-3-wire: 0.3 A pilot")
    assert answer.code == 2
    answer = files("replace", "heater.wiring", "--with", "gas-valve-3-wire: main 0.3 A")
    assert answer.code == 0
    assert "gas valve out, another in (gas-valve-3-wire: main 0.3 A)" in answer.out


def test_several_can_be_given_one_by_one(files: CommandLine) -> None:
    with_each = [
        word
        for kind in ("pilot-ignition-control", "gas-valve-3-wire", "pilot-burner")
        for word in ("--with", kind)
    ]
    answer = files("replace", "standing.wiring", *with_each)
    assert answer.code == 0
    assert "control: pilot ignition control goes in" in answer.out
    assert "couple: thermocouple comes out" in answer.out


@pytest.mark.parametrize("form", ["text", "json"])
def test_what_cannot_be_met_ends_with_2_and_its_reason(files: CommandLine, form: str) -> None:
    call = ("replace", "heater.wiring", "--with", "gas-valve-2-wire", "--as", form)
    answer = files(*call, "--write", "--draw", "sheets")
    assert answer.code == 2
    assert "valve has one operator" in answer.out
    assert not (files.folder / "sheets").exists()
    assert (files.folder / "heater.wiring").read_text(encoding="utf-8") == HEATER


def test_what_cannot_be_read_ends_with_2_at_its_place(files: CommandLine) -> None:
    files.file("odd.wiring", UNKNOWN_KIND)
    files.file("leads.wiring", f"{OTHER}wire shelf.W to earth\n")
    for old, new, said in (
        ("odd.wiring", "other.wiring", "odd.wiring:2:13: problem"),
        ("heater.wiring", "odd.wiring", "odd.wiring:2:13: problem"),
        ("nowhere.wiring", "other.wiring", "nowhere.wiring:1:1: problem: cannot be read"),
        ("heater.wiring", "nowhere.wiring", "nowhere.wiring:1:1: problem: cannot be read"),
        ("heater.wiring", "leads.wiring", "leads.wiring:7:1: problem: here the new devices"),
        ("heater.wiring", "nowhere/new.parts", "nowhere/new.parts:1:1: problem: cannot be read"),
        ("heater.wiring", "pilot-control", "no kind of part is called"),
    ):
        answer = files("replace", old, "--with", new)
        assert answer.code == 2
        assert said in answer.out


def test_a_result_with_a_mistake_ends_with_1(files: CommandLine) -> None:
    files.file("wrong.wiring", HEATER.replace("wire box.GND to pilot.HOOD\n", ""))
    answer = files("replace", "wrong.wiring", "--with", "other.wiring", "--write")
    assert answer.code == 1
    assert "as found, a check says:" in answer.out
    assert "then, a check says:" in answer.out
    assert "1 mistake of safety or operation in the new diagram: mend" in answer.out
    assert "box.FS" in (files.folder / "wrong.wiring").read_text(encoding="utf-8")


def test_a_result_that_is_worse_is_not_written(files: CommandLine) -> None:
    """A pilot of two tries without lockout is one on LP that must not be."""
    lp = HEATER.replace(
        "pilot-ignition-control: two-rod", "pilot-ignition-control: two-rod, gas lp, retry lockout"
    )
    assert lp != HEATER
    files.file("lp.wiring", lp)
    answer = files("replace", "lp.wiring", "--with", "pilot-ignition-control", "--write")
    assert answer.code == 2
    assert "not written: the new diagram has mistakes that were not there before" in answer.out
    assert "lp-without-lockout" in answer.out
    assert (files.folder / "lp.wiring").read_text(encoding="utf-8") == lp


def test_it_writes_in_place_or_beside(files: CommandLine) -> None:
    call = ("replace", "standing.wiring", "--with", "conversion.wiring")
    assert files(*call, "--out", "new.wiring").code == 0
    new = (files.folder / "new.wiring").read_text(encoding="utf-8")
    assert (files.folder / "standing.wiring").read_text(encoding="utf-8") == STANDING
    files.file("marked.wiring", b"\xef\xbb\xbf" + STANDING.encode())
    assert files("replace", "marked.wiring", *call[2:], "--write").code == 0
    assert (files.folder / "marked.wiring").read_bytes() == b"\xef\xbb\xbf" + new.encode()
    assert files("check", "new.wiring").code == 0
    both = files(*call, "--write", "--out", "x.wiring")
    assert (both.code, "either --write or --out" in both.err) == (2, True)


def test_what_cannot_be_written_is_told(files: CommandLine) -> None:
    files.file("taken", "")
    call = ("replace", "heater.wiring", "--with", "other.wiring")
    for more in (("--out", "taken/new.wiring"), ("--draw", "taken/sheets")):
        answer = files(*call, *more)
        assert answer.code == 2
        assert "cannot be written" in answer.out


def test_diff_is_all_that_is_printed(files: CommandLine) -> None:
    answer = files("replace", "heater.wiring", "--with", "other.wiring", "--diff")
    assert answer.code == 0
    assert answer.out.startswith("--- heater.wiring\n+++ heater.wiring (replaced)\n")
    assert "Gas off" not in answer.out
    refused = files("replace", "heater.wiring", "--with", "gas-valve-2-wire", "--diff")
    assert (refused.code, refused.out) == (2, "")
    assert refused.err.startswith("refused: ")


def test_json_has_devices_leads_and_the_new_text(files: CommandLine) -> None:
    answer = files("replace", "standing.wiring", "--with", "conversion.wiring", "--as", "json")
    assert answer.code == 0
    document = answer.document
    assert [each["happens"] for each in document["devices"]] == [
        "replaced",
        "replaced",
        "fitted",
        "taken-out",
    ]
    assert {each["to"] for each in document["crossings"]} == {
        "control.CALL",
        "control.24V COM",
        None,
    }
    assert len(document["to_run"]) == 6
    assert document["after"]["findings"] == []
    assert document["text"].startswith("# The heater of a fire station")
    assert any("Gas off" in caution for caution in document["cautions"])
    refused = files("replace", "heater.wiring", "--with", "gas-valve-2-wire", "--as", "json")
    assert refused.document["after"] is None
    assert len(refused.document["refused"]) == 1


def test_sheets_are_drawn(files: CommandLine) -> None:
    answer = files("replace", "standing.wiring", "--with", "conversion.wiring", "--draw", "sheets")
    assert answer.code == 0
    names = sorted(path.name for path in (files.folder / "sheets").iterdir())
    assert names == [
        "standing-cross-reference-1.svg",
        "standing-found-connections.svg",
        "standing-replaced-connections.svg",
        "standing-replaced-ladder.svg",
    ]
    for name in names:
        assert f"drawn: sheets/{name}" in answer.out


def test_standard_input_is_read(files: CommandLine) -> None:
    answer = process(
        "replace",
        "-",
        "--with",
        str(files.folder / "other.wiring"),
        "--as",
        "json",
        given=HEATER.encode(),
    )
    assert answer.code == 0
    assert json.loads(answer.out)["file"] == "-"
    refused = files("replace", "-", "--with", "other.wiring", "--write")
    assert refused.code == 2


def test_nothing_in_a_label_acts_on_a_terminal(files: CommandLine) -> None:
    files.file(
        "hostile.wiring", 'part n is pilot-ignition-control\nlabels n: TH as "\x9b2J\u202e"\n'
    )
    answer = files("replace", "heater.wiring", "--with", "hostile.wiring")
    assert "\x9b" not in answer.out
    assert "\u202e" not in answer.out
