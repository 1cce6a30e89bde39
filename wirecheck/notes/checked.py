"""A document checked: each of its blocks a diagram, and each variant of a block another."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from wirecheck.check.accepts import Accepted, sort_out
from wirecheck.check.engine import Checked, check
from wirecheck.language.read import ReadText
from wirecheck.language.variations import all_combinations, variations
from wirecheck.model.diagram import Diagram
from wirecheck.model.finding import NotChecked, Problem
from wirecheck.model.text import SourceFile
from wirecheck.notes.build import BuiltBlock, built_of
from wirecheck.notes.builds_on import Together, order_of
from wirecheck.notes.document import Block, Document
from wirecheck.notes.drawings import Wanted, wanted_drawings
from wirecheck.notes.edits import Margins, in_document, margins_of
from wirecheck.notes.problems import Problems


class CheckedDiagram(NamedTuple):
    """A diagram of a document.

    Attributes:
        block: which holds it.
        variant: name of the variant; None for what the block says without one.
        checked: the result, without what comments accept.
        accepted: the findings that they accept.
        drawn: the result with those, as a sheet shows it.
    """

    block: Block
    variant: str | None
    checked: Checked
    accepted: tuple[Accepted, ...]
    drawn: Checked


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


class _Drawn(NamedTuple):
    """A diagram checked in full; ``alone``: no two variants are together in it."""

    block: Block
    variant: str | None
    checked: Checked
    alone: bool = True


def check_document(document: Document, *, combined: bool = False) -> CheckedDocument:
    """Check every diagram of a document.

    Args:
        document: as read.
        combined: check variants together too, where they touch nothing in common; of these nothing
            is drawn.
    """
    order = order_of(document.blocks)
    problems = Problems(document.source.name)
    problems.add([*document.problems, *order.problems])
    margins = margins_of(document.blocks)
    known: dict[SourceFile, ReadText] = {}
    checks = [
        each._replace(checked=_in_document(each.checked, margins))
        for together in order.together
        if not (together.block.piece or together.block.lost)
        for each in _of_block(
            built_of(document, together, known), together, problems, combined=combined
        )
    ]
    diagrams: list[CheckedDiagram] = []
    for each, left in zip(checks, sort_out([each.checked for each in checks]), strict=True):
        problems.add(left.problems)
        diagrams.append(
            CheckedDiagram(each.block, each.variant, left.checked, left.accepted, each.checked)
        )
    alone = [(n, each.block, each.variant) for n, each in enumerate(checks) if each.alone]
    drawings, not_drawn = wanted_drawings(document.blocks, alone)
    problems.add(not_drawn)
    return CheckedDocument(document, tuple(diagrams), drawings, problems.in_order())


def _of_block(
    built_block: BuiltBlock, together: Together, problems: Problems, *, combined: bool
) -> Iterator[_Drawn]:
    """The checks of a block and of its variants."""
    block, (built, repeats) = together.block, built_block
    problems.add_of(block, built.problems)
    if together.incomplete:
        return
    if not repeats:
        yield _Drawn(block, None, _checked(built.diagram))
    variants = built.nested.variants
    for variant, variation in zip(variants, variations(built), strict=True):
        problems.add_of(block, variation.problems, variation.name, variant.opening.start)
        yield _Drawn(block, variation.name, _checked(variation.diagram))
    if not (combined and variants):
        return
    combinations = all_combinations(built)
    for variation in combinations.built:
        problems.add_of(block, variation.problems, variation.name, variants[0].opening.start)
        checked = _checked(variation.diagram)
        if combinations.left_out and variation is combinations.built[-1]:
            reason = f"{combinations.left_out} or more besides these were not built"
            left = NotChecked("combinations of variants", reason, block.opening)
            checked = checked._replace(not_checked=(*checked.not_checked, left))
        yield _Drawn(block, variation.name, checked, alone=False)


def _checked(diagram: Diagram) -> Checked:
    checked = check(diagram)
    if not diagram.claims:
        return checked
    from wirecheck.check.claim_findings import with_claims  # many notes claim nothing

    return with_claims(checked)


def _in_document(checked: Checked, margins: Margins) -> Checked:
    findings = tuple(in_document(finding, margins) for finding in checked.findings)
    return checked._replace(findings=findings)
