"""What is told of a unit that no reading stands for: what to do, or to read instead."""

from __future__ import annotations

import re
from typing import Final

#: What is said, and what is to be said to it (common practice, no source).
_ADVICE: Final = (
    (
        r"\bsmell\w*\b.*\bgas\b|\bgas\b.*\b(?:smell|leak|stink)\w*|\bleak\w*\b.*\bgas\b",
        (
            "leave now, with everybody; touch no switch, no plug, no telephone "
            "and no flame inside; shut the gas off from outside, and call the gas supplier or "
            "the fire service from outside. No fault is looked for until they have let you in "
            "again"
        ),
    ),
    (
        r"\b(?:rolls?|rolling|rolled|shoots?|comes?) out\b.*|\bflames? .*\boutside\b",
        (
            "shut the gas cock and the power now. That is no fault of the "
            "wiring: look for a blocked flue or heat exchanger, too little air, too much gas; a "
            "switch that it opened is bridged by nobody, and stays open until the cause is "
            "found"
        ),
    ),
    (
        r"\bcarbon monoxide\b|\bfumes\b|\bsoot\w*\b|\bheadaches?\b",
        (
            "everybody out into fresh air, the gas off; that is no fault of the "
            "wiring: flue, air and burner are looked at by people licensed for it before it "
            "runs again"
        ),
    ),
    (
        (
            r"\b(?:transformer|xfmr)\b.*\b(?:hot|hums?|buzz\w*|smells?|burnt|smok\w+)\b"
            r"|\bhot transformer\b"
        ),
        (
            "it carries too much, or its windings are shorted. Power off, "
            "take its secondary leads off one after the other and read each to the common; give "
            "what is read with --answer, and say what spark and flames do"
        ),
    ),
    (
        (
            r"\b(?:delayed|hard|late|explosive) (?:ignition|lighting)\b"
            r"|\blights? (?:with a )?bangs?\b|\bbangs?\b|\bbooms?\b"
        ),
        (
            "shut the gas cock and let nobody try again. That is a "
            "matter of gas, air and where the spark stands, for people licensed for it; the "
            "wiring is last"
        ),
    ),
)


def advice(said: str) -> str:
    """What is to be said to something told, in small letters; "" where a reading stands for it."""
    return next((words for pattern, words in _ADVICE if re.search(pattern, said)), "")
