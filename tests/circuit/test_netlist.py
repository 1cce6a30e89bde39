"""What comes out of the circuits that diagrams make: the numbers a technician knows.

Where a figure is nominal (16 V and 8 V in series, 12 V of a wrong tap), the transformer has no
rise from full load to none, so that the figure itself comes out.
"""

from __future__ import annotations

import math

import pytest

from tests.circuit.drawn import UNIT, drawn
from wirecheck.circuit.netlist import netlist
from wirecheck.circuit.stages import Stage

STIFF = UNIT.replace("rating 40 VA", "rating 40 VA, regulation 0 %")
#: Coils of 120 and 60 ohm, as 0.2 A and 0.4 A at 24 V are.
_ORDERS = {
    # leads from box.PV, box.MV and box.VC to these; volts of pilot and main in trial, then in run
    "PV MV C": ((24, 0), (24, 24)),
    "MV PV C": ((0, 24), (24, 24)),
    "C MV PV": ((24, 0), (24, 0)),
    "PV C MV": ((16, 8), (0, 24)),
    "MV C PV": ((16, 8), (24, 0)),
    "C PV MV": ((0, 24), (0, 24)),
}


@pytest.mark.parametrize("order", _ORDERS)
def test_the_volts_of_both_coils_in_every_order_of_the_valve_leads(order: str) -> None:
    """Right, and the five wrong ones: 16 V and 8 V where the coils are in series."""
    pv, mv, vc = order.split()
    unit = drawn(f"{STIFF}plug box to valve: PV to {pv}, MV to {mv}, VC to {vc}\n")
    for stage, (pilot, main) in zip((Stage.TRIAL, Stage.RUN), _ORDERS[order], strict=True):
        case = unit.case(stage)
        assert unit.volts(case, "valve.PV", "valve.C") == pytest.approx(pilot, abs=0.3)
        assert unit.volts(case, "valve.MV", "valve.C") == pytest.approx(main, abs=0.3)


@pytest.mark.parametrize(
    ("line", "primary", "volts"),
    [(120, 240, 12.0), (208, 240, 20.8), (240, 208, 27.7), (240, 120, 48.0), (120, 120, 24.0)],
)
def test_a_wrong_primary_tap(line: int, primary: int, volts: float) -> None:
    other = "N" if line == 120 else "L2"
    unit = drawn(
        f"part line is mains: {line} V\n"
        f"part xfmr is transformer: primary {primary} V, secondary 24 V, regulation 0 %\n"
        f"wire line.L1 to xfmr.L1\nwire line.{other} to xfmr.N\nwire xfmr.C to earth\n"
    )
    assert unit.volts(unit.case(), "xfmr.R", "xfmr.C") == pytest.approx(volts, abs=0.1)


def test_the_other_taps_of_a_fed_primary_are_live() -> None:
    unit = drawn(
        "part line is mains: 120 V\n"
        "part xfmr is transformer: primary 120/208/240 V\n"
        "wire line.L1 to xfmr.120V\nwire line.N to xfmr.N\n"
    )
    assert unit.volts(unit.case(), "xfmr.240V", "xfmr.N") == pytest.approx(240, rel=0.01)


def test_a_transformer_gives_its_rated_volts_at_its_rated_load_and_more_with_none() -> None:
    unit = drawn(
        "part xfmr is transformer: rating 40 VA, regulation 10 %\npart a is load: 40 VA\n"
        "part s is service-switch\nwire xfmr.R to s to a to xfmr.C\n"
    )
    loaded, unloaded = unit.case(), unit.case(closed={"s": False})
    assert unit.volts(loaded, "a.1", "a.2") == pytest.approx(24.0, rel=5e-3)
    assert unit.volts(unloaded, "xfmr.R", "xfmr.C") == pytest.approx(26.4, rel=5e-3)


def test_call_and_common_exchanged_is_a_short_of_some_twelve_amperes() -> None:
    """Through thermostat, control, burner ground and hood to earth; with no bond, 0.1 A."""
    unit = drawn(
        UNIT.replace("stat to box.TH", "stat to box.COM").replace("C to box.COM", "C to box.TH")
    )
    assert unit.secondary_amps(unit.case()) == pytest.approx(11.5, abs=1.0)
    assert unit.secondary_amps(unit.case(Stage.IDLE)) < 0.1
    assert unit.secondary_amps(unit.case(bonds=False)) < 0.5


def test_a_bolted_short_is_finite() -> None:
    unit = drawn("part xfmr is transformer\njumper xfmr.R to xfmr.C\n")
    assert unit.secondary_amps(unit.case()) == pytest.approx(12.0, abs=0.1)
    line = drawn("part line is mains\npart s is service-switch\nwire line.L1 to s to line.N\n")
    assert line.volts(line.case(), "line.L1", "line.N") / 1e-3 == pytest.approx(1190, abs=5)


