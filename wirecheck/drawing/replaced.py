"""Sheets of a replacement: what comes off as found, and where everything lands then.

On the sheet as found the leads that are left over are crossed out; on the new ones every lead that
is to be landed on a new device, or run, is marked as on corrected sheets.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from wirecheck.check.engine import Checked
from wirecheck.drawing.canvas import Canvas, Letters
from wirecheck.drawing.connections.sheet import notes_of as connection_notes
from wirecheck.drawing.corrected.both import Both
from wirecheck.drawing.corrected.connections import marked_connections
from wirecheck.drawing.corrected.ladder import Flagged, flagged_ladder
from wirecheck.drawing.ladder.plan import plan
from wirecheck.drawing.ladder.sheet import notes_of as ladder_notes
from wirecheck.drawing.replaced_connections import replaced_connections
from wirecheck.drawing.sheet import TitleBlock, framed, title_block
from wirecheck.drawing.table import (
    BAR,
    BOLD,
    PLAIN,
    WIDTH,
    Column,
    Row,
    Words,
    heading,
    lines,
    paged,
    room_for,
    table,
)
from wirecheck.replace.old_comments import is_old_title
from wirecheck.replace.replacement import Replacement
from wirecheck.replace.words import AFTERWARDS, cross_rows, device_lines, old_mistakes

LEGEND_FOUND = (
    "Dashed and crossed out: this lead is left over; take it out, or cap it and tie it back. Every"
    " other lead of a device that goes out is landed anew, as the new sheets show."
)
LEGEND_NEW = (
    "A plus sign at the end of a lead: land that end. A hollow lead is new: run it, and land both"
    " ends."
)
GAS_SIDE = "There is work on the gas side too, which no lead shows: see the cross-reference."
OLD_TITLE = "The title is that of the unit as found; this sheet shows the unit as it is then."
LEGEND_FLAGS = "Flags: + at the ends of a lead that is landed anew or run; numbers as listed here."


def found_connections(done: Replacement, date: str = "") -> Canvas:
    """Draw what runs where as found, the leads that are left over crossed out."""
    checked = done.before.checked
    away = frozenset(n for n, ends in enumerate(done.landings.ends) if ends is None)
    notes = (*((LEGEND_FOUND,) if away else ()), *connection_notes(checked.diagram))
    block = _block(done, "Connections, as found", date, notes, before=True)
    return marked_connections(Both(_unmarked(checked), away, frozenset()), block)


def new_connections(done: Replacement, date: str = "") -> Canvas:
    """Draw what runs where then, the leads to land or to run marked."""
    checked = done.proof.checked
    notes = (LEGEND_NEW, *connection_notes(checked.diagram))
    block = _block(done, "Connections, replaced", date, notes)
    return replaced_connections(done, block)


def new_ladder(done: Replacement, date: str = "") -> Canvas:
    """Draw how it works then, the ends of the leads to land or to run flagged."""
    checked = done.proof.checked
    laid_out = plan(checked.nets)
    leads = checked.diagram.leads
    flagged = [
        Flagged(
            place,
            adds=True,
            lead=leads[number],
            words=f"+{place} {checked.diagram.lead_name(leads[number])}",
        )
        for place, number in enumerate(sorted(done.landed), 1)
    ]
    listed = f"{'; '.join(each.words for each in flagged)}. {LEGEND_FLAGS}"
    block = _block(done, "Ladder, replaced", date, (listed, *ladder_notes(laid_out)))
    return flagged_ladder(_unmarked(checked), laid_out, flagged, block)


def _unmarked(checked: Checked) -> Checked:
    """A diagram whose findings are counted in the title block, and marked on other sheets."""
    return checked._replace(findings=())


def _block(
    done: Replacement, sheet: str, date: str, notes: tuple[str, ...], *, before: bool = False
) -> TitleBlock:
    checked = (done.before if before else done.proof).checked
    tasks = () if before else tuple(f"{task.words}." for task in done.tasks)
    gas = () if before or not done.plan.gas_side else (GAS_SIDE,)
    first = tuple(filter(None, (old_mistakes(done),)))
    is_old = not before and is_old_title(checked.diagram.title, done.plan)
    title = (OLD_TITLE,) if is_old else ()
    notes = (*first, *gas, *tasks, *title, *notes)
    block = title_block(checked, sheet, date=date, notes=notes)
    return replace(block, findings=())


# ---- the cross-reference -----------------------------------------------------------------------

_DONE_AT = WIDTH - 42.0
_CROSSING = (
    Column("wire", 0.0, 40.0),
    Column("colour", 40.0, 100.0),
    Column("other end", 100.0, 230.0),
    Column("comes off", 230.0, 360.0),
    Column("goes to", 360.0, _DONE_AT),
    Column("done", _DONE_AT, WIDTH),
)
_TO_RUN = (
    Column("from", 0.0, 110.0),
    Column("to", 110.0, 220.0),
    Column("lead", 220.0, 330.0),
    Column("what for", 330.0, _DONE_AT),
    Column("done", _DONE_AT, WIDTH),
)


def cross_reference(done: Replacement, date: str = "") -> list[Canvas]:
    """The cross-reference on pages of A4, with room to tick off each lead."""
    block = replace(_block(done, "Cross-reference", date, ()), notes=())
    pages = list(paged(list(_rows(done)), block, block))
    return [
        framed(
            table(page, room_for(block), "Cross-reference", f"cross-{number}-"),
            replace(block, sheet=f"Cross-reference {number} of {len(pages)}"),
        )
        for number, page in enumerate(pages, 1)
    ]


def _rows(done: Replacement) -> Iterator[Row]:
    if mistakes := old_mistakes(done):
        yield _bar("Correct first", mistakes)
    yield _bar("Devices", *device_lines(done.plan))
    if done.crossings:
        yield _bar("Lead by lead", "Wire numbers and other ends are those of the diagram as found.")
        yield heading(_CROSSING)
        for texts in cross_rows(done):
            yield _row(_CROSSING, (*texts, ""), BOLD if " ! " in texts[-1] else PLAIN)
    if done.missing:
        yield _bar("Leads to run")
        yield heading(_TO_RUN)
        for new in done.missing:
            yield _row(_TO_RUN, (new.a, new.b, new.lead, new.why, ""))
    if done.tasks:
        yield _bar("To fit, cut or look at", *(task.words for task in done.tasks))
    if done.plan.gas_side:
        yield _bar("On the gas side", *(f"{line}." for line in done.plan.gas_side))
    yield _bar("Afterwards", *AFTERWARDS)


def _bar(title: str, *told: str) -> Row:
    below = (words for line in told for words in lines(line))
    return Row(across=(Words(title, BAR), *below), bar=True)


def _row(columns: tuple[Column, ...], texts: tuple[str, ...], style: Letters = PLAIN) -> Row:
    cells = zip(columns, texts, strict=True)
    return Row(tuple((column, tuple(lines(text, style, column))) for column, text in cells))


def sheets(done: Replacement, date: str = "") -> dict[str, Canvas]:
    """Every sheet of a replacement by its name; that as found only if a lead is left over."""
    drawn = {"found-connections": found_connections(done, date)} if done.left_over else {}
    drawn["replaced-connections"] = new_connections(done, date)
    drawn["replaced-ladder"] = new_ladder(done, date)
    for number, page in enumerate(cross_reference(done, date), 1):
        drawn[f"cross-reference-{number}"] = page
    return drawn
