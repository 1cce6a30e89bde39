"""The JSON form of ``wirecheck check --faults``."""

from __future__ import annotations

from typing import Literal

from pydantic import Field

from wirecheck.report.forms import Count, Form, Position, ProblemForm, Version


class FaultForm(Form):
    """One fault and what comes of it."""

    fault: Literal["open", "earthed", "touching", "stuck open", "welded"]
    at: str
    file: str
    line: Position
    column: Position
    severity: Literal["hazard", "latent loss of a protection", "damage", "no heat", "no effect"] = (
        Field(alias="class")
    )
    noticed: Literal["at once", "at the next cycle", "not noticed"]
    reason: str


class FaultsFileForm(Form):
    """Every single fault of one diagram, the worst first; ``already``: wrong without a fault."""

    file: str
    problems: list[ProblemForm]
    counted: dict[str, Count]
    already: list[str]
    faults: list[FaultForm]


class FaultsDocument(Form):
    """What ``wirecheck check --faults --as json`` prints."""

    version: Version = Field(alias="schema")
    files: list[FaultsFileForm]
