"""Lists as JSON: the form is published as ``shared/schemas/lists.json``."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from wirecheck.lists.lists import Lists
from wirecheck.lists.place import Place
from wirecheck.lists.tables import What
from wirecheck.lists.terminals import ListedTerminal
from wirecheck.lists.wires import Wire
from wirecheck.report.check_json import SCHEMA, finding_json, problem_json
from wirecheck.report.lists_files import ListsFile, summary

Json = dict[str, Any]


def lists_json(files: Sequence[ListsFile], what: Sequence[What]) -> Json:
    """Return the document of a run; lists that were not asked for are null in it."""
    listed = [file.lists for file in files if file.lists]
    return {
        "schema": SCHEMA,
        "files": [_file(file, what) for file in files],
        "summary": {
            "files": len(files),
            "leads": sum(len(each.wires) for each in listed),
            "parts": sum(len(each.parts) for each in listed),
            "terminals": sum(len(each.terminals) for each in listed),
            "problems": sum(len(file.problems) for file in files),
            "sentence": summary(files),
        },
    }


def _file(file: ListsFile, what: Sequence[What]) -> Json:
    return {
        "file": file.file,
        "variant": file.variant,
        "problems": [problem_json(problem) for problem in file.problems],
        "lists": _lists(file.lists, what) if file.lists else None,
        "pictures": list(file.pictures),
    }


def _lists(lists: Lists, what: Sequence[What]) -> Json:
    with_parts = "parts" in what
    return {
        "title": lists.checked.diagram.title,
        "findings": [finding_json(finding) for finding in lists.checked.findings],
        "wires": [_wire(wire) for wire in lists.wires] if "wires" in what else None,
        "parts": [_with_lists(part._asdict()) for part in lists.parts] if with_parts else None,
        "wire_needs": [need._asdict() for need in lists.needs] if with_parts else None,
        "terminals": (
            [_terminal(each) for each in lists.terminals] if "terminals" in what else None
        ),
    }


def _wire(wire: Wire) -> Json:
    form = _with_lists(wire._asdict())
    length = form.pop("run_length")
    first, last = wire.run or (0, 0)
    run = {"first": first, "last": last, "length": length} if wire.run else None
    return {**form, "start": _place(wire.start), "end": _place(wire.end), "run": run}


def _terminal(listed: ListedTerminal) -> Json:
    return {
        **_with_lists(listed._asdict()),
        "at": _place(listed.at),
        "landings": [
            {"wire": each.wire, "other": _place(each.other), "colour": each.colour}
            for each in listed.landings
        ],
    }


def _place(place: Place) -> Json:
    return place._asdict()


def _with_lists(form: Json) -> Json:
    """The same with lists for tuples, as JSON has it."""
    return {key: list(value) if type(value) is tuple else value for key, value in form.items()}
