"""What is found in the words of a text: each wrong example raises it, each right one does not."""

from __future__ import annotations

import pytest

import wirecheck
from wirecheck.check.accepts import sort_out
from wirecheck.check.text_rules import TEXT_RULES
from wirecheck.model.finding import Finding
from wirecheck.report.rule_words import rule_words


def found(text: str) -> list[Finding]:
    """What a check finds that is of these rules, what the text accepts sorted out."""
    built = wirecheck.load_text(text)
    assert built.problems == ()
    (one,) = sort_out([wirecheck.check(built.diagram)])
    assert one.problems == ()
    return [finding for finding in one.checked.findings if finding.rule in TEXT_RULES]


@pytest.mark.parametrize("name", TEXT_RULES)
def test_the_wrong_examples_raise_the_rule_and_the_right_ones_none(name: str) -> None:
    rule = TEXT_RULES[name]
    assert rule.name == name
    assert rule.bad
    for example in rule.bad:
        raised = [(each.fault, each.span.text) for each in found(example.text)]
        assert raised == [*example.finds]
        assert {each.rule for each in found(example.text)} == {name}
    for example in rule.good:
        assert found(example.text) == []


@pytest.mark.parametrize("name", [*TEXT_RULES, "problem", *wirecheck.rule_names()[:3]])
def test_there_are_words_for_every_name(name: str) -> None:
    words = rule_words(name)
    assert words.name == name
    assert words.title
    assert words.why


def test_no_rule_of_these_is_called_as_one_about_wiring() -> None:
    assert not {*TEXT_RULES} & {*wirecheck.rule_names()}
