"""Which sheets a document wants drawn, and the files they are: DOCUMENT.BLOCK.SHEET.svg.

The name of a block has no dot there and that of a variant stands behind a plus, so no two
documents of a folder, blocks or variants share a file.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from dataclasses import replace
from pathlib import Path, PurePath
from typing import Final, NamedTuple

from wirecheck.check.engine import Checked
from wirecheck.model.finding import Problem
from wirecheck.model.text import SourceFile, Span
from wirecheck.notes.document import Block
from wirecheck.notes.opening import Sheet

_NOT_IN_A_NAME: Final = re.compile(r"[^\w-]+")


class Wanted(NamedTuple):
    """A sheet that a block asks for.

    Attributes:
        number: of the diagram among those of the document.
        block: which holds it; ``span`` is where it asks.
        variant: the variant that is drawn; None for what the block says without one.
        sheet: which of the sheets.
        ending: the name of its file behind that of the document.
    """

    number: int
    block: Block
    variant: str | None
    sheet: Sheet
    span: Span
    ending: str

    def path(self, document: Path) -> Path:
        """The file, beside its document."""
        return document.with_name(f"{document.stem}.{self.ending}")


def as_drawn(name: str, wanted: Wanted, checked: Checked) -> Checked:
    """A diagram of a document as its sheet names it: by the document's bare name and its block.

    The sheet is the same however a call names the document.
    """
    block = wanted.block.name.text if wanted.block.name else ""
    variant = f", variant {wanted.variant}" if wanted.variant is not None else ""
    source = SourceFile(f"{PurePath(name).name}: {block}{variant}", "")
    return checked._replace(diagram=replace(checked.diagram, source=source))


def wanted_drawings(
    blocks: Iterable[Block], diagrams: Iterable[tuple[int, Block, str | None]]
) -> tuple[tuple[Wanted, ...], tuple[Problem, ...]]:
    """The sheets that the diagrams of a document are to have, and what cannot be drawn."""
    problems = list(_not_drawn(blocks))
    wanted: dict[str, Wanted] = {}
    for number, block, variant in diagrams:
        for sheet, span in block.sheets:
            if block.name is None:
                continue
            named = _in_file_name(block.name.text)
            named += f"+{_in_file_name(variant)}" if variant is not None else ""
            each = Wanted(number, block, variant, sheet, span, f"{named}.{sheet}.svg")
            first = wanted.setdefault(each.ending.casefold(), each)
            if first is not each and first.span != span:
                other = first.block.opening.line
                message = f"this drawing has the file of the block in line {other}; rename one"
                problems.append(Problem(message, span))
    return tuple(wanted.values()), tuple(problems)


def _not_drawn(blocks: Iterable[Block]) -> Iterator[Problem]:
    for block in blocks:
        if not block.sheets:
            continue
        span = block.sheets[0][1]
        if block.piece:
            yield Problem("a piece is no diagram: draw a block that builds on it", span)
        elif block.name is None:
            yield Problem("a block that is drawn needs a name, as its file has it", span)


def _in_file_name(name: str) -> str:
    """A name as any system takes it in a file's name and a link."""
    return _NOT_IN_A_NAME.sub("-", name).strip("-") or "-"
