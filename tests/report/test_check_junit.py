"""JUnit XML: the published schema holds it, and counts agree with what is in it."""

from __future__ import annotations

from functools import cache
from pathlib import Path
from xml.etree import ElementTree as ET

import pytest
from xmlschema import XMLSchema10

import wirecheck
from tests.contract.source import ROOT
from tests.report.hostile import TEXTS, checked
from tests.sequence.heater import HEATER
from wirecheck.check.accepts import sort_out
from wirecheck.report.check_junit import NOTHING_FOUND, check_junit
from wirecheck.report.checks import CheckedFile

UNGROUNDED = HEATER.replace("wire box.GND to pilot.HOOD\n", "")
EXAMPLES = sorted((ROOT / "examples").glob("*.wiring"))


@cache
def schema() -> XMLSchema10:
    """The published schema."""
    return XMLSchema10(Path(__file__).parent / "published" / "junit-10.xsd")


def suites(files: list[CheckedFile]) -> list[ET.Element]:
    """The suites of some files, held to the schema, their counts right."""
    text = check_junit(files)
    schema().validate(text)
    root = ET.fromstring(text)  # noqa: S314 - our own text
    found = list(root)
    for suite in found:
        for count, name in (("failures", "failure"), ("errors", "error"), ("skipped", "skipped")):
            assert int(suite.get(count, "")) == len(suite.findall(f"testcase/{name}"))
        assert int(suite.get("tests", "")) == len(suite.findall("testcase"))
    for count in ("tests", "failures", "errors"):
        assert int(root.get(count, "")) == sum(int(each.get(count, "")) for each in found)
    return found


def file_of(text: str) -> CheckedFile:
    """One text checked, what it accepts sorted out."""
    built = wirecheck.load_text(text, "a.wiring")
    (one,) = sort_out([wirecheck.check(built.diagram)])
    problems = (*built.problems, *one.problems)
    return CheckedFile("a.wiring", problems, one.checked, accepted=one.accepted)


@pytest.mark.parametrize("file", EXAMPLES, ids=lambda file: file.stem)
def test_the_document_of_every_example_is_valid(file: Path) -> None:
    built = wirecheck.load(file)
    found = wirecheck.check(built.diagram)
    (suite,) = suites([CheckedFile(str(file), built.problems, found)])
    assert len(suite.findall("testcase/failure")) == len(found.findings)


def test_a_diagram_without_a_finding_has_one_case_that_passed() -> None:
    (suite,) = suites([file_of(HEATER)])
    (case,) = suite
    assert (case.get("name"), list(case)) == (NOTHING_FOUND, [])


def test_a_finding_failed_and_says_where() -> None:
    (suite,) = suites([file_of(UNGROUNDED)])
    failure = suite.find("testcase/failure")
    assert failure is not None
    assert failure.get("type") == "operation"
    assert failure.text
    assert failure.text.startswith("a.wiring:4:6: operation: no lead runs from box.GND to")


def test_a_claim_passed_failed_or_was_skipped() -> None:
    (suite,) = suites(
        [
            file_of(
                f"{HEATER}expect spark on, spark off during trial\n"
                "expect 24 V across box.SPARK and earth\n"
            )
        ]
    )
    line = HEATER.count("\n") + 1
    said = {case.get("name"): [each.tag for each in case] for case in suite}
    assert said == {
        f"claim-refuted in line {line}, column 18": ["failure"],
        f"spark on during trial in line {line}, column 8": [],
        f"24 V across box.SPARK and earth in line {line + 1}, column 8": ["skipped"],
    }


def test_what_is_accepted_or_known_was_skipped_with_the_reason() -> None:
    box = "part box is pilot-ignition-control: two-rod"
    file = file_of(UNGROUNDED.replace(box, f"{box}  # accept burner-ground-missing: a bench"))
    (finding,) = [each.finding for each in file.accepted]
    (suite,) = suites([file._replace(known=(finding,))])
    messages = [each.get("message", "") for each in suite.findall("testcase/skipped")]
    assert [message.partition(": ")[0] for message in messages] == [
        "known, by the baseline",
        "accepted, a bench",
    ]


def test_a_problem_is_an_error_also_of_a_file_that_was_not_read() -> None:
    file = file_of("part k is rely\n")
    read, unread = suites([file, CheckedFile("b.wiring", file.problems, None)])
    assert len(read.findall("testcase/error")) == len(unread.findall("testcase/error")) == 1


@pytest.mark.parametrize("text", TEXTS)
def test_hostile_texts_are_escaped_and_the_document_valid(text: str) -> None:
    for suite in suites(checked(text)):
        said = "".join(suite.itertext())
        assert all(each.isprintable() or each in "\n " for each in said)
        assert not [each for case in suite for part in case for each in part]
