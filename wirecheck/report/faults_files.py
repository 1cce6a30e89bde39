"""The fault campaigns of one run: a record a diagram."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from wirecheck.model.finding import Problem
from wirecheck.report.checks import NOTHING_FOUND, UNUSABLE

if TYPE_CHECKING:
    from collections.abc import Sequence

    from wirecheck.faults.campaign import Campaign


class FaultsFile(NamedTuple):
    """What single faults come to in one file; no campaign where it could not be read."""

    file: str
    problems: tuple[Problem, ...]
    campaign: Campaign | None


def exit_code(files: Sequence[FaultsFile]) -> int:
    """2 if something could not be used, else 0: that faults have effects is no mistake."""
    return UNUSABLE if any(file.problems for file in files) else NOTHING_FOUND
