"""Reading texts: bytes to characters, statements with their includes, every problem kept.

Reading stops at nothing: what cannot be used becomes a problem with its place, the rest goes on.
"""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import NamedTuple

from lark import UnexpectedInput

from wirecheck.language.cut import cut, stray_returns
from wirecheck.language.parser import parse_statement
from wirecheck.language.statements import IncludeStatement, Name, Statement
from wirecheck.language.syntax_faults import explain, unknown_statement
from wirecheck.model.finding import Problem
from wirecheck.model.text import SourceFile, Span

#: Larger files are refused: a hundred thousand leads take about 6 MB.
LARGEST_FILE_BYTES = 16 * 1024 * 1024
#: Files that may be read for one diagram, the first included.
MOST_FILES = 200


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


class Reading(NamedTuple):
    """All statements of a diagram, includes put in their place."""

    source: SourceFile
    sources: list[SourceFile]
    statements: list[Parsed]
    problems: list[Problem]


def read_text(text: str, name: str) -> Reading:
    """Read a text that lies in no folder: an include in it is a problem."""
    source = SourceFile(name, text.removeprefix("\ufeff"))
    reading = Reading(source, [source], [], [])
    _read(reading, source, None, [])
    return reading


def read_path(path: Path) -> Reading:
    """Read a file and what it includes.

    Raises:
        OSError: the file itself cannot be read.
    """
    problems: list[Problem] = []
    source = _load(path, path.as_posix(), problems)
    reading = Reading(source, [source], [], problems)
    if not problems or source.text:
        _read(reading, source, path.resolve(), [])
    return reading


def _read(reading: Reading, source: SourceFile, path: Path | None, ring: list[Path]) -> None:
    """Parse a source into the reading; ``ring`` holds the files that led here."""
    reading.problems.extend(stray_returns(source))
    for parsed in _statements(source, reading.problems):
        if isinstance(parsed.statement, IncludeStatement):
            _include(reading, parsed, path, [*ring, path] if path else ring)
        else:
            reading.statements.append(parsed)


def _statements(source: SourceFile, problems: list[Problem]) -> Iterator[Parsed]:
    text, statements, _comments = cut(source)
    for start, end in statements:
        try:
            yield Parsed(parse_statement(text, start, end), source, start, end)
        except UnexpectedInput as error:
            problem = unknown_statement(source, text, start)
            problems.append(problem or explain(error, source, text, start, end))


def _include(reading: Reading, parsed: Parsed, path: Path | None, ring: list[Path]) -> None:
    assert isinstance(parsed.statement, IncludeStatement)
    name = parsed.statement.path
    span = parsed.at(name)
    problem = None
    if path is None:
        problem = "a text that is no file can include nothing"
    elif "\x00" in name.text:
        problem = "a file name cannot hold a zero byte"
    else:
        home = ring[0].parent
        found = (path.parent / name.text).resolve()
        if not found.is_relative_to(home):
            problem = f"“{name.text}” lies outside the folder of {ring[0].name}; only files in it and below it are read"
        elif found in ring:
            way = [file.name for file in ring[ring.index(found) :]]
            problem = f"the includes run in a ring: {' includes '.join([*way, found.name])}"
        elif len(reading.sources) >= MOST_FILES:
            problem = f"more than {MOST_FILES} files are included"
        elif any(source.name == _shown(found, home, reading) for source in reading.sources):
            return  # read once
        else:
            problem = _read_included(reading, found, home, span, ring)
    if problem:
        reading.problems.append(Problem(problem, span))


def _read_included(
    reading: Reading, found: Path, home: Path, span: Span, ring: list[Path]
) -> str | None:
    problems: list[Problem] = []
    try:
        source = _load(found, _shown(found, home, reading), problems)
    except FileNotFoundError:
        return f"there is no file “{found.relative_to(home).as_posix()}” beside this one"
    except OSError as error:
        return f"“{found.name}” cannot be read: {(error.strerror or 'it failed').lower()}"
    reading.problems.extend(problems)
    reading.sources.append(source)
    if source.text:
        _read(reading, source, found, ring)
    return None


def _shown(found: Path, home: Path, reading: Reading) -> str:
    """Display name of an included file: beside the first file's own display name."""
    return (Path(reading.source.name).parent / found.relative_to(home)).as_posix()


def _load(path: Path, name: str, problems: list[Problem]) -> SourceFile:
    """Read the bytes of one file; what is not text becomes a problem at its place."""
    size = path.stat().st_size
    if size > LARGEST_FILE_BYTES:
        source = SourceFile(name, "")
        megabytes = size / 1e6
        problems.append(
            Problem(
                f"the file has {megabytes:.0f} MB; at most {LARGEST_FILE_BYTES / 1e6:.0f} MB are read "
                "(split it with include)",
                Span(source, 0, 0),
            )
        )
        return source
    return decode(path.read_bytes(), name, problems)


def decode(data: bytes, name: str, problems: list[Problem]) -> SourceFile:
    """Characters of a file that should be UTF-8; bytes that are not are shown as U+FFFD."""
    if data.startswith((b"\xff\xfe", b"\xfe\xff")) or b"\x00" in data[:8192]:
        source = SourceFile(name, "")
        problems.append(
            Problem("this is no UTF-8 text; save it as plain text in UTF-8", Span(source, 0, 0))
        )
        return source
    try:
        return SourceFile(name, data.decode("utf-8-sig"))
    except UnicodeDecodeError:
        source = SourceFile(name, data.decode("utf-8-sig", errors="replace"))
    lines: set[int] = set()
    at = source.text.find("\ufffd")
    while at >= 0:
        span = Span(source, at, at + 1)
        if span.line not in lines:
            lines.add(span.line)
            problems.append(Problem("a byte here is not UTF-8; save the file as UTF-8", span))
        at = source.text.find("\ufffd", at + 1)
    return source
