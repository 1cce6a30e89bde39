"""What is wrong with a statement that the grammar refuses, in words a technician can act on.

A few slips are so common that they get words of their own (`FAULTS`, tried in order against what
stands at and before the place where the parser stopped); for the rest the message says what
stands there and what could stand there.
"""

from __future__ import annotations

import re
from typing import NamedTuple

from lark import Token, UnexpectedCharacters, UnexpectedInput, UnexpectedToken

from wirecheck.language.statements import STATEMENT_WORDS
from wirecheck.model.finding import Problem
from wirecheck.model.nearest import either, nearest
from wirecheck.model.text import SourceFile, Span


class Fault(NamedTuple):
    """A common slip.

    Attributes:
        before: must match at the end of the statement's text up to the place of the fault.
        after: must match at the place of the fault.
        message: what is wrong; ``{seen}`` is the text that ``after`` matched.
        nearest: what to write instead, from the groups of both.
        example: a statement with the slip, for the tests.
    """

    before: str
    after: str
    message: str
    nearest: str
    example: str


FAULTS = (
    Fault(
        r"(?P<n>\d[\d./]*) *$",
        r'"|″|”',
        "an inch mark stands here; write the unit: {nearest}",
        "{n} in",
        'wire a.1 to b.1: ignition-cable, 24"',
    ),
    Fault(
        r"(?P<n>\d[\d./]*) *$",
        r"['′’](?!\w)",
        "a foot mark stands here; write the unit: {nearest}",
        "{n} ft",
        "wire a.1 to b.1: 12'",
    ),
    Fault(
        "",
        r"[‐‑‒–—―−]",
        "a long dash stands here; write the plain dash: -",
        "-",
        "part high–limit is high-limit",
    ),
    Fault(
        "",
        r"['‘’‚‛`´]",
        'a single quote stands here; put names in double quotes: "',
        '"',
        "part 'old box' is relay",
    ),
    Fault(
        "",
        r'"(?=[^"]*$)',
        "this quote is never closed; put the closing quote before the end of the line",
        '"',
        'note "left side door',
    ),
    Fault(r",\s*$", r",", "two commas in a row; take one away", ",", "wire a.1 to b.1: red,, 18 AWG"),
    Fault(
        r"(?<=[,:])\s*$",
        r"$",
        "the statement ends here, but something must follow",
        "",
        "wire a.1 to b.1: red,",
    ),
    Fault(
        r"\bto\s*$",
        r"$",
        'the last end is missing behind "to" (write open for a loose end, unknown if not traced)',
        "open",
        "wire a.1 to",
    ),
    Fault(
        r"^\s*wire\s+[^\s:]+\s*$",
        r"(?:$|:)",
        'a lead needs two ends: "to" and the other end are missing',
        "to",
        "wire a.1",
    ),
    Fault(
        r"\bto\s+$",
        r"to\b",
        '"to" stands here twice; take one away',
        "to",
        "wire a.1 to to b.1",
    ),
    Fault(
        r"^\s*part\s+\S+\s+is\s+(?P<kind>\S+)\s*$",
        r"\S+",
        "a colon is missing between the kind and its attributes: write {nearest}",
        "{kind}: {seen}",
        "part xfmr is transformer primary 120 V",
    ),
    Fault(
        r"^\s*(?:part|kind)\s+\S+\s*$",
        r"\S+",
        '"is" and the kind are missing: write {nearest}',
        "is {seen}",
        "part xfmr transformer",
    ),
    Fault(
        r"^\s*(?:wire|jumper)\s.*[^\s:,]\s*$",
        r"(?:>|-+>|→|=|&|;)",
        'between two ends stands "to"',
        "to",
        "wire a.1 > b.1",
    ),
)  # fmt: skip

#: Names of the grammar's terminals as a reader knows them, in the order of messages.
EXPECTED_WORDS = {
    "NAME": "a name", "WORD": "an attribute", "STRING": "text in double quotes",
    "QUANTITY": "an amount with its unit", "STATE": "on, off, open or closed",
    "PHASE": "a phase: idle, damper-opening, trial, proving, run, wait, lockout",
    "CONTINUITY": '"continuity"', "LEAD": '"wire" or "jumper"', "_IS": '"is"', "_AS": '"as"',
    "_TO": '"to"', "_AND": '"and"', "_ACROSS": '"across"', "_FLOWS": '"through"',
    "_WHEN": '"when"', "_DURING": '"during"', "_PART": '"part"', "_AT_LEAST": '"at least"',
    "_AT_MOST": '"at most"', "_BETWEEN": '"between"', "_DOT": '"."', "_THROUGH": '".."',
    "_COLON": '":"', "_COMMA": '","', "_OPEN": '"("', "_CLOSE": '")"',
    "$END": "the end of the statement",
}  # fmt: skip


def unknown_statement(source: SourceFile, text: str, start: int) -> Problem | None:
    """The problem of a statement whose first word is no statement word; None if it is one."""
    match = re.compile(r"[^\s:,\"]+|.").match(text, start)
    word = match[0] if match else ""
    if word.lower() in STATEMENT_WORDS:
        return None
    near = nearest(word, STATEMENT_WORDS)
    hint = f"did you mean {near}?" if near else f"one of {either(sorted(STATEMENT_WORDS))}"
    message = (
        f"no statement begins with “{word}”: {hint} "
        "(if the line above goes on here, end it with a comma or with to)"
    )
    return Problem(message, Span(source, start, start + len(word)), near)


def explain(error: UnexpectedInput, source: SourceFile, text: str, start: int, end: int) -> Problem:
    """Say what is wrong with the statement in ``text[start:end]`` that raised ``error``."""
    place = _place(error, end)
    before, after = text[start:place], text[place:end]
    for fault in FAULTS:
        behind = re.search(fault.before, before, re.IGNORECASE) if fault.before else True
        here = re.match(fault.after, after, re.IGNORECASE)
        if behind and here:
            groups = {"seen": here[0]} | ({} if behind is True else behind.groupdict())
            near = fault.nearest.format_map(groups)
            message = fault.message.format(nearest=near, **groups)
            return Problem(message, Span(source, place, place + max(len(here[0]), 1)), near or None)
    seen = re.match(r"[^\s,:()\"]+|.", after)
    expected = _expected(error)
    stands = f"“{seen[0]}” cannot stand here" if seen else "the statement cannot end here"
    stop = place + len(seen[0]) if seen else place + 1
    return Problem(f"{stands}; expected {either(expected)}", Span(source, place, stop), None)


def _place(error: UnexpectedInput, end: int) -> int:
    if isinstance(error, UnexpectedToken):
        # lark puts the end of the text at the last token: it belongs behind it
        return end if error.token.type == "$END" else _offset(error.token)
    if isinstance(error, UnexpectedCharacters) and error.pos_in_stream is not None:
        return error.pos_in_stream
    return end


def _offset(token: Token) -> int:
    return token.start_pos or 0


def _expected(error: UnexpectedInput) -> list[str]:
    names: set[str] = set()
    if isinstance(error, UnexpectedToken):
        names = set(error.accepts or error.expected)
    elif isinstance(error, UnexpectedCharacters):
        names = set(error.allowed or ())
    return [words for name, words in EXPECTED_WORDS.items() if name in names]
