"""A diagram with the leads before and after a correction in it, and what the sheets say of them."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from typing import NamedTuple

from wirecheck.check.engine import Checked
from wirecheck.circuit.nets import Nets
from wirecheck.correct.rewired import Rewired
from wirecheck.correct.rewrite import words_of
from wirecheck.drawing.sheet import TitleBlock, title_block
from wirecheck.model.diagram import Diagram


class Both(NamedTuple):
    """Every lead before and after.

    Attributes:
        checked: all leads, and the nets as they are after the correction; no findings.
        away: numbers in it of the leads to take away.
        added: of those that go in.
    """

    checked: Checked
    away: frozenset[int]
    added: frozenset[int]


class _NetsAfter(Nets):
    """The nets after a correction, for a diagram that shows the leads before it too."""

    def __init__(self, state: Rewired, shown: Diagram) -> None:
        super().__init__(state.diagram)
        self.diagram = shown
        for lead in shown.leads:
            for end in (lead.a, lead.b):
                if end not in self.net_of:
                    self.net_of[end] = len(self.members)
                    self.members.append([end])
                    self.elements.add_node(self.net_of[end])


def both(state: Rewired) -> Both:
    """Put the leads before and after a correction into one diagram."""
    found = state.found.leads
    pairs = [(lead.a, lead.b) for lead in found]
    away = [number for number, ends in enumerate(pairs) if state.ends[number] != ends]
    moved = [number for number in away if state.ends[number] is not None]
    added = [state.lead(number) for number in (*moved, *range(len(found), len(state.ends)))]
    diagram = replace(state.diagram, leads=(*found, *added), _shown={})
    checked = Checked(diagram, _NetsAfter(state, diagram), (), (), ())
    return Both(checked, frozenset(away), frozenset(range(len(found), len(diagram.leads))))


def corrected_block(
    state: Rewired, checked: Checked, sheet: str, date: str, notes: tuple[str, ...]
) -> TitleBlock:
    """Return the title block of a corrected sheet: what to do stands below the drawing."""
    block = title_block(checked, f"{sheet}, corrected", date=date, notes=(*_to_do(state), *notes))
    count = len(state.changes)
    return replace(block, summary=f"{count} edit{'s' * (count > 1)} marked")


def _to_do(state: Rewired) -> Iterator[str]:
    for number, change in enumerate(state.changes, 1):
        yield f"{number}. {words_of(state.found, change, state)}"
