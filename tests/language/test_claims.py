"""Claims and observations: names and amounts resolved, and what the diagram does not have."""
# ruff: noqa: E501 - each case stands in one line, its message whole

from __future__ import annotations

import math

import pytest

from tests.language.said import load, problems
from wirecheck.model.claim import Claim
from wirecheck.model.diagram import Terminal

PARTS = """\
part box is pilot-ignition-control
part stat is thermostat
part limit is high-limit
part valve is gas-valve-3-wire
part vent is vent-damper
part pilot is pilot-burner
part k1 is relay
part fan is blower
part xfmr is transformer
splice s1
"""
FIRST = PARTS.count("\n") + 1


def claims(text: str) -> list[Claim]:
    """The claims and observations of a text that has no problems."""
    diagram = load(PARTS + text)
    return [*diagram.claims, *diagram.observations]


@pytest.mark.parametrize(
    ("claim", "texts"),
    [
        ("expect 24 V across box.PV and box.COM during trial", ["24 V across box.PV and box.COM during trial"]),
        ("expect main-valve off when limit open", ["main-valve off when limit open"]),
        ("expect no-continuity across box.SENSE and earth", ["no-continuity across box.SENSE and earth"]),
        ("expect 0.75 A through stat during run", ["0.75 A through stat during run"]),
        ("observe pilot-flame on, spark on, main-valve off during trial", ["pilot-flame on during trial", "spark on during trial", "main-valve off during trial"]),
        ("expect at least 20 V across box.TH and box.COM, at most 1 A through valve.PV..C", ["at least 20 V across box.TH and box.COM", "at most 1 A through valve.PV..C"]),
        ("expect between 20 V and 28 V across box.TH and s1 when limit closed and stat on during run", ["between 20 V and 28 V across box.TH and s1 when limit closed and stat on during run"]),
        ("EXPECT 22-26V ACROSS box.TH AND EARTH DURING Damper-Opening", ["22-26 V across box.TH and EARTH during damper-opening"]),
        ("observe .5 A through stat, 3 µA through PILOT, continuity across limit", ["0.5 A through stat", "3 uA through pilot", "continuity across limit"]),
        ("expect box.lockout on, damper open, main-flame lit, pilot out, stat.call off", ["box.lockout on", "damper open", "main-flame lit", "pilot out", "stat.call off"]),
        ("expect k1 on, k1.NO closed, vent.end-switch open, valve.pilot-operator on, blower off", ["k1 on", "k1.NO closed", "vent.end-switch open", "valve.pilot-operator on", "blower off"]),
        ("observe 1 A through xfmr, 5 uA through box.SENSE, 24 V across box.24V and box.COM,\n    spark on\n", ["1 A through xfmr", "5 uA through box.SENSE", "24 V across box.24V and box.COM", "spark on"]),
    ],
)  # fmt: skip
def test_claims_that_read(claim: str, texts: list[str]) -> None:
    found = claims(claim)
    assert [each.text for each in found] == texts
    assert {each.word for each in found} == {claim.split(maxsplit=1)[0].lower()}


def test_a_list_shares_conditions_and_phase() -> None:
    one, other = claims("expect main-valve off, spark on when limit open and stat on during trial")
    assert one.when == other.when
    assert [str(state) for state in one.when] == ["limit open", "stat on"]
    assert [state.on for state in one.when] == [False, True]
    assert {one.phase, other.phase} == {"trial"}
    assert (one.span.text, other.span.text) == ("main-valve off", "spark on")


@pytest.mark.parametrize(
    ("amount", "low", "high"),
    [
        ("24 V", 20.4, 27.6),
        ("0 V", 0, 1),
        ("22-26 V", 22, 26),
        ("at least 20 V", 20, math.inf),
        ("at most 500 mV", -math.inf, 0.5),
        ("between 28 V and 20 V", 20, 28),
    ],
)
def test_what_an_amount_allows(amount: str, low: float, high: float) -> None:
    (claim,) = claims(f"expect {amount} across box.TH and box.COM")
    assert claim.bounds is not None
    assert claim.bounds[:2] == pytest.approx((low, high))


@pytest.mark.parametrize(("amount", "high"), [("0 A", 0.01), ("0 mA", 0.01), ("0 uA", 0.5e-6)])
def test_what_counts_as_no_current(amount: str, high: float) -> None:
    (claim,) = claims(f"expect {amount} through stat")
    assert claim.bounds is not None
    assert claim.bounds[:2] == (0, high)