_TWO = """\
part line is mains: 120 V
part one is transformer: regulation 0 %
part two is transformer: regulation 0 %
wire line.L1 to one.L1
wire line.N to one.N
wire one.C to two.C to earth
"""
_IN_PHASE = _TWO + "wire line.L1 to two.L1\nwire line.N to two.N\n"
_AGAINST = _TWO + "wire line.L1 to two.N\nwire line.N to two.L1\n"


def test_two_secondaries_out_of_phase_read_48_volts_hot_to_hot() -> None:
    """In phase 0 V: reading R to R before joining them tells."""
    same, other = drawn(_IN_PHASE), drawn(_AGAINST)
    assert same.volts(same.case(), "one.R", "two.R") == pytest.approx(0.0, abs=1e-6)
    assert other.volts(other.case(), "one.R", "two.R") == pytest.approx(48.0, abs=0.02)


def test_out_of_phase_and_joined_each_is_the_others_short() -> None:
    rated = _AGAINST.replace(": regulation 0 %", ": rating 40 VA")
    both = drawn(rated + "jumper one.R to two.R\n")
    assert both.secondary_amps(both.case(), "one") == pytest.approx(12.0, abs=0.2)
    assert both.secondary_amps(both.case(), "two") == pytest.approx(12.0, abs=0.2)


def test_a_back_fed_primary_is_live_with_its_switch_off() -> None:
    text = _TWO.replace(": regulation 0 %", "") + (
        "part off is service-switch\nwire line.L1 to off to two.L1\nwire line.N to two.N\n"
        "jumper one.R to two.R\n"
    )
    both = drawn(text)
    assert both.volts(both.case(closed={"off": False}), "two.L1", "two.N") > 100


def test_two_legs_of_each_system() -> None:
    """240 V split-phase: 120 to neutral, legs opposed; 208 V: 120 to neutral, legs 120 degrees."""
    for volts, system in ((240, "split-phase"), (208, "two-legs"), (208, "three-phase")):
        unit = drawn(f"part line is mains: {volts} V, {system}\nwire line.G to earth\n")
        case = unit.case()
        assert unit.volts(case, "line.L1", "line.L2") == pytest.approx(volts, rel=1e-3)
        assert unit.volts(case, "line.L1", "line.N") == pytest.approx(120, rel=2e-3)
        assert unit.volts(case, "line.L2", "earth") == pytest.approx(120, rel=2e-3)
    assert unit.volts(case, "line.L3", "line.L1") == pytest.approx(208, rel=1e-3)


@pytest.mark.parametrize(
    ("takes", "ohms"),
    [
        ("24 V, 0.5 A", 48.0),
        ("24 V, 12 VA", 48.0),
        ("24 V, 12 W", 48.0),
        ("24 V, 48 ohm", 48.0),
    ],
)
def test_a_load_by_amperes_volt_amperes_watts_or_ohms(takes: str, ohms: float) -> None:
    unit = drawn(f"part xfmr is transformer\npart a is load: {takes}\nwire xfmr.R to a to xfmr.C\n")
    (branch,) = (unit.net.circuit.branches[number] for number in unit.net.loads.values())
    assert branch.ohms == pytest.approx(ohms)


def test_a_motor_takes_its_watts_at_its_power_factor() -> None:
    """96 W at 0.7 and 120 V: 1.143 A, lagging by 45.6 degrees."""
    unit = drawn("part line is mains\npart a is circulator: 96 W\nwire line.L1 to a to line.N\n")
    (branch,) = (unit.net.circuit.branches[number] for number in unit.net.loads.values())
    ohms = complex(branch.ohms)
    assert 120 / abs(ohms) == pytest.approx(96 / 0.7 / 120)
    assert math.degrees(math.atan2(ohms.imag, ohms.real)) == pytest.approx(45.57, abs=0.01)


_LONG = "part xfmr is transformer: regulation 0 %\npart a is load: 24 V, 1 A\n"


def _drop(text: str, temperature_c: float = 20.0) -> float:
    unit = drawn(_LONG + text, temperature_c=temperature_c)
    case = unit.case()
    full = unit.volts(case, "xfmr.R", "xfmr.C")
    return (full - unit.volts(case, "a.1", "a.2")) * 24 / unit.volts(case, "a.1", "a.2")


