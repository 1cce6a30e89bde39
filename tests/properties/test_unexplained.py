"""Broken properties as findings: only where no rule has spoken, and with the lead to look at."""

from __future__ import annotations

import pytest

import wirecheck
from tests.properties.test_properties import EXAMPLES, LEADS, RIGHT, unit, whole
from wirecheck.model.finding import Breaks
from wirecheck.properties.registry import PROPERTIES
from wirecheck.properties.unexplained import by_itself, unexplained
from wirecheck.rules.rule import PRACTICE


@pytest.mark.parametrize("name", RIGHT)
def test_a_right_example_has_no_finding_of_a_property(name: str) -> None:
    found = wirecheck.check(wirecheck.load(EXAMPLES / f"{name}.wiring").diagram).findings
    assert [each.rule for each in found if each.rule in PROPERTIES] == []


def test_without_rules_the_witness_names_switches_and_leads() -> None:
    drawn = whole(unit(call=LEADS["call"] + "wire limit.2 to box.TH\n"))
    (found, *_) = unexplained(drawn.nets, drawn.conduction, ()).findings
    assert found.rule == "gas-with-a-safety-open"
    assert "main gas flows with rollout open" in found.message
    assert "rollout open" in found.message
    assert "box in its run" in found.message
    assert "limit.2 to box.TH" in found.message
    assert found.caution


def test_a_rule_that_speaks_of_the_same_parts_stands_for_it() -> None:
    drawn = whole(unit(call=LEADS["call"] + "wire limit.2 to box.TH\n"))
    found = wirecheck.check(drawn.diagram).findings
    assert found
    assert not [each.rule for each in found if each.rule in PROPERTIES]


@pytest.mark.parametrize(
    ("name", "lead"),
    [
        ("gas-with-a-safety-open", "xfmr.R to limit.2"),
        ("gas-with-no-call", "rollout.2 to box.TH"),
        ("main-gas-unproved", "box.PV to box.MV"),
        ("ignition-with-no-call", "limit.2 to box.TH"),
        ("spark-on-other-leads", "box.SPARK to pilot.ROD"),
        ("part-above-its-volts", "line.L1 to stat.R"),
        ("gas-past-the-control", "box.TH to valve.PV"),
    ],
)
def test_the_lead_that_only_brings_trouble_is_named_first(name: str, lead: str) -> None:
    drawn = whole(PROPERTIES[name].bad)
    found = by_itself(drawn.nets, drawn.conduction, name)
    assert f"the current runs over {lead}" in found[0].message
    assert found[0].caution


@pytest.mark.parametrize("name", PROPERTIES)
def test_the_examples_of_a_property(name: str) -> None:
    """The wrong one breaks it, and a check finds it by some rule; in the right one all is well."""
    record = PROPERTIES[name]
    bad, good = whole(record.bad), whole(record.good)
    assert by_itself(bad.nets, bad.conduction, name)
    assert not by_itself(good.nets, good.conduction, name)
    assert any(each.breaks > Breaks.WORKMANSHIP for each in wirecheck.check(bad.diagram).findings)
    assert not wirecheck.check(good.diagram).findings
    assert record.source == str(PRACTICE)
