"""What a run of formatting gives: the canonical text of each file, or how it differs."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Any, NamedTuple

from wirecheck.model.finding import Problem
from wirecheck.report.check_json import SCHEMA, problem_json
from wirecheck.report.checks import FINDINGS, NOTHING_FOUND, UNUSABLE


class FormattedFile(NamedTuple):
    """A file before and after; both are empty where it could not be read.

    ``before`` is the text with the line ends as they stand in the file, a byte-order mark
    included, so that it is equal to ``after`` only where nothing would change.
    """

    file: str
    before: str
    after: str
    problems: tuple[Problem, ...]

    @property
    def changes(self) -> bool:
        """Whether the file is not in the canonical form."""
        return self.before != self.after


def exit_code(files: Sequence[FormattedFile], *, judged: bool) -> int:
    """2 if something could not be used, else 1 if it is ``judged`` and something would change."""
    if any(file.problems for file in files):
        return UNUSABLE
    return FINDINGS if judged and any(file.changes for file in files) else NOTHING_FOUND


def difference(file: FormattedFile) -> Iterator[str]:
    """Write how a file changes, as a unified diff."""
    from difflib import unified_diff

    # Only \n ends a line here: a stray \r or a byte-order mark is a difference to be seen.
    before, after = file.before.split("\n"), file.after.split("\n")
    lines = unified_diff(before, after, file.file, f"{file.file} (formatted)", lineterm="")
    yield from lines


def formatted_json(files: Sequence[FormattedFile]) -> dict[str, Any]:
    """Return the document of a run of formatting."""
    return {
        "schema": SCHEMA,
        "files": [
            {
                "file": file.file,
                "changes": file.changes,
                "text": file.after,
                "problems": [problem_json(problem) for problem in file.problems],
            }
            for file in files
        ],
        "summary": {
            "files": len(files),
            "changes": sum(file.changes for file in files),
            "problems": sum(len(file.problems) for file in files),
        },
    }
