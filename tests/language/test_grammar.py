"""The grammar, its generated tables, and what it shares with the rest."""

from __future__ import annotations

import re
from importlib.util import find_spec

import pytest
from lark import Lark

from wirecheck.language.parser import build_parser
from wirecheck.language.statements import STATEMENT_WORDS
from wirecheck.language.tables import tables_module
from wirecheck.model.quantity import UNITS
from wirecheck.parts.amounts import parse_quantity
from wirecheck.parts.library import (
    cable_attributes,
    kind,
    kind_names,
    lead_attributes,
    splice_attributes,
)
from wirecheck.resources import grammar_text


def test_the_tables_are_those_of_the_grammar() -> None:
    """They are written by ``python -m wirecheck.language.tables``."""
    assert grammar_text("tables.py") == tables_module()


def test_a_statement_word_is_one_of_the_grammar() -> None:
    first = {
        rule.expansion[0].name
        for rule in build_parser().rules
        if rule.origin.name in STATEMENT_RULES
    }
    assert {f"_{word.upper()}" for word in STATEMENT_WORDS} == first


STATEMENT_RULES = {
    rule.expansion[0].name for rule in build_parser().rules if rule.origin.name == "start"
}


@pytest.mark.skipif(find_spec("interegular") is None, reason="lark compares patterns with it")
def test_no_two_terminals_match_the_same_text_unless_one_has_priority() -> None:
    Lark(grammar_text("wiring.lark"), parser="lalr", strict=True)


@pytest.fixture(scope="module")
def quantity() -> re.Pattern[str]:
    (pattern,) = (t.pattern for t in build_parser().terminals if t.name == "QUANTITY")
    return re.compile(pattern.to_regexp())


@pytest.mark.parametrize("symbol", [unit.symbol for unit in UNITS.values()])
def test_the_grammar_knows_every_unit(quantity: re.Pattern[str], symbol: str) -> None:
    for typed in (f"24 {symbol}", f"24{symbol.upper()}", f"10-30 {symbol.lower()}", f".5{symbol}"):
        assert quantity.fullmatch(typed)
        found = parse_quantity(typed)
        assert found is not None
        assert found.unit == symbol


def test_the_grammar_knows_no_other_unit(quantity: re.Pattern[str]) -> None:
    """Each of the alternatives, signs of one character class spelled out."""
    (units,) = re.findall(r"\\s\*\(\?:(mV.*?%)\)", quantity.pattern)
    alternatives = {
        "[u\u00b5\u03bc]A": "uA", "mm[2\u00b2]": "mm2", "\u00b0?[FC]": "F",
        "[kM]?(?:ohm|[\u03a9\u2126])": "ohm",
    }  # fmt: skip
    for written, plain in alternatives.items():
        assert written in units
        units = units.replace(written, plain)
    spelled = set(units.split("|")) | {"kohm", "Mohm", "C"}
    assert spelled == {unit.symbol for unit in UNITS.values()}


@pytest.mark.parametrize(
    ("typed", "symbol"),
    [("3 µA", "uA"), ("3 μA", "uA"), ("5 Ω", "ohm"), ("5 kΩ", "kohm"), ("2 MΩ", "Mohm"),
     ("1.5 mm²", "mm2"), ("90 °F", "F"), ("90°C", "C"), ("10\u201330 s", "s")],
)  # fmt: skip
def test_signs_are_read_as_their_plain_forms(
    quantity: re.Pattern[str], typed: str, symbol: str
) -> None:
    assert quantity.fullmatch(typed)
    found = parse_quantity(typed)
    assert found is not None
    assert found.unit == symbol


def test_no_two_units_differ_by_case_only() -> None:
    symbols = [unit.symbol for unit in UNITS.values()]
    assert len({symbol.casefold() for symbol in symbols}) == len(symbols)


def test_no_attribute_begins_like_a_statement() -> None:
    """A line that goes on with such a word would begin a statement."""
    tables = [kind(name).attributes for name in kind_names()]
    tables += [dict(lead_attributes()), dict(splice_attributes()), dict(cable_attributes())]
    words = set[str]()
    for specs in tables:
        for name, spec in specs.items():
            words.update((name, *spec.also))
            if not spec.keyed:
                words.update((*spec.choices, *spec.spellings))
    assert not {word.lower() for word in words} & {"to", *STATEMENT_WORDS}
