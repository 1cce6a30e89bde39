"""The roster: which file is whose, from a table that a spreadsheet writes."""

from __future__ import annotations

import csv
import io
from collections.abc import Mapping
from pathlib import PurePath

from wirecheck.model.diagram import key_of
from wirecheck.model.finding import Problem
from wirecheck.model.text import SourceFile, Span

#: What the heading of a column may be called.
_FILE = ("file", "submission", "file name", "filename")
_NAME = ("name", "apprentice", "student")

#: Names by the file's name, and by it without its ending; compared by their keys.
Roster = Mapping[str, str]


def read_roster(text: str, name: str) -> tuple[Roster, tuple[Problem, ...]]:
    """Read a roster: two columns, file and name, with a heading or without.

    Args:
        text: comma- or semicolon-separated values.
        name: of its file, for messages.

    Returns:
        The names, and the lines that could not be used.
    """
    source = SourceFile(name, text)
    lines = text.removeprefix("\ufeff").splitlines(keepends=True)
    separator = ";" if lines and ";" in lines[0] and "," not in lines[0] else ","
    reader = csv.reader(io.StringIO("".join(lines)), delimiter=separator)
    names: dict[str, str] = {}
    problems: list[Problem] = []
    columns = (0, 1)
    try:
        for number, cells in enumerate(reader):
            row = [cell.strip() for cell in cells]
            if number == 0 and (found := _columns(row)):
                columns = found
            elif any(row):
                file, person = (row[at] if at < len(row) else "" for at in columns)
                if file and person:
                    names[key_of(file)] = names[key_of(PurePath(file).stem)] = person
                else:
                    what = "a line needs a file and a name"
                    problems.append(_problem(source, reader.line_num, what))
    except csv.Error as error:
        problems.append(_problem(source, reader.line_num, f"this is no table: {error}"))
    return names, tuple(problems)


def name_of(file: str, roster: Roster) -> str:
    """The apprentice of a file: by the roster, else by the file's name."""
    path = PurePath(file)
    for key in (path.name, path.stem):
        if key_of(key) in roster:
            return roster[key_of(key)]
    return path.stem


def _columns(row: list[str]) -> tuple[int, int] | None:
    """Which columns are which, if this is a heading."""
    words = [cell.casefold() for cell in row]
    file = next((words.index(each) for each in _FILE if each in words), None)
    name = next((words.index(each) for each in _NAME if each in words), None)
    return None if file is None or name is None else (file, name)


def _problem(source: SourceFile, line: int, message: str) -> Problem:
    start = source.line_starts[min(line, len(source.line_starts)) - 1]
    return Problem(message, Span(source, start, start))
