"""Marks of single drawings: what is lost, what it costs, what caps it."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tests.benchmarks.campaign import example, sample
from tests.benchmarks.grading import Campaign
from tests.sequence.heater import DAMPERED, HEATER
from wirecheck import load_text
from wirecheck.grade.key import Key
from wirecheck.grade.marked import Marked
from wirecheck.grade.marking import marked
from wirecheck.grade.rubric import default_rubric
from wirecheck.model.diagram import Diagram
from wirecheck.model.finding import Breaks

RUBRIC = default_rubric()


def drawn(text: str) -> Diagram:
    built = load_text(text, "drawing.wiring")
    assert not built.problems, built.problems[0].message
    return built.diagram


KEY = Key(drawn(HEATER), "the key")


def mark(*pairs: tuple[str, str], more: str = "") -> Marked:
    text = HEATER
    for old, new in pairs:
        assert old in text
        text = text.replace(old, new)
    return marked([KEY], drawn(text + more), RUBRIC)


def test_the_key_has_full_marks_against_itself() -> None:
    found = mark()
    assert (found.mark, found.how, found.lost) == (100.0, "structure", ())
    assert found.does == found.key_does == KEY.does


def test_a_missing_lead_costs_its_unit_and_says_what_the_unit_does() -> None:
    found = mark(("wire box.GND to pilot.HOOD\n", ""))
    (lost,) = found.lost
    assert (lost.circuit, lost.line) == ("burner ground", 4)
    assert lost.reason == "no lead joins box.GND to pilot.HOOD"
    assert "pilot lights, spark goes on, main never opens" in lost.effect
    assert found.mark == 90.0
    assert not found.unsafe


def test_one_mistake_costs_once_whatever_hangs_behind_it() -> None:
    """With the common off, valve and burner ground have no way back; they are wired right."""
    found = mark(("wire xfmr.C to box.COM\n", ""))
    assert [each.reason for each in found.lost] == ["no lead joins box.COM to xfmr.C"]


def test_a_wrong_landing_names_its_lead_and_line() -> None:
    (lost,) = mark(("box.SENSE to pilot.ROD", "box.SPARK to pilot.ROD")).lost
    assert lost.line == 12
    assert lost.leads == ("box.SPARK to pilot.ROD",)
    assert lost.finding.span.text == "box.SPARK to pilot.ROD"


def test_what_is_unsafe_is_capped() -> None:
    found = mark(more="jumper limit.1 to limit.2\n")
    assert found.before_cap > RUBRIC.unsafe.cap == found.mark
    assert "limit" in found.unsafe[0]
    assert found.lost[0].breaks is Breaks.SAFETY


def test_a_mistake_hidden_by_another_one_is_still_unsafe() -> None:
    """With the supply off, the bridged limit of this drawing stops nothing that it should."""
    found = mark(("wire xfmr.R to limit", "wire limit"), more="jumper limit.1 to limit.2\n")
    assert found.mark <= RUBRIC.unsafe.cap
    assert found.unsafe


def test_two_leads_exchanged_at_a_redundant_valve_are_not_unsafe() -> None:
    """Each by itself would tie both operators together; exchanged they pass no gas."""
    found = mark(("PV, MV, VC to C", "PV to MV, MV to PV, VC to C"))
    assert not found.unsafe
    assert [each.circuit for each in found.lost] == ["valve", "valve"]
    assert found.mark == pytest.approx(100 - 100 * 20 * 2 / 3 / 90 * 0.9, abs=0.1)


def test_a_drawing_that_looks_different_and_does_the_same_has_full_marks() -> None:
    """The tap for the damper's standing 24 V is taken ahead of the fuse instead of behind it."""
    text = DAMPERED.replace("xfmr.R to limit", "xfmr.R to fuse to limit")
    text += "part fuse is fuse: 3 A\n"
    key = Key(drawn(text.replace("xfmr.R to box.24V", "fuse.2 to box.24V")), "key")
    found = marked([key], drawn(text), RUBRIC)
    assert (found.mark, found.how) == (100.0, "function")
    assert found.remarks


def test_workmanship_costs_its_share_and_no_more() -> None:
    upside_down = ("control: two-rod", "control: two-rod, terminals-up")
    found = mark(upside_down)
    assert [each.circuit for each in found.lost] == ["workmanship"]
    assert found.mark == 97.5
    assert found.how == "structure"


def test_of_several_keys_the_one_that_suits_best_counts() -> None:
    other = Key(drawn(HEATER.replace("xfmr.R to limit to stat", "xfmr.R to stat")), "no limit")
    wrong = drawn(HEATER.replace("wire box.GND to pilot.HOOD\n", ""))
    assert marked([other, KEY], wrong, RUBRIC).key == "the key"
    assert marked([KEY, other], wrong, RUBRIC).key == "the key"


def test_parts_renamed_late_are_matched() -> None:
    renamed = HEATER
    for old, new in (("limit", "safety"), ("stat", "room"), ("box", "ctrl")):
        renamed = renamed.replace(f"{old} ", f"{new} ").replace(f"{old}.", f"{new}.")
    assert marked([KEY], drawn(renamed), RUBRIC).mark == 100
    found = marked([KEY], drawn(renamed.replace("wire ctrl.GND to pilot.HOOD\n", "")), RUBRIC)
    assert [each.reason for each in found.lost] == ["no lead joins ctrl.GND to pilot.HOOD"]


def test_a_sheet_of_parts_and_no_leads_gets_next_to_nothing() -> None:
    parts = "".join(f"{line}\n" for line in HEATER.splitlines() if line.startswith("part"))
    found = marked([KEY], drawn(f"{parts}wire xfmr.C to earth\n"), RUBRIC)
    assert found.mark < 5
    assert not any(each.right > 1 for each in found.circuits[:-1])


def test_weights_decide() -> None:
    heavy = replace(RUBRIC, weights=replace(RUBRIC.weights, ground=0.0))
    no_ground = drawn(HEATER.replace("wire box.GND to pilot.HOOD\n", ""))
    assert marked([KEY], no_ground, heavy).mark == 100
    assert marked([KEY], no_ground, replace(RUBRIC, out_of=50.0)).mark == 45


def test_marks_are_fair() -> None:
    """A small sample of the campaign ``python -m tests.benchmarks.grading``."""
    original = example("workshop-heater-one-rod")
    campaign = Campaign(original)
    campaign.same(4)
    campaign.single(sample(original, 6))
    campaign.nested(3)
    counted = campaign.counted
    assert counted["full"] == counted["same"] == 4
    assert counted["below"] == counted["named"] == counted["matter"] > 0
    assert counted["lower"] == counted["nested"] > 0
    assert counted["capped"] == counted["unsafe"] > 0
