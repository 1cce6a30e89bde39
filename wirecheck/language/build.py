"""From statements to a diagram: names are resolved, leads cut at every stop, defaults filled in.

Statements may stand in any order: kinds first, then parts, splices and cables, then labels, then
what runs where.  What cannot be resolved becomes a problem; a lead with one bad end is kept with
that end not traced, so that the rest is still checked and the terminal it really reaches is not
called empty.
"""

from __future__ import annotations

from pathlib import PurePath
from typing import NamedTuple, TypeVar

from wirecheck.language import statements as st
from wirecheck.language.claims import check_claim
from wirecheck.language.derive import with_derived_defaults
from wirecheck.language.devices import add_cable, add_part, add_splice
from wirecheck.language.kinds import add_kinds
from wirecheck.language.labels import add_labels
from wirecheck.language.leads import LeadBuilder
from wirecheck.language.read import Parsed, Reading
from wirecheck.language.scope import Scope
from wirecheck.language.variants import Variant, nest
from wirecheck.model.diagram import Diagram, Note, NotEvaluated
from wirecheck.model.finding import Problem

_S = TypeVar("_S")


class Built(NamedTuple):
    """A diagram and every problem of its text, in the order of the text."""

    diagram: Diagram
    problems: tuple[Problem, ...]


def build(reading: Reading) -> Built:
    """Build the base diagram of a reading."""
    base, variants, misplaced = nest(reading.statements)
    scope = Scope(
        problems=[*reading.problems, *misplaced],
        spoiled=reading.spoiled,
        lacks_a_file=reading.lacks_a_file,
    )
    _declare(scope, base)
    leads = LeadBuilder(scope)
    not_evaluated = [_variant_not_evaluated(variant) for variant in variants]
    for parsed in base:
        leads.add(parsed)
        if isinstance(parsed.statement, st.ExpectStatement | st.ObserveStatement):
            check_claim(scope, parsed, parsed.statement)
            not_evaluated.append(_claim_not_evaluated(parsed))
    diagram = Diagram(
        title=_title(scope, reading, base),
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
            for parsed, statement in _those(base, st.NoteStatement)
        ),
        not_evaluated=tuple(not_evaluated),
    )
    order = {source: number for number, source in enumerate(reading.sources)}
    problems = sorted(
        scope.problems,
        key=lambda problem: (order[problem.span.source], problem.span.start, problem.message),
    )
    return Built(diagram, tuple(problems))


def _declare(scope: Scope, base: list[Parsed]) -> None:
    """Everything that has a name, kinds first, labels last."""
    add_kinds(scope, _those(base, st.KindStatement))
    for parsed in base:
        statement = parsed.statement
        if isinstance(statement, st.PartStatement):
            add_part(scope, parsed, statement)
        elif isinstance(statement, st.SpliceStatement):
            add_splice(scope, parsed, statement)
        elif isinstance(statement, st.CableStatement):
            add_cable(scope, parsed, statement)
    add_labels(scope, _those(base, st.LabelsStatement))


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
    return stated or PurePath(reading.source.name).stem


def _variant_not_evaluated(variant: Variant) -> NotEvaluated:
    reason = f"variant “{variant.name}” was read, not checked: the base diagram was"
    return NotEvaluated("variant", reason, variant.opening.span)


def _claim_not_evaluated(parsed: Parsed) -> NotEvaluated:
    word = "expect" if isinstance(parsed.statement, st.ExpectStatement) else "observe"
    return NotEvaluated(word, f"this {word} was read, not evaluated", parsed.span)
