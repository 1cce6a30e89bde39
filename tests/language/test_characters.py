"""What phones, word processors and other systems put in is read as it was meant."""
# ruff: noqa: RUF001 - phones type such characters

from __future__ import annotations

import unicodedata

import pytest

import wirecheck
from wirecheck.language.characters import read_as_meant
from wirecheck.language.spelling import NAME_CHARACTERS
from wirecheck.model.diagram import Diagram
from wirecheck.resources import grammar_text


def load(text: str) -> Diagram:
    built = wirecheck.load_text(text)
    assert not built.problems
    return built.diagram


@pytest.mark.parametrize(
    "text",
    [
        "\ufeffpart k is relay\nwire k.A to k.B",
        "part k is relay\r\nwire k.A to k.B\r\n",
        "part\u00a0k is\u2009relay\u3000\nwire k.A to\u202fk.B\u200b",
        "part “k” is relay\nwire „k”.A to k.“B”",
        "part k is relay\u2028wire k.A to k.B",
        "PART K IS RELAY\nWIRE k.a TO K.b",
        "part k is relay # “as found\nwire k.A to k.B",
    ],
)
def test_the_same_diagram(text: str) -> None:
    (lead,) = load(text).leads
    assert (lead.a.name, lead.b.name) == ("A", "B")


@pytest.mark.parametrize(
    ("typed", "read"),
    [
        ("“left side”", "left side"),
        ('"the “left” side"', "the “left” side"),
        ('"24″ lead"', "24″ lead"),
        ('"a\u00a0b"', "a b"),
        ('"say ""so"""', 'say "so"'),
    ],
)
def test_quotes_in_quotes(typed: str, read: str) -> None:
    assert [note.text for note in load(f"note {typed}").notes] == [read]


def test_nothing_changes_its_place() -> None:
    typed = 'a\u00a0“b”\r\nc\u2003\x00d\ufffd\r“e”"“f”"\x85\ud800'
    assert len(read_as_meant(typed)) == len(typed)
    (problem,) = wirecheck.load_text("part\u00a0“k” is\trelai").problems
    assert (problem.span.line, problem.span.column, problem.span.text) == (1, 13, "relai")


@pytest.mark.parametrize("character", ["\x00", "\x07", "\x1b", "\x7f", "\x80", "\u202e", "\ud800"])
def test_a_character_that_does_not_print_is_told_and_costs_nothing(character: str) -> None:
    built = wirecheck.load_text(f'part k is relay{character}\nnote "a{character}b{character}"\n')
    said = f"a character that does not print (U+{ord(character):04X}) stands here; take it away"
    assert [(p.span.line, p.message) for p in built.problems] == [(1, said), (2, said)]
    assert [note.text for note in built.diagram.notes] == ["a b "]
    assert list(built.diagram.parts) == ["k"]


def test_a_lone_carriage_return_is_told_once_and_ends_its_line() -> None:
    built = wirecheck.load_text("part k is relay\rwire k.A to k.B\rwire k.COM to k.NO\n")
    (problem,) = built.problems
    assert problem.message == (
        "a lone carriage return stands here (and 1 more); end lines with a line feed"
    )
    assert (problem.span.line, problem.span.column) == (1, 16)
    assert len(built.diagram.leads) == 2


# ---- names -------------------------------------------------------------------------------------


def test_the_grammar_and_the_speller_agree_on_the_characters_of_a_name() -> None:
    assert f"NAME: /[{NAME_CHARACTERS}]+/\n" in grammar_text("wiring.lark")


@pytest.mark.parametrize(
    "name",
    [
        "Öl-Kessel",
        "клапан",
        "部品",
        "バルブ",
        "शीर्ष",
        "מפסק",
        "صمام",
        "ជញ្ជីង",
        "24V",
        "12/3",
        "-",
        "a_b",
    ],
)
def test_letters_of_any_script_need_no_quotes(name: str) -> None:
    for typed in (name, unicodedata.normalize("NFD", name)):
        diagram = load(f"part {typed} is relay\nwire {name.upper()}.A to {typed}.B")
        assert diagram.parts[next(iter(diagram.parts))].name == typed


@pytest.mark.parametrize(
    "name", ["a b", "a.b", "a,b", "a:b", "(a)", 'a"b', "a#b", "a&b", "½ x", "a’s"]
)
def test_anything_else_stands_in_quotes(name: str) -> None:
    doubled = name.replace('"', '""')
    diagram = load(f'part "{doubled}" is relay\nwire "{doubled}".A to "{doubled}"."B"')
    assert [part.name for part in diagram.parts.values()] == [name]


def test_quotes_are_spelling_and_not_part_of_a_name() -> None:
    diagram = load('part box is pilot-ignition-control\nwire box.24V to "BOX"."com"\n')
    (lead,) = diagram.leads
    assert diagram.lead_name(lead) == "box.24V to box.COM"


def test_no_word_is_reserved() -> None:
    words = ["wire", "to", "is", "part", "end", "as", "and", "open", "unknown", "through"]
    text = "".join(f"part {word} is relay\n" for word in words)
    text += "".join(
        f"wire {word}.A to {word}.B\njumper {word}.COM to {word}.NO\n" for word in words
    )
    assert len(load(text).leads) == 2 * len(words)


def test_but_earth_is_the_units_earth_everywhere() -> None:
    (problem,) = wirecheck.load_text("part Earth is relay").problems
    assert problem.message == "earth is the unit's earth everywhere; choose another name"
