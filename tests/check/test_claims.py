"""Every kind of claim in its true and in its false form, with what is computed and why."""
# ruff: noqa: E501 - each case stands in one line, its sentence whole

from __future__ import annotations

import re
from functools import cache

import pytest

import wirecheck
from tests.sequence.heater import DAMPERED, DIRECT, HEATER, INDUCED, ONE_ROD, without
from wirecheck.check.claims import Answer, Bench
from wirecheck.circuit.nets import Nets
from wirecheck.language.build import Built
from wirecheck.model.finding import Breaks

#: A heater with no way back for the flame signal, and one whose control has no common.
UNPROVED = without(HEATER, "wire box.GND to pilot.HOOD")
NO_COMMON = without(HEATER, "wire xfmr.C to box.COM")
LOCKING = HEATER.replace("control: two-rod", "control: two-rod, retry lockout")
#: A sketch of a call that opens a valve, with no control.
SKETCH = """\
part xfmr is transformer
part limit is high-limit
part stat is thermostat
part valve is gas-valve-2-wire
wire xfmr.R to limit to stat to valve to xfmr.C
"""
#: A blower that a fan control starts when the exchanger is hot.
BLOWN = f"""{HEATER}part line is mains
part fl is fan-limit-control
part fan is blower
wire line.L1 to xfmr.L1
wire line.N to xfmr.N
wire line.G to earth
wire line.L1 to fl.FAN-1
wire fl.FAN-2 to fan.HI
wire fan.N to line.N
"""
#: An operator that gets 60 % of its volts over a poor joint: it may open, and may not.
WEAK = SKETCH.replace("valve to xfmr.C", "valve to xfmr.C: loose 10 ohm")


def built(unit: str, *claims: str) -> Built:
    """A unit that claims something, which has no problems."""
    found = wirecheck.load_text(unit + "".join(f"expect {claim}\n" for claim in claims))
    assert found.problems == ()
    return found


@cache
def bench(unit: str) -> Bench:
    """A bench with a unit on it: a claim holds keys, so that it fits any reading of the text."""
    return Bench(Nets(built(unit).diagram))


def twice(first: str, second: str) -> str:
    """Two units in one diagram, the parts of the second with another name each."""
    names = "xfmr|limit|stat|box|valve|pilot|vent"
    other = re.sub(rf"(?<=part |wire |plug )({names})\b", r"\1-2", second)
    other = re.sub(rf"(?<= to )({names})(?=[ .:\n])", r"\1-2", other)
    return first + other


def answer(unit: str, claim: str) -> Answer:
    """What becomes of one claim."""
    (only,) = built(unit, claim).diagram.claims
    return bench(unit).answer(only)


