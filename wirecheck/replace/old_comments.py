"""Comments and titles that tell of the old wiring and stay in the text over the new one."""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Final

from wirecheck.model.diagram import Diagram, Lead, Part
from wirecheck.model.text import Span
from wirecheck.replace.landing import Ends, Landings
from wirecheck.replace.plan import Plan

#: A comment by itself, or behind a statement; quoted text may hold the mark of one.
_ALONE: Final = re.compile(r"\s*#")
_BEHIND: Final = re.compile(r'^(?:[^"#]|"[^"]*")*\s(#.*)$')
_WORD: Final = re.compile(r"[a-z]{4,}")


def old_comments(found: Diagram, after: Diagram, plan: Plan, landings: Landings) -> tuple[str, ...]:
    """What a person has to read again, each with its line in the new text."""
    gone = _gone(plan)
    others = bool(gone or plan.request.fitted)
    lines = found.source.text.split("\n")
    told = list(_stale(lines, _changed_lines(found, landings, gone), header=others))
    title = (f"the title “{found.title}”",) if is_old_title(found.title, plan) else ()
    return (
        *title,
        *_placed(lines, told, after.source.text.split("\n")),
    )


def _changed_lines(found: Diagram, landings: Landings, gone: list[Part]) -> set[int]:
    """Lines, from 0, of statements whose leads run between other devices then, or not at all."""
    spans = [part.span for part in gone if part.span.source is found.source]
    spans += [
        lead.statement
        for lead, ends in zip(found.leads, landings.ends, strict=True)
        if _runs_elsewhere(lead, ends) and lead.statement.source is found.source
    ]
    return {number for span in spans for number in _lines_of(span)}


def _runs_elsewhere(lead: Lead, ends: Ends | None) -> bool:
    return ends is None or (lead.a.part, lead.b.part) != (ends[0].part, ends[1].part)


def _lines_of(span: Span) -> range:
    first = span.source.text.count("\n", 0, span.start)
    return range(first, first + span.text.count("\n") + 1)


def _stale(lines: list[str], changed: set[int], *, header: bool) -> Iterator[int]:
    """The comments that stand over or behind what changed; ``header``: that of the file too."""
    number = 0
    while number < len(lines):
        if not _ALONE.match(lines[number]):
            if number in changed and _BEHIND.match(lines[number]):
                yield number
            number += 1
            continue
        first = number
        while number < len(lines) and _ALONE.match(lines[number]):
            number += 1
        below = number
        while below < len(lines) and lines[below].strip() and not _ALONE.match(lines[below]):
            below += 1
        is_header = header and not any(line.strip() for line in lines[:first])
        if changed & set(range(number, below)) or (is_header and below == number):
            yield first


def _placed(old: list[str], told: list[int], new: list[str]) -> Iterator[str]:
    """Comments by their lines in the new text; one that went with its statement is left out."""
    for number in told:
        behind = None if _ALONE.match(old[number]) else _BEHIND.match(old[number])
        comment = behind[1] if behind else old[number]
        before = sum(line.endswith(comment) for line in old[:number])
        there = [place for place, line in enumerate(new, 1) if line.endswith(comment)]
        if before < len(there):
            yield f"line {there[before]}: {comment.strip()}"


def is_old_title(title: str, plan: Plan) -> bool:
    """Whether a title has a word of an old kind that no new one has."""
    request = plan.request
    new = [swap.new.part for swap in request.swaps] + [d.part for d in request.fitted.values()]
    old_words, new_words = (
        {word for part in parts for word in _WORD.findall(part.kind.title.casefold())}
        for parts in (_gone(plan), new)
    )
    return bool(set(_WORD.findall(title.casefold())) & (old_words - new_words))


def _gone(plan: Plan) -> list[Part]:
    """Old parts that nothing of their kind replaces."""
    swapped = (swap for swap in plan.request.swaps if swap.old.kind is not swap.new.part.kind)
    return [*plan.out, *(swap.old for swap in swapped)]
