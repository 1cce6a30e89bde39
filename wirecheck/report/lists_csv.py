"""A list as comma-separated values, one line a lead, a part, or a lead that lands on a terminal."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from wirecheck.lists.lists import Lists
from wirecheck.lists.place import Place
from wirecheck.lists.tables import What
from wirecheck.report.lists_files import ListsFile
from wirecheck.report.spreadsheet import csv_table

_Row = dict[str, str]

HEADERS: Mapping[What, tuple[str, ...]] = {
    "wires": (
        *(
            "file",
            "variant",
            "lead",
            "wire_number",
            "from",
            "from_part",
            "from_terminal",
            "from_label",
        ),
        *("to", "to_part", "to_terminal", "to_label", "kind", "colour", "size", "length"),
        *("run", "run_length", "cable", "voltage", "remarks"),
    ),
    "parts": (
        "file",
        "variant",
        "number",
        "part",
        "what",
        "kind",
        "ratings",
        "taken_as_given",
        "leads",
    ),
    "terminals": (
        *(
            "file",
            "variant",
            "at",
            "part",
            "terminal",
            "label",
            "for",
            "wire_number",
            "lead",
            "leads_to",
        ),
        *("to_part", "to_terminal", "to_label", "colour", "joined_inside_to"),
    ),
}


def lists_csv(files: Sequence[ListsFile], what: What) -> str:
    """Return one list of all files as a table.

    A terminal stands in one line for each lead that lands on it, an empty one in one line.
    """
    rows = (
        {"file": file.file, "variant": file.variant or "", **row}
        for file in files
        if file.lists
        for row in _ROWS[what](file.lists)
    )
    return csv_table(HEADERS[what], rows)


def _wires(lists: Lists) -> Iterator[_Row]:
    for wire in lists.wires:
        yield {
            "lead": str(wire.place),
            "wire_number": wire.number,
            **_place("from", wire.start),
            **_place("to", wire.end),
            "kind": wire.kind,
            "colour": wire.colour,
            "size": wire.size,
            "length": wire.length,
            "run": f"{wire.run[0]} to {wire.run[1]}" if wire.run else "",
            "run_length": wire.run_length,
            "cable": wire.cable,
            "voltage": wire.voltage,
            "remarks": ", ".join(wire.remarks),
        }


def _place(end: str, place: Place) -> _Row:
    return {
        end: place.shown,
        f"{end}_part": place.part,
        f"{end}_terminal": place.terminal,
        f"{end}_label": place.label,
    }


def _parts(lists: Lists) -> Iterator[_Row]:
    for part in lists.parts:
        yield {
            "number": str(part.place),
            "part": part.name,
            "what": part.what,
            "kind": part.kind,
            "ratings": ", ".join(part.ratings),
            "taken_as_given": ", ".join(part.taken),
            "leads": str(part.leads),
        }


def _terminals(lists: Lists) -> Iterator[_Row]:
    for each in lists.terminals:
        row = {
            "at": each.at.shown,
            "part": each.at.part,
            "terminal": each.at.terminal,
            "label": each.at.label,
            "for": each.about,
            "wire_number": each.number,
            "joined_inside_to": ", ".join(each.inside),
        }
        for landing in each.landings:
            to = _place("to", landing.other)
            to["leads_to"] = to.pop("to")
            yield {**row, **to, "lead": str(landing.wire), "colour": landing.colour}
        if not each.landings:
            yield row


_ROWS = {"wires": _wires, "parts": _parts, "terminals": _terminals}
