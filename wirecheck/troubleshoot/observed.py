"""Observations stated with ``observe``, as readings: symptoms where they speak of one, else told.

What is said of spark and flames on a call answers the question that would be asked for it; all
else is compared with what each faulty unit does, in the phase and under the conditions stated.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from wirecheck.model.claim import Claim
from wirecheck.sequence.control import Phase
from wirecheck.troubleshoot.dictionary import Dictionary
from wirecheck.troubleshoot.reading import Observation, Reading, Stage
from wirecheck.troubleshoot.symptoms import MAIN_NO_CALL, NEVER, ON_CALL

_TRYING = ("", Phase.TRIAL.value, Phase.PROVING.value)
#: Signals that a symptom is about, in which phases they say the same, and from which choice to
#: which they mean "on".
_SYMPTOMS = {
    "spark": ("spark", _TRYING, (ON_CALL, 2)),
    "pilot-flame": ("pilot", (*_TRYING, Phase.RUN.value), (ON_CALL, 2)),
    "main-flame": ("main", ("", Phase.RUN.value), (ON_CALL, MAIN_NO_CALL)),
}
IS_SO = 1
#: More than any flame sends, in A: what is more is the current of something else.
MOST_SIGNAL_A = 50e-6


def observed(dictionary: Dictionary, claims: Iterable[Claim]) -> Iterator[Observation]:
    """What was stated, in order."""
    for claim in claims:
        yield _symptom(dictionary, claim) or _signal(dictionary, claim) or _told(claim)


def _symptom(dictionary: Dictionary, claim: Claim) -> Observation | None:
    """What is said of spark or flame on a call, as the answer to what would be asked."""
    state = claim.state
    if state is None or claim.when or state.subject.signal not in _SYMPTOMS:
        return None
    about, phases, (low, high) = _SYMPTOMS[state.subject.signal]
    controls = [each for each in dictionary.controls if each.key == state.subject.part]
    if not controls:
        burner = state.subject.part
        controls = [each for each in dictionary.controls if dictionary.burner_key(each) == burner]
    for control in controls:
        reading = dictionary.symptom(control.key, about)
        if reading is not None and claim.phase in phases:
            if not state.on:
                low = high = NEVER
            return Observation(reading, low, high, claim.text, claim.span)
    return None


def _signal(dictionary: Dictionary, claim: Claim) -> Observation | None:
    """Microamps through a burner or its control: the flame signal, as the meter would read it."""
    if claim.about != "amps" or claim.bounds is None or claim.ends is None or claim.when:
        return None
    if claim.phase not in ("", Phase.RUN.value) or claim.bounds.high > MOST_SIGNAL_A:
        return None
    named = {end.part for end in claim.ends}
    for control in dictionary.controls:
        if named <= {control.key, dictionary.burner_key(control)}:
            reading = dictionary.by_key.get(f"microamps:{control.key}")
            if reading is not None:
                low, high = (each * 1e6 for each in (claim.bounds.low, claim.bounds.high))
                return Observation(reading, low, high, claim.text, claim.span)
    return None


def _told(claim: Claim) -> Observation:
    reading = Reading(
        f"told:{claim.text}",
        "told",
        Stage.RUN,
        f"Is it so: {claim.text}?",
        "",
        1.0,
        ("it is not so", "it is so"),
        claim=claim,
    )
    return Observation(reading, IS_SO, IS_SO, claim.text, claim.span)
