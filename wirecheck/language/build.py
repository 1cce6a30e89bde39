"""From statements to a diagram: names are resolved, leads cut at every stop, defaults filled in.

Statements may stand in any order: kinds first, then parts, splices and cables, then labels, then
what runs where.  What cannot be resolved becomes a problem; a lead with one bad end is kept with
that end not traced, so that the rest is still checked and the terminal it really reaches is not
called empty.
"""

from __future__ import annotations

from pathlib import PurePath
from typing import TYPE_CHECKING, NamedTuple, TypeVar

from wirecheck.language import statements as st
from wirecheck.language.derive import with_derived_defaults
from wirecheck.language.devices import add_cable, add_part, add_splice
from wirecheck.language.kinds import add_kinds
from wirecheck.language.labels import add_labels
from wirecheck.language.leads import LeadBuilder
from wirecheck.language.read import Parsed, Reading
from wirecheck.language.scope import Scope
from wirecheck.language.variants import Nested, nest
from wirecheck.model.diagram import (
    OPEN_END,
    UNKNOWN_END,
    Diagram,
    Note,
    NotEvaluated,
    Terminal,
)
from wirecheck.model.finding import Problem

if TYPE_CHECKING:
    from wirecheck.model.claim import Claim

_S = TypeVar("_S")


class Built(NamedTuple):
    """A diagram and every problem of its text, in the order of the text.

    Attributes:
        diagram: the base diagram.
        problems: of the text, those inside variants left out.
        reading: what it was built from.
        nested: its statements, sorted out into the base and the variants.
    """

    diagram: Diagram
    problems: tuple[Problem, ...]
    reading: Reading
    nested: Nested


def build(reading: Reading) -> Built:
    """Build the base diagram of a reading."""
    nested = nest(reading.statements)
    draft = Draft(reading, [*reading.problems, *nested.problems])
    draft.declare(nested.base)
    draft.run_leads(nested.base)
    draft.claim(nested.base)
    return Built(draft.diagram(nested.base), draft.problems(), reading, nested)


class Draft:
    """A diagram while it is built, from some statements of a reading and then from others.

    Attributes:
        scope: what has a name so far.
        leads: what runs where so far.
        claims: what is said of it so far, claims and observations.
        not_evaluated: what could not be taken into it.
    """

    def __init__(self, reading: Reading, problems: list[Problem]) -> None:
        """Start with nothing in it."""
        self._reading = reading
        self.scope = Scope(
            problems=problems, spoiled=set(reading.spoiled), lacks_a_file=reading.lacks_a_file
        )
        self.leads = LeadBuilder(self.scope)
        self.claims: list[Claim] = []
        self.not_evaluated: list[NotEvaluated] = []

    def declare(self, statements: list[Parsed]) -> None:
        """Take in everything that has a name, kinds first, labels last."""
        scope = self.scope
        add_kinds(scope, _those(statements, st.KindStatement))
        for parsed in statements:
            statement = parsed.statement
            if isinstance(statement, st.PartStatement):
                add_part(scope, parsed, statement)
            elif isinstance(statement, st.SpliceStatement):
                add_splice(scope, parsed, statement)
            elif isinstance(statement, st.CableStatement):
                add_cable(scope, parsed, statement)
        add_labels(scope, _those(statements, st.LabelsStatement))

    def run_leads(self, statements: list[Parsed]) -> None:
        """Take in what runs where."""
        for parsed in statements:
            self.leads.add(parsed)

    def claim(self, statements: list[Parsed]) -> None:
        """Take in what is claimed and what was observed."""
        for parsed in statements:
            statement = parsed.statement
            if isinstance(statement, st.ExpectStatement | st.ObserveStatement):
                from wirecheck.language.claims import read_claims  # few diagrams claim anything

                self.claims += read_claims(self.scope, parsed, statement)

    def named(self, end: Terminal) -> str:
        """An end as people read it, by the library's name of a terminal."""
        part = self.scope.parts.get(end.part)
        if part is not None:
            return f"{part.name}.{end.name}"
        splice = self.scope.splices.get(end.part)
        made_up = {OPEN_END: "a loose end", UNKNOWN_END: "an end not traced"}
        return splice.name if splice else made_up.get(end.part, end.part)

    def diagram(self, statements: list[Parsed]) -> Diagram:
        """What it has come to; title and notes are those of the statements."""
        reading, scope, leads = self._reading, self.scope, self.leads
        return Diagram(
            title=_title(scope, reading, statements),
            source=reading.source,
            sources=tuple(reading.sources),
            parts=with_derived_defaults(scope.parts, leads.leads),
            splices=scope.splices,
            cables=scope.cables,
            kinds={key: kind.kind for key, kind in scope.kinds.items()},
            leads=tuple(leads.leads),
            passed=tuple(leads.passed),
            named_alone=tuple(leads.named_alone),
            notes=tuple(
                Note(statement.text.text, parsed.span)
                for parsed, statement in _those(statements, st.NoteStatement)
            ),
            not_evaluated=tuple(self.not_evaluated),
            claims=tuple(each for each in self.claims if each.word == "expect"),
            observations=tuple(each for each in self.claims if each.word == "observe"),
        )

    def problems(self) -> tuple[Problem, ...]:
        """Every problem so far, in the order of the text."""
        order = {source: number for number, source in enumerate(self._reading.sources)}
        return tuple(
            sorted(
                self.scope.problems,
                key=lambda problem: (
                    order[problem.span.source],
                    problem.span.start,
                    problem.message,
                ),
            )
        )


def _those(base: list[Parsed], statement_class: type[_S]) -> list[tuple[Parsed, _S]]:
    """The statements of one class, in the order of the text."""
    return [
        (parsed, parsed.statement)
        for parsed in base
        if isinstance(parsed.statement, statement_class)
    ]


def _title(scope: Scope, reading: Reading, base: list[Parsed]) -> str:
    """The title stated in the first file; those of included files are ignored."""
    own = [
        (parsed, statement.title.text)
        for parsed, statement in _those(base, st.DiagramStatement)
        if parsed.source is reading.source
    ]
    for second, _title in own[1:]:
        scope.problem("a diagram has one title; take this one away", second.span)
    stated = own[0][1].strip() if own else ""
    return stated or reading.title or PurePath(reading.source.name).stem
