"""The rubric: how much each circuit weighs, and what no unsafe drawing gets more than.

The trainer's file is TOML; pydantic holds it to the classes here, and whatever is wrong with it is
told with its file and line.
"""

from __future__ import annotations

import re
import tomllib
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import Annotated, ClassVar, Final

from pydantic import ConfigDict, Strict, TypeAdapter, ValidationError

from wirecheck.compare.circuits import Circuit
from wirecheck.model.finding import Problem
from wirecheck.model.nearest import nearest
from wirecheck.model.text import SourceFile, Span
from wirecheck.resources import shared_text

RUBRIC_FILE: Final = "rubric.toml"

#: No word and no yes or no is taken for one.
Number = Annotated[float, Strict()]


@dataclass(frozen=True, kw_only=True)
class _Table:
    #: Read by pydantic: a key that is not there is refused.
    __pydantic_config__: ClassVar[ConfigDict] = ConfigDict(extra="forbid")


@dataclass(frozen=True, kw_only=True)
class Weights(_Table):
    """How much each circuit weighs against the others; none is below 0."""

    supply: Number
    chain: Number
    ground: Number
    ignition: Number
    valve: Number
    damper: Number
    loads: Number
    workmanship: Number

    def of(self, circuit: Circuit) -> float:
        """The weight of a circuit."""
        return float(getattr(self, circuit.name.lower()))


@dataclass(frozen=True, kw_only=True)
class Workmanship(_Table):
    """What one finding of workmanship costs, as a share of the weight of workmanship."""

    each: Number


@dataclass(frozen=True, kw_only=True)
class Unsafe(_Table):
    """What no unsafe drawing gets more than."""

    cap: Number


@dataclass(frozen=True, kw_only=True)
class Rubric(_Table):
    """How a drawing is marked.

    Attributes:
        out_of: the mark of a drawing with nothing wrong.
        weights, workmanship, unsafe: see there.
    """

    out_of: Number
    weights: Weights
    workmanship: Workmanship
    unsafe: Unsafe


class RubricError(Exception):
    """A rubric that cannot be used; ``problems`` says why, each with its place."""

    def __init__(self, problems: Sequence[Problem]) -> None:
        super().__init__("; ".join(f"{each.span}: {each.message}" for each in problems))
        self.problems = tuple(problems)


def default_rubric() -> Rubric:
    """The rubric that comes along."""
    return read_rubric(default_text(), RUBRIC_FILE)


def default_text() -> str:
    """Its text, for a trainer to change."""
    return shared_text(RUBRIC_FILE)


def read_rubric(text: str, name: str) -> Rubric:
    """Read the text of a rubric.

    Args:
        text: TOML.
        name: of its file, for messages.

    Raises:
        RubricError: it is not TOML, a key is missing or unknown, or a value makes no sense.
    """
    source = SourceFile(name, text)
    try:
        stated = tomllib.loads(text)
    except tomllib.TOMLDecodeError as error:
        raise RubricError([_toml_problem(source, str(error))]) from None
    try:
        rubric = TypeAdapter(Rubric).validate_python(stated)
    except ValidationError as error:
        raise RubricError(
            [
                _problem(source, fault["loc"], _words(fault["type"], fault["loc"]))
                for fault in error.errors()
            ]
        ) from None
    if problems := [_problem(source, where, what) for where, what in _senseless(rubric)]:
        raise RubricError(problems)
    return rubric


def _senseless(rubric: Rubric) -> Iterable[tuple[tuple[str, ...], str]]:
    """Values that are numbers and make no sense."""
    weights = vars(rubric.weights)
    for name, weight in weights.items():
        if not 0 <= weight < float("inf"):
            yield ("weights", name), f"the weight of {name} has to be 0 or more"
    if not any(weight > 0 for name, weight in weights.items() if name != "workmanship"):
        yield ("weights",), "one circuit at least has to weigh more than 0"
    if not 0 < rubric.out_of < float("inf"):
        yield ("out_of",), "out_of has to be more than 0"
    if not 0 <= rubric.workmanship.each <= 1:
        yield ("workmanship", "each"), "each is a share, from 0 to 1"
    if not 0 <= rubric.unsafe.cap <= rubric.out_of:
        yield ("unsafe", "cap"), f"cap is a mark, from 0 to {rubric.out_of:g}"


def _words(kind: str, where: tuple[str | int, ...]) -> str:
    name = ".".join(map(str, where))
    if kind == "missing":
        return f"{name} is missing"
    if kind in ("unexpected_keyword_argument", "extra_forbidden"):
        near = nearest(str(where[-1]), _KNOWN)
        return f"{name} is not known here" + (f"; did you mean {near}?" if near else "")
    return f"{name} has to be a table" if "dataclass" in kind else f"{name} has to be a number"


_KNOWN: Final = (
    *Rubric.__annotations__,
    *Weights.__annotations__,
    *Workmanship.__annotations__,
    *Unsafe.__annotations__,
)
_TOML_PLACE: Final = re.compile(r" \(at (?:line (\d+), column (\d+)|end of document)\)$")


def _toml_problem(source: SourceFile, message: str) -> Problem:
    match = _TOML_PLACE.search(message)
    words = _TOML_PLACE.sub("", message)
    at = len(source.text)
    if match and match[1]:
        at = source.line_starts[int(match[1]) - 1] + int(match[2]) - 1
    return Problem(f"this is not TOML: {words[:1].lower()}{words[1:]}", Span(source, at, at))


def _problem(source: SourceFile, where: tuple[str | int, ...], message: str) -> Problem:
    return Problem(message, _place(source, tuple(map(str, where))))


#: A table's name or a key, at the start of a line.
_KEY: Final = re.compile(r"^[ \t]*(?:\[([^\]\n]+)\]|([\w.\"'-]+)[ \t]*=)", re.MULTILINE)


def _place(source: SourceFile, where: tuple[str, ...]) -> Span:
    """Where a key stands; of one that is missing its table, or the start of the file."""
    table: tuple[str, ...] = ()
    best, depth = Span(source, 0, 0), 0
    for match in _KEY.finditer(source.text):
        names = re.findall(r"[\w-]+", match[1] or match[2])
        if match[1]:
            table = tuple(names)
        here = table if match[1] else (*table, *names)
        if here == where[: len(here)] and len(here) > depth:
            start = match.start(1 if match[1] else 2)
            best, depth = Span(source, start, start + len(match[1] or match[2])), len(here)
    return best