PROVED = [
    (HEATER, "24 V across box.PV and box.COM during trial", "25.8 V"),
    (HEATER, "24 V across box.MV and box.COM during run", "25.2 V"),
    (HEATER, "0 V across box.PV and box.COM during wait", "0 V"),
    (HEATER, "0 V across limit during run", "0 V"),
    (HEATER, "24 V across limit when limit open", "26.3 V in idle"),
    (HEATER, "24 V across xfmr.R and xfmr.C", "25.2 V in run"),
    (HEATER, "between 25 V and 26 V across xfmr.R and xfmr.C during run", "25.2 V"),
    (HEATER, "22-28 V across box.TH and box.COM during trial", "25.8 V"),
    (HEATER, "at least 20 V across box.TH and box.COM during run", "25.2 V"),
    (HEATER, "at most 30 V across box.TH and box.COM", "25.8 V in proving"),
    (HEATER, "0.75 A through stat during run", "0.79 A"),
    (HEATER, "0.22 A through valve.PV..C during run", "0.21 A"),
    (HEATER, "0.8 A through xfmr during run", "0.79 A"),
    (HEATER, "0.75 A through box.TH during run", "0.79 A"),
    (HEATER, "at most 1 A through stat", "0.79 A in run"),
    (HEATER, "at most 1 A through stat during run", "0.79 A"),
    (HEATER, "0 A through stat during idle", "0 A"),
    (HEATER, "3.6 uA through pilot during run", "3.6 uA"),
    (HEATER, "at least 1 uA through box.SENSE during run", "3.6 uA"),
    (HEATER, "0 uA through pilot.ROD..HOOD during wait", "0 uA"),
    (ONE_ROD, "3.6 uA through pilot during run", "3.6 uA"),
    (HEATER, "continuity across limit", "continuity, under 1 ohm"),
    (HEATER, "continuity across box.PV and earth", "continuity, 120 ohm"),
    (HEATER, "no-continuity across box.SENSE and earth", "no continuity"),
    (HEATER, "no-continuity across limit when limit open", "no continuity"),
    (HEATER, "no-continuity across stat.R and stat.W when limit open", "no continuity"),
    (HEATER, "continuity across stat.R and stat.W when stat closed", "continuity, under 1 ohm"),
    (HEATER, "pilot-valve on during trial", "on"),
    (HEATER, "main-valve closed during trial", "closed"),
    (HEATER, "valve.main-valve open during run", "open"),
    (HEATER, "valve.pilot-operator on during run", "on"),
    (HEATER, "spark on during trial", "on"),
    (HEATER, "spark off during run", "off"),
    (HEATER, "pilot-flame lit during trial", "lit"),
    (HEATER, "pilot lit during proving", "lit"),
    (HEATER, "main-flame out during trial", "out"),
    (HEATER, "pilot.main-flame lit during run", "lit"),
    (HEATER, "flame-signal on during run", "3.6 uA"),
    (HEATER, "flame-signal off during wait", "0 uA"),
    (HEATER, "call on during trial", "on"),
    (HEATER, "stat on during run", "on"),
    (HEATER, "box.wait on during wait", "in wait"),
    (HEATER, "box.k2 closed during run", "closed"),
    (HEATER, "main-valve off when limit open", "off in idle"),
    (HEATER, "main-valve off when limit closed and stat open", "off in idle"),
    (HEATER, "main-flame out when pilot-flame out", "out in idle"),
    (HEATER, "main-valve off during idle", "off"),
    (LOCKING, "main-valve off during lockout", "off"),
    (DAMPERED, "damper open during run", "open"),
    (DAMPERED, "damper closed during idle", "closed"),
    (DAMPERED, "vent.end-switch open during damper-opening", "open"),
    (DAMPERED, "24 V across vent.CALL and vent.COM during damper-opening", "26.0 V"),
    (DAMPERED, "spark off when vent.end-switch open", "off in idle"),
    (DAMPERED, "main-valve off when damper closed", "off in idle"),
    (DIRECT, "main-valve on during trial", "on"),
    (DIRECT, "main-flame on during trial", "on"),
    (DIRECT, "24 V across valve.PV and valve.C during run", "25.2 V"),
    (DIRECT, "spark off during wait", "off"),
    (DIRECT, "main-valve off during lockout", "off"),
    (INDUCED, "inducer on during trial", "on"),
    (INDUCED, "inducer off during idle", "off"),
    (INDUCED, "k1 on during trial", "on"),
    (INDUCED, "k1.NC open during trial", "open"),
    (INDUCED, "spark off when air open", "off in idle"),
    (INDUCED, "120 V across inducer.L and inducer.N during trial", "120 V"),
    (BLOWN, "blower on during run", "on"),
    (BLOWN, "blower off during trial", "off"),
    (SKETCH, "24 V across valve during run", "25.7 V"),
    (SKETCH, "valve closed during idle", "closed"),
    (SKETCH, "valve off when limit open", "off"),
]  # fmt: skip


@pytest.mark.parametrize(("unit", "claim", "computed"), PROVED)
def test_claims_that_hold(unit: str, claim: str, computed: str) -> None:
    found = answer(unit, claim)
    assert (found.verdict, found.computed, found.why) == ("proved", computed, "")


