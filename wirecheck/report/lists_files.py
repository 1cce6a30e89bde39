"""The lists of one call: a record a file, and what they come to together."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, NamedTuple

from wirecheck.model.finding import Problem
from wirecheck.report.checks import NOTHING_FOUND, UNUSABLE, counted

if TYPE_CHECKING:
    from wirecheck.lists.lists import Lists


class ListsFile(NamedTuple):
    """The lists of one file.

    Attributes:
        file: its name as given.
        problems: what could not be used of it, or written.
        lists: its lists; None where the file could not be read at all.
        pictures: paths of the pages that were drawn.
        variant: name of the variant; None for the base diagram.
    """

    file: str
    problems: tuple[Problem, ...]
    lists: Lists | None
    pictures: tuple[str, ...] = ()
    variant: str | None = None


def exit_code(files: Sequence[ListsFile]) -> int:
    """2 if something could not be used, else 0: whether it is right is for a check to say."""
    return UNUSABLE if any(file.problems for file in files) else NOTHING_FOUND


def as_drawn(lists: Lists) -> str:
    """That a list is of a unit with mistakes in it; "" if the rules found none."""
    found = len(lists.checked.findings)
    if not found:
        return ""
    return (
        f"A check has {counted(found, 'finding')} on this diagram: it is listed as drawn, not as"
        " it should be."
    )


def summary(files: Sequence[ListsFile]) -> str:
    """The last line of a report."""
    listed = [file.lists for file in files if file.lists]
    words = [
        counted(len(listed), "diagram"),
        counted(sum(len(each.wires) for each in listed), "lead"),
        counted(sum(len(each.parts) for each in listed), "part"),
        counted(sum(len(each.terminals) for each in listed), "terminal"),
    ]
    problems = sum(len(file.problems) for file in files)
    words += [counted(problems, "problem")] if problems else []
    return f"{', '.join(words)}. A list says what is drawn, not that it is right."
