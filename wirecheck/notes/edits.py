"""Edits of a block as edits of its document: each new line gets what stands before its lines."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import NamedTuple

from wirecheck.model.finding import Edit, Finding
from wirecheck.model.text import SourceFile
from wirecheck.notes.document import Block


class Margins(NamedTuple):
    """What stands before the lines of the blocks of a document, by the text of the block."""

    before: Mapping[SourceFile, tuple[str, ...]]


def margins_of(blocks: Iterable[Block]) -> Margins:
    """The margins of those blocks that have any."""
    return Margins({block.source: block.before for block in blocks if any(block.before)})


def in_document(finding: Finding, margins: Margins) -> Finding:
    """The finding with edits that can be made in the document as they stand."""
    if not margins.before or not finding.edits:
        return finding
    return finding._replace(edits=tuple(_in_document(edit, margins) for edit in finding.edits))


def _in_document(edit: Edit, margins: Margins) -> Edit:
    source = edit.span.source
    before = margins.before.get(source)
    if before is None or source.within is None:
        return edit
    number = edit.span.line - source.within.line
    margin = before[min(number, len(before) - 1)]
    return edit._replace(new_text=edit.new_text.replace("\n", f"\n{margin}"))
