"""What somebody says of a unit in plain words: "pilot lights, main never does"."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from typing import Final

from wirecheck.language.observation import read_observation
from wirecheck.model.diagram import Part, key_of
from wirecheck.troubleshoot.dictionary import Dictionary
from wirecheck.troubleshoot.observed import observed
from wirecheck.troubleshoot.reading import Observation, Reading
from wirecheck.troubleshoot.symptoms import (
    BEFORE_DAMPER,
    DROPS_OUT,
    GOES_OUT,
    LOCKS_OUT,
    MAIN_NO_CALL,
    NEVER,
    NO_CALL,
    NO_END,
    NOTHING,
    ON_CALL,
    RUNS,
    TRIES_AGAIN,
    UNCALLED,
)
from wirecheck.troubleshoot.words import joined

_NOT: Final = r"\b(?:no|not|never|don't|doesn't|won't|isn't|without|dark|dead|fails)\b"
_NO_CALL: Final = r"\b(?:no|without(?: a)?) call\b|\ball the time\b|\balways\b"
_OUT: Final = r"\b(?:goes|went|going|drops|dropped) out\b|\bdies\b|\bcuts? out\b"

#: What is said of how a call ends; the choices from which to which it means.
_ENDINGS: Final[tuple[tuple[str, tuple[int, int]], ...]] = (
    (r"\block(?:s|ed)?[ -]?out\b|\blockout\b", (LOCKS_OUT, LOCKS_OUT)),
    (r"\bnothing(?: at all)? happens?\b|\b(?:unit|burner)? ?(?:is )?dead\b", (NOTHING, NOTHING)),
    (r"\bdrops? out\b.*\bagain\b|\bchatters?\b", (DROPS_OUT, DROPS_OUT)),
    (r"\btr(?:y|ies)\b.*\bagain\b|\bwaits?\b", (TRIES_AGAIN, TRIES_AGAIN)),
    (r"\bwithout end\b|\bfor ever\b|\bforever\b", (NO_END, NO_END)),
    (r"\bstarts? (?:with no|without a) call\b", (UNCALLED, UNCALLED)),
    (r"\bruns? on\b|\bruns? well\b", (RUNS, RUNS)),
)
_TOO_SOON: Final = r"\bbefore (?:the )?(?:vent )?damper\b"
_SUBJECTS: Final = (
    ("pilot", r"\bpilot\b"),
    ("main", r"\bmains?\b|\bburner\b"),
    ("spark", r"\bspark(?:s|ing)?\b"),
)
#: Words by which parts go that a diagram may have one of.
_KINDS: Final = {
    "blower": "blower", "fan": "blower", "circulator": "circulator", "pump": "circulator",
    "inducer": "inducer", "damper": "vent-damper", "lamp": "lamp",
}  # fmt: skip


class NotUnderstoodError(ValueError):
    """What was said cannot be read, or the diagram has nothing of it; says so in words."""


def seen(dictionary: Dictionary, text: str) -> tuple[Observation, ...]:
    """What was seen, as observations.

    The words of an ``observe`` statement are taken as such; else each part of the sentence, between
    commas and "and" or "but", is read for itself.

    Raises:
        NotUnderstoodError: some of it cannot be read.
    """
    told = read_observation(dictionary.diagram, text)
    if told.claims and not told.problems:
        return tuple(observed(dictionary, told.claims))
    found: list[Observation] = []
    subject = ""
    for clause in _clauses(text):
        observation, subject = _Clause(dictionary, clause, subject).read()
        found.append(observation)
    if not found:
        raise NotUnderstoodError("nothing is said of what was seen")
    return tuple(found)


def _clauses(text: str) -> Iterator[str]:
    spelt = text.replace("\N{RIGHT SINGLE QUOTATION MARK}", "'")
    for clause in re.split(r"[,;.]|\b(?:and|but|then|while)\b(?! (?:again|goes|on|tries))", spelt):
        if clause.strip():
            yield " ".join(clause.split())


class _Clause:
    """One part of a sentence; one that names nothing speaks of what was named before."""

    def __init__(self, dictionary: Dictionary, clause: str, before: str) -> None:
        self._dictionary = dictionary
        self._clause = clause
        self._key = key_of(clause)
        self._before = before

    def read(self) -> tuple[Observation, str]:
        """The observation, and what it speaks of."""
        if re.search(_TOO_SOON, self._key):
            for reading in self._dictionary.symptoms:
                if reading.about.startswith("start "):
                    return self._of(reading, (BEFORE_DAMPER, BEFORE_DAMPER)), ""
        for part in self._named():
            for reading in self._dictionary.symptoms:
                if reading.part == part.key and (
                    reading.about == "blade" or reading.about.startswith("load ")
                ):
                    choices = self._blade() if reading.about == "blade" else self._plain()
                    return self._of(reading, choices), part.name
        subject = self._subject() or ("" if self._ending() else self._before)
        if subject in ("pilot", "main", "spark"):
            reading = self._symptom(subject)
            return self._of(reading, getattr(self, f"_{subject}")()), subject
        ending = self._ending()
        if ending is None:
            raise NotUnderstoodError(self._refusal())
        return self._of(self._symptom("ending"), ending), ""

    def _of(self, reading: Reading, choices: tuple[int, int]) -> Observation:
        return Observation(reading, *choices, self._clause)

    def _subject(self) -> str:
        return next((name for name, words in _SUBJECTS if re.search(words, self._key)), "")

    # ---- of what -----------------------------------------------------------------------------

    def _named(self) -> list[Part]:
        """The parts that are named, or meant by the word for their kind."""
        words = set(re.findall(r"[\w.-]+", self._key))
        if not self._ending() and not self._subject():
            words.add(key_of(self._before))
        parts = self._dictionary.diagram.parts.values()
        named = [part for part in parts if part.key in words and not part.with_role("spark")]
        if named:
            return named
        kinds = {kind for word, kind in _KINDS.items() if word in words}
        meant = [part for part in parts if part.kind.name in kinds]
        if len(meant) > 1:
            names = joined([part.name for part in meant], "or")
            raise NotUnderstoodError(f"“{self._clause}”: say which, {names}")
        return meant

    def _symptom(self, about: str) -> Reading:
        controls = self._dictionary.controls
        named = [each for each in controls if re.search(rf"\b{re.escape(each.key)}\b", self._key)]
        found = [
            reading
            for control in named or controls
            if (reading := self._dictionary.symptom(control.key, about)) is not None
        ]
        if len(found) == 1:
            return found[0]
        if not found:
            raise NotUnderstoodError(f"“{self._clause}”: this diagram has no {about} to be seen")
        names = joined([each.name for each in controls], "or")
        raise NotUnderstoodError(f"“{self._clause}”: say of which control: … of {names}")

    # ---- what of it --------------------------------------------------------------------------

    def _ending(self) -> tuple[int, int] | None:
        return next((choices for words, choices in _ENDINGS if re.search(words, self._key)), None)

    def _is_not(self) -> bool:
        return re.search(_NOT, self._key) is not None

    def _plain(self) -> tuple[int, int]:
        if re.search(_NO_CALL, self._key):
            return NO_CALL, NO_CALL
        return (NEVER, NEVER) if self._is_not() else (ON_CALL, ON_CALL)

    def _blade(self) -> tuple[int, int]:
        return (NEVER, NEVER) if re.search(r"\bshut\b|\bclosed\b", self._key) else self._plain()

    _pilot = _plain

    def _main(self) -> tuple[int, int]:
        if re.search(_NO_CALL, self._key):
            return MAIN_NO_CALL, MAIN_NO_CALL
        if self._is_not():
            return NEVER, NEVER
        return (GOES_OUT, GOES_OUT) if re.search(_OUT, self._key) else (ON_CALL, ON_CALL)

    def _spark(self) -> tuple[int, int]:
        if self._is_not():
            return NEVER, NEVER
        goes_on = re.search(r"\bgoes on\b|\bon and on\b|\bkeeps?\b|\bstays?\b", self._key)
        return (2, 2) if goes_on else (ON_CALL, 2)

    def _refusal(self) -> str:
        told = read_observation(self._dictionary.diagram, self._clause)
        parts: Sequence[str] = [
            reading.choices[0] for reading in self._dictionary.symptoms if reading.choices
        ]
        why = f" ({told.problems[0].message})" if told.problems else ""
        return f"“{self._clause}” is not understood{why}; say for example: {joined(parts, 'or')}"
