"""The words behind an opening fence."""
# ruff: noqa: E501 - each case stands in one line, its message whole

import pytest

from wirecheck.model.text import SourceFile, Span
from wirecheck.notes.opening import Opening, read_opening


def opening(words: str) -> Opening:
    source = SourceFile("note.md", f"```{words}")
    return read_opening(Span(source, 3, len(source.text)))


def test_all_words() -> None:
    said = opening(
        'wiring Name "with ""damper""", on supply, draw ladder, ON burner, draw connections'
    )
    assert said.name is not None
    assert said.name.text == 'with "damper"'
    assert [name.text for name in said.on] == ["supply", "burner"]
    assert [sheet for sheet, _span in said.sheets] == ["ladder", "connections"]
    assert (said.piece, said.problems) == (False, ())


def test_no_words_at_all() -> None:
    assert opening("wiring") == Opening(None, (), (), piece=False, problems=())


def test_a_name_is_kept_where_it_stands_and_compares_as_names_do() -> None:
    said = opening("wiring piece, name Größe-2")
    assert said.piece
    assert said.name is not None
    assert (said.name.key, str(said.name.span)) == ("grösse-2", "note.md:1:23")


def test_curly_quotes_are_quotes() -> None:
    name = opening("wiring name “as found”").name
    assert name is not None
    assert name.text == "as found"


@pytest.mark.parametrize(
    ("words", "column", "message"),
    [
        ("wiring nme x", 11, "“nme” says nothing of a wiring block; did you mean name?"),
        ("wiring heater", 11, "“heater” says nothing of a wiring block; it takes name NAME, on NAME, draw ladder or draw connections or piece"),
        ("wiring name", 11, "name what? Write name NAME"),
        ("wiring on , piece", 11, "on what? Write on NAME"),
        ("wiring name a on b", 18, "a comma is missing before on"),
        ("wiring name a b", 18, "“b” is one word too many; put a name of several words in quotes"),
        ("wiring name=heater", 15, "write name heater, with a blank between"),
        ("wiring name a, name b", 24, "this block is called a already"),
        ("wiring draw lader", 16, "“lader” is no sheet; did you mean ladder?"),
        ("wiring draw pdf", 16, "“pdf” is no sheet; there are ladder or connections"),
        ("wiring piece of", 17, "“of” is one word too many; put a name of several words in quotes"),
        ('wiring name "a', 16, "a quote has no partner"),
    ],
)  # fmt: skip
def test_words_that_cannot_be_used(words: str, column: int, message: str) -> None:
    told = [(problem.span.column, problem.message) for problem in opening(words).problems]
    assert told == [(column, message)]


def test_what_stands_behind_a_missing_comma_is_read() -> None:
    said = opening("wiring piece name p on q draw ladder")
    assert said.name is not None
    assert (said.piece, said.name.text, [name.text for name in said.on]) == (True, "p", ["q"])
    assert [sheet for sheet, _span in said.sheets] == ["ladder"]
    assert [problem.message for problem in said.problems] == [
        f"a comma is missing before {word}" for word in ("name", "on", "draw")
    ]
