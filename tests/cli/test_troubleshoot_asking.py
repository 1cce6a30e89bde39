"""``wirecheck troubleshoot --ask``, ``--record`` and ``--tree``."""

import io

import pytest

from tests.cli.command_line import Answer, CommandLine
from tests.sequence.heater import HEATER

CLASSIC = ("--seen", "pilot lights, spark goes on, no main")


@pytest.fixture
def heater(wirecheck: CommandLine) -> CommandLine:
    wirecheck.file("heater.wiring", HEATER)
    return wirecheck


def ask(wirecheck: CommandLine, monkeypatch: pytest.MonkeyPatch, typed: str, *words: str) -> Answer:
    monkeypatch.setattr("sys.stdin", io.StringIO(typed))
    return wirecheck("troubleshoot", "--ask", *words, "heater.wiring")


def test_it_asks_until_the_repair_and_the_proof(
    heater: CommandLine, monkeypatch: pytest.MonkeyPatch
) -> None:
    answer = ask(heater, monkeypatch, "2\n", *CLASSIC)
    assert answer.code == 1
    said = answer.out
    assert said.index("! No meter on the spark terminal") < said.index("4. Jumper from box.GND")
    assert said.index("2 the main burner lights now") < said.index("TO MEND")
    assert "Run a new ground lead box.GND to pilot.HOOD" in said
    assert said.index("TO MEND") < said.index("TO PROVE IT")
    assert said.endswith("A unit that runs again is not thereby safe.\n")


def test_with_nothing_known_it_asks_for_what_is_seen_first(
    heater: CommandLine, monkeypatch: pytest.MonkeyPatch
) -> None:
    said = ask(heater, monkeypatch, "stop\n").out
    assert "\n1. Watch the " in said


def test_an_answer_can_be_taken_back(heater: CommandLine, monkeypatch: pytest.MonkeyPatch) -> None:
    said = ask(heater, monkeypatch, "1\nback\n2\n", *CLASSIC).out
    assert said.count("4. Jumper from box.GND") == 2
    assert "Run a new ground lead" in said[said.rindex("TO MEND") :]


def test_another_reading_can_be_made_instead(
    heater: CommandLine, monkeypatch: pytest.MonkeyPatch
) -> None:
    said = ask(heater, monkeypatch, "other\n1\nstop\n", *CLASSIC).out
    first, second = said.split("\n4. ")[1:]
    other = next(line for line in first.splitlines() if ">   1 " in line or "  1 P" in line)
    assert second.split("\n")[0][:20] in other


def test_what_is_no_answer_is_asked_again(
    heater: CommandLine, monkeypatch: pytest.MonkeyPatch
) -> None:
    said = ask(heater, monkeypatch, "purple\n9\n\nother\n77\n2\n", *CLASSIC).out
    assert said.count("answer with yes or no, or with a number:") == 2
    assert "that is none of these numbers" in said
    assert said.count("back: take the last answer back") == 2
    assert "Run a new ground lead" in said


def test_the_end_of_the_input_ends_it(heater: CommandLine, monkeypatch: pytest.MonkeyPatch) -> None:
    answer = ask(heater, monkeypatch, "?\nlist\n", *CLASSIC)
    assert answer.code == 1
    assert "not known" in answer.out
    assert "TO MEND" not in answer.out


@pytest.mark.parametrize("words", [("-",), ("heater.wiring", "heater2.wiring"), ("--as", "json")])
def test_it_asks_about_one_file_and_prints_words(
    heater: CommandLine, words: tuple[str, ...]
) -> None:
    heater.file("heater2.wiring", HEATER)
    answer = heater("troubleshoot", "--ask", "heater.wiring", *words)
    assert answer.code == 2
    assert "--ask asks about one file" in answer.err


def test_the_record_is_drawn(heater: CommandLine) -> None:
    jumper = ("--answer", "trial:ground-jumper:box=yes")
    answer = heater("troubleshoot", "heater.wiring", *CLASSIC, *jumper, "--record", "--out", "job")
    assert "drawn: job/heater-record-1.svg" in answer.out
    drawn = (heater.folder / "job" / "heater-record-1.svg").read_text(encoding="utf-8")
    assert "Run a new ground lead" in drawn


def test_the_chart_is_told_and_drawn(heater: CommandLine) -> None:
    answer = heater("troubleshoot", "heater.wiring", *CLASSIC, "--tree", "--format", "png")
    assert answer.code == 1
    assert "FAULT CHART\n1. Jumper from box.GND" in answer.out
    assert "go to step 2" in answer.out
    for name in ("heater-fault-chart.png", "heater-fault-steps-1.png"):
        assert f"drawn: {name}" in answer.out
        assert (heater.folder / name).read_bytes().startswith(b"\x89PNG")


def test_the_chart_as_json_has_every_way_to_its_end(heater: CommandLine) -> None:
    document = heater("troubleshoot", "heater.wiring", *CLASSIC, "--tree", "--as", "json").document
    (file,) = document["files"]
    assert len(file["drawings"]) >= 2
    steps, ends = [file["chart"]], 0
    for step in steps:
        assert (step["reading"] is None) == (not step["ways"])
        ends += step["reading"] is None and bool(step["repair"])
        steps += [way["then"] for way in step["ways"]]
    assert ends > 3


def test_two_files_of_one_name_do_not_draw_over_each_other(wirecheck: CommandLine) -> None:
    for name in ("one/heater.wiring", "two/heater.wiring"):
        wirecheck.file(name, HEATER)
    answer = wirecheck("troubleshoot", "one", "two", "--record")
    assert answer.code == 2
    assert "is a sheet of one/heater.wiring already" in answer.out
