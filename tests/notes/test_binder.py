"""The example binder: every note holds what it promises, the wrong ones in the one way they are."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.contract.source import ROOT
from wirecheck import check_note
from wirecheck.notes.checked import CheckedDocument
from wirecheck.notes.document import SUFFIXES

BINDER = ROOT / "examples" / "binder"
NOTES = sorted(path.name for path in BINDER.iterdir() if path.suffix in SUFFIXES)

#: Each wrong note, with the block, the rule and the line of everything found in it.
WRONG = {
    "08-wait-between-trials.md": {("heater", "claim-refuted", 23)},
    "09-damper-plug-left-in.md": {("as-found", "damper-plug-left-in", 15)},
    "10-ground-left-off.md": {
        ("heater", "burner-ground-missing", 11),
        ("heater", "claim-never-tested", 21),
    },
    "11-limit-in-common.txt": {
        ("drying-room", "safety-in-common", 17),
        ("drying-room", "claim-refuted", 23),
    },
    "12-valve-order.md": {("heater", "valve-leads-out-of-order", 18)},
}
#: The one that was mistyped, with the line and column of each problem.
MISTYPED = {"13-mistyped.md": [(8, 15), (14, 25), (19, 24), (22, 38)]}
RIGHT = [name for name in NOTES if name not in {*WRONG, *MISTYPED}]


def checked(name: str) -> CheckedDocument:
    return check_note(BINDER / name)


def found(document: CheckedDocument) -> set[tuple[str, str, int]]:
    return {
        (each.block.name.text if each.block.name else "", finding.rule, finding.span.line)
        for each in document.diagrams
        for finding in each.checked.findings
    }


def test_the_binder_has_notes_of_every_make() -> None:
    assert len(NOTES) >= 12
    assert {Path(name).suffix for name in NOTES} == {".md", ".txt"}
    documents = [checked(name) for name in NOTES]
    blocks = [block for each in documents for block in each.document.blocks]
    assert any(block.piece for block in blocks)
    assert sum(bool(block.on) for block in blocks) >= 6
    assert {sheet for block in blocks for sheet, _span in block.sheets} == {
        "ladder",
        "connections",
    }
    assert sum(each.variant is not None for doc in documents for each in doc.diagrams) >= 5
    assert len({any(block.before) for block in blocks}) == 2


@pytest.mark.parametrize("name", RIGHT)
def test_a_right_note_raises_nothing_and_every_claim_of_it_holds(name: str) -> None:
    document = checked(name)
    assert (found(document), document.problems) == (set(), ())
    claims = [answer for each in document.diagrams for answer in each.checked.claims]
    assert claims
    assert {answer.verdict for answer in claims} == {"proved"}


@pytest.mark.parametrize("name", WRONG)
def test_a_wrong_note_raises_what_it_was_made_for(name: str) -> None:
    document = checked(name)
    assert (found(document), document.problems) == (WRONG[name], ())


@pytest.mark.parametrize("name", MISTYPED)
def test_a_mistyped_note_has_its_problems_and_no_other(name: str) -> None:
    document = checked(name)
    assert [(each.span.line, each.span.column) for each in document.problems] == MISTYPED[name]
    assert found(document) == set()
