"""Blocks found in documents of every make, and every character of them at its place."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from wirecheck.notes.document import Document, read_data

MARKDOWN = "note.md"


def read(text: str, name: str = MARKDOWN) -> Document:
    return read_data(text.encode(), name)


def contents(text: str, name: str = MARKDOWN) -> list[str]:
    return [block.source.text for block in read(text, name).blocks]


def problems(text: str, name: str = MARKDOWN) -> list[str]:
    return [
        f"{problem.span.line}:{problem.span.column}: {problem.message}"
        for problem in read(text, name).problems
    ]


def assert_places(text: str, name: str = MARKDOWN) -> None:
    """Every visible character of every block stands in the document where the block says."""
    assert any(block.source.text.strip() for block in read(text, name).blocks)
    assert_characters(text, name)


def assert_characters(text: str, name: str) -> None:
    lines = text.removeprefix("\ufeff").split("\n")
    for block in read(text, name).blocks:
        for offset, character in enumerate(block.source.text):
            if not character.isspace():
                line, column = block.source.position(offset)
                assert lines[line - 1][column - 1] == character


@pytest.mark.parametrize(
    ("text", "inside"),
    [
        ("```wiring\npart a is b\n```\n", ["part a is b\n"]),
        ("~~~~ Wiring\na\n~~~\nb\n~~~~\n", []),
        ("~~~~ WIRING\na\n~~~~~\n", ["a\n"]),
        ("# Heading\r\n\r\n```wiring\r\na\r\n\r\nb\r\n```\r\n", ["a\r\n\r\nb\r\n"]),
        ("  ```wiring\n  a\n b\n    c\n  ```\n", ["a\nb\n  c\n"]),
        ("1. first\n\n   ```wiring\n   a\n\n   b\n   ```\n2. second\n", ["a\n\nb\n"]),
        ("- ```wiring\n  a\n  ```\n", ["a\n"]),
        ("- x\n\n  ```wiring\n\ta\n  ```\n", ["a\n"]),
        ("> ```wiring\n> a\n>\n>  b\n> ```\n", ["a\n\n b\n"]),
        ("> - > ```wiring\n>   > a\n>   > ```\n", ["a\n"]),
        ("\ufeff```wiring\na\n```", ["a\n"]),
        ("text\n```wiring\né\U0001f525 “x”\n```\n", ["é\U0001f525 “x”\n"]),
        ("<details>\n\n```wiring\na\n```\n\n</details>\n", ["a\n"]),
        ("---\ntitle: x\ntext: |\n  ```wiring\n  a\n  ```\n---\n\n```wiring\nb\n```\n", ["b\n"]),
        ("---\n\n```wiring\na\n```\n\n---\n", ["a\n"]),
        ("---\nnot closed\n\n```wiring\na\n```\n", ["a\n"]),
        ("```wiring\na\n```\n```wiring\nb\n```\n", ["a\n", "b\n"]),
    ],
)
def test_blocks_are_found_with_what_stands_in_them(text: str, inside: list[str]) -> None:
    found = [block.source.text for block in read(text).blocks if not block.lost]
    assert found == inside
    if inside:
        assert_places(text)


@pytest.mark.parametrize(
    "text",
    [
        "```text\nwiring\n```\n",
        "```\nwiring\n```\n",
        "````markdown\n```wiring\na\n```\n````\n",
        "<!--\n```wiring\na\n```\n-->\n",
        "<pre>\n```wiring\na\n```\n</pre>\n",
        "text `wiring` text\n",
        "",
        "\n",
    ],
)
def test_what_is_shown_as_it_is_written_is_no_block(text: str) -> None:
    document = read(text)
    assert (document.blocks, document.problems, document.passed_over) == ((), (), ())


@pytest.mark.parametrize(
    ("text", "place", "reason"),
    [
        ("<div>\n```wiring\na\n```\n</div>\n", "2:1", "HTML"),
        ("Text:\n\n     ```wiring name x\n     a\n     ```\n", "3:6", "indented"),
        ("1. x\n\n       ```wiring\n       a\n       ```\n", "3:8", "indented"),
    ],
)
def test_what_only_looks_like_a_block_is_told(text: str, place: str, reason: str) -> None:
    (passed,) = read(text).passed_over
    assert str(passed.span) == f"note.md:{place}"
    assert reason in passed.reason


def test_in_plain_text_only_fences_count_however_they_are_indented() -> None:
    text = (
        "NOTE 4\n    wired so:\n        ```wiring\n        a\n          b\n        ```\n"
        "<!--\n```wiring\nc\n```\n"
    )
    assert contents(text, "note.txt") == ["a\nb\n", "c\n"]
    assert_places(text, "note.TXT")
    assert contents(text) == []


def test_a_block_that_is_never_closed_is_not_read_and_told_once() -> None:
    text = "# Note\n\n```wiring name a\npart x is high-limit\n\nSome prose.\n\nMore of it.\n"
    (block,) = read(text).blocks
    assert block.lost
    assert block.source.text == ""
    assert problems(text) == [
        "3:1: nothing closes this block, so it was not read: end it with a line of ```"
    ]


def test_a_block_that_was_not_closed_does_not_swallow_the_next_ones() -> None:
    text = "> ```wiring name a\n> x\n> \n> ```wiring name b\n> y\n> ```\n\n```wiring\nz\n```\n"
    first, second, third = read(text).blocks
    assert (first.lost, second.lost, third.lost) == (True, False, False)
    assert second.name is not None
    assert str(second.name.span) == "note.md:4:18"
    assert second.source.text == "y\n"
    assert second.source.position(0) == (5, 3)
    assert third.source.text == "z\n"
    assert [problem.partition(":")[0] for problem in problems(text)] == ["1"]


def test_a_block_ended_by_its_list_is_not_closed() -> None:
    assert [block.lost for block in read("- ```wiring\n  a\n\ntext\n").blocks] == [True]


@pytest.mark.parametrize("word", ["wirng", "{wiring}", "wirings", ".wiring", "wiring:"])
def test_a_slip_of_the_first_word_is_told(word: str) -> None:
    assert problems(f"```{word}\na\n```\n") == [
        f"1:4: “{word}” is not wiring: this block was not read; write wiring and a blank"
    ]


@pytest.mark.parametrize("word", ["string", "sh", "console", "python", "ring", "wire"])
def test_other_languages_are_no_slips(word: str) -> None:
    assert problems(f"```{word}\na\n```\n") == []


def test_a_lone_carriage_return_is_told_as_it_may_hide_a_fence() -> None:
    assert problems("text\r```wiring\ra\r```\r") == [
        "1:5: a lone carriage return stands here: a fence behind it is not seen"
    ]


def test_bytes_that_are_no_text_are_told() -> None:
    document = read_data(b"\x00\x01\x02" * 50, MARKDOWN)
    assert [problem.message for problem in document.problems] == [
        "this is no text; save it as plain text in UTF-8"
    ]


def test_ten_thousand_lines_are_read_at_their_places() -> None:
    unit = "Some text of a note\nthat runs on.\n\n- item\n\n  ```wiring\n  part a is b\n  ```\n\n\n"
    text = unit * 1000
    blocks = read(text).blocks
    assert len(blocks) == 1000
    assert blocks[-1].source.position(0) == (9997, 3)
    assert_places(text)


def test_hostile_nesting_ends() -> None:
    for text in ("> " * 3000, "- " * 3000, "<div>\n```wiring\n" * 3000):
        read(text + "x\n")
    assert len(read("```wiring\n" * 20_000).blocks) == 20_000


WHOLE = ("```wiring\npart x\n\n  y\n```\n", "> ```wiring\n> part x\n>\n>\ty\n> ```\n")
LINES = ("```wiring\n", "~~~wiring name a\n", "\n```\n", "\n", "\r\n", "\r", "---\n", "```")
STARTS = ("> ", "- ", "1. ", "   ", "\t", "<div>", "<!--", "-->", "part x", "\u2028", "\0", "é")
PIECES = st.sampled_from((*WHOLE, *WHOLE, *LINES, *STARTS))


@settings(max_examples=300, deadline=None, derandomize=True)
@given(st.lists(PIECES, max_size=40).map("".join), st.sampled_from(["a.md", "a.txt"]))
def test_whatever_stands_in_a_document_every_character_has_its_place(text: str, name: str) -> None:
    assert_characters(text, name)
    for problem in read(text, name).problems:
        assert problem.span.line >= 1
