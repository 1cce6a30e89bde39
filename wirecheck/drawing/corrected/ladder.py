"""The ladder of a correction: how it is to work, with what is to be taken away and to go in.

On a ladder one line stands for all leads of a net. So flags at its ends show where a lead comes off
or lands, and only one that runs straight between neighbours on a rung is drawn as a lead to add.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from itertools import chain, count
from typing import NamedTuple

from wirecheck.check.engine import Checked
from wirecheck.correct.rewired import Add, Exchange, Move, Rewired, TakeOut
from wirecheck.drawing.canvas import Canvas, Tag
from wirecheck.drawing.corrected.both import both, corrected_block
from wirecheck.drawing.geometry import Point
from wirecheck.drawing.ladder.marking import free_place, in_the_way
from wirecheck.drawing.ladder.plan import Plan, plan
from wirecheck.drawing.ladder.sheet import drawn, notes_of
from wirecheck.drawing.marks import flag_to_add, flag_to_take_away, lead_to_add, point_out
from wirecheck.drawing.sheet import TitleBlock, framed
from wirecheck.model.diagram import Lead, Terminal

LEGEND = (
    "Flags: x at the ends of a lead to take away, + where a lead is to land; a lead that moves has"
    " one number."
)


class Flagged(NamedTuple):
    """A lead as found or as it is to be, under the number of its flags."""

    number: int
    adds: bool
    lead: Lead
    words: str


def corrected_ladder(state: Rewired, date: str = "") -> Canvas:
    """Draw how the corrected diagram works, the ends of the leads that change flagged.

    Args:
        state: the diagram as found, with the changes that mend it.
        date: as it shall be printed in the title block.
    """
    checked = Checked(state.diagram, state.nets, (), (), ())
    laid_out = plan(state.nets)
    changed = list(_changed(state))
    listed = (f"{'; '.join(each.words for each in changed)}. {LEGEND}",) if changed else ()
    notes = (*listed, *notes_of(laid_out))
    block = corrected_block(state, checked, "Ladder", date, notes)
    return flagged_ladder(checked, laid_out, changed, block)


def flagged_ladder(
    checked: Checked, laid_out: Plan, changed: list[Flagged], block: TitleBlock
) -> Canvas:
    """Draw how a diagram works in a frame, the ends of some leads flagged."""
    sheet, places = drawn(checked, laid_out, block)
    _mark(sheet, changed, places)
    return framed(sheet, block)


def _changed(state: Rewired) -> Iterator[Flagged]:
    shown = both(state)
    leads, found = shown.checked.diagram.leads, len(state.found.leads)
    numbers = {lead: number for number, lead in enumerate(_in_turn(state), 1)}
    stays = [lead for lead in sorted(shown.away) if state.ends[lead] is not None]
    added = [*stays, *range(found, len(state.ends))]
    for lead in sorted(shown.away, key=numbers.__getitem__):
        yield _told(state, numbers[lead], leads[lead], adds=False)
    for place, lead in zip(sorted(shown.added), added, strict=True):
        yield _told(state, numbers[lead], leads[place], adds=True)


def _in_turn(state: Rewired) -> list[int]:
    """The leads in the order in which they are told to be changed, by their numbers in it."""
    turn: list[int] = []
    added = count(len(state.found.leads))
    for change in state.changes:
        match change:
            case Move(lead) | TakeOut(lead):
                turn.append(lead)
            case Exchange(lead, _end, other, _other_end):
                turn += [lead, other]
            case Add():
                turn.append(next(added))
    return list(dict.fromkeys(turn))


def _told(state: Rewired, number: int, lead: Lead, *, adds: bool) -> Flagged:
    sign = "+" if adds else "x"
    return Flagged(number, adds, lead, f"{sign}{number} {state.diagram.lead_name(lead)}")


def _mark(sheet: Canvas, changed: list[Flagged], places: Mapping[Terminal, Point]) -> None:
    """Flag both ends of every lead that changes; draw those to add that run straight."""
    terminals = list(places.values())
    for each in changed:
        ends = [places[end] for end in (each.lead.a, each.lead.b) if end in places]
        if each.adds and _are_neighbours(ends, terminals):
            tag = Tag(f"edit-{each.number}", ("edit", "add"), each.words)
            lead_to_add(sheet, ends, tag)
    taken, bounds = in_the_way(sheet), sheet.bounds()
    for each in chain((c for c in changed if not c.adds), (c for c in changed if c.adds)):
        flag = flag_to_add if each.adds else flag_to_take_away
        for end in (each.lead.a, each.lead.b):
            if end in places:
                at = free_place(places[end], taken, bounds)
                point_out(sheet, places[end], at)
                taken.append(flag(sheet, at, each.number, each.words))


def _are_neighbours(ends: list[Point], terminals: list[Point]) -> bool:
    """Whether two places stand on one level with no terminal between."""
    if len(ends) != 2 or ends[0].y != ends[1].y:
        return False
    low, high = sorted(at.x for at in ends)
    return low < high and not any(at.y == ends[0].y and low < at.x < high for at in terminals)
