"""What is told of two diagrams that differ: the circuit, the lead, the terminal, a state."""

from __future__ import annotations

import pytest

from tests.benchmarks.campaign import example, sample
from tests.benchmarks.oracle import behaviour, differences
from tests.sequence.heater import HEATER
from wirecheck import compare, load_text
from wirecheck.compare.circuits import Circuit
from wirecheck.compare.result import Comparison

NAMES = ("the key", "your drawing")


def compared(other: str, first: str = HEATER) -> Comparison:
    built = [load_text(text) for text in (first, other)]
    assert not any(each.problems for each in built)
    return compare(built[0].diagram, built[1].diagram, names=NAMES)


def changed(*pairs: tuple[str, str]) -> str:
    text = HEATER
    for old, new in pairs:
        assert old in text
        text = text.replace(old, new)
    return text


def told(*pairs: tuple[str, str]) -> list[tuple[Circuit, str]]:
    return [(each.circuit, each.message) for each in compared(changed(*pairs)).differences]


def test_a_limit_in_the_common_lead_is_one_mistake() -> None:
    moved = (
        ("xfmr.R to limit to stat", "xfmr.R to stat"),
        ("wire xfmr.C to box.COM", "wire xfmr.C to limit to box.COM"),
    )
    assert told(*moved) == [
        (
            Circuit.CHAIN,
            (
                "limit is in the common lead, between xfmr.C and box.COM; in the key it is in the "
                "hot lead, ahead of stat"
            ),
        )
    ]
    (seen,) = compared(changed(*moved)).seen
    assert "limit open" in seen.when


def test_a_limit_that_is_forgotten_is_one_mistake() -> None:
    assert told(("xfmr.R to limit to stat", "xfmr.R to stat")) == [
        (
            Circuit.CHAIN,
            "limit is wired to nothing; in the key it is in the hot lead, ahead of stat",
        )
    ]


def test_a_lead_that_is_missing_is_named() -> None:
    assert told(("wire box.GND to pilot.HOOD\n", "")) == [
        (Circuit.GROUND, "no lead joins box.GND to pilot.HOOD")
    ]


def test_a_common_that_is_missing_costs_what_hangs_on_it_nothing() -> None:
    assert told(("wire xfmr.C to box.COM\n", "")) == [
        (Circuit.SUPPLY, "no lead joins box.COM to xfmr.C")
    ]


def test_a_lead_on_the_wrong_terminal_is_named_with_its_line() -> None:
    assert told(("box.SENSE to pilot.ROD", "box.SPARK to pilot.ROD")) == [
        (
            Circuit.IGNITION,
            (
                "pilot.ROD belongs on box.SENSE; in your drawing it is joined to box.SPARK "
                "(line 12: box.SPARK to pilot.ROD)"
            ),
        )
    ]


def test_two_leads_exchanged_are_two_terminals_wrong() -> None:
    lines = told(("PV, MV, VC to C", "PV to MV, MV to PV, VC to C"))
    assert [circuit for circuit, _message in lines] == [Circuit.VALVE, Circuit.VALVE]
    assert all("belongs on" in message for _circuit, message in lines)


def test_a_jumper_is_one_mistake() -> None:
    bridged = compared(f"{HEATER}jumper limit.1 to limit.2\n")
    assert [each.message for each in bridged.differences] == [
        "limit.2 and limit.1 are joined (line 14: limit.1 to limit.2); in the key they are apart"
    ]


def test_a_further_part_is_told() -> None:
    more = f"{HEATER}part glow is lamp: 24 V\nwire box.TH to glow to xfmr.C\n"
    found = compared(more)
    assert [each.message for each in found.differences] == ["glow (lamp) is not in the key"]
    less = compared(HEATER, more)
    assert "glow is not drawn" in less.differences[0].message


def test_a_plug_left_in_is_told_once() -> None:
    damper = f"""{HEATER}part vent is vent-damper
plug box to vent: D-HOT to HOT, D-CALL to CALL, D-PROVED to PROVED, D-COM to COM
wire xfmr.R to box.24V
"""
    left_in = damper.replace("control: two-rod", "control: two-rod, damper-plug fitted")
    found = compared(left_in, damper)
    assert [each.message for each in found.differences] == [
        "box: damper-plug fitted; in the key it is removed"
    ]


