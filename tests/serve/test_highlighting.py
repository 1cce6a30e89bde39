"""The highlighting grammar for editors, run over the examples as an editor runs it: line by line.

Its patterns keep to what Python's regular expressions and Oniguruma have in common.
"""

import json
import re
from collections.abc import Iterator
from pathlib import Path

import pytest

from tests.contract.source import ROOT
from wirecheck.language.cut import cut
from wirecheck.language.statements import STATEMENT_WORDS
from wirecheck.model.text import SourceFile
from wirecheck.resources import grammar_text

GRAMMAR = json.loads(grammar_text("wiring.tmLanguage.json"))
RULES = [GRAMMAR["repository"][each["include"].lstrip("#")] for each in GRAMMAR["patterns"]]
EXAMPLES = sorted((ROOT / "examples").rglob("*.wiring"))


def scopes(line: str) -> Iterator[tuple[str, str]]:
    """Scope and text of each piece: the rule that matches first, of those the one listed first."""
    place = 0
    while place < len(line):
        found = [
            (match.start(), number, match)
            for number, rule in enumerate(RULES)
            if (match := re.compile(rule["match"]).search(line, place))
        ]
        if not found:
            return
        _start, number, match = min(found, key=lambda each: each[:2])
        rule = RULES[number]
        if "name" in rule:
            yield rule["name"], match[0].strip()
        for group, capture in rule.get("captures", {}).items():
            yield capture["name"], match[int(group)]
        place = max(match.end(), place + 1)


@pytest.mark.parametrize("path", EXAMPLES, ids=lambda path: path.stem)
def test_every_statement_begins_with_a_keyword(path: Path) -> None:
    source = SourceFile("x", path.read_text(encoding="utf-8"))
    whole = cut(source)
    for start, end in whole.statements:
        first = source.text[start:end].splitlines()[0]
        scope, word = next(scopes(first))
        assert scope == "keyword.control.wiring"
        assert word.lower() == first.split()[0].lower()


@pytest.mark.parametrize("path", EXAMPLES, ids=lambda path: path.stem)
def test_comments_are_comments_and_nothing_else_is(path: Path) -> None:
    source = SourceFile("x", path.read_text(encoding="utf-8"))
    expected = [source.text[start:end] for start, end in cut(source).comments]
    told = [
        text.rstrip()
        for line in source.text.splitlines()
        for scope, text in scopes(line)
        if scope.startswith("comment")
    ]
    assert told == expected


def test_the_words_of_statements_are_those_of_the_language() -> None:
    words = re.search(r"\(\?i:([\w|]+)\)", GRAMMAR["repository"]["statement"]["match"])
    assert words is not None
    assert tuple(words[1].split("|")) == STATEMENT_WORDS


def test_a_line_in_all_its_colours() -> None:
    assert list(scopes('part "box 2" is high-limit: 95 C  # hot "x"')) == [
        ("keyword.control.wiring", "part"),
        ("entity.name.type.wiring", '"box 2"'),
        ("keyword.operator.wiring", "is"),
        ("support.class.wiring", "high-limit"),
        ("constant.numeric.wiring", "95 C"),
        ("comment.line.number-sign.wiring", '# hot "x"'),
    ]
    assert list(scopes("wire a.to to k.COM..NO to earth: 18 AWG")) == [
        ("keyword.control.wiring", "wire"),
        ("variable.other.object.wiring", "a"),
        ("punctuation.accessor.wiring", "."),
        ("variable.other.member.wiring", "to"),
        ("keyword.operator.wiring", "to"),
        ("variable.other.object.wiring", "k"),
        ("punctuation.accessor.wiring", "."),
        ("variable.other.member.wiring", "COM..NO"),
        ("keyword.operator.wiring", "to"),
        ("constant.language.wiring", "earth"),
        ("constant.numeric.wiring", "18 AWG"),
    ]
