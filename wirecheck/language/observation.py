"""An observation told by itself, beside the text of a diagram: ``spark on, main-valve off``."""

from __future__ import annotations

from typing import NamedTuple

from wirecheck.language import statements as st
from wirecheck.language.claims import read_claims
from wirecheck.language.read import read_text
from wirecheck.language.scope import Scope
from wirecheck.model.claim import Claim
from wirecheck.model.diagram import Diagram
from wirecheck.model.finding import Problem

_WORD = "observe "


class Told(NamedTuple):
    """What was told: claims, and what of it the diagram has not or cannot be read."""

    claims: tuple[Claim, ...]
    problems: tuple[Problem, ...]


def read_observation(diagram: Diagram, text: str) -> Told:
    """Read what would stand behind ``observe``, with the names of a diagram."""
    reading = read_text(_WORD + " ".join(text.split()), "seen")
    scope = Scope(
        parts=dict(diagram.parts), splices=dict(diagram.splices), problems=list(reading.problems)
    )
    claims: list[Claim] = []
    for parsed in reading.statements:
        if isinstance(parsed.statement, st.ObserveStatement):
            claims += read_claims(scope, parsed, parsed.statement)
    return Told(tuple(claims), tuple(scope.problems))
