"""Circuits that never rest, and what burns, blows and trips on the way."""

from __future__ import annotations

import re

import pytest

from tests.sequence.heater import HEATER, changed, danger_words, outcome, phases, ran, sentence
from wirecheck.sequence.answers import View
from wirecheck.sequence.script import heat_call

MINUTE = heat_call(length_s=60)

#: A relay that opens its own coil.
BUZZER = f"{HEATER}part k1 is relay\nwire xfmr.R to k1.COM..NC to k1 to xfmr.C\n"


@pytest.mark.parametrize("view", View)
def test_a_relay_that_opens_its_own_coil_chatters_and_the_rest_goes_on(view: View) -> None:
    run = ran(BUZZER, MINUTE, view)
    assert [(span.start_s, span.state) for span in run.trace.spans("k1 coil")] == [
        (-10, "chatters")
    ]
    assert phases(run)[1:] == [(0, "trial"), (2, "proving"), (3, "run"), (60, "idle")]
    assert sentence(run).endswith(
        "k1 coil chatters: it never comes to rest: it takes away its own volts"
    )


def test_two_relays_that_chase_each_other_are_both_named() -> None:
    text = f"""{HEATER}part k1 is relay
part k2 is relay
wire xfmr.R to k2.COM..NC to k1 to xfmr.C
wire xfmr.R to k1.COM..NO to k2 to xfmr.C
"""
    run = ran(text, MINUTE)
    for track in ("k1 coil", "k2 coil"):
        assert run.trace.ever(track, "chatters")
    assert outcome(run) == "runs"


def test_a_relay_in_the_call_that_cuts_it_keeps_the_burner_off() -> None:
    text = changed(HEATER, ("stat to box.TH", "stat to k1.COM..NC to box.TH"))
    text += "part k1 is relay\nwire k1.NC to k1 to xfmr.C\n"
    run = ran(text, MINUTE)
    assert run.trace.ever("k1 coil", "chatters")
    assert "chatters" in sentence(run)


def test_a_control_whose_valve_pulls_its_own_volts_away_chatters() -> None:
    """A valve that takes far too much, fed over the same bad lead as the control."""
    text = changed(
        HEATER,
        ("is transformer", "is transformer: rating 1000 VA"),
        ("pilot 120 ohm", "pilot 3 ohm"),
        ("stat to box.TH", "stat to box.TH: loose 5 ohm"),
    )
    run = ran(text, MINUTE)
    assert outcome(run) == "chatters"
    assert sentence(run).startswith("box chatters: what it switches on pulls its own volts away")


@pytest.mark.parametrize(
    ("kind", "verb"), [("fuse: 1 A", "blows"), ("breaker: 1 A", "trips"), ("fuse: 10 A", "")]
)
def test_a_fuse_opens_on_a_third_more_than_its_rating(kind: str, verb: str) -> None:
    """The whole unit takes some 0.8 A; at twice that the 1 A fuse goes."""
    text = changed(HEATER, ("is high-limit", f"is {kind}"))
    text += "part lamp is lamp: 0.8 A\nwire stat.W to lamp to xfmr.C\n"
    run = ran(text, MINUTE)
    if verb:
        assert sentence(run).startswith(f"limit {verb} ")
        assert danger_words(run) == {"short-circuit"}
        assert run.trace.ever("limit", verb)
    else:
        assert outcome(run) == "runs"


def test_what_burnt_out_stays_so() -> None:
    run = ran(
        f"{HEATER}wire box.PV to earth\n", heat_call(length_s=60, power_lost_s=20, power_back_s=40)
    )
    assert [span.state for span in run.trace.spans("xfmr")] == ["burns out"]
    assert phases(run) == [(-10, "idle")]


def test_too_many_volts_destroy_an_electronic_part_and_are_named() -> None:
    text = changed(HEATER, ("is transformer", "is transformer: secondary 120 V"))
    words = r"box electronics is destroyed on the call: 1\d\d V where 24 V belong"
    assert re.fullmatch(words, sentence(ran(text, MINUTE)))


def test_a_run_too_long_is_cut_and_says_so(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("wirecheck.sequence.simulator.MOST_MOMENTS", 10)
    run = ran(HEATER, heat_call(gas=False, length_s=80_000))
    assert run.trace.cut_short
    assert run.trace.until_s < 80_000
