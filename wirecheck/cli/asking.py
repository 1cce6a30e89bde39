"""Asking somebody at the unit for one reading after the other, until the fault is found."""

from __future__ import annotations

from collections.abc import Iterable
from typing import TYPE_CHECKING

import click

from wirecheck.cli.printing import print_lines
from wirecheck.report.asking_text import (
    beginning_text,
    others_text,
    question_text,
    standing_text,
    words_text,
)
from wirecheck.report.page import Page
from wirecheck.report.troubleshoot_text import diagnosis_text
from wirecheck.troubleshoot.answers import NotAnAnswerError, read_answer

if TYPE_CHECKING:
    from wirecheck.troubleshoot.conversation import Conversation
    from wirecheck.troubleshoot.reading import Reading


def asked(talk: Conversation, page: Page) -> Conversation:
    """The conversation as far as whoever answers takes it.

    It ends by itself where nothing is left to read, by ``stop``, or where standard input does.
    """
    _say(beginning_text(talk.dictionary.diagram.title, page))
    instead: Reading | None = None
    while (advice := talk.diagnosis.advice) is not None:
        reading = instead or advice.reading
        _say(question_text(len(talk.observations) + 1, reading, page))
        typed = _typed()
        instead = None
        match typed.casefold():
            case "stop":
                break
            case "back":
                talk = talk.back()
            case "list":
                _say(diagnosis_text(talk.diagnosis, page))
            case "other":
                instead = _another(advice.others, page)
            case "" | "help":
                _say(words_text(page))
            case _:
                talk = _answered(talk, reading, typed, page)
    _say(["", *diagnosis_text(talk.diagnosis, page)])
    return talk


def _answered(talk: Conversation, reading: Reading, typed: str, page: Page) -> Conversation:
    """The conversation with an answer; as it was where that is none, which is said."""
    try:
        value = read_answer(reading, typed)
    except NotAnAnswerError as error:
        _say(page.item(str(error)))
        return talk
    talk = talk.answer(reading, value)
    _say(standing_text(talk.diagnosis, page))
    return talk


def _another(readings: tuple[Reading, ...], page: Page) -> Reading | None:
    """Another reading, chosen by its number; None for the one that was asked for."""
    _say(others_text(readings, page))
    number = _typed()
    if number.isdigit() and 1 <= int(number) <= len(readings):
        return readings[int(number) - 1]
    _say(page.item("that is none of these numbers"))
    return None


def _typed() -> str:
    """A line that is typed; at the end of standard input it is ``stop``."""
    try:
        return str(click.prompt("", prompt_suffix="> ", default="", show_default=False)).strip()
    except click.Abort:
        return "stop"


def _say(lines: Iterable[str]) -> None:
    print_lines(lines)
