"""The words that people say of a unit, as patterns for small letters."""

from __future__ import annotations

import re
from typing import Final

from wirecheck.model.diagram import Diagram
from wirecheck.troubleshoot.symptoms import (
    DROPS_OUT,
    LOCKS_OUT,
    NO_END,
    NOTHING,
    RUNS,
    TRIES_AGAIN,
    UNCALLED,
)

NOT: Final = (
    r"\b(?:no|not|never|without|dark|dead|fails?|cannot|failed)\b|\b\w+n't\b"
    r"|\b(?:is|are|stays?|stayed|remains?) (?:out|off)\b|\boff$"
)
OUT: Final = (
    r"\b(?:goes|went|go|going|drops?|dropped|shuts?|cuts?|burns?) (?:out|off|down)(?: again)?\b"
    r"|\b(?:dies|died|quits?|stops?|stopped)\b"
)
WHEN: Final = (
    r"\b(?:after|in|within) (?:about |some |a few |a couple of |a )?(?:\d+(?:\.\d+)? ?)?"
    r"(?:s|secs?|seconds?|mins?|minutes?|while)\b|\b(?:at once|right away|soon|again|later)\b"
    r"|\bwhen (?:it is |it gets )?(?:hot|warm)\b"
)
#: What is taken for granted: that somebody calls.
ON_CALL: Final = (
    r"\b(?:on|with|at|during|in) (?:a |the |every |each )?call(?: for heat)?\b"
    r"|\b(?:when|while|as) (?:it|the (?:thermo)?stat|the thermostat) (?:calls|is calling|is on)\b"
    r"|\bwith the (?:thermo)?stat (?:on|calling)\b"
)
LIT: Final = (
    r"\b(?:lights?|lit|lighting|burns?|burning|runs?|running|works?|working|starts?|comes?|opens?|"
    r"open|on|up|ok|fine|good|sparks|sparking|proved|steady|lights up|pulls in|does|do|be|"
    r"reaches|stays lit|turns?|goes)\b"
)
FILLER: Final = frozenset(
    (
        "a",
        "an",
        "the",
        "it",
        "its",
        "is",
        "are",
        "of",
        "at",
        "to",
        "there",
        "so",
        "now",
        "just",
        "any",
        "this",
        "that",
        "then",
    )
)
PILOT_LIT: Final = (
    r"\b(?:when|once|as soon as|after) (?:the )?pilot (?:is )?(?:lights|lit|burns|proved)\b"
)
STAYS_ON: Final = r"\bstays? (?:on|lit)\b|\bkeeps? (?:burning|running)\b|\bburns on\b"
ELSE: Final = r"\b(?:nothing|not anything) else(?: happens| runs)?\b|\bthat(?: i|')s all\b|^only\b"
NO_HEAT: Final = (
    r"\bno (?:heat|hot water|hot air)\b|\b(?:does not|doesn't|not|won't) heat(?:ing)?\b"
)
CYCLES: Final = r"\b(?:short[- ])?cycl(?:es|ing)(?: on and off)?\b"
PILOT_GAS: Final = r"\bgas (?:is |comes |flows )?(?:at|to|from|out of|reaches) (?:the )?pilot\b"
GAS: Final = r"\bgas\b(?: (?:at|to|from|reaches) (?:the )?(?:pilot|burner|main))?"
OPENED: Final = r"\b(?:blew|blows?|blown|tripped|trips?|opened|opens|open)\b"
MICROAMPS: Final = (
    r"(?:\bflame (?:signal|current)\b|\bsignal\b)?(?: is| of| reads)?\s*"
    r"(\d*\.?\d+) ?(?:ua|µa|μa|microamps?)\b(?: (?:of )?flame(?: signal| current)?)?"
)

LOCKOUT: Final = r"\b(?:goes (?:in|into|on) )?(?:lock(?:s|ed)?[ -]?out|lockout)\b"
#: What is said of how a call ends; the choices from which to which it means.
ENDINGS: Final[tuple[tuple[str, tuple[int, int]], ...]] = (
    (LOCKOUT, (LOCKS_OUT, LOCKS_OUT)),
    (r"\bnothing(?: at all)? happens?\b|\b(?:unit |burner )?(?:is )?dead\b", (NOTHING, NOTHING)),
    (r"\bdrops? out\b.*\bagain\b|\bchatters?\b", (DROPS_OUT, DROPS_OUT)),
    (r"\btr(?:y|ies)\b(?:.*\bagain\b)|\bwaits?\b", (TRIES_AGAIN, TRIES_AGAIN)),
    (r"\b(?:tries )?(?:on )?(?:without end|for ever|forever)\b", (NO_END, NO_END)),
    (r"\bstarts? (?:with no|without a) call\b", (UNCALLED, UNCALLED)),
    (r"\bruns? on\b|\bruns? well\b", (RUNS, RUNS)),
)
TOO_SOON: Final = (
    r"\b(?:it )?(?:lights?|starts?|fires?|sparks?)? ?before (?:the )?(?:vent )?damper"
    r"(?: is| has)? ?(?:open(?:s|ed)?)?\b"
)
SUBJECTS: Final = (
    ("pilot", r"\bpilot(?: burner| flame| light)?\b"),
    ("main", r"\bmains?(?: burners?| flame)?\b|\bburners?\b"),
    ("spark", r"\bspark(?:s|ing)?\b"),
)
#: Words by which parts go that a diagram may have one of.
KINDS: Final = {
    "blower": "blower", "fan": "blower", "circulator": "circulator", "pump": "circulator",
    "inducer": "inducer", "damper": "vent-damper", "lamp": "lamp",
}  # fmt: skip


def no_call_words(diagram: Diagram) -> str:
    """A pattern for all that says that nobody calls for heat."""
    callers = (
        p.key for p in diagram.parts.values() if p.family in ("thermostat", "operating-control")
    )
    names = "|".join(map(re.escape, ("thermostat", "stat", "t-stat", "call", *callers)))
    return (
        rf"(?:\beven )?(?:\b(?:with|when|while|though) )?(?:\b(?:the|its|room) )*\b(?:{names}) "
        r"(?:(?:is|was|turned|switched|set|all the way) )*(?:off|open|down|satisfied|not calling|"
        r"disconnected|removed)\b"
        r"|\b(?:with )?(?:no|without(?: a)?|before (?:a|the|any)|after (?:a|the)) call"
        r"(?: for heat)?\b"
        r"|\b(?:with )?(?:no|nobody|nothing) calling\b|\ball the time\b|\balways\b|\bby itself\b"
        r"|\bon its own\b|\b(?:never|won't|will not|does not|doesn't|do not|don't|cannot be) "
        r"(?:shuts?|turns?|goes|go|switch(?:es)?|turned|shut) (?:off|down|out)\b"
    )
