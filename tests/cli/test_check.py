"""``wirecheck check``: findings at their line, what they come to, and how the call ends."""

import re

import pytest

from tests.cli.command_line import BURNER_GROUND, NO_BURNER_GROUND, UNKNOWN_KIND, CommandLine


def test_a_finding_begins_with_its_place_and_ends_the_call_with_1(wirecheck: CommandLine) -> None:
    wirecheck.file("heater.wiring", NO_BURNER_GROUND)
    answer = wirecheck("check", "heater.wiring")
    assert answer.code == 1
    assert re.search(
        r"^heater\.wiring:2:6: operation: no lead runs from box\.GND to pilot\.HOOD: .*"
        r"\[burner-ground-missing\]$",
        answer.out,
        re.MULTILINE,
    )
    assert "   2 | part box is pilot-ignition-control\n     |      ^^^\n" in answer.out
    assert "to mend: run a lead from box.GND to pilot.HOOD" in answer.out
    assert answer.err == ""


def test_the_cautions_stand_before_the_first_finding(wirecheck: CommandLine) -> None:
    wirecheck.file("a.wiring", NO_BURNER_GROUND)
    wirecheck.file("b.wiring", NO_BURNER_GROUND)
    out = wirecheck("check", ".").out
    assert out.count("! Gas off and power off before you move a lead.") == 1
    assert out.index("! Gas off") < out.index(":2:6:")


def test_a_right_diagram_ends_the_call_with_0_and_is_not_called_safe(
    wirecheck: CommandLine,
) -> None:
    wirecheck.file("heater.wiring", BURNER_GROUND)
    answer = wirecheck("check", "heater.wiring")
    assert answer.code == 0
    assert "! Gas off" not in answer.out
    last = answer.out.splitlines()[-1]
    assert last.startswith("3 leads, ")
    assert "does not make the unit safe" in last


def test_what_was_taken_as_given_and_not_checked_is_said(wirecheck: CommandLine) -> None:
    wirecheck.file("heater.wiring", f"{BURNER_GROUND}wire box.TH to unknown\n")
    short = wirecheck("check", "heater.wiring").out
    assert re.search(
        r"^taken as given \(common practice, no source\): values of", short, re.MULTILINE
    )
    assert "trial 90 s" not in short
    out = wirecheck("check", "--assumed", "heater.wiring").out
    assert "taken as given (common practice, no source):" in out
    assert re.search(r"^  box: .*trial 90 s", out, re.MULTILINE)
    assert re.search(r"^not checked:\n  heater\.wiring:7:6: untraced lead: ", out, re.MULTILINE)


def test_a_problem_ends_the_call_with_2_also_beside_findings(wirecheck: CommandLine) -> None:
    wirecheck.file("heater.wiring", f"{NO_BURNER_GROUND}part stat is thermostatt\n")
    answer = wirecheck("check", "heater.wiring")
    assert answer.code == 2
    assert "heater.wiring:2:6: operation: " in answer.out
    assert "heater.wiring:6:14: problem: " in answer.out
    assert "thermostat" in answer.out.partition("6:14: problem:")[2].splitlines()[0]


def test_json_says_what_the_text_says(wirecheck: CommandLine) -> None:
    wirecheck.file("heater.wiring", NO_BURNER_GROUND)
    wirecheck.file("odd.wiring", UNKNOWN_KIND)
    answer = wirecheck("check", "--as", "json", "heater.wiring", "odd.wiring")
    assert answer.code == 2
    heater, odd = answer.document["files"]
    (finding,) = [f for f in heater["findings"] if f["rule"] == "burner-ground-missing"]
    place = [finding[key] for key in ("file", "line", "column", "end_line", "end_column")]
    assert place == ["heater.wiring", 2, 6, 2, 9]
    assert finding["terminals"] == ["box.GND", "pilot.HOOD"]
    assert finding["edits"][0]["new_text"] == "wire box.GND to pilot.HOOD: green\n"
    (problem,) = odd["problems"]
    assert (problem["line"], problem["column"]) == (2, 13)
    assert problem["nearest"] == "pilot-ignition-control"
    summary = answer.document["summary"]
    assert (summary["files"], summary["leads"], summary["problems"]) == (2, 2, 1)
    assert summary["findings"]["operation"] >= 1


def test_the_same_call_prints_the_same_bytes(wirecheck: CommandLine) -> None:
    wirecheck.file("heater.wiring", NO_BURNER_GROUND)
    for form in ("text", "json"):
        first = wirecheck("check", "--as", form, "heater.wiring")
        assert wirecheck("check", "--as", form, "heater.wiring") == first


def test_each_of_several_files_has_its_verdict(wirecheck: CommandLine) -> None:
    wirecheck.file("right.wiring", BURNER_GROUND)
    wirecheck.file("wrong.wiring", NO_BURNER_GROUND)
    out = wirecheck("check", "right.wiring", "wrong.wiring").out
    assert "right.wiring: 3 leads: nothing found\n" in out
    assert re.search(r"^wrong\.wiring: 2 leads: .*1 operation finding", out, re.MULTILINE)
    assert out.splitlines()[-1].startswith("2 files, 5 leads, ")


@pytest.mark.parametrize("label", ["\x1b[2J", "\u202eover", "<script>&", 'a ""quote""', "\x07"])
def test_a_label_reaches_the_terminal_harmless(wirecheck: CommandLine, label: str) -> None:
    text = NO_BURNER_GROUND.replace("part box", f'labels box: GND as "{label}"\npart box')
    wirecheck.file("heater.wiring", text)
    answer = wirecheck("check", "heater.wiring")
    assert answer.code in (1, 2)
    assert not re.search("[\x00-\x09\x0b-\x1f\x7f-\x9f\u202a-\u202e]", answer.out)


def test_a_title_cannot_forge_a_line(wirecheck: CommandLine) -> None:
    title = "nothing found\x1b[1A\rheater.wiring"
    wirecheck.file("heater.wiring", NO_BURNER_GROUND.replace("Bench heater", title))
    assert "\x1b" not in wirecheck("check", "heater.wiring").out
