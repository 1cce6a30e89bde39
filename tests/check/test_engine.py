"""The check as a whole: one finding for one mistake, two for two, and never an exception."""

from __future__ import annotations

import random

import pytest

import wirecheck
from tests.benchmarks.campaign import EXAMPLES, example, judged, sample
from tests.rules.raised import findings
from tests.rules.units import two_rod
from wirecheck.model.finding import Breaks


def rules(text: str) -> set[str]:
    return {found.rule for found in findings(text) if found.breaks >= Breaks.OPERATION}


#: Mistakes in circuits of their own, each by the rule that is to name it.
MISTAKES = {
    "safety-jumpered": "jumper limit.1 to limit.2\n",
    "burner-ground-missing": ("wire box.GND to pilot.HOOD: green\n", ""),
    "valve-leads-out-of-order": ("PV, MV, VC to C", "PV to MV, MV to PV, VC to C"),
}


def with_mistakes(*names: str) -> str:
    text = two_rod()
    for name in names:
        mistake = MISTAKES[name]
        if isinstance(mistake, str):
            text += mistake
        else:
            old, new = mistake
            assert old in text
            text = text.replace(old, new)
    return text


@pytest.mark.parametrize("name", MISTAKES)
def test_one_mistake_is_told_once(name: str) -> None:
    assert rules(with_mistakes(name)) == {name}


@pytest.mark.parametrize(
    ("one", "other"),
    [(a, b) for a in MISTAKES for b in MISTAKES if a < b],
)
def test_two_mistakes_in_two_circuits_are_both_told(one: str, other: str) -> None:
    """What makes one mistake one finding must not swallow the second."""
    assert rules(with_mistakes(one, other)) == {one, other}


@pytest.mark.parametrize("wrong", ["line.L1 to stat-4.Y", "stop.2 to calling.2.COM"])
def test_a_feed_of_several_units_is_told_once(wrong: str) -> None:
    """None of the units lights: that says nothing new."""
    feed = ("line.L1 to stop.1", "stop.2 to panel.1")
    moved = 0 if wrong.startswith("line") else 1
    leads = "\nwire ".join((wrong, feed[1 - moved]))
    text = (EXAMPLES / "greenhouse-range.wiring").read_text(encoding="utf-8")
    changed = text.replace("line.L1 to stop to panel.1: black, 12 AWG", leads)
    assert changed != text
    assert rules(changed) == {"line-and-24-volts-joined"}


@pytest.mark.parametrize("name", ["workshop-heater-one-rod", "furnace-room-heater"])
def test_single_mistakes_that_matter_are_found_and_named(name: str) -> None:
    """A sample of the campaign, judged by the simulation, which knows no rule."""
    original = example(name)
    verdicts = list(judged(original, sample(original, 60)))
    matter = [each for each in verdicts if each.matters]
    assert len(matter) > len(verdicts) / 2
    assert [each.mistake.name for each in verdicts if each.missed] == []
    assert [each.mistake.name for each in verdicts if each.false] == []
    assert sum(each.named for each in matter) >= 0.95 * len(matter)


@pytest.mark.parametrize("seed", range(12))
def test_any_heap_of_mistakes_is_checked_to_the_end(seed: int) -> None:
    """Some mistakes at once, in any example: a check ends, and says something of each place."""
    chance = random.Random(seed)  # noqa: S311 - a repeatable choice, no secret
    original = example(chance.choice(["laundry-heater-own-labels", "make-up-air-heater"]))
    every = list(original.mistakes())
    chosen = [chance.choice(every) for _ in range(chance.randint(2, 5))]
    checked = wirecheck.check(original.with_mistakes(*chosen))
    assert all(found.message and found.span.text for found in checked.findings)


def test_parts_with_no_lead_at_all_are_checked() -> None:
    text = "part box is pilot-ignition-control\npart pilot is pilot-burner\n"
    assert "burner-ground-missing" in rules(text)


def test_a_lead_with_no_end_that_is_known_is_told_as_that() -> None:
    built = wirecheck.load_text("part x is transformer\npart s is thermostat\nwire y.R to z.C\n")
    told = [each.reason for each in wirecheck.check(built.diagram).not_checked]
    assert "neither end of this lead is traced: what is missing there is not judged" in told
