"""``wirecheck practice``: what it writes, what it hands out and what it keeps back."""

from pathlib import Path

import pytest

from tests.cli.command_line import NO_BURNER_GROUND, UNKNOWN_KIND, CommandLine
from tests.contract.source import ROOT
from wirecheck.cli.practice import CIRCUITS, DIFFICULTIES, FORMS
from wirecheck.practice.difficulty import Difficulty
from wirecheck.practice.mistake import Form
from wirecheck.rules.registry import RULES

KEY = (ROOT / "examples" / "workshop-heater-one-rod.wiring").read_text(encoding="utf-8")


@pytest.fixture
def heater(wirecheck: CommandLine) -> CommandLine:
    wirecheck.file("heater.wiring", KEY)
    return wirecheck


def names(folder: Path) -> list[str]:
    return sorted(path.name for path in folder.iterdir() if path.is_file())


def test_what_is_handed_out_and_what_is_kept_back(heater: CommandLine) -> None:
    answer = heater("practice", "--exercises", "2", "--blank", "heater.wiring")
    assert (answer.code, answer.err) == (0, "")
    out = heater.folder / "exercises"
    assert names(out) == [
        "heater-blank.svg",
        "heater-blank.wiring",
        *(
            f"heater-exercise-0{number}{ending}"
            for number in (1, 2)
            for ending in ("-answers.svg", "-exercise.svg", ".wiring")
        ),
    ]
    assert names(out / "key") == [
        f"heater-exercise-0{number}{ending}"
        for number in (1, 2)
        for ending in ("-connections.svg", "-ladder.svg", ".txt")
    ]
    assert answer.out.endswith("\n2 exercises, 1 to be wired. Keep the folder with the key to "
                               "yourself.\n")  # fmt: skip


def test_nothing_that_is_handed_out_tells_the_mistake(heater: CommandLine) -> None:
    document = heater("practice", "--exercises", "2", "--as", "json", "heater.wiring").document
    for exercise in document["files"][0]["exercises"]:
        handed = "".join(Path(path).read_text(encoding="utf-8") for path in exercise["hand_out"])
        (key, *_sheets) = exercise["key"]
        key_text = " ".join(Path(key).read_text(encoding="utf-8").split())
        for mistake in exercise["mistakes"]:
            assert mistake["words"] in key_text
            assert mistake["words"] not in handed
            for finding in mistake["findings"]:
                assert finding["message"] in key_text
                assert finding["message"] not in handed
        assert "1 mistake to find" in handed
        assert 'class="edge lead' in handed
        assert "finding" not in handed
        drawn = Path(next(path for path in exercise["key"] if path.endswith("connections.svg")))
        assert "finding" in drawn.read_text(encoding="utf-8")


def test_a_blank_has_the_devices_and_no_lead(heater: CommandLine) -> None:
    heater("practice", "--exercises", "0", "--blank", "heater.wiring")
    text = (heater.folder / "exercises" / "heater-blank.wiring").read_text(encoding="utf-8")
    assert "part box is" in text
    assert not any(line.startswith(("wire", "plug", "jumper")) for line in text.splitlines())
    drawing = (heater.folder / "exercises" / "heater-blank.svg").read_text(encoding="utf-8")
    assert 'class="node part"' in drawing
    assert 'class="edge lead' not in drawing


def test_a_wrong_diagram_makes_no_exercise(wirecheck: CommandLine) -> None:
    wirecheck.file("wrong.wiring", NO_BURNER_GROUND)
    wirecheck.file("odd.wiring", UNKNOWN_KIND)
    answer = wirecheck("practice", "wrong.wiring", "odd.wiring", "nowhere.wiring")
    assert answer.code == 2
    place = "wrong.wiring:2:6: problem: exercises are made from a right diagram"
    assert place in answer.out
    assert "odd.wiring:2:13: problem" in answer.out
    assert "nowhere.wiring:1:1: problem: cannot be read" in answer.out
    assert not list((wirecheck.folder / "exercises").rglob("*.wiring"))


def test_fewer_than_wished_are_made_and_told(heater: CommandLine) -> None:
    answer = heater(
        "practice", "--exercises", "300", "--kind", "link-or-plug", "--difficulty", "hard",
        "heater.wiring",
    )  # fmt: skip
    assert answer.code == 2
    assert "of 300 exercises can be made of it as wished" in answer.out


def test_two_diagrams_of_one_name_do_not_write_over_each_other(wirecheck: CommandLine) -> None:
    for name in ("one/heater.wiring", "two/heater.wiring"):
        wirecheck.file(name, KEY)
    answer = wirecheck("practice", "--exercises", "1", "one", "two")
    assert answer.code == 2
    assert "two/heater.wiring:1:1: problem: its exercises would have the names" in answer.out


def test_a_file_in_the_place_of_the_folder_is_told(heater: CommandLine) -> None:
    heater.file("exercises", "a file")
    answer = heater("practice", "heater.wiring")
    assert answer.code == 2
    assert "'exercises' is a file" in answer.err


def test_the_words_of_the_call_are_those_of_the_package() -> None:
    """They are written out in the command so that its help imports nothing."""
    assert tuple(form.value for form in Form) == FORMS
    assert tuple(each.value for each in Difficulty) == DIFFICULTIES
    families = {rule.rule.family.replace(" ", "-") for rule in RULES.values()}
    assert set(CIRCUITS) == families - {"electrical", "workmanship"}
