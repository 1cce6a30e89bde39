"""The units that the tests look for faults in; each simulated once."""

from __future__ import annotations

from functools import cache

from tests.contract.source import ROOT
from tests.sequence.heater import HEATER
from wirecheck import load, load_text
from wirecheck.troubleshoot.conversation import Conversation
from wirecheck.troubleshoot.dictionary import Dictionary
from wirecheck.troubleshoot.seen import seen

#: With a fuse between transformer and limit.
FUSED = HEATER.replace("part limit", "part fuse is fuse: 3 A\npart limit").replace(
    "xfmr.R to limit", "xfmr.R to fuse to limit"
)


@cache
def dictionary(text: str = HEATER) -> Dictionary:
    return Dictionary(load_text(text).diagram)


@cache
def example(name: str) -> Dictionary:
    return Dictionary(load(ROOT / "examples" / f"{name}.wiring").diagram)


def talk(words: str, known: Dictionary | None = None) -> Conversation:
    """A conversation that begins with what is seen."""
    known = known or dictionary()
    return Conversation.begun(known, seen(known, words))


def number(known: Dictionary, key: str) -> int:
    """Of a fault, by its key; the lead in it may be left out."""
    return next(
        place
        for place, fault in enumerate(known.faults)
        if fault.key == key or fault.key.partition(":")[0] == key
    )


def value(known: Dictionary, fault: str, reading: str) -> float:
    return known.value((number(known, fault),), known.by_key[reading])
