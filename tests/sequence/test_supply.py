"""Taps, two transformers, overload and long leads: what the volts then do to the sequence."""

from __future__ import annotations

import re

import pytest

from tests.sequence.heater import HEATER, changed, danger_words, outcome, ran, sentence, volts
from wirecheck.sequence.answers import View
from wirecheck.sequence.run import Run
from wirecheck.sequence.script import Opening, heat_call

#: The heater fed from mains.
FED = f"""\
{HEATER}part line is mains
wire line.L1 to xfmr.L1
wire line.N to xfmr.N
wire line.G to earth
"""


def without_amps(words: str) -> str:
    """A sentence without the amperes of a short, which hang on the transformer's impedance."""
    return re.sub(r"about \d+ A", "about so many A", words)


def secondary_v(run: Run) -> float:
    """Volts of the one secondary before the call."""
    (found,) = run.trace.rests[0].steady.source_volts.values()
    return found


#: The line and the tap it lands on; the volts a stiff 24 V transformer then gives.
TAPS = [
    ("120 V", "120 V", 24.0, "runs", "runs"),
    ("120 V", "240 V", 12.0, "no-start", "runs"),
    ("208 V", "240 V", 20.8, "runs", "runs"),
    ("240 V", "208 V", 27.7, "runs", "runs"),
    ("240 V", "120 V", 48.0, "burns-out", "burns-out"),
]


@pytest.mark.parametrize(("line", "tap", "expected_v", "works", "endangers"), TAPS)
def test_a_wrong_tap_gives_the_volts_of_the_ratio(
    line: str, tap: str, expected_v: float, works: str, endangers: str
) -> None:
    second = "line.N" if line == "120 V" else "line.L2"
    text = changed(
        FED,
        ("is mains", f"is mains: {line}"),
        ("is transformer", f"is transformer: primary {tap}, regulation 0.01 %"),
        ("line.N to", f"{second} to"),
    )
    run = ran(text)
    assert secondary_v(run) == pytest.approx(expected_v, rel=2e-3)
    assert outcome(run) == works
    assert outcome(ran(text, view=View.DANGER)) == endangers


def test_208_v_on_the_240_v_tap_fails_under_load() -> None:
    """20.8 V at its rated load; a little over that is less than operators surely open at."""
    text = changed(
        FED,
        ("is mains", "is mains: 208 V"),
        ("is transformer", "is transformer: primary 240 V, rating 15 VA, regulation 10 %"),
        ("line.N to", "line.L2 to"),
    )
    text = changed(text, ("pilot 120 ohm, main 60 ohm", "pilot 0.3 A, main 0.5 A"))
    run = ran(text)
    assert outcome(run) == "no-main"
    assert "it surely opens from 20 V" in sentence(run)


SECOND = f"{FED}part x2 is transformer\npart cb is breaker\nwire line.L1 to cb to x2.L1\n"
IN_PHASE = f"{SECOND}wire line.N to x2.N\nwire x2.R to xfmr.R\nwire x2.C to xfmr.C\n"


def test_two_transformers_in_phase_share_the_load() -> None:
    assert outcome(ran(IN_PHASE)) == "runs"


def test_a_second_transformer_switched_off_is_back_fed() -> None:
    """The first feeds the second's secondary, whose primary is live: all volts are there still."""
    run = ran(IN_PHASE, heat_call(opened=(Opening("cb"),)))
    seconds = run.trace.rests[0].steady.source_volts
    assert [round(each) for each in seconds.values()] == [26, 26]
    assert outcome(run) == "runs"


def test_two_transformers_out_of_phase_burn_each_other_out() -> None:
    text = changed(
        IN_PHASE, ("x2.R to xfmr.R", "x2.R to xfmr.C"), ("x2.C to xfmr.C", "x2.C to xfmr.R")
    )
    run = ran(text)
    assert outcome(run) == "burns-out"
    assert danger_words(run) == {"short-circuit"}


def test_two_transformers_joined_on_one_side_do_no_harm() -> None:
    run = ran(changed(IN_PHASE, ("wire x2.R to xfmr.R\n", "")))
    assert outcome(run) == "runs"
    assert not run.dangers


def test_line_and_neutral_reversed_makes_no_difference_to_a_plain_primary() -> None:
    text = changed(
        FED, ("line.L1 to xfmr.L1", "line.N to xfmr.L1"), ("line.N to xfmr.N", "line.L1 to xfmr.N")
    )
    assert outcome(ran(text)) == "runs"


def test_an_open_service_switch_is_named_as_why_nothing_happens() -> None:
    text = changed(FED, ("line.L1 to xfmr.L1", "line.L1 to service to xfmr.L1"))
    text += "part service is service-switch\n"
    run = ran(text, heat_call(opened=(Opening("service"),)))
    assert sentence(run) == (
        "nothing happens: no 24 V at box.TH: xfmr gives no volts: service stands open"
    )


def test_a_transformer_too_small_cannot_hold_the_main_operator_open() -> None:
    text = changed(
        HEATER,
        ("is transformer", "is transformer: rating 5 VA"),
        ("pilot 120 ohm, main 60 ohm", "pilot 0.2 A, main 0.5 A"),
    )
    run = ran(text)
    assert outcome(run) == "no-main"
    assert volts(run, "valve", "main operator", "run") < 0.85 * 24


def test_leads_far_too_long_and_thin_keep_the_call_too_weak() -> None:
    text = changed(HEATER, ("stat to box.TH", "stat to box.TH: 22 AWG, 3000 ft"))
    assert sentence(ran(text)).startswith("nothing happens: only ")


def test_a_factory_link_left_in_puts_line_volts_on_the_controls() -> None:
    furnace = changed(FED, ("is high-limit", "is fan-limit-control"))
    furnace = changed(
        furnace, ("xfmr.R to limit to stat", "xfmr.R to limit.LIMIT-1\nwire limit.LIMIT-2 to stat")
    )
    furnace += """\
part fan is blower: one-speed
wire line.L1 to limit.FAN-1
wire limit.FAN-2 to fan to line.N
"""
    run = ran(furnace)
    assert outcome(run) == "burns-out"
    assert [without_amps(danger.sentence) for danger in run.dangers] == [
        "xfmr burns out: a short circuit: about so many A, 1.7 A is its rating",
        "box electronics destroyed: 120 V where 24 V belong",
    ]
    assert (
        outcome(ran(changed(furnace, ("fan-limit-control", "fan-limit-control: link removed"))))
        == "runs"
    )


@pytest.mark.parametrize(
    ("found", "expected"),
    [
        (
            "winding open",
            "nothing happens: no 24 V at box.TH: xfmr gives nothing: it was found bad",
        ),
        (
            "winding shorted",
            (
                "xfmr burns out as soon as the power is on: "
                "a short circuit: about so many A, 1.7 A is its rating"
            ),
        ),
    ],
)
def test_a_bad_winding_is_named(found: str, expected: str) -> None:
    run = ran(changed(HEATER, ("is transformer", f"is transformer: {found}")))
    assert without_amps(sentence(run)) == expected
