"""The record of a search for a fault: what was read, what followed from it, what to mend and prove.

There is room to say who did it, and what was read when all was mended.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from typing import Final

from wirecheck.drawing.canvas import Canvas
from wirecheck.drawing.faults.steps import table_pages
from wirecheck.drawing.faults.words import block, share
from wirecheck.drawing.table import BAR, BOLD, PLAIN, WIDTH, Column, Row, Words, heading, lines
from wirecheck.troubleshoot.conversation import Conversation
from wirecheck.troubleshoot.diagnosis import Diagnosis

COLUMNS = (
    Column("", 0.0, 22.0),
    Column("read or seen", 22.0, 222.0),
    Column("it came to", 222.0, 332.0),
    Column("then the likeliest", 332.0, WIDTH),
)
NUMBER, READING, CAME_TO, LIKELIEST = COLUMNS
#: So many of the suspects left are told.
MOST_SUSPECTS: Final = 5
_TICK: Final = "[   ]  "
_BY: Final = "Done by, date:"
_AFTERWARDS: Final = "Read when it was mended:"


def record_pages(conversation: Conversation, date: str = "") -> list[Canvas]:
    """Draw the record of a conversation, on as many pages as it takes.

    Args:
        conversation: as it ended, or as far as it got.
        date: as it shall be printed in the title block.
    """
    frame = block(conversation.dictionary.diagram, "Record", "", date)
    return table_pages(list(_rows(conversation)), frame, "Record", "record")


def _rows(conversation: Conversation) -> Iterator[Row]:
    diagnosis = conversation.diagnosis
    for danger in diagnosis.dangers:
        yield Row(across=tuple(lines(danger, BOLD)))
    yield heading(COLUMNS)
    for number, observation in enumerate(conversation.observations, 1):
        so_far = replace(conversation, observations=conversation.observations[:number])
        yield Row(
            (
                (NUMBER, (Words(str(number), BOLD),)),
                (READING, tuple(lines(observation.reading.ask, PLAIN, READING))),
                (CAME_TO, tuple(lines(observation.words, BOLD, CAME_TO))),
                (LIKELIEST, tuple(lines(_likeliest(so_far.diagnosis), PLAIN, LIKELIEST))),
            )
        )
    for remark in diagnosis.remarks[len(diagnosis.dangers) :]:
        yield Row(across=tuple(lines(remark, BOLD)))
    yield from _part("What it may be", _suspects(diagnosis))
    if diagnosis.ending is None:
        yield from _part("Not finished", ["More readings would narrow it down."])
    else:
        yield from _part("First of all", diagnosis.ending.cautions)
        yield from _part("To mend", [f"{_TICK}{each}" for each in diagnosis.ending.repair])
        yield from _part("To prove", [f"{_TICK}{each}" for each in diagnosis.ending.proof])
    yield from _part("Signed", [_AFTERWARDS, "", _BY, ""])


def _part(title: str, texts: Iterator[str] | tuple[str, ...] | list[str]) -> Iterator[Row]:
    yield Row(across=(Words(title, BAR),), bar=True)
    for text in texts:
        yield Row(across=tuple(lines(text)) or (Words(""),))


def _suspects(diagnosis: Diagnosis) -> Iterator[str]:
    suspects = [each for group in diagnosis.groups for each in group.suspects]
    for suspect in suspects[:MOST_SUSPECTS]:
        yield f"{share(suspect.probability)}: {suspect.what}"
    if len(suspects) > MOST_SUSPECTS:
        yield f"and {len(suspects) - MOST_SUSPECTS} less likely ones"


def _likeliest(diagnosis: Diagnosis) -> str:
    first = diagnosis.groups[0].suspects[0]
    return f"{first.what} ({share(first.probability)})"