@pytest.mark.parametrize(
    ("leads", "drop"),
    [
        # 100 ft of 18 AWG, there and back over 50 ft, drop 0.638 V at 1 A and 20 C
        ("wire xfmr.R to a.1: 18 AWG, 50 ft\nwire a.2 to xfmr.C: 18 AWG, 50 ft\n", 0.638),
        ("wire xfmr.R to a to xfmr.C: 18 AWG, 100 ft\n", 0.638),
        ("wire xfmr.R to a to xfmr.C: 22 AWG, 100 ft\n", 1.614),
        (
            "cable c: 18/2, 50 ft\nwire xfmr.R to a.1: red, in c\nwire a.2 to xfmr.C: in c\n",
            0.638,
        ),
        ("wire xfmr.R to a.1: 0.75 mm2, 10 m\nwire a.2 to xfmr.C: 0.75 mm2, 10 m\n", 0.49),
        ("wire xfmr.R to a.1: loose 2 ohm\nwire a.2 to xfmr.C\n", 2.0),
        ("splice s: loose 2 ohm\nwire xfmr.R to s\nwire s to a.1\nwire a.2 to xfmr.C\n", 2.0),
        ("wire xfmr.R to a to xfmr.C: 18 AWG\n", 0.0),
    ],
)
def test_the_drop_in_the_leads_at_one_ampere(leads: str, drop: float) -> None:
    assert _drop(leads) == pytest.approx(drop, abs=0.004)


def test_a_warm_lead_drops_more() -> None:
    """By 21.6 % from 20 C to 75 C (0.00393 per kelvin at 20 C, IEC 60028)."""
    leads = "wire xfmr.R to a to xfmr.C: 22 AWG, 100 ft\n"
    assert _drop(leads, 75) / _drop(leads) == pytest.approx(1.216, abs=0.002)


def test_of_two_leads_side_by_side_the_one_without_length_carries_the_current() -> None:
    assert _drop("wire xfmr.R to a to xfmr.C\nwire xfmr.R to a.1: 22 AWG, 100 ft\n") == (
        pytest.approx(0.0, abs=1e-6)
    )


def test_a_thermopile_gives_less_under_load() -> None:
    """750 mV with nothing connected; 0.5 V into the 3 ohm of its valve."""
    unit = drawn(
        "part gen is thermopile\npart v is millivolt-gas-valve\npart stat is thermostat: 750 mV\n"
        "wire gen.PLUS to v.GEN\nwire gen.MINUS to v.C\nwire v.GEN to stat to v.CALL\n"
    )
    assert unit.volts(unit.case(Stage.IDLE), "v.GEN", "v.C") == pytest.approx(0.75)
    assert unit.volts(unit.case(), "v.CALL", "v.C") == pytest.approx(0.5, abs=0.01)


def test_what_was_found_wrong_is_in_the_circuit_or_not_as_asked() -> None:
    unit = drawn(f"{UNIT.replace('main 0.4 A', 'main 0.4 A, main-coil open')}")
    assert len(unit.net.loads) == len(netlist(unit.nets, as_found=False).loads) - 1


def test_transformers_of_a_sketch_on_the_same_leads_are_fed_once() -> None:
    """Fed twice, one primary crossed would be a short of two supplies that nobody drew."""
    both = drawn(
        "part one is transformer\npart two is transformer\n"
        "wire one.L1 to two.N\nwire one.N to two.L1\nwire one.C to two.C\n"
    )
    case = both.case()
    assert both.volts(case, "one.L1", "one.N") == pytest.approx(120, rel=1e-3)
    assert both.volts(case, "one.R", "two.R") == pytest.approx(2 * 26.4, rel=1e-2)


@pytest.mark.parametrize("amount", ["0.000001", "999999999"])
@pytest.mark.parametrize("what", ["primary {} V", "secondary {} V", "{} VA", "regulation {} %"])
def test_ratings_that_nothing_has_are_solved_like_any(what: str, amount: str) -> None:
    unit = drawn(
        f"part line is mains\npart xfmr is transformer: {what.format(amount)}\n"
        "part a is load: 24 V, 1 A\nwire line.L1 to xfmr.L1\nwire line.N to xfmr.N\n"
        "wire xfmr.R to a to xfmr.C\n"
    )
    assert unit.volts(unit.case(), "a.1", "a.2") >= 0.0


@pytest.mark.parametrize("takes", ["0.000001 V, 1 A", "999999999 V, 1 A", "24 V, 999999999 A"])
def test_loads_that_nothing_is_are_solved_like_any(takes: str) -> None:
    unit = drawn(f"part xfmr is transformer\npart a is load: {takes}\nwire xfmr.R to a to xfmr.C\n")
    assert 0.0 <= unit.volts(unit.case(), "a.1", "a.2") < 27