def test_common_over_metal_is_not_common_by_a_lead() -> None:
    """With the common off, the burner ground and the earthed burner carry it: hidden, and told."""
    text = changed(
        ("wire xfmr.C to box.COM\n", "wire pilot.HOOD to earth\n"),
    )
    found = compared(text)
    assert not found.same
    assert found.differences[0].message == "no lead joins box.COM to xfmr.C"


@pytest.mark.parametrize(
    "pair",
    [
        ("xfmr.R to limit to stat", "xfmr.R to stat.R..W to limit.2..1"),
        ("xfmr.R to limit to stat", "xfmr.R to limit.2..1 to stat.W..R"),
        ("wire xfmr.C to earth", "wire box.VC to earth"),
        ("wire box.GND to pilot.HOOD", "wire xfmr.C to pilot.HOOD"),
        ("part limit is high-limit", "part limit is high-limit: setting 93 C"),
    ],
)
def test_what_does_not_matter_is_no_difference(pair: tuple[str, str]) -> None:
    found = compared(changed(pair))
    assert found.how == "structure", found.differences


def test_a_tap_on_the_other_side_of_a_fuse_does_the_same() -> None:
    text = changed(("xfmr.R to limit", "xfmr.R to fuse to limit")) + "part fuse is fuse: 3 A\n"
    ahead, behind = (f"{text}wire {end} to box.24V\n" for end in ("xfmr.R", "fuse.2"))
    assert compared(ahead, behind).how == "function"
    past = behind.replace("xfmr.R to fuse to limit", "xfmr.R to limit").replace(
        "wire fuse.2 to box.24V", "wire xfmr.R to fuse to box.24V"
    )
    assert not compared(past, behind).same


def test_a_coil_has_no_right_way_round() -> None:
    text = f"{HEATER}part fan is relay\nwire stat.W to fan.A\nwire fan.B to xfmr.C\n"
    turned = text.replace("fan.A", "fan.x").replace("fan.B", "fan.A").replace("fan.x", "fan.B")
    assert compared(turned, text).how == "structure"
    wrong = compared(turned.replace("wire box.GND to pilot.HOOD\n", ""), text)
    assert [each.message for each in wrong.differences] == ["no lead joins box.GND to pilot.HOOD"]


def test_parts_of_other_names_are_matched_by_kind_and_wiring() -> None:
    renamed = HEATER
    for old, new in (("limit", "safety"), ("stat", "room"), ("box", "ctrl"), ("xfmr", "t-1")):
        renamed = renamed.replace(f"{old} ", f"{new} ").replace(f"{old}.", f"{new}.")
    assert compared(renamed).how == "structure"
    found = compared(renamed.replace("wire ctrl.GND to pilot.HOOD\n", ""))
    assert [each.message for each in found.differences] == ["no lead joins ctrl.GND to pilot.HOOD"]


def test_another_trial_time_shows_in_a_run() -> None:
    found = compared(changed(("control: two-rod", "control: two-rod, trial 30 s")))
    assert not found.same
    assert found.seen[0].when == "at 30 s of a call with the gas shut"


def test_a_limit_that_is_stuck_is_no_limit() -> None:
    found = compared(changed(("limit is high-limit", "limit is high-limit: stuck closed")))
    assert not found.same
    (seen,) = found.seen
    assert "limit open" in seen.when


@pytest.mark.parametrize("name", ["workshop-heater-one-rod", "boiler-with-vent-damper"])
def test_whatever_another_judge_sees_is_a_difference(name: str) -> None:
    """The campaign's judge knows neither nets nor tables: what it sees must be told here."""
    original = example(name)
    right = behaviour(original.diagram)
    for mistake in sample(original, 14):
        diagram = original.with_mistakes(mistake)
        found = compare(original.diagram, diagram)
        assert found.same or found.differences
        if found.same:
            assert not differences(right, behaviour(diagram)), mistake.name


def test_an_earth_lead_landed_elsewhere_is_named_from_either_end() -> None:
    for typed, told_as in (
        ("xfmr.R to earth", "the earth lead belongs on xfmr.C; in your drawing it is joined to "),
        ("xfmr.C to box.TH", "xfmr.C belongs on earth; in your drawing it is joined to box.TH "),
    ):
        (line,) = told(("xfmr.C to earth", typed))
        assert line[1].startswith(told_as)
        assert line[1].endswith(f"(line 9: {typed})")