REFUTED = [
    (HEATER, "limit open during run", "closed: nothing opens it in this call"),
    (HEATER, "24 V across box.PV and box.COM during wait", "0 V: the control rests between trials"),
    (HEATER, "0 V across box.PV and box.COM during trial", "25.8 V: the call has reached the ignition: gas and spark"),
    (HEATER, "24 V across box.MV and box.COM during trial", "0 V: main gas comes only once the flame is proved"),
    (HEATER, "24 V across limit during run", "0 V: limit is closed: no volts stay across it"),
    (HEATER, "24 V across xfmr.R and box.TH during run", "0 V: limit and stat are closed between them"),
    (HEATER, "24 V across box.VC and box.COM during run", "0 V: they are one conductor"),
    (HEATER, "0 V across limit when limit open", "26.3 V in idle: limit stands open, with volts behind it"),
    (HEATER, "24 V across box.TH and box.COM during idle", "0 V: stat does not call"),
    (HEATER, "between 20 V and 22 V across xfmr.R and xfmr.C during run", "25.2 V"),
    (HEATER, "at least 30 V across box.TH and box.COM during run", "25.2 V"),
    (HEATER, "at most 20 V across box.TH and box.COM during run", "25.2 V"),
    (HEATER, "0.5 A through stat during run", "0.79 A"),
    (HEATER, "0.75 A through stat during idle", "0 A: stat does not call"),
    (HEATER, "0.6 A through valve.MV..C during trial", "0 A: main gas comes only once the flame is proved"),
    (HEATER, "2 A through xfmr during run", "0.79 A"),
    (HEATER, "2 A through box.TH during run", "0.79 A"),
    (HEATER, "10 uA through pilot during run", "3.6 uA"),
    (HEATER, "3.6 uA through box.SENSE during idle", "0 uA: no flame burns"),
    (UNPROVED, "3.6 uA through box.SENSE during trial", "0 uA: no path back for the flame signal: no lead joins pilot.HOOD and box.GND"),
    (HEATER, "no-continuity across limit", "continuity, under 1 ohm: the way runs through limit"),
    (HEATER, "continuity across limit when limit open", "no continuity: limit stands open"),
    (HEATER, "no-continuity across stat.R and stat.W", "continuity, 162 ohm: the way runs through limit, xfmr secondary, box electronics"),
    (HEATER, "continuity across box.SENSE and earth", "no continuity: no way joins them"),
    (HEATER, "no-continuity across xfmr.C and earth", "continuity, under 1 ohm: they are one conductor"),
    (HEATER, "no-continuity across box.PV and earth", "continuity, 120 ohm: the way runs through valve pilot operator"),
    (HEATER, "pilot-valve on during wait", "off: the control rests between trials"),
    (HEATER, "main-valve open during trial", "closed: main gas comes only once the flame is proved"),
    (HEATER, "main-valve off during run", "on: the flame is proved: spark off, main gas on"),
    (HEATER, "spark on during run", "off: the control sparks only in the trial"),
    (HEATER, "spark off during trial", "on: the call has reached the ignition: gas and spark"),
    (HEATER, "pilot-flame out during run", "lit: the flame is proved: spark off, main gas on"),
    (HEATER, "main-flame lit during proving", "out: main gas comes only once the flame is proved"),
    (HEATER, "flame-signal off during run", "3.6 uA: the flame is proved: spark off, main gas on"),
    (UNPROVED, "flame-signal on during trial", "no signal: no path back for the flame signal: no lead joins pilot.HOOD and box.GND"),
    (HEATER, "call off during trial", "on"),
    (HEATER, "stat closed during idle", "open: stat does not call"),
    (HEATER, "stat off during run", "on"),
    (HEATER, "box.lockout on during run", "in run: the flame is proved: spark off, main gas on"),
    (HEATER, "box.k2 closed during trial", "open: box keeps K2 open"),
    (HEATER, "main-valve on when limit open", "off in idle: no 24 V at box.TH: limit stands open"),
    (HEATER, "main-flame lit when stat open", "out in idle: no 24 V at box.TH: stat does not call"),
    (HEATER, "spark on", "off in run: the control sparks only in the trial"),
    (HEATER, "main-valve on during idle", "off: nothing calls for heat"),
    (LOCKING, "pilot-valve on during lockout", "off: the control is locked out"),
    (NO_COMMON, "24 V across box.TH and box.COM when stat closed", "0 V in idle: no way from xfmr.C to box.COM"),
    (DAMPERED, "damper closed during run", "open"),
    (DAMPERED, "damper open during damper-opening", "opening"),
    (DAMPERED, "damper open during idle", "closed: stat does not call"),
    (DAMPERED, "vent.end-switch closed during damper-opening", "open: the end switch of vent has not made"),
    (DAMPERED, "spark on during damper-opening", "off: the control waits for the damper"),
    (DIRECT, "24 V across box.V and box.COM during wait", "0 V: the control purges between trials"),
    (DIRECT, "main-valve on during lockout", "off: the control is locked out"),
    (INDUCED, "inducer off during trial", "on"),
    (INDUCED, "k1 off during trial", "on"),
    (INDUCED, "k1.NC closed during trial", "open: its coil is on"),
    (INDUCED, "k1.NO closed during idle", "open: its coil is off"),
    (INDUCED, "inducer on during idle", "off: k1 NO stands open"),
    (BLOWN, "blower off during run", "on"),
    (BLOWN, "blower on during trial", "off: fl fan stands open"),
    (SKETCH, "valve open during idle", "closed: stat does not call"),
    (SKETCH, "0 V across valve during run", "25.7 V"),
    (WEAK, "valve open during run", "not surely on: only 15.6 V reach it"),
    (WEAK, "valve closed during run", "may be open: a coil on low volts may act, and rusty metal may conduct"),
]  # fmt: skip


