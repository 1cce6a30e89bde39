"""What a check of a diagram says, for tests of rules."""

from __future__ import annotations

from wirecheck import check, load_text
from wirecheck.language.edit import apply
from wirecheck.model.finding import Finding


def findings(text: str) -> tuple[Finding, ...]:
    """Every finding of every rule; the text itself must have no problem."""
    built = load_text(text, "unit.wiring")
    assert [problem.message for problem in built.problems] == []
    return check(built.diagram).findings


def only(text: str) -> Finding:
    """The one finding of a diagram with one mistake."""
    found = findings(text)
    assert len(found) == 1, raised(text)
    return found[0]


def raised(text: str) -> list[tuple[str, str, str]]:
    """Rule, fault and covered text of each finding, in the order of the text."""
    return [(found.rule, found.fault, found.span.text) for found in findings(text)]


def mended(text: str) -> str:
    """The text once the edits of its one finding are made."""
    return apply(text, only(text).edits)
