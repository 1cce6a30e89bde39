"""What is wrong with a statement that the grammar refuses, in words a technician can act on.

Common slips have words of their own (`common_slips`); for the rest the message says what stands
there and what could stand there, or how the statement reads when it ends too early.
"""

from __future__ import annotations

import re
from typing import Final, NamedTuple, cast

from lark import Token, UnexpectedCharacters, UnexpectedInput, UnexpectedToken

from wirecheck.language.common_slips import SLIPS
from wirecheck.language.split_words import Split, split_words
from wirecheck.language.statements import STATEMENT_WORDS
from wirecheck.model.nearest import either, nearest
from wirecheck.parts.amounts import amount_of, decimal_of
from wirecheck.parts.typed_values import Fault, unknown_unit

#: How each statement reads.
USAGE: Final = {
    "diagram": 'diagram "title"',
    "part": "part NAME is KIND",
    "kind": "kind NAME is KIND",
    "labels": 'labels NAME: TERMINAL as "printed label"',
    "wire": "wire END to END",
    "jumper": "jumper END to END",
    "plug": "plug PART to PART: TERMINAL, TERMINAL to TERMINAL",
    "cable": "cable NAME: 18/5, 40 ft",
    "splice": "splice NAME",
    "include": 'include "file"',
    "variant": "variant NAME",
    "end": "end",
    "remove": "remove wire END to END, remove jumper END to END, or remove part NAME",
    "set": "set NAME: attributes",
    "expect": "expect 24 V across END and END, or expect SUBJECT on",
    "observe": "observe 24 V across END and END, or observe SUBJECT on",
    "note": 'note "text"',
}

#: Names of the grammar's terminals as a reader knows them, in the order of messages.
EXPECTED_WORDS: Final = {
    "NAME": "a name", "WORD": "an attribute", "STRING": "text in double quotes",
    "QUANTITY": "an amount with its unit", "STATE": "a state (on, off, open, closed, lit, out)",
    "PHASE": "a phase (idle, damper-opening, trial, proving, run, wait, lockout)",
    "CONTINUITY": "“continuity”", "LEAD": "“wire”, “jumper”", "_IS": "“is”", "_AS": "“as”",
    "_TO": "“to”", "_AND": "“and”", "_ACROSS": "“across”", "_FLOWS": "“through”",
    "_WHEN": "“when”", "_DURING": "“during”", "_PART": "“part”", "_AT_LEAST": "“at least”",
    "_AT_MOST": "“at most”", "_BETWEEN": "“between”", "_COLON": "“:”", "_COMMA": "“,”",
    "_CLOSE": "“)”", "$END": "the end of the statement",
}  # fmt: skip

_NUMBER_IN_CLAIM: Final = re.compile(
    r"^\s*(?:expect|observe)\s(?:.*\s)?([\d.]+(?:/\d+)?)\s*$", re.IGNORECASE
)
#: Longer stretches of a statement are not looked at to tell one slip from another.
_LOOKED_AT: Final = 400


class SyntaxFault(NamedTuple):
    """What is wrong: where in the statement, how many characters, and what would be right."""

    message: str
    place: int
    length: int
    nearest: str | None


def fault_of(error: UnexpectedInput, text: str) -> SyntaxFault:
    """Say what is wrong with the statement ``text``, whose parsing raised ``error``."""
    unknown = _unknown_statement(text)
    if unknown is not None:
        return unknown
    place = _place(error, len(text))
    before, after = text[:place], text[place : place + _LOOKED_AT]
    if len(before) > 2 * _LOOKED_AT:
        before = before[:_LOOKED_AT] + before[-_LOOKED_AT:]
    slip = _amount_slip(before, after) or split_words(before, after) or _common_slip(before, after)
    if slip is not None:
        return SyntaxFault(slip.message, place, slip.seen, slip.nearest or None)
    expected = _expected(error)
    if not after:
        return SyntaxFault(_ends_too_early(before, expected), place, 0, None)
    match = re.match(r"[^\s,:()\"]+|.", after)
    word = match[0] if match else ""
    could = f"expected {either(expected)}" if expected else "nothing more can follow"
    if expected == [EXPECTED_WORDS["$END"]]:
        could = "the statement is complete before it"
    near = nearest(word, re.findall(r"[\w-]+", could))
    return SyntaxFault(f"{_quoted(word)} cannot stand here; {could}", place, len(word), near)


def _unknown_statement(text: str) -> SyntaxFault | None:
    """The fault of a statement whose first word is no statement word; None if it is one."""
    match = re.match(r"[^\s:,;\"()]+|.", text)
    word = match[0] if match else ""
    if word.lower() in STATEMENT_WORDS:
        return None
    near = nearest(word, STATEMENT_WORDS)
    hint = f"did you mean {near}?" if near else f"statements begin with {either(STATEMENT_WORDS)}"
    message = (
        f"no statement begins with {_quoted(word)}; {hint} "
        "(if the line above goes on here, end that one with a comma or with “to”)"
    )
    return SyntaxFault(message, 0, len(word), near)


def _common_slip(before: str, after: str) -> Split | None:
    for slip in SLIPS:
        here = re.match(slip.after, after, re.IGNORECASE)
        behind = re.search(slip.before, before, re.IGNORECASE) if here else None
        if here and behind:
            groups = {"seen": here[0], **behind.groupdict(), **here.groupdict()}
            near = slip.nearest.format_map(groups)
            return Split(slip.message.format(nearest=near, **groups), len(here[0]), near)
    return None


def _amount_slip(before: str, after: str) -> Split | None:
    """A fraction, or an amount without a unit or with one that is none, in a claim."""
    number = _NUMBER_IN_CLAIM.search(before)
    word = re.match(r"[^\W\d]+|%", after)
    if number is None or word is None:
        return None
    seen = len(word[0])
    decimal = decimal_of(f"{number[1]} {word[0]}")
    if decimal:
        return Split(f"write the fraction as a decimal: {decimal}", seen, decimal)
    unit = {"across": "V", "through": "A"}.get(word[0].lower())
    if unit:
        near = f"{number[1]} {unit}"
        return Split(f"the unit is missing behind {number[1]}; write {near}", seen, near)
    amount = amount_of(f"{number[1]} {word[0]}")
    if amount is None or amount.symbol is not None:
        return None
    fault = unknown_unit(amount, Fault("", 0, 0))
    return Split(fault.message, seen, fault.nearest or "")


def _ends_too_early(before: str, expected: list[str]) -> str:
    first = before.split(maxsplit=1)[0].lower() if before.strip() else ""
    usage = f"; it reads {USAGE[first]}" if first in USAGE else ""
    return f"the statement ends too early: {either(expected)} must follow{usage}"


def _quoted(word: str) -> str:
    if word.isprintable():
        return f"“{word}”"
    return "a character that does not print (" + " ".join(f"U+{ord(c):04X}" for c in word) + ")"


def _place(error: UnexpectedInput, end: int) -> int:
    if isinstance(error, UnexpectedToken):
        token: Token = error.token
        # lark puts the end of the text at the last token: it belongs behind it
        return end if token.type == "$END" or token.start_pos is None else token.start_pos
    if isinstance(error, UnexpectedCharacters):
        return cast(int, error.pos_in_stream)
    return end


def _expected(error: UnexpectedInput) -> list[str]:
    """What could stand there, in words; how a name goes on is left out."""
    names: set[str] = set()
    if isinstance(error, UnexpectedToken):
        names = set(error.accepts or error.expected)
    elif isinstance(error, UnexpectedCharacters):
        names = set(error.allowed or ())
    return [words for name, words in EXPECTED_WORDS.items() if name in names]
