"""A comparison of two files: the record, and what it comes to."""

from __future__ import annotations

from typing import NamedTuple

from wirecheck.compare.result import Comparison
from wirecheck.model.finding import Problem
from wirecheck.report.checks import FINDINGS, NOTHING_FOUND, UNUSABLE, counted


class ComparedFiles(NamedTuple):
    """What became of two files.

    Attributes:
        first, second: their names as given.
        problems: what could not be used of them.
        comparison: None where one could not be read at all.
    """

    first: str
    second: str
    problems: tuple[Problem, ...]
    comparison: Comparison | None


def exit_code(files: ComparedFiles) -> int:
    """2 if something could not be used, else 1 if they differ, else 0."""
    if files.problems or files.comparison is None:
        return UNUSABLE
    return NOTHING_FOUND if files.comparison.same else FINDINGS


def verdict(files: ComparedFiles) -> str:
    """Whether they do the same, in a sentence."""
    found = files.comparison
    if found is None:
        return "not compared"
    if found.how == "structure":
        return "they do the same: they are wired alike"
    if found.how == "function":
        how_many = counted(len(found.differences), "difference")
        return f"they do the same, with {how_many} in the wiring that no position of a switch shows"
    if not found.differences:
        return "they do not do the same: wired alike, with parts that are set otherwise"
    return f"they do not do the same: {counted(len(found.differences), 'difference')} in the wiring"
