"""``wirecheck schema``, and that what every command prints as JSON has the form it publishes."""

from __future__ import annotations

import json
import shutil
from pathlib import Path
from typing import Any

import pytest
from jsonschema import Draft202012Validator

from tests.cli.command_line import CommandLine
from tests.contract.source import ROOT
from wirecheck.cli.main import COMMANDS
from wirecheck.report.published import published, published_names

EXAMPLES = sorted((ROOT / "examples").glob("*.wiring"))
FILES = [f"examples/{file.name}" for file in EXAMPLES]
HEATER = "examples/furnace-room-heater.wiring"
WRONG = "examples/no-burner-ground.wiring"

#: Commands quick enough to be asked about every example.
QUICK = ("check", "format", "lists", "meter", "sequence")
#: Commands that answer other programs as long as they run, and print no document.
TALKING = ("lsp", "serve")
#: A call of every other command, and of every other form, whose answer has the form of that name.
CALLS: dict[str, tuple[str, ...]] = {
    "compare": ("compare", HEATER, WRONG),
    "correct": ("correct", WRONG),
    "draw": ("draw", "--out", "build", WRONG),
    "explain": ("explain", "burner-ground-missing"),
    "faults": ("check", "--faults", WRONG),
    "grade": ("grade", "--key", HEATER, "--out", "build", WRONG),
    "kinds": ("kinds", "high-limit"),
    "notes": ("notes", "examples/binder/01-two-rod-heater.md"),
    "practice": ("practice", "--exercises", "1", "--out", "build", HEATER),
    "replace": ("replace", HEATER, "--with", "examples/replacing/other-control.wiring"),
    "report": ("report", "--out", "build", WRONG),
    "schema": ("schema",),
    "troubleshoot": ("troubleshoot", HEATER, "--seen", "pilot lights, spark goes on, no main"),
}


def held(name: str, document: dict[str, Any]) -> None:
    """Hold a document to the schema published under a name."""
    Draft202012Validator(published(name)).validate(document)


@pytest.fixture
def checkout(wirecheck: CommandLine) -> CommandLine:
    """A folder with the examples in it."""
    shutil.copytree(ROOT / "examples", wirecheck.folder / "examples")
    return wirecheck


@pytest.mark.parametrize("file", EXAMPLES, ids=lambda file: file.stem)
def test_what_is_printed_of_every_example_has_its_form(checkout: CommandLine, file: Path) -> None:
    for command in QUICK:
        answer = checkout(command, "--as", "json", f"examples/{file.name}")
        assert answer.code in (0, 1), answer.err
        held(command, answer.document)


@pytest.mark.parametrize("name", CALLS)
def test_what_every_other_command_prints_has_its_form(checkout: CommandLine, name: str) -> None:
    answer = checkout(*CALLS[name], "--as", "json")
    assert answer.code in (0, 1, 2), answer.err
    held(name, answer.document)


def test_a_baseline_has_its_form(checkout: CommandLine) -> None:
    answer = checkout("check", "--baseline", "known.json", "--write-baseline", *FILES)
    assert answer.code == 0, answer.err
    document = json.loads((checkout.folder / "known.json").read_text(encoding="utf-8"))
    assert len(document["known"]) > 3
    held("baseline", document)


def test_every_form_and_every_command_is_asked() -> None:
    assert {*QUICK, *CALLS, "baseline"} == {*published_names()}
    assert {*COMMANDS} - {*TALKING} <= {*QUICK, *CALLS}


@pytest.mark.parametrize("name", published_names())
def test_a_schema_is_one_itself_and_is_printed_as_published(
    wirecheck: CommandLine, name: str
) -> None:
    answer = wirecheck("schema", name)
    assert answer.code == 0
    assert answer.document == published(name)
    Draft202012Validator.check_schema(answer.document)


def test_the_schemas_are_listed_and_printed_together(wirecheck: CommandLine) -> None:
    listed = wirecheck("schema").out
    lines = [line for line in listed.splitlines() if line[0] != " "]
    assert [line.partition(":")[0] for line in lines] == [*published_names()]
    assert "check: What wirecheck check --as json prints.\n" in listed
    assert wirecheck("schema", "--all").document == {
        name: published(name) for name in published_names()
    }


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (("chek",), "there is no schema 'chek'; did you mean check?"),
        (("qqq",), "there is no schema 'qqq'; there are baseline, check"),
        (("check", "--all"), "not both"),
    ],
)
def test_a_schema_that_is_not_there_is_refused(
    wirecheck: CommandLine, words: tuple[str, ...], said: str
) -> None:
    answer = wirecheck("schema", *words)
    assert answer.code == 2
    assert said in answer.err


def test_a_document_of_another_form_is_not_held(wirecheck: CommandLine) -> None:
    document = wirecheck("schema", "--as", "json").document
    del document["schemas"]
    assert not Draft202012Validator(published("schema")).is_valid(document)
