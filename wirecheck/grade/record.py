"""What is kept of a submission: plain data, so that it can be written down and read again."""

from __future__ import annotations

from typing import Any, Literal, NamedTuple

from wirecheck.grade.marked import CircuitMark, Marked
from wirecheck.model.finding import Problem

Status = Literal["marked", "mended", "partly read", "unreadable", "not marked"]


class ProblemTold(NamedTuple):
    """A problem of a text, and where it stands; the lines of an unreadable file begin at 1."""

    file: str
    line: int
    column: int
    message: str


class Lost(NamedTuple):
    """A lost point as it is written down: see `wirecheck.grade.marked.LostPoint`."""

    number: int
    circuit: str
    points: float
    what: str
    reason: str
    effect: str
    breaks: str
    line: int | None
    leads: tuple[str, ...]
    places: tuple[str, ...]
    caution: str


class Record(NamedTuple):
    """One submission.

    Attributes:
        file: its name as given.
        name: of the apprentice.
        stem: the beginning of the names of files made for it.
        status: ``marked``; ``mended``, marked with slips read as what stands nearest; ``partly
            read``, marked by what could be read; ``unreadable``: no mark;
            ``not marked``: no mark for the reason told.
        reason: why it has no mark, else "".
        problems: what could not be read.
        key, how, mark, out_of, before_cap, unsafe, circuits, lost, does, key_does, remarks: as in
            `wirecheck.grade.marked.Marked`; None or empty without a mark.
        sheets: paths of the sheets drawn.
    """

    file: str
    name: str
    stem: str
    status: Status
    reason: str = ""
    problems: tuple[ProblemTold, ...] = ()
    key: str = ""
    how: str = ""
    mark: float | None = None
    out_of: float = 0.0
    before_cap: float | None = None
    unsafe: tuple[str, ...] = ()
    circuits: tuple[CircuitMark, ...] = ()
    lost: tuple[Lost, ...] = ()
    does: tuple[str, ...] = ()
    key_does: tuple[str, ...] = ()
    remarks: tuple[str, ...] = ()
    sheets: tuple[str, ...] = ()

    def with_mark(self, found: Marked) -> Record:
        """The same with its mark."""
        return self._replace(
            key=found.key,
            how=found.how,
            mark=found.mark,
            out_of=found.out_of,
            before_cap=found.before_cap,
            unsafe=found.unsafe,
            circuits=found.circuits,
            lost=tuple(
                Lost(
                    each.number,
                    each.circuit,
                    each.points,
                    each.what,
                    each.reason,
                    each.effect,
                    str(each.breaks),
                    each.line,
                    each.leads,
                    each.places,
                    each.caution,
                )
                for each in found.lost
            ),
            does=found.does,
            key_does=found.key_does,
            remarks=found.remarks,
        )


#: Of a text that is no diagram at all, so many problems are told.
MOST_PROBLEMS = 25


def problems_told(problems: tuple[Problem, ...]) -> tuple[ProblemTold, ...]:
    """The first problems of a text, each with its place."""
    return tuple(
        ProblemTold(each.span.file, each.span.line, each.span.column, each.message)
        for each in problems[:MOST_PROBLEMS]
    )


def as_data(record: Record) -> dict[str, Any]:
    """A record as JSON has it."""
    data = record._asdict()
    for name in ("problems", "circuits", "lost"):
        data[name] = [each._asdict() for each in data[name]]
    return data


def from_data(data: dict[str, Any]) -> Record:
    """A record read back.

    Raises:
        TypeError, KeyError: it is none.
    """
    fields: dict[str, Any] = {
        name: tuple(value) if isinstance(value, list) else value for name, value in data.items()
    }
    fields["problems"] = tuple(ProblemTold(**each) for each in data["problems"])
    fields["circuits"] = tuple(CircuitMark(**each) for each in data["circuits"])
    fields["lost"] = tuple(
        Lost(**{**each, "leads": tuple(each["leads"]), "places": tuple(each["places"])})
        for each in data["lost"]
    )
    return Record(**fields)
