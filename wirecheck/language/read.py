"""Reading texts: statements with their includes in place, every problem kept.

Reading stops at nothing: what cannot be used becomes a problem with its place, the rest goes on.
"""

from __future__ import annotations

import re
import stat
from collections.abc import Sequence
from dataclasses import dataclass, field
from pathlib import Path
from typing import NamedTuple, cast

from lark import UnexpectedInput

from wirecheck.language.characters import decode, odd_characters
from wirecheck.language.cut import cut
from wirecheck.language.parser import parse_statement
from wirecheck.language.statements import FileEnd, IncludeStatement, Name, Statement
from wirecheck.model.diagram import key_of
from wirecheck.model.finding import Problem
from wirecheck.model.text import SourceFile, Span

#: Larger files are refused: a hundred thousand leads take about 6 MB.
LARGEST_FILE_BYTES = 16 * 1024 * 1024
#: Files that may be read for one diagram, the first included.
MOST_FILES = 200

_MOST_NAMED = 8
_DECLARED = re.compile(
    r'\s*(?:part|kind|splice|cable)\s+(?:"((?:[^"\n]|"")*)"|([^\s:,"]+))', re.IGNORECASE
)


class Parsed(NamedTuple):
    """One statement and where it stands."""

    statement: Statement
    source: SourceFile
    start: int
    end: int

    @property
    def span(self) -> Span:
        """The whole statement."""
        return Span(self.source, self.start, self.end)

    def at(self, name: Name) -> Span:
        """The place of one of its names."""
        return Span(self.source, name.start, name.end)


@dataclass(slots=True)
class Reading:
    """All statements of a diagram, includes put in their place.

    Attributes:
        source: the file first named; ``sources`` also has the included ones.
        statements: in the order of the text, a `FileEnd` behind those of each file.
        problems: what could not be read.
        spoiled: keys of the names whose declaration could not be read: that they are not known
            later is no problem of its own.
        lacks_a_file: an include could not be read, so names may be missing.
        title: of the diagram, if the text states none; "" for the file's name.
    """

    source: SourceFile
    sources: list[SourceFile]
    statements: list[Parsed] = field(default_factory=list)
    problems: list[Problem] = field(default_factory=list)
    spoiled: set[str] = field(default_factory=set)
    lacks_a_file: bool = False
    title: str = ""

    @property
    def says_anything(self) -> bool:
        """Whether there is any statement in it, and not only blanks and remarks."""
        return any(not isinstance(each.statement, FileEnd) for each in self.statements)


def read_text(text: str, name: str) -> Reading:
    """Read a text that lies in no folder: an include in it is a problem."""
    source = SourceFile(name, text.removeprefix("\ufeff"))
    reading = Reading(source, [source])
    _Reader(reading, None).read(source, [])
    return reading


def read_bytes(data: bytes, name: str) -> Reading:
    """Read the bytes of a file that lies in no folder, such as standard input."""
    problems: list[Problem] = []
    source = _decode(data, name, problems)
    reading = Reading(source, [source], problems=problems)
    _Reader(reading, None).read(source, [])
    return reading


def read_path(path: Path) -> Reading:
    """Read a file and what it includes.

    Raises:
        OSError: the file itself cannot be read.
    """
    problems: list[Problem] = []
    source = _load(path, path.as_posix(), problems)
    reading = Reading(source, [source], problems=problems)
    home = path.parent.resolve()
    _Reader(reading, home).read(source, [home / path.name])
    return reading


class ReadText(NamedTuple):
    """One text by itself: its statements, what is wrong with it, and names it does not declare."""

    statements: list[Parsed]
    problems: list[Problem]
    spoiled: set[str]


def read_together(
    sources: Sequence[SourceFile],
    beside: Path | None,
    title: str,
    known: dict[SourceFile, ReadText] | None = None,
) -> Reading:
    """Read texts that stand in one document as one diagram.

    Args:
        sources: the last is what is read; the others come before it, as if it included them.
        beside: the document, beside which included files lie; None for one that lies nowhere.
        title: of the diagram, if the last text states none.
        known: texts that were read before, which need not be read again; those read are added.
    """
    reading = Reading(sources[-1], list(sources), title=title)
    home = beside.parent.resolve() if beside else None
    reader = _Reader(reading, home, known)
    for source in sources:
        reader.read(source, [home / beside.name] if home and beside else [])
    return reading


class _NotIncludedError(Exception):
    """Why a file is not included, in words."""


