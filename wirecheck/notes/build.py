"""Building the diagram of a block from what it says and what the blocks it builds on say."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import chain
from pathlib import PurePath
from typing import NamedTuple

from wirecheck.language.build import Built, build
from wirecheck.language.read import Parsed, Reading, ReadText, read_together
from wirecheck.language.statements import ExpectStatement, FileEnd, ObserveStatement
from wirecheck.language.variants import nest
from wirecheck.model.collector import collector_paused
from wirecheck.model.text import SourceFile
from wirecheck.notes.builds_on import Together
from wirecheck.notes.document import Block, Document


class BuiltBlock(NamedTuple):
    """A block built, and whether its base is that of the block it builds on over again."""

    built: Built
    repeats: bool


@collector_paused()
def built_of(
    document: Document, together: Together, known: dict[SourceFile, ReadText]
) -> BuiltBlock:
    """Build the diagram of a block, with those it builds on; ``known`` are blocks read before.

    A piece gives all it has. A block that is a diagram itself keeps its variants, and its claims
    too, which are proved where they stand; they hold also in the variants of a block that holds
    nothing but variants of it.
    """
    block, below = together.block, together.below
    sources = [each.source for each in below]
    title = title_of(document, block)
    reading = read_together([*sources, block.source], document.path, title, known)
    *pieces, own = _parted(reading, len(below))
    said = nest(list(own))
    of_one = len(block.on) == 1 and bool(below) and not below[-1].piece
    repeats = of_one and bool(said.variants) and not said.base
    taken = [
        those if each.piece else _base(those, claims=repeats and each is below[-1])
        for each, those in zip(below, pieces, strict=True)
    ]
    reading.statements = [*chain.from_iterable(taken), *own]
    reading.lacks_a_file |= together.incomplete
    return BuiltBlock(build(reading), repeats)


def title_of(document: Document, block: Block) -> str:
    """What a diagram without a title is called: after the document and the block."""
    return f"{PurePath(document.source.name).stem}, {label_of(block)}"


def label_of(block: Block) -> str:
    """A block as people look for it."""
    return block.name.text if block.name else f"line {block.opening.line}"


def _parted(reading: Reading, below: int) -> Iterator[list[Parsed]]:
    """The statements of each text, those it includes among them, the block's own last."""
    start = 0
    for source in reading.sources[: below + 1]:
        end = next(
            number
            for number, parsed in enumerate(reading.statements[start:], start=start + 1)
            if parsed.source is source and isinstance(parsed.statement, FileEnd)
        )
        yield reading.statements[start:end]
        start = end


def _base(statements: Sequence[Parsed], *, claims: bool) -> list[Parsed]:
    """What a block says without its variants, with its claims or not."""
    base = nest(list(statements)).base
    of_claims = (ExpectStatement, ObserveStatement)
    return [parsed for parsed in base if claims or not isinstance(parsed.statement, of_claims)]
