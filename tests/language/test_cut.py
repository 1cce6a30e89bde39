"""Where a statement ends: with its line, unless it goes on behind a comma or a ``to``."""

from __future__ import annotations

from time import process_time

import pytest

import wirecheck
from wirecheck.language.cut import cut
from wirecheck.language.statements import STATEMENT_WORDS
from wirecheck.model.text import SourceFile


def statements(text: str) -> list[str]:
    source = SourceFile("", text)
    return [text[start:end] for start, end in cut(source).statements]


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("a\nb", ["a", "b"]),
        ("  a  \n\n\tb", ["a", "b"]),
        ("a,\nb", ["a,\nb"]),
        ("a to\nb", ["a to\nb"]),
        ("a TO  \n\n  # x\n\nb", ["a TO  \n\n  # x\n\nb"]),
        ("a, # x\n# y\nb # z", ["a, # x\n# y\nb"]),
        ("a.to\nb", ["a.to", "b"]),
        ("auto\nb", ["auto", "b"]),
        ("a-to\nb/to\nc_to\nd", ["a-to", "b/to", "c_to", "d"]),
        ('a "to"\nb', ['a "to"', "b"]),
        ("to\nb", ["to\nb"]),
        ("a to\nwire b", ["a to", "wire b"]),
        ("a,\nEND", ["a,", "END"]),
        ('a,\nnote"x"', ["a,", 'note"x"']),
        ("a to\npart.1", ["a to\npart.1"]),
        ("a,\nends", ["a,\nends"]),
        ('a "#" b # c "d"\n', ['a "#" b']),
        ('a "b""#" # c', ['a "b""#"']),
        ('a " # b', ['a "']),
        ('a "b" " # c', ['a "b" "']),
        ("#\n# a,\nb", ["b"]),
        ("", []),
    ],
)
def test_statements(text: str, expected: list[str]) -> None:
    assert statements(text) == expected


@pytest.mark.parametrize("word", STATEMENT_WORDS)
def test_a_line_that_begins_with_a_statement_word_begins_a_statement(word: str) -> None:
    assert len(statements(f"wire a to\n  {word.upper()} x,\n{word} y")) == 3


def test_comments_keep_their_place() -> None:
    text = 'a # one \r\n# two\n"#" #three'
    source = SourceFile("", text)
    assert [text[start:end] for start, end in cut(source).comments] == ["# one", "# two", "#three"]


@pytest.mark.parametrize(
    "text",
    [
        '"' * 100_001,
        'note "' + '""' * 50_000 + "#",
        'note "a" #' + '"' * 100_000,
        "wire " + '"' * 100_001,
        "wire a.1 to b.1: red, " + '"' * 100_001,
        'wire "a ' * 20_000,
        "plug " + "a." * 50_000,
        "wire a.1 to b.1 " + "(" * 100_000,
        "wire a.1 to b.1: " + "," * 100_000,
        "wire a.1 to b.1: " + "1" * 1_000_000 + '"',
        "wire a.1 " + " " * 1_000_000 + "x",
        "part " + "a" * 1_000_000 + " is relay",
        "\x00" * 1_000_000,
        "wire a,\n" * 2_000,
        "a\r" * 2_000,
        "part a is relay: " + "b " * 20_000,
        "\n".join(f"kind k{n} is k{n + 1}" for n in range(2_000)),
        "variant a\n" * 2_000 + "end\n" * 4_000,
    ],
)
def test_nothing_takes_long(text: str) -> None:
    """A second is many times what it takes, and a small part of what a square would."""
    started = process_time()
    wirecheck.load_text(text)
    assert process_time() - started < 1
