"""Every rule proves itself: its bad diagram raises it in place, its good one is silent."""

from __future__ import annotations

from pathlib import Path

import pytest

from wirecheck import check, load_text
from wirecheck.language.edit import apply
from wirecheck.model.finding import Breaks
from wirecheck.rules import registry
from wirecheck.rules.registry import FAMILIES, RULES
from wirecheck.rules.rule import Example, Rule

ALL = [registered.rule for registered in RULES.values()]


def _ids(rule: Rule) -> str:
    return rule.name


def _raised(example: Example) -> list[tuple[str, str, str]]:
    """Rule, fault and covered text of each finding; the text itself must have no problem."""
    built = load_text(example.text, "example.wiring")
    assert [str(problem.message) for problem in built.problems] == []
    return [(f.rule, f.fault, f.span.text) for f in check(built.diagram).findings]


@pytest.mark.parametrize("rule", ALL, ids=_ids)
def test_bad_diagrams_raise_the_rule_and_nothing_else(rule: Rule) -> None:
    """Each bad diagram gives exactly the findings it lists, at the text it names."""
    assert rule.bad
    for example in rule.bad:
        assert example.finds
        assert _raised(example) == [(rule.name, fault, text) for fault, text in example.finds]


@pytest.mark.parametrize("rule", ALL, ids=_ids)
def test_good_diagrams_are_silent(rule: Rule) -> None:
    """Put right, the same diagram raises no rule at all."""
    assert rule.good
    for example in rule.good:
        assert _raised(example) == []


@pytest.mark.parametrize("rule", ALL, ids=_ids)
def test_every_fault_is_shown_by_a_bad_diagram(rule: Rule) -> None:
    """No fault code exists that no example raises."""
    shown = {fault for example in rule.bad for fault, _text in example.finds}
    assert shown == set(rule.faults)


@pytest.mark.parametrize("rule", ALL, ids=_ids)
def test_edits_mend_what_they_are_offered_for(rule: Rule) -> None:
    """The text with a finding's edits made is read without a problem and raises it no more."""
    for example in rule.bad:
        found = check(load_text(example.text, "example.wiring").diagram).findings
        for finding in found:
            if finding.edits:
                built = load_text(apply(example.text, finding.edits), "example.wiring")
                assert [str(problem.message) for problem in built.problems] == []
                left = check(built.diagram).findings
                assert (finding.fault, finding.message) not in [(f.fault, f.message) for f in left]


@pytest.mark.parametrize("rule", ALL, ids=_ids)
def test_messages_read_as_sentences(rule: Rule) -> None:
    """Every field is filled, nothing is doubled, and what is seen at the unit ends in a stop."""
    for example in rule.bad:
        for finding in check(load_text(example.text, "example.wiring").diagram).findings:
            for words in (finding.message, finding.seen_at_unit):
                assert not set(words) & set("{}")
                assert "  " not in words
                assert words == words.strip() != ""
            assert finding.message[-1] not in ".!"
            assert finding.seen_at_unit[-1] == "."


@pytest.mark.parametrize("rule", ALL, ids=_ids)
def test_records_are_complete(rule: Rule) -> None:
    """Every rule says why, where it is blind, and where it comes from."""
    assert rule.title
    assert rule.why
    assert rule.blind_spots
    assert rule.sources
    assert all(name in RULES for name in rule.stands_back_for)
    worst = max([rule.breaks, *(fault.breaks or rule.breaks for fault in rule.faults.values())])
    if worst is Breaks.SAFETY:
        assert rule.caution, "a rule about safety says what to mind"


@pytest.mark.parametrize("rule", ALL, ids=_ids)
def test_examples_are_small(rule: Rule) -> None:
    """A reader takes an example in at a glance."""
    for example in (*rule.bad, *rule.good):
        assert len(example.text.strip().splitlines()) <= 15


def test_every_rule_module_is_registered() -> None:
    """One rule, one file, named alike; a file that no family lists would lose its rule quietly."""
    folder = Path(registry.__file__).parent
    for family in FAMILIES:
        name = family.__name__.rsplit(".", 1)[1]
        listed = {rule.name.replace("-", "_") for rule, _check in family.RULES}
        with_record = {
            path.stem
            for path in (folder / name).glob("*.py")
            if "\nRULE = Rule(" in path.read_text(encoding="utf-8")
        }
        assert with_record == listed
    families = {path.parent.name for path in folder.glob("*/__init__.py")}
    assert families == {family.__name__.rsplit(".", 1)[1] for family in FAMILIES}


def test_every_rule_has_tests_of_its_own() -> None:
    """Beyond its examples: what else raises it, and the near-misses that must not."""
    tests = Path(__file__).parents[1] / "rules"
    for family in FAMILIES:
        folder = tests / family.__name__.rsplit(".", 1)[1]
        for rule, _check in family.RULES:
            assert (folder / f"test_{rule.name.replace('-', '_')}.py").is_file(), rule.name


def test_there_are_at_least_forty_rules() -> None:
    """The trade's mistakes are many; losing rules must not go unnoticed."""
    assert len(RULES) >= 40
