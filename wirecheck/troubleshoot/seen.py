"""What somebody says of a unit in plain words: "pilot lights, main never does"."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from typing import Final

from wirecheck.language.observation import read_observation
from wirecheck.model.diagram import key_of
from wirecheck.troubleshoot.clause import Clause
from wirecheck.troubleshoot.complaints import advice
from wirecheck.troubleshoot.dictionary import Dictionary
from wirecheck.troubleshoot.observed import observed
from wirecheck.troubleshoot.phrases import no_call_words
from wirecheck.troubleshoot.reading import Observation
from wirecheck.troubleshoot.symptoms import GOES_OUT, MAIN_NO_CALL, NO_CALL, ON_CALL
from wirecheck.troubleshoot.wording import NotUnderstoodError

#: Between two things said; "lights and goes out" and "tries and tries again" are one.
_BETWEEN: Final = (
    r"[,;]|\.(?!\d)|\b(?:and|but|then|while|yet|although)\b(?! (?:again|goes|on|tries|when)\b)"
)
#: What a later word makes of an earlier one about the same: it lights, then it goes out.
_BECOMES: Final = {(ON_CALL, GOES_OUT)}

__all__ = ["NotUnderstoodError", "seen"]


def seen(dictionary: Dictionary, text: str) -> tuple[Observation, ...]:
    """What was seen, as observations.

    The words of an ``observe`` statement are taken as such; else each part of the sentence, between
    commas and "and" or "but", is read for itself, to its last word: a condition that was dropped
    would turn what was seen into something else.

    Raises:
        NotUnderstoodError: some of it cannot be read.
    """
    spelt = text.replace("\N{RIGHT SINGLE QUOTATION MARK}", "'")
    said_to_it = advice(key_of(spelt))
    if said_to_it:
        raise NotUnderstoodError(f"“{text.strip()}”: {said_to_it}")
    told = read_observation(dictionary.diagram, text)
    if told.claims and not told.problems:
        return tuple(observed(dictionary, told.claims))
    found: list[Observation] = []
    subject = ""
    for clause in _clauses(dictionary, spelt):
        observations, subject = Clause(dictionary, clause, subject, found).read()
        found += observations
    if not found:
        raise NotUnderstoodError("nothing is said of what was seen")
    return _together(found)


def _clauses(dictionary: Dictionary, spelt: str) -> Iterator[str]:
    """The parts of a sentence; one that only says that nobody calls belongs to those beside it."""
    no_call = no_call_words(dictionary.diagram)
    clauses: list[str] = []
    before = ""
    for piece in re.split(_BETWEEN, spelt):
        clause = " ".join(piece.split())
        if not clause:
            continue
        if not re.sub(no_call, " ", key_of(clause)).strip():
            if clauses:
                clauses[-1] += f", {clause}"
            else:
                before = f"{clause}, "
            continue
        clauses.append(f"{before}{clause}")
    if before and not clauses:
        raise NotUnderstoodError(f"“{before.strip(', ')}”: say what is seen then")
    yield from clauses


def _together(found: Sequence[Observation]) -> tuple[Observation, ...]:
    """The same with what a later word alters of an earlier one.

    Where something is said of the unit with no call, a pilot or spark of which it is not said when
    it was seen may have been seen then too.
    """
    uncalled = any(
        each.low == (MAIN_NO_CALL if each.reading.about == "main" else NO_CALL)
        for each in found
        if each.reading.about in ("main", "pilot")
    )
    kept: dict[str, Observation] = {}
    for each in found:
        if uncalled and each.reading.about == "pilot" and each.low == ON_CALL:
            each = Observation(each.reading, ON_CALL, NO_CALL, each.words)  # noqa: PLW2901
        old = kept.get(each.reading.key)
        if old is not None and (old.low, each.low) in _BECOMES:
            each = Observation(each.reading, each.low, each.high, f"{old.words}, {each.words}")  # noqa: PLW2901
        elif old is not None and (old.low, old.high) == (each.low, each.high):
            continue
        elif old is not None:
            kept[f"{each.reading.key} as well"] = each
            continue
        kept[each.reading.key] = each
    return tuple(kept.values())
