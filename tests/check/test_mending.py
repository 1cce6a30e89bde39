"""What a change mends: as a full check of the changed diagram says, found with less looking."""

from __future__ import annotations

from collections.abc import Iterator

import pytest

from tests.benchmarks.campaign import example, sample
from tests.rules.units import two_rod
from wirecheck import load_text
from wirecheck.check.mending import Mending, is_grave
from wirecheck.check.standing_back import at_their_cause
from wirecheck.check.trials import trials
from wirecheck.circuit.nets import Nets
from wirecheck.model.diagram import Diagram
from wirecheck.model.finding import Finding
from wirecheck.rules.facts import Facts
from wirecheck.rules.registry import RULES


def found(facts: Facts) -> Iterator[Finding]:
    raised = [each for rule in RULES.values() for each in rule.check(facts)]
    return at_their_cause(facts.diagram, raised)


def facts_of(diagram: Diagram) -> Facts:
    return Facts(diagram, Nets(diagram))


def test_what_was_asked_before_decides_nothing() -> None:
    """The order in which rules are asked follows earlier changes; the answers do not."""
    original = example("furnace-room-heater")
    tried = mended = 0
    for mistake in sample(original, 14):
        facts = facts_of(original.with_mistakes(mistake))
        findings = list(found(facts))
        if sum(map(is_grave, findings)) < 2:
            continue
        one = Mending(facts.diagram, findings, found)
        for trial in list(trials(facts, findings))[:40]:
            fresh = Mending(facts.diagram, findings, found)
            first, again = one.mended(trial, more_than=1), fresh.mended(trial, more_than=1)
            assert first == again
            tried += 1
            mended += first is not None
    assert tried > 50
    assert mended > 0


def test_a_change_that_breaks_something_else_mends_nothing() -> None:
    text = two_rod().replace("wire box.GND to pilot.HOOD: green\n", "")
    facts = facts_of(load_text(text).diagram)
    findings = list(found(facts))
    assert [each.rule for each in findings] == ["burner-ground-missing"]
    mending = Mending(facts.diagram, findings, found)
    outcomes = {
        trial.leads[-1][:2]: mending.mended(trial, more_than=0) for trial in trials(facts, findings)
    }
    mends = [mend for mend in outcomes.values() if mend is not None]
    assert mends
    assert all(mend.mended == tuple(findings) for mend in mends)
    assert len(mends) < len(outcomes)


@pytest.mark.parametrize("name", ["two-zone-boiler", "furnace-two-speed-blower"])
def test_no_change_is_tried_twice(name: str) -> None:
    original = example(name)
    for mistake in sample(original, 12):
        facts = facts_of(original.with_mistakes(mistake))
        every = [
            tuple(frozenset(lead[:2]) for lead in trial.leads)
            for trial in trials(facts, list(found(facts)))
        ]
        assert len(every) == len(set(every))
