"""One part of a sentence about a unit, read to its last word: "the pilot lights on a call"."""

from __future__ import annotations

import re

from wirecheck.model.diagram import Part, key_of
from wirecheck.troubleshoot import phrases
from wirecheck.troubleshoot.reading import Observation
from wirecheck.troubleshoot.symptoms import (
    BEFORE_DAMPER,
    DROPS_OUT,
    GOES_OUT,
    LOCKS_OUT,
    MAIN_NO_CALL,
    NEVER,
    NO_CALL,
    ON_CALL,
    TRIES_AGAIN,
    UNCALLED,
)
from wirecheck.troubleshoot.wording import NotUnderstoodError, Wording


class Clause(Wording):
    """One part of a sentence; one that names nothing speaks of what was named before."""

    def read(self) -> tuple[list[Observation], str]:
        """The observations, and what they speak of.

        Raises:
            NotUnderstoodError: not a word of it can be read, or some are left.
        """
        observations, subject = self._read()
        self._take(phrases.ON_CALL)
        left = [word for word in re.findall(r"[^\s,]+", self._rest) if word not in phrases.FILLER]
        if left:
            rest = " ".join(left)
            raise NotUnderstoodError(
                f"“{self._clause}”: “{rest}” was not read, and half of what is said is not taken; "
                "say it in other words, or as an observe statement: main-flame on when limit open"
            )
        return observations, subject

    def _read(self) -> tuple[list[Observation], str]:
        for way in (self._complaint, self._of_damper, self._of_part, self._of_flame):
            found = way()
            if found is not None:
                return found
        ending = self._ending()
        if ending is None:
            raise NotUnderstoodError(self._refusal())
        if ending == (LOCKS_OUT, LOCKS_OUT):
            return [self._locking()], ""
        return [self._of(self._symptom("ending"), ending)], ""

    # ---- of what -----------------------------------------------------------------------------

    def _complaint(self) -> tuple[list[Observation], str] | None:
        """What customers say."""
        if self._take(phrases.ELSE):
            return self._nothing_else(), ""
        if self._take(phrases.NO_HEAT):
            return [self._of(self._symptom("main"), (NEVER, NEVER))], "main"
        if self._take(phrases.CYCLES):
            self._take(r"\b(?:on and off|unit|burner)\b")
            return [self._of(self._symptom("main"), (GOES_OUT, GOES_OUT))], "main"
        read = re.search(phrases.MICROAMPS, self._rest)
        if read is not None:
            self._take(phrases.MICROAMPS)
            value = float(read[1])
            return [self._of(self._signal(), (value, value))], ""
        if re.search(phrases.GAS, self._rest):
            return self._gas(), ""
        return self._opened()

    def _nothing_else(self) -> list[Observation]:
        """Neither spark nor flame of any control of which nothing else is said."""
        said = {each.reading.key for each in self._found}
        return [
            self._of(reading, (NEVER, NEVER), f": {reading.choices[NEVER]}")
            for reading in self._dictionary.symptoms
            if reading.about in ("spark", "pilot", "main") and reading.key not in said
        ]

    def _gas(self) -> list[Observation]:
        """Gas at the pilot, or none: where there is none, nothing lights."""
        if self._is_uncalled():
            raise NotUnderstoodError(
                f"“{self._clause}”: gas that nobody called for: shut the gas cock now and keep it "
                "shut; then say which flame burns with no call, or read the volts at the operators"
            )
        has_pilot = any(each.about == "pilot" for each in self._dictionary.symptoms)
        if re.search(phrases.NOT, self._rest):
            self._take(phrases.GAS)
            self._take(phrases.NOT)
            self._take(phrases.LIT)
            about = "pilot" if has_pilot else "main"
            return [self._of(self._symptom(about), (NEVER, NEVER))]
        if not has_pilot or not self._take(phrases.PILOT_GAS):
            raise NotUnderstoodError(self._refusal())
        control = self._symptom("pilot").part
        valve = self._dictionary.diagram.parts[control].name
        return self._claims(f"{valve}.pilot-valve on during trial") or self._claims(
            "pilot-valve on during trial"
        )

    def _opened(self) -> tuple[list[Observation], str] | None:
        """A fuse that has blown, a limit that has tripped."""
        if not re.search(phrases.OPENED, self._key):
            return None
        words = set(re.findall(r"[\w.-]+", self._key))
        parts = list(self._dictionary.diagram.parts.values())
        fuses = [each for each in parts if each.family == "overcurrent"]
        named = [each for each in fuses if each.key in words]
        if not named and words & {"fuse", "fuses", "breaker"}:
            named = fuses
        if named and self._take(phrases.OPENED):
            self._take(rf"\b(?:{'|'.join(re.escape(each.key) for each in named)}|fuses?|breaker)\b")
            part = self._one(named)
            return [self._of(self._dictionary.by_key[f"look:opened:{part.key}"], (1, 1))], ""
        if not re.search(r"\btripp?(?:ed|s)\b", self._key):
            return None
        for tripped in (each for each in parts if each.key in words):
            found = self._claims(f"{tripped.name} open")
            if found:
                self._take(phrases.OPENED)
                self._take(rf"\b{re.escape(tripped.key)}\b")
                return found, ""
        return None

    def _of_damper(self) -> tuple[list[Observation], str] | None:
        if re.search(phrases.TOO_SOON, self._rest):
            for reading in self._dictionary.symptoms:
                if reading.about.startswith("start "):
                    self._take(phrases.TOO_SOON)
                    return [self._of(reading, (BEFORE_DAMPER, BEFORE_DAMPER))], ""
        return None

    def _of_part(self) -> tuple[list[Observation], str] | None:
        for part in self._named():
            for reading in self._dictionary.symptoms:
                if reading.part == part.key and (
                    reading.about == "blade" or reading.about.startswith("load ")
                ):
                    kinds = [word for word, kind in phrases.KINDS.items() if kind == part.kind.name]
                    self._take(rf"\b(?:vent )?(?:{'|'.join((re.escape(part.key), *kinds))})\b")
                    choices = self._blade() if reading.about == "blade" else self._plain()
                    return [self._of(reading, choices)], part.name
        return None

    def _of_flame(self) -> tuple[list[Observation], str] | None:
        subject = self._subject() or ("" if self._is_ending() else self._before)
        if subject == "main" and re.search(phrases.LOCKOUT, self._rest):
            return None  # not the flame locks out but its control
        if subject not in ("pilot", "main", "spark"):
            return None
        reading = self._symptom(subject)
        if subject == "spark" and self._is_uncalled():
            self._take(phrases.SUBJECTS[2][1])
            self._take(phrases.LIT)
            return [self._of(self._symptom("ending"), (UNCALLED, UNCALLED))], subject
        choices = getattr(self, f"_{subject}")()
        found = [self._of(reading, choices)]
        if subject == "pilot" and choices == (GOES_OUT, GOES_OUT):
            ends = self._of(self._symptom("ending"), (TRIES_AGAIN, DROPS_OUT))
            found = [self._of(reading, (ON_CALL, ON_CALL)), ends]
        return found, subject

    def _subject(self) -> str:
        """What it speaks of by name; the first named."""
        places = [
            (where.start(), name)
            for name, words in phrases.SUBJECTS
            if (where := re.search(words, self._rest)) is not None
        ]
        if not places and self._has_one_flame() and self._take(r"\bflames?\b"):
            return "main"
        return min(places)[1] if places else ""

    def _has_one_flame(self) -> bool:
        """Whether "the flame" can only be the main flame."""
        return all(each.about != "pilot" for each in self._dictionary.symptoms)

    def _named(self) -> list[Part]:
        """The parts that are named, or meant by the word for their kind."""
        words = set(re.findall(r"[\w.-]+", self._rest))
        if not self._is_ending() and not self._subject():
            words.add(key_of(self._before))
        parts = self._dictionary.diagram.parts.values()
        named = [part for part in parts if part.key in words and not part.with_role("spark")]
        if named:
            return named
        kinds = {kind for word, kind in phrases.KINDS.items() if word in words}
        meant = [part for part in parts if part.kind.name in kinds]
        return [self._one(meant)] if meant else []

    # ---- what of it --------------------------------------------------------------------------

    def _is_ending(self) -> bool:
        return any(re.search(words, self._rest) for words, _choices in phrases.ENDINGS)

    def _ending(self) -> tuple[int, int] | None:
        for words, choices in phrases.ENDINGS:
            if self._take(words):
                self._take(r"\b(?:unit|main burner|main|burner|heater|furnace|boiler)\b")
                self._take(phrases.WHEN)
                return choices
        return None

    def _locking(self) -> Observation:
        """A lockout; people say so too where a control that has none waits for another trial."""
        reading = self._symptom("ending")
        control = self._dictionary.diagram.parts[reading.part]
        if control.values.get("retry") == "lockout":
            return self._of(reading, (LOCKS_OUT, LOCKS_OUT))
        note = (
            f" ({control.name} has no lockout as drawn: taken for its wait before it tries again)"
        )
        return self._of(reading, (TRIES_AGAIN, LOCKS_OUT), note)

    def _is_uncalled(self) -> bool:
        return self._take(phrases.no_call_words(self._dictionary.diagram))

    def _is_not(self) -> bool:
        found = self._take(phrases.NOT)
        self._take(phrases.LIT)
        return found

    def _plain(self) -> tuple[int, int]:
        if self._is_uncalled():
            self._take(phrases.LIT)
            return NO_CALL, NO_CALL
        return (NEVER, NEVER) if self._is_not() else (ON_CALL, ON_CALL)

    def _blade(self) -> tuple[int, int]:
        if self._take(r"\b(?:stays?|is|remains?) (?:shut|closed)\b|\bshut\b|\bclosed\b"):
            return NEVER, NEVER
        self._take(r"\bstands?\b")
        return self._plain()

    def _pilot(self) -> tuple[int, int]:
        self._take(phrases.SUBJECTS[0][1])
        if self._is_uncalled():
            self._take(phrases.LIT)
            return NO_CALL, NO_CALL
        if not re.search(phrases.NOT, self._rest) and self._take(phrases.OUT):
            self._take(phrases.WHEN)
            self._take(phrases.LIT)
            return GOES_OUT, GOES_OUT
        self._take(phrases.STAYS_ON)
        return (NEVER, NEVER) if self._is_not() else (ON_CALL, ON_CALL)

    def _main(self) -> tuple[int, int]:
        self._take(phrases.SUBJECTS[1][1])
        if self._is_uncalled():
            self._take(phrases.STAYS_ON)
            self._take(phrases.LIT)
            return MAIN_NO_CALL, MAIN_NO_CALL
        with_call = self._take(phrases.ON_CALL)
        if re.search(r"\bstays? on\b", self._rest) and not with_call:
            raise NotUnderstoodError(
                f"“{self._clause}”: with a call, or with none? Say “main burns with no call” if it "
                "burns when nobody calls: then shut the gas cock first of all"
            )
        self._take(phrases.STAYS_ON)
        if re.search(phrases.OUT, self._rest) and not re.search(
            r"\b(?:not|never|no)\b|n't", self._rest
        ):
            self._take(phrases.OUT)
            self._take(phrases.WHEN)
            self._take(r"\b(?:and|then)\b")
            self._take(phrases.LIT)
            return GOES_OUT, GOES_OUT
        return (NEVER, NEVER) if self._is_not() else (ON_CALL, ON_CALL)

    def _spark(self) -> tuple[int, int]:
        self._take(phrases.SUBJECTS[2][1])
        if self._take(
            r"\b(?:goes|runs|carries) on(?: and on)?\b|\bon and on\b|\bkeeps?(?: on| going)?\b"
            r"|\bstays?(?: on)?\b|\b(?:never|does not|doesn't|won't) stops?\b|\bcontinues\b"
        ):
            self._take(phrases.LIT)
            return 2, 2
        if not re.search(phrases.NOT, self._rest) and self._take(
            r"\b(?:stops?|quits?|ends?|goes off|goes out)\b"
        ):
            if self._take(phrases.PILOT_LIT):
                return ON_CALL, ON_CALL
            timed = self._take(phrases.WHEN)
            lit = any(each.reading.about == "pilot" and each.low == ON_CALL for each in self._found)
            return ON_CALL, ON_CALL if lit and not timed else 2
        return (NEVER, NEVER) if self._is_not() else (ON_CALL, 2)
