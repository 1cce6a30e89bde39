"""Words of one part of a sentence, taken one after the other, and what of a diagram they mean."""

from __future__ import annotations

import re
from collections.abc import Sequence

from wirecheck.language.observation import read_observation
from wirecheck.model.diagram import Part, key_of
from wirecheck.troubleshoot.dictionary import Dictionary
from wirecheck.troubleshoot.observed import observed
from wirecheck.troubleshoot.reading import Observation, Reading
from wirecheck.troubleshoot.words import joined


class NotUnderstoodError(ValueError):
    """What was said cannot be read, or the diagram has nothing of it; says so in words."""


class Wording:
    """The words of one part of a sentence; those that were read are gone from the rest."""

    def __init__(
        self, dictionary: Dictionary, clause: str, before: str, found: Sequence[Observation]
    ) -> None:
        """Take what was read before it, and of what it was."""
        self._dictionary = dictionary
        self._clause = clause
        self._key = key_of(clause)
        self._rest = self._key
        self._before = before
        self._found = found

    def _of(self, reading: Reading, choices: tuple[float, float], note: str = "") -> Observation:
        return Observation(reading, *choices, f"{self._clause}{note}")

    def _take(self, pattern: str) -> bool:
        """Whether it says so; those words are read then."""
        found = re.search(pattern, self._rest) is not None
        if found:
            self._rest = re.sub(pattern, " ", self._rest)
        return found

    def _claims(self, statement: str) -> list[Observation]:
        told = read_observation(self._dictionary.diagram, statement)
        if told.problems:
            return []
        return [
            Observation(each.reading, each.low, each.high, self._clause)
            for each in observed(self._dictionary, told.claims)
        ]

    def _one(self, parts: Sequence[Part]) -> Part:
        if len(parts) > 1:
            names = joined([part.name for part in parts], "or")
            raise NotUnderstoodError(f"“{self._clause}”: say which, {names}")
        return parts[0]

    def _signal(self) -> Reading:
        """The flame current: of the control that is named, or of the only one."""
        found = [each for each in self._dictionary.readings if each.kind == "microamps"]
        named = [each for each in found if re.search(rf"\b{re.escape(each.part)}\b", self._rest)]
        for each in named:
            self._take(rf"\b(?:of )?{re.escape(each.part)}\b")
        if len(named or found) == 1:
            return (named or found)[0]
        why = "say of which control" if found else "no flame current can be read in this diagram"
        raise NotUnderstoodError(f"“{self._clause}”: {why}")

    def _symptom(self, about: str) -> Reading:
        controls = self._dictionary.controls
        named = [each for each in controls if re.search(rf"\b{re.escape(each.key)}\b", self._key)]
        for each in named:
            self._take(rf"\b(?:of )?{re.escape(each.key)}\b")
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

    def _refusal(self) -> str:
        told = read_observation(self._dictionary.diagram, self._clause)
        stated = re.search(r"-(?:valve|flame)\b|\b(?:across|through|during)\b", self._key)
        why = f" ({told.problems[0].message})" if told.problems and stated else ""
        choices = (each.choices[0] for each in self._dictionary.symptoms if each.choices)
        example = joined(list(choices), "or")
        return f"“{self._clause}” is not understood{why}; say for example: {example}"