@pytest.mark.parametrize(
    ("place", "ends"),
    [
        ("stat", ("stat.R", "stat.W")),
        ("k1", ("k1.A", "k1.B")),
        ("k1.COM..NO", ("k1.COM", "k1.NO")),
        ("valve.PV..C", ("valve.PV", "valve.C")),
        ("pilot", ("pilot.ROD", "pilot.HOOD")),
        ("box.SENSE", ("box.SENSE", "box.SENSE")),
    ],
)
def test_where_a_current_runs(place: str, ends: tuple[str, str]) -> None:
    (claim,) = claims(f"expect 1 A through {place}")
    assert claim.ends is not None
    assert tuple(f"{end.part}.{end.name}" for end in claim.ends) == ends


def test_an_end_may_bear_a_printed_label() -> None:
    (claim,) = claims('labels box: TH as "1"\nexpect 24 V across box.1 and box.COM')
    assert claim.ends == (Terminal("box", "TH"), Terminal("box", "COM"))


@pytest.mark.parametrize(
    ("claim", "expected"),
    [
        ("expect main-vale on", "8 [main-vale] “main-vale” is neither a part nor a signal; did you mean main-valve?"),
        ("expect spark on when limt open", "22 [limt] “limt” is neither a part nor a signal; did you mean limit?"),
        ("expect 24 V across box.PX and earth", "24 [PX] no terminal PX on box; it has TH, 24V, COM, PV, MV, VC, GND, SENSE, SPARK, D-HOT, D-CALL, D-PROVED, D-COM"),
        ("expect 24 V across bx.PV and earth", "20 [bx] no part or splice is called “bx”; did you mean box?"),
        ("expect bx.spark on", "8 [bx] no part or splice is called “bx”; did you mean box?"),
        ("expect 24 A across box.PV and earth", "8 [24 A] “24 A” stands before across, which takes volts"),
        ("expect 24 V through stat", "8 [24 V] “24 V” stands before through, which takes amperes"),
        ("expect 24 V across box.PV", "20 [box] the second end is missing: across ONE and OTHER"),
        ("expect 24 V across earth", "20 [earth] the second end is missing: across ONE and OTHER"),
        ("expect 24 V across valve", "20 [valve] name the terminal of valve; it has PV, MV and C"),
        ("expect 24 V across limit and earth", "20 [limit] name the terminal of limit; it has 1 and 2"),
        ("expect 24 V across limit.1..2 and earth", "20 [limit] name two ends: one terminal and another, with “and” between them"),
        ("expect 1 A through nothing", "20 [nothing] no part or splice is called “nothing”; there are box, stat, limit, valve, vent, pilot, k1, fan, xfmr and s1"),
        ("expect 1 A through valve", "20 [valve] say where through valve: valve.ONE..OTHER, or one terminal"),
        ("expect 1 A through box.TH..MV", "24 [TH..MV] box has nothing between TH and MV that carries amperes"),
        ("expect continuity across limit during run", "39 [run] continuity is measured with the power off; take “during run” away"),
        ("expect circulator on", "8 [circulator] nothing in this diagram has a circulator"),
        ("expect box on", "8 [box] box is a pilot ignition control; say what of it: box.spark, box.main-flame, box.flame-signal, box.main-valve, box.call, box.pilot-flame, box.pilot-valve, box.idle, box.damper-opening, box.trial, box.proving, box.run, box.wait, box.lockout, box.electronics, box.k1 or box.k2"),
        ("expect valve open", "8 [valve] valve is a gas valve; say what of it: valve.pilot-valve, valve.main-valve, valve.pilot-operator or valve.main-operator"),
        ("expect box.PV on", "12 [PV] PV is a terminal: claim volts across it and another; box has spark, main-flame, flame-signal, main-valve, call, pilot-flame, pilot-valve, idle, damper-opening, trial, proving, run, wait, lockout, electronics, k1 and k2"),
        ("expect box.lokout on", "12 [lokout] lokout is no signal of box; did you mean lockout?"),
        ("expect k1 closed", "8 [k1] k1 is a relay; say what of it: k1.coil, k1.no or k1.nc"),
        ("expect pilot-flame open", "20 [open] a flame is on, lit, off or out, not open"),
        ("expect damper on", "15 [on] a damper or zone valve is open or closed, not on"),
        ("expect limit lit", "14 [lit] a contact is closed, on, open or off, not lit"),
    ],
)  # fmt: skip
def test_claims_about_what_is_not_there(claim: str, expected: str) -> None:
    assert problems(PARTS + claim) == [f"{FIRST}:{expected}"]


def test_a_signal_that_two_parts_have_is_asked_for() -> None:
    two = f"{PARTS}part box2 is direct-ignition-control\nexpect spark on, pilot-valve on\n"
    assert problems(two) == [
        f"{FIRST + 1}:8 [spark] say which spark is meant: box.spark or box2.spark"
    ]


def test_a_valve_without_a_control_has_its_signals() -> None:
    diagram = load("part v is gas-valve-3-wire\nexpect main-valve off, pilot-valve off")
    assert [each.state.subject.part for each in diagram.claims if each.state] == ["v", "v"]
