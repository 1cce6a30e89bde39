"""The flame signal in microamps: the formula, an independent judge of it, and what weakens it."""

from __future__ import annotations

import math
import re
import subprocess
from pathlib import Path

import pytest

from tests.circuit.spice import needs_ngspice
from tests.sequence.heater import HEATER, ONE_ROD, changed, diagram
from wirecheck.circuit.nets import Nets
from wirecheck.sequence.answers import Answer
from wirecheck.sequence.flame import (
    DIRTY_ROD_OHM,
    FLAME_OHM,
    ROD_V,
    FlamePath,
    flame_path,
    half_wave_ua,
)

MEGOHM = 1e6
#: Volts, forward and reverse ohms, and the mean of the half wave worked out by hand from
#: sqrt(2) V / pi (1/R - 1/Rr), to four places.
WORKED = [
    (24, 1 * MEGOHM, math.inf, 10.80),
    (24, 10 * MEGOHM, math.inf, 1.080),
    (24, 10 * MEGOHM, 200 * MEGOHM, 1.026),
    (24, 5 * MEGOHM, 50 * MEGOHM, 1.945),
    (115, 5 * MEGOHM, math.inf, 10.35),
    (115, 50 * MEGOHM, math.inf, 1.035),
    (120, 1 * MEGOHM, math.inf, 54.02),
    (120, 10 * MEGOHM, 200 * MEGOHM, 5.132),
    (230, 5 * MEGOHM, math.inf, 20.71),
    (230, 5 * MEGOHM, 50 * MEGOHM, 18.64),
]


@pytest.mark.parametrize(("volts", "ohms", "reverse", "expected_ua"), WORKED)
def test_half_wave(volts: float, ohms: float, reverse: float, expected_ua: float) -> None:
    assert half_wave_ua(volts, ohms, reverse) == pytest.approx(expected_ua, rel=5e-4)


def test_a_leak_that_conducts_both_ways_alike_gives_no_direct_current() -> None:
    assert half_wave_ua(120, 5 * MEGOHM, 5 * MEGOHM) == 0


@needs_ngspice
@pytest.mark.parametrize(
    ("ohms", "reverse"),
    [(FLAME_OHM, math.inf), (FLAME_OHM + DIRTY_ROD_OHM, math.inf), (10e6, 200e6)],
)
def test_half_wave_against_a_transient_with_a_diode(
    ohms: float, reverse: float, tmp_path: Path
) -> None:
    """The flame as a diode with its resistance, and beside it what leaks the other way."""
    leak = "" if math.isinf(reverse) else f"rr n 0 {reverse}\n"
    # What leaks both ways cancels; the diode's branch is the rest of the forward conductance.
    forward = ohms if math.isinf(reverse) else 1 / (1 / ohms - 1 / reverse)
    circuit = tmp_path / "flame.cir"
    circuit.write_text(
        f"* flame\nv1 n 0 sin(0 {ROD_V * math.sqrt(2)} 60)\nd1 n m flame\nrf m 0 {forward}\n{leak}"
        ".model flame d(is=1e-12 n=0.05)\n.control\ntran 20u 100m 0 20u\n"
        "meas tran mean avg i(v1) from=0 to=100m\n.endc\n.end\n",
        encoding="ascii",
    )
    done = subprocess.run(
        ["ngspice", "-b", str(circuit)], capture_output=True, text=True, check=False, timeout=60
    )
    found = re.search(r"^mean\s+=\s+(\S+)", done.stdout, re.MULTILINE)
    assert found, done.stdout + done.stderr
    assert half_wave_ua(ROD_V, ohms, reverse) == pytest.approx(-float(found[1]) * 1e6, rel=0.01)


# ---- by the leads --------------------------------------------------------------------------


def path(text: str, *, dirty: bool = False) -> FlamePath:
    drawn = diagram(text)
    return flame_path(Nets(drawn), drawn.parts["box"], dirty=dirty)


