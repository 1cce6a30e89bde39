"""The variants of a text as diagrams: the base with what each adds, takes out and sets."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from itertools import combinations, pairwise
from typing import Final, NamedTuple

from wirecheck.language import statements as st
from wirecheck.language.build import Built, Draft
from wirecheck.language.read import Parsed
from wirecheck.language.removals import remove_lead, remove_part, set_attributes
from wirecheck.language.variants import Variant
from wirecheck.model.claim import Claim
from wirecheck.model.diagram import EARTH, Diagram, Lead, LeadRole, NotEvaluated, key_of
from wirecheck.model.finding import Problem
from wirecheck.model.text import Span

#: So many combinations of variants are built of one text; there are 2 to the power of the variants.
MOST_COMBINATIONS: Final = 256


class Variation(NamedTuple):
    """A diagram that a text gives with one variant of it, or with several together.

    Attributes:
        name: of the variant, or of all of them with ``+`` between.
        diagram: the base diagram with them.
        problems: of the text inside them, and those that the base has not.
    """

    name: str
    diagram: Diagram
    problems: tuple[Problem, ...]


class Combinations(NamedTuple):
    """Combinations of variants, and how many there are besides that were not built."""

    built: tuple[Variation, ...]
    left_out: int


def variations(built: Built) -> tuple[Variation, ...]:
    """Every variant of a text, each a diagram of its own, in the order of the text."""
    return tuple(_variation(built, (each,)) for each in built.nested.variants)


def all_combinations(built: Built) -> Combinations:
    """Every two and more variants that go together, as one diagram each.

    They touch nothing in common, and together raise no problem that none of them has alone.
    """
    variants = built.nested.variants
    touched = [_touched(each) for each in variants]
    chosen: list[tuple[int, ...]] = []
    count = 0
    for together in _independent(touched):
        count += 1
        if len(chosen) < MOST_COMBINATIONS:
            chosen.append(together)
        if count > 4 * MOST_COMBINATIONS:
            break
    alone = {problem for each in variations(built) for problem in each.problems}
    made = (_variation(built, [variants[number] for number in each]) for each in chosen)
    fitting = tuple(each for each in made if alone.issuperset(each.problems))
    return Combinations(fitting, count - len(chosen))


def _independent(touched: Sequence[frozenset[str]]) -> Iterator[tuple[int, ...]]:
    """Numbers of variants that touch nothing in common, the fewest together first."""
    for size in range(2, len(touched) + 1):
        found = False
        for together in combinations(range(len(touched)), size):
            if not any(touched[a] & touched[b] for a, b in combinations(together, 2)):
                found = True
                yield together
        if not found:
            return


def _touched(variant: Variant) -> frozenset[str]:
    """What a variant declares, takes out or sets, in words that tell one thing from another."""
    found: set[str] = set()
    for parsed in variant.statements:
        statement = parsed.statement
        if isinstance(
            statement,
            st.PartStatement
            | st.SpliceStatement
            | st.CableStatement
            | st.KindStatement
            | st.RemovePartStatement
            | st.SetStatement
            | st.LabelsStatement,
        ):
            found.add(key_of(statement.name.text))
        elif isinstance(statement, st.RemoveLeadStatement):
            found.update(_ways(statement.places))
        elif isinstance(statement, st.DiagramStatement):
            found.add("\x00title")
    return frozenset(found)


def _ways(places: Sequence[st.Place]) -> Iterator[str]:
    """Each lead of a run, whichever end is named first."""
    shown = [
        ".".join(key_of(name.text) for name in (place.name, place.terminal) if name)
        for place in places
    ]
    for one, other in pairwise(shown):
        yield "\x00".join(sorted((one, other)))


# ---- one of them -------------------------------------------------------------------------------


def _variation(built: Built, chosen: Sequence[Variant]) -> Variation:
    own = [parsed for variant in chosen for parsed in variant.statements]
    base = built.nested.base
    anew = {
        key_of(parsed.statement.name.text)
        for parsed in own
        if isinstance(parsed.statement, st.PartStatement)
    }
    sets = [(p, p.statement) for p in own if isinstance(p.statement, st.SetStatement)]
    draft = Draft(built.reading, [])
    draft.declare(base)
    draft.run_leads(base)
    _remove(draft, own)
    if any(key_of(statement.name.text) not in anew for _parsed, statement in sets):
        draft = _set_before(draft, built, own, anew)
    draft.declare(own)
    for parsed, statement in sets:
        if key_of(statement.name.text) in anew:
            set_attributes(draft.scope, parsed, statement)
    draft.run_leads(own)
    _carry_over(draft, (*built.diagram.claims, *built.diagram.observations))
    draft.claim(own)
    title = [p for p in own if isinstance(p.statement, st.DiagramStatement)]
    untitled = [p for p in base if not isinstance(p.statement, st.DiagramStatement)]
    diagram = draft.diagram([*untitled, *own] if title else [*base, *own])
    known = set(built.problems)
    problems = tuple(each for each in dict.fromkeys(draft.problems()) if each not in known)
    return Variation(" + ".join(each.name for each in chosen), diagram, problems)


def _set_before(bare: Draft, built: Built, own: Sequence[Parsed], anew: set[str]) -> Draft:
    """The base again, with what is set in it counted before its leads are run.

    ``bare`` is the base as it stands without what the variant takes out.  That was looked up there:
    what is set may leave a part without the terminal that a lead taken out lands on.
    """
    left = {_place(lead) for lead in bare.leads.leads}
    gone = {_place(lead): lead for lead in built.diagram.leads if _place(lead) not in left}
    draft = Draft(built.reading, list(bare.scope.problems))
    draft.declare(built.nested.base)
    for parsed in own:
        statement = parsed.statement
        if isinstance(statement, st.SetStatement) and key_of(statement.name.text) not in anew:
            set_attributes(draft.scope, parsed, statement)
    before = len(draft.scope.problems)
    draft.run_leads(built.nested.base)
    needed = {span for lead in bare.leads.leads for span in (lead.a_span, lead.b_span)}
    ends = {span for lead in gone.values() for span in (lead.a_span, lead.b_span)} - needed
    raised = draft.scope.problems[before:]
    draft.scope.problems[before:] = [each for each in raised if not _within(each.span, ends)]
    draft.leads.leads[:] = [lead for lead in draft.leads.leads if _place(lead) not in gone]
    for parsed in own:
        if isinstance(parsed.statement, st.RemovePartStatement):
            remove_part(draft, parsed, parsed.statement)
    return draft


def _place(lead: Lead) -> tuple[object, ...]:
    """Where a lead stands in the text; those of one plug by where they land as well."""
    ends = (lead.a, lead.b) if lead.role is LeadRole.PLUG else ()
    return (lead.a_span, lead.b_span, *ends)


def _within(span: Span, ends: Iterable[Span]) -> bool:
    return any(
        span.source is end.source and end.start <= span.start and span.end <= end.end
        for end in ends
    )


def _remove(draft: Draft, own: Iterable[Parsed]) -> None:
    """Take out what is to be, single leads first."""
    for parsed in own:
        statement = parsed.statement
        if isinstance(statement, st.RemoveLeadStatement):
            remove_lead(draft, parsed, statement)
    for parsed in own:
        statement = parsed.statement
        if isinstance(statement, st.RemovePartStatement):
            remove_part(draft, parsed, statement)


def _carry_over(draft: Draft, claims: Iterable[Claim]) -> None:
    """The base's claims hold here too, but those about what this variant takes out."""
    for claim in claims:
        gone = sorted(_gone(draft, claim))
        if not gone:
            draft.claims.append(claim._replace(inherited=True))
            continue
        reason = f"“{claim.text}” is about {gone[0]}, which this variant takes out"
        draft.not_evaluated.append(NotEvaluated(claim.word, reason, claim.span))


def _gone(draft: Draft, claim: Claim) -> Iterator[str]:
    """What a claim names and this diagram has not: parts, and terminals of parts set otherwise."""
    parts, splices = draft.scope.parts, draft.scope.splices
    for key in claim.parts:
        if key not in parts and key not in splices and key != EARTH.part:
            yield key
    for end in claim.ends or ():
        part = parts.get(end.part)
        if part is not None and end.name not in part.structure.terminals:
            yield f"{part.name}.{end.name}"
