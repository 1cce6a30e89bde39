"""``wirecheck explain``: the reference of the rules."""

import pytest

from tests.cli.command_line import CommandLine
from wirecheck import property_called, property_names, rule, rule_names
from wirecheck.rules.rule import NO_CERTIFICATE


def unfolded(text: str) -> str:
    return " ".join(text.split())


@pytest.mark.parametrize("name", rule_names())
def test_every_rule_is_explained_with_what_its_wrong_diagram_gives(
    wirecheck: CommandLine, name: str
) -> None:
    answer = wirecheck("explain", name)
    assert answer.code == 0
    said = unfolded(answer.out)
    record = rule(name)
    for words in (record.title, record.why, record.blind_spots, record.caution, NO_CERTIFICATE):
        assert unfolded(words) in said
    assert f"breaks: {record.breaks}" in said
    assert all(f"source: {source}" in said for source in record.sources)
    assert all(f"{fault}: " in said for fault in record.faults)
    assert f"[{name}]" in answer.out.partition("wrong.wiring")[2]
    assert "[" not in answer.out.partition("\nright.wiring")[2]


@pytest.mark.parametrize("name", property_names())
def test_every_property_is_explained_with_what_breaks_it(wirecheck: CommandLine, name: str) -> None:
    answer = wirecheck("explain", name)
    assert answer.code == 0
    said = unfolded(answer.out)
    record = property_called(name)
    for words in (record.title, record.why, record.blind_spots, record.caution, record.source):
        assert unfolded(words) in said
    assert f"breaks: {record.breaks}" in said
    assert f"[{name}]" in answer.out.partition("wrong.wiring")[2]
    assert "[" not in answer.out.partition("\nright.wiring")[2]


def test_all_explains_every_rule_under_its_chapter(wirecheck: CommandLine) -> None:
    answer = wirecheck("explain", "--all")
    assert answer.code == 0
    lines = answer.out.splitlines()
    every = [*rule_names(), *property_names()]
    assert [line for line in lines if line in every] == every
    assert "==== burner ground ====" in lines
    assert unfolded(answer.out).count(NO_CERTIFICATE) == 1


def test_json_holds_record_and_findings(wirecheck: CommandLine) -> None:
    answer = wirecheck("explain", "burner-ground-missing", "--as", "json")
    assert answer.code == 0
    (explained,) = answer.document["rules"]
    assert explained["rule"] == "burner-ground-missing"
    found = [finding["rule"] for each in explained["bad"] for finding in each["findings"]]
    assert "burner-ground-missing" in found
    assert all(each["findings"] == [] for each in explained["good"])


def test_a_rule_that_is_not_there_gets_the_nearest(wirecheck: CommandLine) -> None:
    answer = wirecheck("explain", "burner-grond-missing")
    assert answer.code == 2
    assert "there is no rule 'burner-grond-missing'" in answer.err
    assert "did you mean burner-ground-missing?" in answer.err


@pytest.mark.parametrize("words", [(), ("burner-ground-missing", "--all")])
def test_a_call_for_nothing_or_for_both_is_refused(
    wirecheck: CommandLine, words: tuple[str, ...]
) -> None:
    answer = wirecheck("explain", *words)
    assert answer.code == 2
    assert "name one or more rules, or ask for all of them with --all" in answer.err


def test_what_is_found_in_the_words_of_a_text_is_explained_too(wirecheck: CommandLine) -> None:
    answer = wirecheck("explain", "claim-refuted", "accept-unused")
    assert answer.code == 0
    assert "What the file claims with expect holds.\n" in answer.out
    assert "computed 0 V: the control rests between trials [claim-refuted]" in answer.out
    assert "[accept-unused]" in answer.out