@pytest.mark.parametrize("text", [HEATER, ONE_ROD], ids=["two-rod", "one-rod"])
def test_a_good_flame_signal(text: str) -> None:
    found = path(text)
    assert (found.answer, found.reason) == (Answer.YES, "")
    assert found.microamps == pytest.approx(3.6, abs=0.01)


def test_a_dirty_rod_is_too_weak() -> None:
    found = path(changed(HEATER, ("burner: two-rod", "burner: two-rod, rod dirty")))
    assert found.answer is Answer.NO
    assert found.microamps == pytest.approx(0.72, abs=0.005)
    assert found == path(HEATER, dirty=True)


def test_a_dirty_rod_is_enough_for_a_control_that_asks_for_less() -> None:
    text = changed(HEATER, ("control: two-rod", "control: two-rod, threshold 0.5 uA"))
    assert path(text, dirty=True).answer is Answer.YES


@pytest.mark.parametrize(
    ("lead", "loose"),
    [
        ("wire box.SENSE to pilot.ROD", "loose 200 ohm"),
        ("wire box.GND to pilot.HOOD", "loose 2 Mohm"),
    ],
)
def test_a_loose_lead_weakens_it(lead: str, loose: str) -> None:
    found = path(changed(HEATER, (lead, f"{lead}: {loose}")))
    assert found.answer is Answer.YES
    assert found.microamps < path(HEATER).microamps


@pytest.mark.parametrize("lead", ["wire box.SENSE to pilot.ROD", "wire box.GND to pilot.HOOD"])
def test_a_lead_loose_enough_leaves_too_little(lead: str) -> None:
    found = path(changed(HEATER, (lead, f"{lead}: loose 40 Mohm")))
    assert found.answer is Answer.NO
    assert found.microamps == pytest.approx(0.72, abs=0.005)
    assert found.reason == "a flame signal of 0.7 uA, 1 uA are needed: a lead of it is loose"


def test_the_better_of_two_ways_counts() -> None:
    lead = "wire box.SENSE to pilot.ROD"
    text = changed(HEATER, (lead, f"{lead}: loose 40 Mohm\n{lead}"))
    assert path(text).microamps == path(HEATER).microamps


@pytest.mark.parametrize(
    ("old", "new", "answer", "reason"),
    [
        (
            "wire box.GND to pilot.HOOD\n",
            "",
            Answer.NO,
            "no path back for the flame signal: no lead joins pilot.HOOD and box.GND",
        ),
        (
            "wire box.GND to pilot.HOOD\n",
            "wire pilot.HOOD to earth\n",
            Answer.YES,
            "",
        ),
        (
            "wire box.SENSE to pilot.ROD\n",
            "",
            Answer.NO,
            "no flame rod is joined to box.SENSE",
        ),
        (
            "wire box.SENSE to pilot.ROD\n",
            "wire box.SPARK to pilot.ROD\n",
            Answer.NO,
            "no flame rod is joined to box.SENSE: pilot.ROD hangs on box.SPARK",
        ),
        (
            "to pilot.ROD",
            "to pilot.ROD: touches earth",
            Answer.NO,
            "box.SENSE is grounded: a grounded rod gives no signal",
        ),
        (
            "control: two-rod",
            "control: two-rod, sense-link fitted",
            Answer.NO,
            "the sense link ties rod and electrode together: no steady signal",
        ),
    ],
)  # fmt: skip
def test_why_a_flame_is_seen_or_not(old: str, new: str, answer: Answer, reason: str) -> None:
    found = path(changed(HEATER, (old, new)))
    assert (found.answer, found.reason) == (answer, reason)


def test_one_rod_needs_its_sense_link() -> None:
    found = path(changed(ONE_ROD, ("control: one-rod", "control: one-rod, sense-link cut")))
    assert found.reason == (
        "no flame rod is joined to box.SENSE: the sense link of box is cut, and one rod needs it"
    )