@pytest.mark.parametrize(("unit", "claim", "computed"), REFUTED)
def test_claims_that_do_not(unit: str, claim: str, computed: str) -> None:
    found = answer(unit, claim)
    assert found.verdict == "refuted"
    assert found.sentence() == f"claimed {claim}; computed {computed}"


@pytest.mark.parametrize(
    ("unit", "claim", "why"),
    [
        (HEATER, "main-valve off during lockout", "box waits and tries again, it never locks out (retry continuous)"),
        (LOCKING, "spark off during wait", "box locks out after one trial, it does not wait (retry lockout)"),
        (HEATER, "spark off during damper-opening", "box waits for no damper: its shorting plug is in"),
        (DIRECT.replace("tries 3", "tries 1"), "spark off during wait", "box locks out after one trial (tries 1)"),
        (UNPROVED, "main-flame on during run", "box: pilot lights, spark goes on, main never opens: no path back for the flame signal: no lead joins pilot.HOOD and box.GND"),
        (NO_COMMON, "spark on during trial", "box: nothing happens: no 24 V at box.TH: no way from xfmr.C to box.COM"),
        (HEATER, "spark off when stat closed and call off", "stat closed and call off are not seen in any call"),
        (HEATER, "main-valve off when limit open during run", "limit open is not seen during run"),
    ],
)  # fmt: skip
def test_what_never_comes_is_said(unit: str, claim: str, why: str) -> None:
    found = answer(unit, claim)
    assert (found.verdict, found.why) == ("never", why)


