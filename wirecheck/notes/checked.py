"""A document checked: each of its blocks a diagram, and each variant of a block another."""

from __future__ import annotations

from typing import NamedTuple

from wirecheck.check.accepts import Accepted, sort_out
from wirecheck.check.engine import Checked, check
from wirecheck.language.variations import variations
from wirecheck.model.diagram import Diagram
from wirecheck.model.finding import Problem
from wirecheck.notes.build import built_of
from wirecheck.notes.builds_on import order_of
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


def check_document(document: Document) -> CheckedDocument:
    """Check every diagram of a document."""
    order = order_of(document.blocks)
    problems = Problems(document.source.name)
    problems.add([*document.problems, *order.problems])
    checks: list[tuple[Block, str | None, Checked]] = []
    margins = margins_of(document.blocks)
    for together in order.together:
        block = together.block
        if block.piece or block.lost:
            continue
        built, repeats = built_of(document, together)
        problems.add_of(block, None, built.problems)
        if together.incomplete:
            continue
        if not repeats:
            checks.append((block, None, _checked(built.diagram, margins)))
        for variant, variation in zip(built.nested.variants, variations(built), strict=True):
            problems.add_of(block, variant, variation.problems)
            checks.append((block, variation.name, _checked(variation.diagram, margins)))
    sorted_out = sort_out([checked for _block, _variant, checked in checks])
    diagrams: list[CheckedDiagram] = []
    for (block, name, drawn), left in zip(checks, sorted_out, strict=True):
        problems.add(left.problems)
        diagrams.append(CheckedDiagram(block, name, left.checked, left.accepted, drawn))
    drawings, not_drawn = wanted_drawings(
        document.blocks, [(each.block, each.variant) for each in diagrams]
    )
    problems.add(not_drawn)
    return CheckedDocument(document, tuple(diagrams), drawings, problems.in_order())


def _checked(diagram: Diagram, margins: Margins) -> Checked:
    checked = check(diagram)
    if diagram.claims:
        from wirecheck.check.claim_findings import with_claims  # many notes claim nothing

        checked = with_claims(checked)
    findings = tuple(in_document(finding, margins) for finding in checked.findings)
    return checked._replace(findings=findings)
