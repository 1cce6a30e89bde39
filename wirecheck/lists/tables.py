"""The lists as tables of words, for a page of text and for a printed sheet."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Literal, NamedTuple

from wirecheck.lists.lists import Lists
from wirecheck.lists.parts import ListedPart, WireNeed
from wirecheck.lists.terminals import Landing, ListedTerminal
from wirecheck.lists.wires import Wire

What = Literal["wires", "parts", "terminals"]
WHAT: tuple[What, ...] = ("wires", "parts", "terminals")

_VOLTAGE = {"line": "LINE VOLTAGE", "ignition": "high voltage", "": ""}


class Table(NamedTuple):
    """A table of words.

    Attributes:
        title: what it lists.
        headings: of its columns.
        rows: a text for each column.
        line_voltage: whether each row is to bear the mark of line voltage.
        note: what there is to know to read it, "" if nothing.
    """

    title: str
    headings: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    line_voltage: tuple[bool, ...]
    note: str = ""


def tables(lists: Lists, what: Sequence[What]) -> Iterator[Table]:
    """The tables of some lists, in the order of `WHAT`."""
    if "wires" in what:
        yield _wires(lists.wires)
    if "parts" in what:
        yield _parts(lists.parts)
        if lists.needs:
            yield _needs(lists.needs)
    if "terminals" in what:
        yield _terminals(lists.terminals)


def _plain(title: str, headings: str, rows: Sequence[tuple[str, ...]], note: str = "") -> Table:
    return Table(title, tuple(headings.split("|")), tuple(rows), (False,) * len(rows), note)


def _wires(wires: Sequence[Wire]) -> Table:
    note = (
        "Wire numbers are those of the drawings: one for all leads that are one conductor."
        " “30 ft for 4-8” is the length of leads 4 to 8 together."
        if any(wire.run for wire in wires)
        else "Wire numbers are those of the drawings: one for all leads that are one conductor."
    )
    headings = ("lead", "wire", "from", "to", "colour", "size", "length", "remarks")
    rows = tuple(
        (
            str(wire.place),
            wire.number,
            wire.start.shown,
            wire.end.shown,
            wire.colour,
            wire.size,
            wire.length_words,
            ", ".join(_remarks(wire)),
        )
        for wire in wires
    )
    return Table("Wire list", headings, rows, tuple(w.voltage == "line" for w in wires), note)


def _remarks(wire: Wire) -> Iterator[str]:
    if wire.voltage:
        yield _VOLTAGE[wire.voltage]
    if wire.kind != "wire":
        yield wire.kind
    if wire.cable:
        yield f"in {wire.cable}"
    yield from wire.remarks


def _parts(parts: Sequence[ListedPart]) -> Table:
    rows = [
        (
            str(part.place),
            part.name,
            part.what,
            ", ".join(part.ratings),
            ", ".join(part.taken),
            str(part.leads),
        )
        for part in parts
    ]
    headings = "|part|what it is|ratings|taken as given|leads"
    return _plain("Parts list", headings, rows)


def _needs(needs: Sequence[WireNeed]) -> Table:
    rows = [
        (
            need.sort or "no colour or size typed",
            str(need.leads),
            need.length,
            str(need.unstated) if need.unstated else "",
        )
        for need in needs
    ]
    note = "Lengths are those typed: add what landing and dressing the leads takes."
    return _plain(
        "Wire needed, outside cables", "wire|leads|length|leads of no stated length", rows, note
    )


def _terminals(terminals: Sequence[ListedTerminal]) -> Table:
    rows: list[tuple[str, ...]] = [
        (
            each.at.shown,
            each.at.terminal if each.at.label else "",
            each.number,
            "; ".join(map(_landing, each.landings)) or _why_empty(each),
            each.about,
        )
        for each in terminals
    ]
    headings = "terminal|own name|wire|leads to|for"
    labelled = any(each.at.label for each in terminals)
    note = "“own name” is a labelled terminal's name in the part library." if labelled else ""
    if not labelled:
        headings = headings.replace("|own name", "", 1)
        rows = [(row[0], *row[2:]) for row in rows]
    return _plain("Terminals", headings, rows, note)


def _landing(landing: Landing) -> str:
    colour = f", {landing.colour}" if landing.colour else ""
    return f"{landing.other.shown} (lead {landing.wire}{colour})"


def _why_empty(each: ListedTerminal) -> str:
    return f"empty; joined inside to {', '.join(each.inside)}" if each.inside else "empty"
