"""One turn of the conversation in words: what to read, what may be answered, what is likeliest."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Final

from wirecheck.report.page import Page
from wirecheck.report.troubleshoot_text import percent
from wirecheck.report.visible import visible
from wirecheck.troubleshoot.diagnosis import Diagnosis
from wirecheck.troubleshoot.endings import CAUTIONS
from wirecheck.troubleshoot.reading import Reading

#: What may be typed in the place of an answer.
WORDS: Final = (
    ("back", "take the last answer back"),
    ("other", "make another reading instead"),
    ("list", "say all that it may be"),
    ("?", "it cannot be made, or is not known"),
    ("stop", "end here"),
)
_UNITS: Final = {"V": "volts, such as 24", "ohm": "ohms, or open", "uA": "microamps, such as 2.5"}


def beginning_text(title: str, page: Page) -> Iterator[str]:
    """What stands before the first question."""
    yield from page.heading(visible(f"Looking for a fault in {title}"))
    for caution in CAUTIONS:
        yield from map(page.alarm, page.item(f"! {caution}", ""))
    yield ""
    yield from words_text(page)


def words_text(page: Page) -> Iterator[str]:
    """What may be typed in the place of an answer."""
    told = "; ".join(f"{word}: {meaning}" for word, meaning in WORDS)
    yield from map(page.faint, page.item(told, ""))


def question_text(number: int, reading: Reading, page: Page) -> Iterator[str]:
    """A reading to be made, and what it can be answered with."""
    yield ""
    yield from page.heading(visible(f"{number}. {reading.ask}"))
    for caution in reading.cautions:
        yield from map(page.alarm, page.item(visible(f"! {caution}")))
    for place, choice in enumerate(reading.choices, 1):
        yield from page.item(visible(f"{place} {choice}"))
    if reading.unit:
        yield from page.item(f"in {_UNITS[reading.unit]}")


def others_text(readings: Sequence[Reading], page: Page) -> Iterator[str]:
    """Readings to choose from."""
    for place, reading in enumerate(readings, 1):
        yield from page.item(visible(f"{place} {reading.ask}"))


def standing_text(diagnosis: Diagnosis, page: Page) -> Iterator[str]:
    """What is likeliest now, in a line, and what is to be said of the answers."""
    for remark in diagnosis.remarks:
        yield from map(page.alarm, page.item(visible(f"! {remark}")))
    first = diagnosis.groups[0]
    words = f"likeliest now: {first.suspects[0].what} ({percent(first.probability)})"
    yield from map(page.faint, page.item(visible(words)))
