"""Edits of a block as edits of its document: each new line gets what stands before its lines."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import NamedTuple

from wirecheck.model.finding import Edit, Finding
from wirecheck.model.text import SourceFile
from wirecheck.notes.document import Block


class Margin(NamedTuple):
    """What stands before each line of a block, and before those of them that hold something."""

    before: tuple[str, ...]
    usual: str


Margins = Mapping[SourceFile, Margin]


def margins_of(blocks: Iterable[Block]) -> Margins:
    """The margins of those blocks that have any, by their text."""
    return {block.source: _margin(block) for block in blocks if any(block.before)}


def _margin(block: Block) -> Margin:
    lines = zip(block.source.text.split("\n"), block.before, strict=False)
    usual = next((margin for line, margin in lines if line.strip()), block.before[-1])
    return Margin(block.before, usual)


def in_document(finding: Finding, margins: Margins) -> Finding:
    """The finding with edits that can be made in the document as they stand."""
    if not margins or not finding.edits:
        return finding
    return finding._replace(edits=tuple(_in_document(edit, margins) for edit in finding.edits))


def _in_document(edit: Edit, margins: Margins) -> Edit:
    source = edit.span.source
    margin = margins.get(source)
    if margin is None or source.within is None:
        return edit
    number = edit.span.line - source.within.line
    here = margin.before[min(number, len(margin.before) - 1)]
    text = edit.new_text.replace("\n", f"\n{margin.usual}")
    at_line_start = edit.span.start == source.line_span(edit.span.start)[0]
    if at_line_start and edit.new_text.endswith("\n"):
        # The line that stood there keeps its own margin, which may be that of a blank line.
        lead = margin.usual.removeprefix(here) if margin.usual.startswith(here) else ""
        text = f"{lead}{text.removesuffix(margin.usual)}{here}"
    return edit._replace(new_text=text)
