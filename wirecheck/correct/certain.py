"""The edits that a check is sure of, made one after the other.

An edit set of a finding is certain if after it fewer findings are left, none of them new, and no
safety has gone; each is judged on the text as the ones before it left it.
"""

from __future__ import annotations

from collections import Counter
from typing import NamedTuple

from wirecheck.check.engine import Checked, check
from wirecheck.correct.never import bridged
from wirecheck.correct.proof import lost_safeties
from wirecheck.language.accepts import accepts
from wirecheck.language.edit import apply
from wirecheck.language.load import load_text
from wirecheck.model.diagram import Diagram
from wirecheck.model.finding import Finding


class Step(NamedTuple):
    """A finding that was mended: its words, and what was done."""

    finding: Finding
    words: tuple[str, ...]


class Fixed(NamedTuple):
    """What became of a diagram: what was done, the text after it, and what is still found."""

    steps: tuple[Step, ...]
    text: str
    checked: Checked


def fixed(diagram: Diagram) -> Fixed:
    """Make every certain edit, the worst finding first."""
    steps: list[Step] = []
    checked = check(diagram)
    while (mended := _one_mended(checked)) is not None:
        step, checked = mended
        steps.append(step)
    return Fixed(tuple(steps), checked.diagram.source.text, checked)


def _one_mended(checked: Checked) -> tuple[Step, Checked] | None:
    """The worst finding with a certain edit, and the check after it; what is accepted stays."""
    stated = [each for source in checked.diagram.sources for each in accepts(source)]
    for finding in sorted(checked.findings, key=lambda each: -each.breaks):
        if any(each.covers(finding) for each in stated):
            continue
        after = _after(checked, finding)
        if after is not None and _is_better(checked, after):
            return Step(finding, tuple(edit.words for edit in finding.edits)), after
    return None


def _after(checked: Checked, finding: Finding) -> Checked | None:
    """The check of the text with a finding's edits made; None where they cannot be."""
    source = checked.diagram.source
    edits = finding.edits
    if not edits or any(edit.span.source is not source for edit in edits):
        return None
    try:
        text = apply(source.text, edits)
    except ValueError:
        return None
    before, after = load_text(source.text, source.name), load_text(text, source.name)
    if len(after.problems) > len(before.problems):
        return None
    return check(after.diagram)


def _is_better(before: Checked, after: Checked) -> bool:
    had, has = _counted(before), _counted(after)
    fewer = sum(has.values()) < sum(had.values()) and not has - had
    kept = not lost_safeties(before.nets, after.nets)
    return fewer and kept and bridged(after.nets) <= bridged(before.nets)


def _counted(checked: Checked) -> Counter[tuple[str, str, tuple[str, ...]]]:
    return Counter((each.rule, each.fault, each.terminals) for each in checked.findings)
