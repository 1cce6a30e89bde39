"""What a run of drawing did: which sheets were written, and what is marked on them."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Any, NamedTuple

from wirecheck.report.check_json import SCHEMA, problem_json
from wirecheck.report.check_text import problem_text
from wirecheck.report.checks import (
    NOTHING_FOUND,
    UNUSABLE,
    CheckedFile,
    counted,
    found_words,
    tally,
)
from wirecheck.report.page import Page
from wirecheck.report.visible import visible


class Drawing(NamedTuple):
    """A sheet that was written."""

    sheet: str
    file_format: str
    path: str


class DrawnFile(NamedTuple):
    """A checked file and its sheets; its problems include those of writing them."""

    checked: CheckedFile
    drawings: tuple[Drawing, ...]


def exit_code(files: Sequence[DrawnFile]) -> int:
    """2 if something could not be used or written, else 0: findings are marked, not judged."""
    return UNUSABLE if any(file.checked.problems for file in files) else NOTHING_FOUND


def drawings_text(files: Sequence[DrawnFile], page: Page) -> Iterator[str]:
    """Say what was written, and what could not be."""
    for drawn in files:
        for problem in drawn.checked.problems:
            yield from problem_text(problem, page)
        if drawn.drawings:
            found = found_words(tally([drawn.checked], 0).findings)
            marked = f"with {found} marked" if found else "with nothing found to mark"
            leads = counted(drawn.checked.leads, "lead")
            name = visible(drawn.checked.file)
            yield from page.plain_headline(f"{name}: {leads} drawn, {marked}")
        for drawing in drawn.drawings:
            yield f"  {visible(drawing.path)}"


def drawings_json(files: Sequence[DrawnFile]) -> dict[str, Any]:
    """Return the document of a run of drawing."""
    return {
        "schema": SCHEMA,
        "files": [_file_json(drawn) for drawn in files],
        "summary": {
            "files": len(files),
            "drawings": sum(len(drawn.drawings) for drawn in files),
            "problems": sum(len(drawn.checked.problems) for drawn in files),
        },
    }


def _file_json(drawn: DrawnFile) -> dict[str, Any]:
    found = tally([drawn.checked], 0).findings
    return {
        "file": drawn.checked.file,
        "variant": drawn.checked.variant,
        "problems": [problem_json(problem) for problem in drawn.checked.problems],
        "findings": {str(breaks): count for breaks, count in found.items()},
        "drawings": [
            {"sheet": each.sheet, "format": each.file_format, "path": each.path}
            for each in drawn.drawings
        ],
    }
