"""A document checked: each of its blocks a diagram, and each variant of a block another."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from itertools import chain
from pathlib import PurePath
from typing import NamedTuple

from wirecheck.check.engine import Checked, check
from wirecheck.language.build import Built, build
from wirecheck.language.read import Parsed, read_together
from wirecheck.language.statements import ExpectStatement, FileEnd, ObserveStatement
from wirecheck.language.variants import nest
from wirecheck.language.variations import variations
from wirecheck.model.collector import collector_paused
from wirecheck.model.diagram import Diagram
from wirecheck.model.finding import Problem
from wirecheck.notes.builds_on import Together, order_of
from wirecheck.notes.document import Block, Document
from wirecheck.notes.drawings import Wanted, wanted_drawings
from wirecheck.notes.edits import Margins, in_document, margins_of


class CheckedDiagram(NamedTuple):
    """A diagram of a document.

    Attributes:
        block: which holds it.
        variant: name of the variant; None for what the block says without one.
        checked: the result.
    """

    block: Block
    variant: str | None
    checked: Checked


class CheckedDocument(NamedTuple):
    """A document as it was checked.

    Attributes:
        document: what was read.
        diagrams: its diagrams in the order of the text.
        drawings: the sheets its blocks want drawn.
        problems: every problem in it, each once.
    """

    document: Document
    diagrams: tuple[CheckedDiagram, ...]
    drawings: tuple[Wanted, ...]
    problems: tuple[Problem, ...]


def check_document(document: Document) -> CheckedDocument:
    """Check every diagram of a document."""
    order = order_of(document.blocks)
    problems = [*document.problems, *order.problems]
    diagrams: list[CheckedDiagram] = []
    margins = margins_of(document.blocks)
    for together in order.together:
        block = together.block
        if block.piece or block.lost:
            continue
        built = built_of(document, together)
        problems += built.problems
        if _says_something(block, built):
            diagrams.append(CheckedDiagram(block, None, _checked(built.diagram, margins)))
        for variation in variations(built):
            problems += variation.problems
            checked = _checked(variation.diagram, margins)
            diagrams.append(CheckedDiagram(block, variation.name, checked))
    drawings, not_drawn = wanted_drawings(
        document.blocks, [(each.block, each.variant) for each in diagrams]
    )
    problems += not_drawn
    return CheckedDocument(document, tuple(diagrams), drawings, _told_once(document, problems))


def _checked(diagram: Diagram, margins: Margins) -> Checked:
    checked = check(diagram)
    findings = tuple(in_document(finding, margins) for finding in checked.findings)
    return checked._replace(findings=findings)


def _told_once(document: Document, problems: Iterable[Problem]) -> tuple[Problem, ...]:
    """Each problem once, those of the document before those of included files."""
    unique = {(str(each.span), each.message): each for each in problems}
    name = document.source.name
    return tuple(
        sorted(
            unique.values(),
            key=lambda each: (
                each.span.file != name,
                each.span.file,
                each.span.line,
                each.span.column,
            ),
        )
    )


@collector_paused()
def built_of(document: Document, together: Together) -> Built:
    """Build the diagram of a block, with those it builds on."""
    block, below = together.block, together.below
    sources = [each.source for each in below]
    reading = read_together([*sources, block.source], document.path, title_of(document, block))
    whole = {id(each.source): each.piece for each in below}
    reading.statements = list(chain.from_iterable(_kept(reading.statements, whole)))
    reading.lacks_a_file |= together.incomplete
    return build(reading)


def title_of(document: Document, block: Block) -> str:
    """What a diagram without a title is called: after the document and the block."""
    return f"{PurePath(document.source.name).stem}, {label_of(block)}"


def label_of(block: Block) -> str:
    """A block as people look for it."""
    return block.name.text if block.name else f"line {block.opening.line}"


def _kept(statements: Sequence[Parsed], whole: dict[int, bool]) -> Iterator[Sequence[Parsed]]:
    """What a block takes from those below it.

    A piece gives all it has. A block that is a diagram itself keeps its claims and its variants:
    they are proved and checked where they stand.
    """
    start = 0
    for number, parsed in enumerate(statements):
        if isinstance(parsed.statement, FileEnd) and id(parsed.source) in whole:
            those = statements[start : number + 1]
            yield those if whole[id(parsed.source)] else _without_claims(nest(list(those)).base)
            start = number + 1
    yield statements[start:]


def _without_claims(statements: Sequence[Parsed]) -> list[Parsed]:
    claims = (ExpectStatement, ObserveStatement)
    return [parsed for parsed in statements if not isinstance(parsed.statement, claims)]


def _says_something(block: Block, built: Built) -> bool:
    """False for a block that holds nothing but variants of what it builds on."""
    if not block.on or not built.nested.variants:
        return True
    return any(parsed.source is block.source for parsed in built.nested.base)
