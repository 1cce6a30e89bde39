"""The reports of one call: a record for each file, and what they come to together."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from typing import Any, NamedTuple

from wirecheck.model.finding import Breaks, Finding, Problem
from wirecheck.report.check_json import SCHEMA, problem_json
from wirecheck.report.check_text import problem_text
from wirecheck.report.checks import FINDINGS, NOTHING_FOUND, UNUSABLE, counted, found_words
from wirecheck.report.page import Page
from wirecheck.report.visible import visible


class ReportFile(NamedTuple):
    """The report of one file; ``path`` is "" where none was written."""

    file: str
    problems: tuple[Problem, ...]
    findings: tuple[Finding, ...]
    path: str

    @property
    def found(self) -> dict[Breaks, int]:
        """How many findings of each class it tells."""
        return Counter(finding.breaks for finding in self.findings)


def exit_code(files: Sequence[ReportFile]) -> int:
    """2 if something could not be used or written, else 1 if anything was found, else 0."""
    if any(file.problems for file in files):
        return UNUSABLE
    return FINDINGS if any(file.findings for file in files) else NOTHING_FOUND


def reports_text(files: Sequence[ReportFile], page: Page) -> Iterator[str]:
    """Write what was written, line by line."""
    for file in files:
        told = found_words(file.found) or ("not all read" if file.problems else "nothing found")
        yield from page.plain_headline(
            f"{visible(file.file)}: {told if file.path else 'no report'}"
        )
        for problem in file.problems:
            yield from problem_text(problem, page)
        if file.path:
            yield from page.item(visible(file.path))
    yield from page.plain_headline(_summary(files))


def reports_json(files: Sequence[ReportFile]) -> dict[str, Any]:
    """Return the document of a run: the form is published as ``shared/schemas/report.json``."""
    return {
        "schema": SCHEMA,
        "files": [
            {
                "file": file.file,
                "problems": [problem_json(problem) for problem in file.problems],
                "findings": {str(breaks): file.found.get(breaks, 0) for breaks in Breaks},
                "path": file.path or None,
            }
            for file in files
        ],
        "summary": {
            "files": len(files),
            "reports": sum(bool(file.path) for file in files),
            "problems": sum(len(file.problems) for file in files),
            "sentence": _summary(files),
        },
    }


def _summary(files: Sequence[ReportFile]) -> str:
    written = counted(sum(bool(file.path) for file in files), "report")
    return f"{written}. That nothing is found does not make an installation safe."
