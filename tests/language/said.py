"""Loading a text in a test: the diagram it must give, or the problems it must have."""

from __future__ import annotations

import wirecheck
from wirecheck.model.diagram import Diagram


def load(text: str) -> Diagram:
    """The diagram of a text that has no problems."""
    built = wirecheck.load_text(text)
    assert [problem.message for problem in built.problems] == []
    return built.diagram


def problems(text: str) -> list[str]:
    """Each problem with its line, its column, and the words it stands at."""
    return [
        f"{problem.span.line}:{problem.span.column} [{problem.span.text}] {problem.message}"
        for problem in wirecheck.load_text(text).problems
    ]


def leads(text: str) -> list[str]:
    """The leads of a text that has no problems, as people read them."""
    diagram = load(text)
    return [diagram.lead_name(lead) for lead in diagram.leads]
