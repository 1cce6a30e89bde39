"""``wirecheck correct`` and ``check --fix``: what they print, write and return."""

import pytest

from tests.cli.command_line import BURNER_GROUND, NO_BURNER_GROUND, UNKNOWN_KIND, CommandLine
from tests.correct.heaters import HEATER, SENSE_ON_SPARK

WRONG = HEATER.replace(*SENSE_ON_SPARK)
MOVE = "take the yellow lead from pilot.ROD off box.SPARK and land it on box.SENSE"


@pytest.fixture
def bench(wirecheck: CommandLine) -> CommandLine:
    """A right heater and a wrong one."""
    (wirecheck.folder / "right.wiring").write_text(HEATER, encoding="utf-8")
    (wirecheck.folder / "wrong.wiring").write_text(WRONG, encoding="utf-8")
    (wirecheck.folder / "odd.wiring").write_text(UNKNOWN_KIND, encoding="utf-8")
    return wirecheck


def test_it_says_what_to_move_and_what_the_unit_does_before_and_after(bench: CommandLine) -> None:
    answer = bench("correct", "wrong.wiring")
    assert answer.code == 1
    assert f"  1. {MOVE}\n" in answer.out
    before, after = answer.out.split("to correct it:")
    assert "main never opens" in before
    assert "lights and runs" in after
    assert "! Gas off and power off before you move a lead." in before
    assert "+wire box.SENSE to pilot.ROD: yellow" in after
    assert (bench.folder / "wrong.wiring").read_text(encoding="utf-8") == WRONG


def test_a_right_diagram_has_nothing_to_correct(bench: CommandLine) -> None:
    answer = bench("correct", "right.wiring", "--write")
    assert answer.code == 0
    assert "nothing to correct" in answer.out
    assert (bench.folder / "right.wiring").read_text(encoding="utf-8") == HEATER


def test_what_cannot_be_used_gives_2(bench: CommandLine) -> None:
    assert bench("correct", "odd.wiring", "wrong.wiring", "missing.wiring").code == 2


@pytest.mark.parametrize("mark", ["", "\ufeff"])
def test_the_file_is_changed_only_if_wished(bench: CommandLine, mark: str) -> None:
    file = bench.folder / "wrong.wiring"
    file.write_bytes((mark + WRONG).encode())
    assert bench("correct", "wrong.wiring", "--write").code == 1
    assert file.read_bytes().decode() == mark + HEATER
    assert bench("correct", "wrong.wiring").code == 0


def test_a_text_with_a_problem_is_not_written(bench: CommandLine) -> None:
    file = bench.folder / "wrong.wiring"
    text = f"{WRONG}wire nothing.X to box.COM\n"
    file.write_text(text, encoding="utf-8")
    assert bench("correct", "wrong.wiring", "--write").code == 2
    assert file.read_text(encoding="utf-8") == text


def test_only_the_difference(bench: CommandLine) -> None:
    answer = bench("correct", "--diff", "wrong.wiring", "right.wiring")
    assert answer.code == 1
    assert answer.out.startswith("--- wrong.wiring\n+++ wrong.wiring (corrected)\n")
    assert [line for line in answer.out.splitlines() if line.startswith("-wire")] == [
        "-wire box.SPARK to pilot.ROD: yellow"
    ]


def test_the_document_has_edits_and_what_was_proved(bench: CommandLine) -> None:
    document = bench("correct", "wrong.wiring", "right.wiring", "--as", "json").document
    wrong, right = document["files"]
    (edit,) = wrong["answers"][0]["edits"]
    assert edit == {"action": "move", "words": MOVE, "off": ["box.SPARK"], "on": ["box.SENSE"]}
    assert wrong["answers"][0]["text"] == HEATER
    assert wrong["proved_fewest"]
    assert right["nothing_to_correct"]
    assert document["summary"]["corrected"] == 1


@pytest.mark.parametrize("picture", ["svg", "png"])
def test_the_corrected_sheets(bench: CommandLine, picture: str) -> None:
    options = ("--draw", "--out", "sheets", "--format", picture, "--date", "none")
    answer = bench("correct", "wrong.wiring", *options)
    for sheet in ("ladder", "connections"):
        path = f"sheets/wrong-corrected-{sheet}.{picture}"
        assert f"drawn: {path}" in answer.out
        assert (bench.folder / path).stat().st_size > 1000


def test_standard_input_is_not_written(bench: CommandLine) -> None:
    assert bench("correct", "--write", "-").code == 2
    assert bench("check", "--fix", "-").code == 2


def test_check_makes_the_edits_it_is_sure_of(bench: CommandLine) -> None:
    file = bench.folder / "ground.wiring"
    file.write_text(NO_BURNER_GROUND, encoding="utf-8")
    answer = bench("check", "--fix", "ground.wiring")
    words = "mended: run a lead from box.GND to pilot.HOOD: green [burner-ground-missing]"
    assert words in answer.out
    assert answer.code == 0
    assert file.read_text(encoding="utf-8") == BURNER_GROUND
    again = bench("check", "--fix", "ground.wiring", "--as", "json")
    assert again.document["files"][0]["fixed"] == []


def test_check_fixes_nothing_in_a_text_with_a_problem(bench: CommandLine) -> None:
    file = bench.folder / "odd.wiring"
    file.write_text(NO_BURNER_GROUND + UNKNOWN_KIND.splitlines()[1] + "\n", encoding="utf-8")
    before = file.read_bytes()
    assert bench("check", "--fix", "odd.wiring").code == 2
    assert file.read_bytes() == before
