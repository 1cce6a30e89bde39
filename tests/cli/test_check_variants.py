"""``wirecheck check``: variants and what a file claims, each told where it stands."""

from __future__ import annotations

import re

import pytest

from tests.cli.command_line import CommandLine
from tests.sequence.heater import HEATER

#: One claim that fails in the base, one that fails in a variant, and one that holds everywhere.
CLAIMING = f"""\
{HEATER}expect spark on during trial
expect 24 V across box.PV and box.COM during wait
variant loose
    remove wire box.GND to pilot.HOOD
    expect main-flame on during run
variant short
    set box: trial 60 s
end
"""
FIRST = HEATER.count("\n") + 1


def test_every_variant_is_an_entry_of_its_own(wirecheck: CommandLine) -> None:
    wirecheck.file("heater.wiring", CLAIMING)
    answer = wirecheck("check", "--as", "json", "heater.wiring")
    assert answer.code == 1
    entries = answer.document["files"]
    assert [(each["file"], each["variant"]) for each in entries] == [
        ("heater.wiring", None),
        ("heater.wiring", "loose"),
        ("heater.wiring", "short"),
    ]
    found = [[finding["rule"] for finding in each["findings"]] for each in entries]
    assert found == [
        ["claim-refuted"],
        ["burner-ground-missing", "claim-refuted", "claim-never-tested"],
        ["claim-refuted"],
    ]
    summary = answer.document["summary"]
    assert (summary["files"], summary["variants"]) == (1, 2)
    assert summary["claims"] == {"proved": 3, "refuted": 3, "never": 1, "undecided": 0}
    assert summary["findings"] == {"safety": 0, "operation": 3, "workmanship": 0}


def test_a_claim_says_what_was_computed_and_why(wirecheck: CommandLine) -> None:
    wirecheck.file("heater.wiring", CLAIMING)
    proved, refuted = wirecheck("check", "--as", "json", "heater.wiring").document["files"][0][
        "claims"
    ]
    assert (proved["claim"], proved["verdict"], proved["value"]) == (
        "spark on during trial",
        "proved",
        None,
    )
    assert refuted == {
        "file": "heater.wiring",
        "line": FIRST + 1,
        "column": 8,
        "end_line": FIRST + 1,
        "end_column": 38,
        "claim": "24 V across box.PV and box.COM during wait",
        "verdict": "refuted",
        "computed": "0 V",
        "value": 0.0,
        "unit": "V",
        "phase": "wait",
        "why": "the control rests between trials",
        "sentence": "claimed 24 V across box.PV and box.COM during wait; computed 0 V: "
        "the control rests between trials",
    }


def test_a_value_that_no_number_says_is_null(wirecheck: CommandLine) -> None:
    wirecheck.file("heater.wiring", f"{HEATER}expect no-continuity across box.SENSE and earth\n")
    (entry,) = wirecheck("check", "--as", "json", "heater.wiring").document["files"]
    (claim,) = entry["claims"]
    assert (claim["computed"], claim["value"], claim["unit"]) == ("no continuity", None, "ohm")


def test_the_text_tells_of_a_variant_only_what_its_base_has_not(wirecheck: CommandLine) -> None:
    wirecheck.file("heater.wiring", CLAIMING)
    out = wirecheck("check", "heater.wiring").out
    assert out.count("[claim-refuted]") == 1
    assert out.count("taken as given (common practice, no source): values of") == 1
    assert "heater.wiring: heater, variant loose\n" in out
    assert out.count("1 finding of the base diagram, told above, is here too") == 2
    assert re.search(
        r"^heater\.wiring, variant short: 11 leads: 1 operation finding$", out, re.MULTILINE
    )
    assert f"claims proved: 1 of 2:\n  heater.wiring:{FIRST}:8: spark on during trial: on\n" in out
    assert re.search(
        r"^2 variants, 32 leads, \d+ rules run, 3 of 7 claims proved: 3 operation findings$",
        out,
        re.MULTILINE,
    )


def test_variants_that_touch_nothing_in_common_are_combined_if_asked(
    wirecheck: CommandLine,
) -> None:
    wirecheck.file("heater.wiring", CLAIMING)
    answer = wirecheck("check", "--all-combinations", "--as", "json", "heater.wiring")
    entries = answer.document["files"]
    assert [each["variant"] for each in entries] == [None, "loose", "short", "loose + short"]
    assert "burner-ground-missing" in [each["rule"] for each in entries[-1]["findings"]]


def test_combinations_that_were_not_built_are_counted(wirecheck: CommandLine) -> None:
    options = "".join(f'variant v{n}\nnote "{n}"\nend\n' for n in range(9))
    wirecheck.file("many.wiring", f"part k is relay\n{options}")
    answer = wirecheck("check", "--all-combinations", "--as", "json", "many.wiring")
    entries = answer.document["files"]
    assert len(entries) == 1 + 9 + 256
    said = [item for each in entries for item in each["not_checked"]]
    (left,) = [item for item in said if item["what"] == "combinations of variants"]
    assert left["reason"].startswith("246 or more besides these")


def test_a_problem_in_a_variant_stands_with_the_variant(wirecheck: CommandLine) -> None:
    wirecheck.file("heater.wiring", f"{HEATER}variant v\nremove part foo\nend\n")
    answer = wirecheck("check", "--as", "json", "heater.wiring")
    assert answer.code == 2
    base, variant = answer.document["files"]
    assert base["problems"] == []
    (problem,) = variant["problems"]
    assert (problem["line"], problem["column"]) == (FIRST + 1, 13)


def test_claims_about_what_is_not_there_end_the_call_with_2(wirecheck: CommandLine) -> None:
    wirecheck.file("heater.wiring", f"{HEATER}expect main-vlave off during trial\n")
    answer = wirecheck("check", "heater.wiring")
    assert answer.code == 2
    assert f"heater.wiring:{FIRST}:8: problem: “main-vlave” is neither a part nor a" in answer.out


def test_variants_are_checked_after_a_fix_too(wirecheck: CommandLine) -> None:
    text = HEATER.replace("wire box.GND to pilot.HOOD\n", "")
    wirecheck.file("heater.wiring", f"{text}expect main-flame on during run\nvariant v\nend\n")
    answer = wirecheck("check", "--fix", "--as", "json", "heater.wiring")
    base, variant = answer.document["files"]
    assert [each["rule"] for each in base["fixed"]] == ["burner-ground-missing"]
    assert (base["findings"], variant["findings"]) == ([], [])
    assert base["claims"][0]["verdict"] == variant["claims"][0]["verdict"] == "proved"
    assert answer.code == 0


@pytest.mark.parametrize(("least", "code"), [("workmanship", 1), ("operation", 1), ("safety", 0)])
def test_a_call_fails_only_on_what_is_grave_enough(
    wirecheck: CommandLine, least: str, code: int
) -> None:
    wirecheck.file("heater.wiring", f"{HEATER}expect spark on during run\n")
    answer = wirecheck("check", "--fail-on", least, "heater.wiring")
    assert answer.code == code
    assert "[claim-refuted]" in answer.out


def test_a_problem_ends_the_call_with_2_whatever_it_fails_on(wirecheck: CommandLine) -> None:
    wirecheck.file("heater.wiring", "part k is rely\n")
    assert wirecheck("check", "--fail-on", "safety", "heater.wiring").code == 2