@pytest.mark.parametrize(
    ("unit", "claim", "why"),
    [
        (HEATER, "24 V across box.SPARK and earth", "box.SPARK belongs to the spark, where no volts are computed and no meter goes"),
        (HEATER, "24 V across box.SENSE and earth", "box.SENSE belongs to the flame signal, where no volts are computed and no meter goes"),
        (HEATER, "0.8 A through xfmr.C during run", "2 leads land on xfmr.C: no meter says what runs through it"),
        (SKETCH, "valve off during trial", "no ignition control is drawn, and so there is no such phase"),
        (HEATER, "continuity across limit when spark on", "spark cannot be put anywhere with the power off"),
        (HEATER.replace("SENSE to pilot.ROD", "SENSE to unknown"), "main-flame on during run", "the lead at box.SENSE is not traced"),
        (HEATER.replace("SENSE to pilot.ROD", "SENSE to unknown"), "main-flame off during trial", "the lead at box.SENSE is not traced"),
    ],
)  # fmt: skip
def test_what_cannot_be_decided_is_said(unit: str, claim: str, why: str) -> None:
    found = answer(unit, claim)
    assert (found.verdict, found.why) == ("undecided", why)


def test_what_is_there_is_sure_even_where_a_lead_is_not_traced() -> None:
    unit = HEATER.replace("SENSE to pilot.ROD", "SENSE to unknown")
    assert answer(unit, "spark on during trial").verdict == "proved"
    assert answer(unit, "spark off during trial").verdict == "refuted"


# ---- two controls ---------------------------------------------------------------------------


def test_a_claim_is_about_the_control_whose_parts_it_names() -> None:
    both = twice(HEATER, DAMPERED)
    assert answer(both, "box-2.spark off during damper-opening").verdict == "proved"
    assert answer(both, "24 V across valve.PV and valve.C during trial").verdict == "proved"
    assert answer(both, "24 V across valve-2.PV and valve-2.C during trial").verdict == "proved"
    assert answer(both, "valve-2.main-valve off when limit-2 open").verdict == "proved"
    assert answer(both, "valve.main-valve off when limit-2 open").verdict == "refuted"


def test_controls_that_are_in_a_phase_at_no_one_time_are_told_apart() -> None:
    found = answer(twice(HEATER, DAMPERED), "24 V across xfmr.R and xfmr.C during proving")
    assert found.verdict == "never"
    assert found.why == "box and box-2 are not in it at one time; name a part of one of them"


# ---- in a check --------------------------------------------------------------------------------


def test_a_claim_that_fails_is_a_finding_and_one_that_holds_is_none() -> None:
    checked = wirecheck.check(
        built(
            HEATER,
            "24 V across box.PV and box.COM during wait",
            "spark on during trial",
            "main-valve off during lockout",
        ).diagram
    )
    refuted, never = checked.findings
    assert (refuted.rule, refuted.breaks, refuted.span.text) == (
        "claim-refuted",
        Breaks.OPERATION,
        "24 V across box.PV and box.COM",
    )
    assert refuted.terminals == ("box.PV", "box.COM")
    assert (never.rule, never.span.text) == ("claim-never-tested", "main-valve off")
    assert [each.verdict for each in checked.claims] == ["refuted", "proved", "never"]


def test_what_cannot_be_decided_was_not_checked() -> None:
    checked = wirecheck.check(built(HEATER, "24 V across box.SPARK and earth").diagram)
    assert checked.findings == ()
    assert checked.not_checked[0].what == "expect"
    assert checked.not_checked[0].reason.startswith("claimed 24 V across box.SPARK and earth; that")


def test_what_was_observed_is_not_judged() -> None:
    checked = wirecheck.check(
        wirecheck.load_text(f"{HEATER}observe spark off during trial").diagram
    )
    assert (checked.findings, checked.claims) == ((), ())
    assert checked.not_checked[0].what == "observe"


def test_a_claim_of_the_base_is_tried_in_each_variant() -> None:
    text = (
        f"{HEATER}expect main-flame on during run\nvariant v\nremove wire box.GND to pilot.HOOD\n"
    )
    found = wirecheck.load_text(text)
    (variant,) = wirecheck.variants(found)
    assert wirecheck.check(found.diagram).claims[0].verdict == "proved"
    assert wirecheck.check(variant.diagram).claims[0].verdict == "never"