class _Reader:
    """Reads a file and its includes; ``home`` is the folder of the file first named."""

    def __init__(
        self, reading: Reading, home: Path | None, known: dict[SourceFile, ReadText] | None = None
    ) -> None:
        self.reading = reading
        self.home = home
        self.known = {} if known is None else known
        self.seen: set[Path] = set()

    def read(self, source: SourceFile, way: list[Path]) -> None:
        """Parse a source into the reading; ``way`` are the files that led here, it the last."""
        self.seen.update(way[-1:])
        reading = self.reading
        text = self.known.get(source)
        if text is None:
            text = self.known[source] = _read_by_itself(source)
        reading.problems.extend(text.problems)
        reading.spoiled.update(text.spoiled)
        for parsed in text.statements:
            if isinstance(parsed.statement, IncludeStatement):
                self._include(parsed, parsed.statement.path, way)
            else:
                reading.statements.append(parsed)
        end = len(source.text)
        reading.statements.append(Parsed(FileEnd(), source, end, end))

    def _include(self, parsed: Parsed, name: Name, way: list[Path]) -> None:
        try:
            found = self._find(name.text, way)
            if found in way:
                self.reading.problems.append(Problem(_ring(way, found), parsed.at(name)))
            if found in self.seen:
                return  # each is read once
            source = self._load(found, name.text)
        except _NotIncludedError as refused:
            self.reading.lacks_a_file = True
            self.reading.problems.append(Problem(str(refused), parsed.at(name)))
            return
        self.reading.sources.append(source)
        self.read(source, [*way, found])

    def _find(self, name: str, way: list[Path]) -> Path:
        """The file meant, links followed; it need not be there."""
        if self.home is None:
            raise _NotIncludedError("a text that is no file can include nothing")
        try:
            found = (way[-1].parent / name).resolve()
        except (OSError, RuntimeError, ValueError):  # a ring of links, characters no name can have
            raise _NotIncludedError(f"no file can be reached by the name “{name}”") from None
        if not found.is_relative_to(self.home):
            raise _NotIncludedError(
                f"“{name}” lies outside the folder of the file first named; "
                "only files in it and below it are read"
            )
        return found

    def _load(self, found: Path, name: str) -> SourceFile:
        if len(self.seen) >= MOST_FILES:
            raise _NotIncludedError(f"more than {MOST_FILES} files are included")
        shown = Path(self.reading.source.name).parent / found.relative_to(cast(Path, self.home))
        try:
            if not stat.S_ISREG(found.stat().st_mode):
                raise _NotIncludedError(f"“{name}” is no file")
            return _load(found, shown.as_posix(), self.reading.problems)
        except FileNotFoundError:
            raise _NotIncludedError(f"there is no file “{name}” beside this one") from None
        except OSError as error:
            why = (error.strerror or "it failed").lower()
            raise _NotIncludedError(f"“{name}” cannot be read: {why}") from None


def _read_by_itself(source: SourceFile) -> ReadText:
    read = ReadText([], list(odd_characters(source)), set())
    text, statements, _comments = cut(source)
    for start, end in statements:
        try:
            statement: Statement | None = parse_statement(text, start, end)
        except UnexpectedInput:
            statement = _mended(read, source, text[start:end], start)
        if statement is not None:
            read.statements.append(Parsed(statement, source, start, end))
    return read


def _mended(read: ReadText, source: SourceFile, text: str, start: int) -> Statement | None:
    """What a statement that the grammar refuses still says; what is wrong is kept."""
    from wirecheck.language.mend import mend, shifted

    end = start + len(text)
    statement, faults = mend(text)
    for fault in faults:
        place = start + fault.place
        span = Span(source, place, place + fault.length)
        cut_short = place >= end and source.text[end:].lstrip(" \t").startswith("#")
        message = f"{fault.message} (# began a comment)" if cut_short else fault.message
        read.problems.append(Problem(message, span, fault.nearest))
    declared = _DECLARED.match(text) if statement is None else None
    if declared:
        name = (declared[1] or "").replace('""', '"') or declared[2] or ""
        read.spoiled.add(key_of(name))
    return None if statement is None else shifted(statement, start)


def _ring(way: list[Path], found: Path) -> str:
    names = [file.name for file in (*way[way.index(found) :], found)]
    if len(names) > _MOST_NAMED:
        names[_MOST_NAMED // 2 : -_MOST_NAMED // 2] = ["…"]
    return f"the includes run in a ring: {' includes '.join(names)}"


def _load(path: Path, name: str, problems: list[Problem]) -> SourceFile:
    """Read one file, no more of it than would be used."""
    with path.open("rb") as file:
        return _decode(file.read(LARGEST_FILE_BYTES + 1), name, problems)


def _decode(data: bytes, name: str, problems: list[Problem]) -> SourceFile:
    """The text of a file; of one that is too large a problem and an empty text."""
    if len(data) <= LARGEST_FILE_BYTES:
        return decode(data, name, problems)
    source = SourceFile(name, "")
    most = LARGEST_FILE_BYTES // (1024 * 1024)
    message = f"the file is larger than {most} MB, more than is read; split it with include"
    problems.append(Problem(message, Span(source, 0, 0)))
    return source
