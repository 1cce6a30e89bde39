"""Broken properties as findings: only where no rule has spoken, and with the lead to look at."""

from __future__ import annotations

import pytest

import wirecheck
from tests.properties.test_properties import EXAMPLES, LEADS, RIGHT, unit, whole
from wirecheck.properties.registry import PROPERTIES
from wirecheck.properties.unexplained import unexplained


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
