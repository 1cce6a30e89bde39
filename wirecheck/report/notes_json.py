"""What a check of notes says, as JSON: the form is published as ``shared/schemas/notes.json``.

A document's entry is made where the document is checked; only the entries are kept.
"""

from __future__ import annotations

import json
from collections.abc import Callable, Iterable, Iterator, Sequence
from textwrap import indent
from typing import Final

from wirecheck.report.check_json import SCHEMA, Json, check_json, place_json, problem_json
from wirecheck.report.notes_files import NoteFile, NoteTally, summary, together

_INDENT: Final = "  "


def note_json(file: NoteFile) -> Json:
    """Return the entry of one document."""
    passed_over = file.document.document.passed_over if file.document else ()
    return {
        "file": file.file,
        "problems": [problem_json(problem) for problem in file.problems],
        "passed_over": [
            {"place": place_json(item.span), "reason": item.reason}
            for item in passed_over
            if item.span
        ],
        "diagrams": _diagrams(file),
        "drawings": [
            {
                "block": each.wanted.block.name.text if each.wanted.block.name else None,
                "variant": each.wanted.variant,
                "sheet": each.wanted.sheet,
                "path": each.path,
                "state": each.state,
                "place": place_json(each.wanted.span),
            }
            for each in file.drawings
        ],
    }


def _diagrams(file: NoteFile) -> list[Json]:
    """An entry a diagram, as a check gives it, with the block that holds it."""
    entries = check_json(file.checks, 0)["files"]
    return [
        {
            "block": diagram.block.name.text if diagram.block.name else None,
            "on": [name.text for name in diagram.block.on],
            "place": place_json(diagram.block.opening),
            **entry,
        }
        for diagram, entry in zip([each.diagram for each in file.diagrams], entries, strict=True)
    ]


def closing_json(tallies: Sequence[NoteTally], rules: int) -> Json:
    """Return the summary of a run; ``rules`` is how many rules looked at each diagram."""
    total = together(tallies)
    return {
        "documents": len(tallies),
        "diagrams": total.diagrams,
        "leads": total.leads,
        "rules": rules,
        "findings": {str(breaks): count for breaks, count in total.findings},
        "claims": total.claims,
        "proved": total.proved,
        "problems": total.problems,
        "accepted": total.accepted,
        "known": total.known,
        "stale": total.stale,
        "drawn": total.drawn,
        "failed": [each.file for each in tallies if each.failed],
        "by_document": [{"file": each.file, "verdict": each.verdict} for each in tallies],
        "sentence": summary(tallies, rules),
    }


def written(entry: Json) -> str:
    """An entry as it stands in the document."""
    return indent(json.dumps(entry, indent=2), _INDENT * 2)


def document_of(entries: Iterable[str], closing: Callable[[], Json]) -> Iterator[str]:
    """Write the document of a run piece by piece, so that no two entries need be kept.

    Args:
        entries: what `written` gave for each document.
        closing: gives the summary, once all of them are there.
    """
    yield f'{{\n{_INDENT}"schema": {SCHEMA},\n{_INDENT}"documents": ['
    for number, entry in enumerate(entries):
        yield f"{',' if number else ''}\n{entry}"
    told = indent(json.dumps(closing(), indent=2), _INDENT).lstrip()
    yield f'\n{_INDENT}],\n{_INDENT}"summary": {told}\n}}\n'
