"""From statements to a diagram: names are resolved, leads cut at every stop, defaults filled in.

Statements may stand in any order: kinds first, then parts, splices and cables, then labels, then
what runs where.  What cannot be resolved becomes a problem; a lead with one bad end is kept with
that end not traced, so that the rest is still checked and the terminal it really reaches is not
called empty.
"""

from __future__ import annotations

from pathlib import PurePath
from typing import NamedTuple

from wirecheck.language import statements as st
from wirecheck.language.claims import check_claim
from wirecheck.language.derive import with_derived_defaults
from wirecheck.language.devices import (
    add_cable,
    add_kinds,
    add_labels,
    add_part,
    add_splice,
)
from wirecheck.language.leads import LeadBuilder
from wirecheck.language.read import Parsed, Reading
from wirecheck.language.scope import Scope
from wirecheck.model.diagram import Diagram, Note, NotEvaluated
from wirecheck.model.finding import Problem


class Built(NamedTuple):
    """A diagram and every problem of its text, in the order of the text."""

    diagram: Diagram
    problems: tuple[Problem, ...]


def build(reading: Reading) -> Built:
    """Build the diagram of a reading."""
    scope = Scope(problems=list(reading.problems))
    base, not_evaluated = _without_variants(reading, scope)
    chosen = _by_class(base)
    add_kinds(scope, chosen.get(st.KindStatement, []))
    for parsed in base:
        if isinstance(parsed.statement, st.PartStatement):
            add_part(scope, parsed, parsed.statement)
        elif isinstance(parsed.statement, st.SpliceStatement):
            add_splice(scope, parsed, parsed.statement)
        elif isinstance(parsed.statement, st.CableStatement):
            add_cable(scope, parsed, parsed.statement)
    add_labels(scope, chosen.get(st.LabelsStatement, []))
    leads = LeadBuilder(scope)
    for parsed in base:
        leads.add(parsed)
    for parsed in [*chosen.get(st.ExpectStatement, []), *chosen.get(st.ObserveStatement, [])]:
        check_claim(scope, parsed)
        not_evaluated.append(_claim_not_evaluated(parsed))
    diagram = Diagram(
        title=_title(reading, chosen.get(st.DiagramStatement, []), scope),
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
            Note(parsed.statement.text.text, parsed.span)
            for parsed in chosen.get(st.NoteStatement, [])
            if isinstance(parsed.statement, st.NoteStatement)
        ),
        not_evaluated=tuple(sorted(not_evaluated, key=lambda item: item.span.start)),
    )
    order = {source: number for number, source in enumerate(reading.sources)}
    problems = sorted(scope.problems, key=lambda p: (order[p.span.source], p.span.start, p.message))
    return Built(diagram, tuple(problems))


def _by_class(base: list[Parsed]) -> dict[type, list[Parsed]]:
    chosen: dict[type, list[Parsed]] = {}
    for parsed in base:
        chosen.setdefault(type(parsed.statement), []).append(parsed)
    return chosen


def _title(reading: Reading, found: list[Parsed], scope: Scope) -> str:
    """The title stated in the first file; those of included files are ignored."""
    own = [parsed for parsed in found if parsed.source is reading.source]
    for second in own[1:]:
        scope.problem("a diagram has one title; take this one away", second.span)
    if own and isinstance(own[0].statement, st.DiagramStatement):
        return own[0].statement.title.text
    return PurePath(reading.source.name).stem


def _without_variants(reading: Reading, scope: Scope) -> tuple[list[Parsed], list[NotEvaluated]]:
    """The base diagram's statements; each variant is noted as not evaluated.

    A missing ``end`` closes at the next ``variant`` or the end of the text.
    """
    base: list[Parsed] = []
    noted: list[NotEvaluated] = []
    inside = False
    for parsed in reading.statements:
        statement = parsed.statement
        if isinstance(statement, st.VariantStatement):
            inside = True
            reason = f"variant “{statement.name.text}” was read, not checked: the base diagram was"
            noted.append(NotEvaluated("variant", reason, parsed.span))
        elif isinstance(statement, st.EndStatement):
            if not inside:
                scope.problem("this end closes nothing: no variant is open here", parsed.span)
            inside = False
        elif not inside and isinstance(
            statement, st.RemoveLeadStatement | st.RemovePartStatement | st.SetStatement
        ):
            word = "set" if isinstance(statement, st.SetStatement) else "remove"
            scope.problem(f"{word} belongs inside a variant (variant NAME … end)", parsed.span)
        elif not inside:
            base.append(parsed)
    return base, noted


def _claim_not_evaluated(parsed: Parsed) -> NotEvaluated:
    word = "expect" if isinstance(parsed.statement, st.ExpectStatement) else "observe"
    return NotEvaluated(word, f"this {word} was read, not evaluated", parsed.span)
