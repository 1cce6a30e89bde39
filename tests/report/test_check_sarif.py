"""SARIF: the standard's own schema holds it, and every finding is there once."""

from __future__ import annotations

import json
import re
from functools import cache
from pathlib import Path
from typing import Any

import pytest
from jsonschema import Draft4Validator

import wirecheck
from tests.contract.source import ROOT
from tests.report.hostile import TEXTS, checked
from tests.sequence.heater import HEATER
from wirecheck.check.accepts import sort_out
from wirecheck.report.check_sarif import check_sarif, message_text, uri
from wirecheck.report.checks import CheckedFile

UNGROUNDED = HEATER.replace("wire box.GND to pilot.HOOD\n", "")
EXAMPLES = sorted((ROOT / "examples").glob("*.wiring"))


@cache
def validator() -> Draft4Validator:
    """The published schema, which says itself that it is of draft 4."""
    path = Path(__file__).parent / "published" / "sarif-2.1.0.json"
    return Draft4Validator(json.loads(path.read_text(encoding="utf-8")))


def log(files: list[CheckedFile]) -> dict[str, Any]:
    """The log of some files, held to the schema."""
    document: dict[str, Any] = json.loads(json.dumps(check_sarif(files)))
    validator().validate(document)
    return document


def results(text: str) -> list[dict[str, Any]]:
    """The results of one text and its variants."""
    name = "a b/heater.wiring"
    built = wirecheck.load_text(text, name)
    variants = wirecheck.variants(built)
    diagrams = [built.diagram, *(each.diagram for each in variants)]
    sorted_out = sort_out([wirecheck.check(each) for each in diagrams])
    files = [
        CheckedFile(name, one.problems, one.checked, variant, accepted=one.accepted)
        for one, variant in zip(sorted_out, (None, *(each.name for each in variants)), strict=True)
    ]
    run: list[dict[str, Any]] = log(files)["runs"][0]["results"]
    return run


@pytest.mark.parametrize("file", EXAMPLES, ids=lambda file: file.stem)
def test_the_log_of_every_example_is_valid(file: Path) -> None:
    built = wirecheck.load(file)
    checked_file = CheckedFile(str(file), built.problems, wirecheck.check(built.diagram))
    document = log([checked_file])
    (run,) = document["runs"]
    assert len(run["results"]) == len(checked_file.findings)
    assert run["invocations"] == [{"executionSuccessful": True}]


def test_a_finding_is_a_result_with_its_place_its_terminals_and_its_mend() -> None:
    (result,) = results(UNGROUNDED)
    assert (result["ruleId"], result["level"]) == ("burner-ground-missing", "warning")
    place = result["locations"][0]["physicalLocation"]
    assert place == {
        "artifactLocation": {"uri": "a%20b/heater.wiring"},
        "region": {"startLine": 4, "startColumn": 6, "endLine": 4, "endColumn": 9},
    }
    names = [each["name"] for each in result["locations"][0]["logicalLocations"]]
    assert names == ["box.GND", "pilot.HOOD"]
    (change,) = result["fixes"][0]["artifactChanges"]
    (replacement,) = change["replacements"]
    assert replacement["insertedContent"]["text"] == "wire box.GND to pilot.HOOD: green\n"


def test_a_finding_of_several_variants_is_one_result() -> None:
    (result,) = results(f"{UNGROUNDED}variant v\nset box: trial 60 s\nend\n")
    assert result["properties"]["variants"] == ["base", "v"]


def test_a_problem_says_that_the_run_did_not_use_everything() -> None:
    built = wirecheck.load_text("part k is rely\n", "a.wiring")
    file = CheckedFile("a.wiring", built.problems, wirecheck.check(built.diagram))
    (run,) = log([file, CheckedFile("b.wiring", built.problems, None)])["runs"]
    assert run["invocations"] == [{"executionSuccessful": False}]
    assert {each["ruleId"] for each in run["results"]} == {"problem"}


def test_every_result_has_its_rule_described() -> None:
    built = wirecheck.load_text(
        f"{UNGROUNDED}expect spark off during damper-opening\nexpect spark off during trial\n"
        "# accept spark-lead-missing\npart k is rely\n"
    )
    (one,) = sort_out([wirecheck.check(built.diagram)])
    (run,) = log([CheckedFile("a", built.problems, one.checked, accepted=one.accepted)])["runs"]
    rules = run["tool"]["driver"]["rules"]
    assert [rules[each["ruleIndex"]]["id"] for each in run["results"]] == [
        each["ruleId"] for each in run["results"]
    ]
    assert {"accept-unused", "claim-refuted", "claim-never-tested", "problem"} <= {
        each["id"] for each in rules
    }
    assert all(rule["shortDescription"]["text"] for rule in rules)


def test_what_is_accepted_is_suppressed_and_all_else_is_not() -> None:
    box = "part box is pilot-ignition-control: two-rod"
    accepting = UNGROUNDED.replace(box, f"{box}  # accept burner-ground-missing: a bench")
    (result,) = results(accepting)
    assert result["suppressions"] == [{"kind": "inSource", "justification": "a bench"}]
    bridged = f"{HEATER}wire limit.1 to limit.2\n"
    rule = results(bridged)[0]["ruleId"]
    text = bridged.replace("to limit.2\n", f"to limit.2  # accept {rule}: a rig\n")
    (result,) = results(text)
    assert result["level"] == "note"
    assert result["suppressions"] == [{"kind": "inSource", "justification": "a rig"}]
    assert result["message"]["text"].startswith("accepted, a rig: ")
    states = [each["suppressions"] for each in results(f"{accepting}expect spark off during trial")]
    assert sorted(map(len, states)) == [0] * (len(states) - 1) + [1]
    assert len(states) > 1


def test_what_is_known_is_unchanged_and_the_rest_new() -> None:
    built = wirecheck.load_text(f"{UNGROUNDED}expect spark off during trial\n", "a.wiring")
    found = wirecheck.check(built.diagram)
    first, *rest = found.findings
    file = CheckedFile("a.wiring", (), found._replace(findings=tuple(rest)), known=(first,))
    (run,) = log([file])["runs"]
    assert {each["ruleId"]: each["baselineState"] for each in run["results"]} == {
        first.rule: "unchanged",
        rest[0].rule: "new",
    }


def test_a_message_has_no_links_and_no_placeholders() -> None:
    assert message_text("[a](b) {0} \\ \x1b") == "\\[a\\](b) {{0}} \\\\ \\x1b".replace(
        "\\x1b", "\\\\x1b"
    )


@pytest.mark.parametrize(
    ("name", "reference"),
    [
        ("a.wiring", "a.wiring"),
        ("a b/ü#?.wiring", "a%20b/%C3%BC%23%3F.wiring"),
        ("/x/a b.wiring", "file:///x/a%20b.wiring"),
        ("-", "-"),
    ],
)
def test_a_name_as_a_reference(name: str, reference: str) -> None:
    assert uri(name) == reference


@pytest.mark.parametrize("text", TEXTS)
def test_hostile_texts_are_escaped_and_the_log_valid(text: str) -> None:
    document = log(checked(text))
    messages = [each["message"]["text"] for each in document["runs"][0]["results"]]
    assert messages
    assert not re.search(r"(?<!\\)(?:\\\\)*[\[\]]", "".join(messages))
    assert all(each.isprintable() for message in messages for each in message)
