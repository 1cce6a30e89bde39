"""More load than the transformer is rated for."""

from __future__ import annotations

import pytest

from tests.rules.raised import only, raised

NAME = "transformer-overloaded"


def zones(*takes: str, xfmr: str = "40 VA", more: str = "") -> str:
    """Zone valves, each on a thermostat of its own, all on one transformer."""
    lines = [f"part xfmr is transformer: {xfmr}" if xfmr else "part xfmr is transformer"]
    for number, amount in enumerate(takes, 1):
        lines += [
            f"part stat{number} is thermostat",
            f"part zone{number} is zone-valve: {amount}",
            f"wire xfmr.R to stat{number} to zone{number} to xfmr.C",
        ]
    return "\n".join([*lines, "wire xfmr.C to earth: green", more])


def test_the_sum_is_told_with_every_load() -> None:
    found = only(zones("0.9 A", "0.5 A", "0.5 A"))
    assert (found.rule, found.fault, found.span.text) == (NAME, "in-run", "40 VA")
    assert found.message == (
        "xfmr has to give 46 VA with everything on (zone1 0.9 A, zone2 0.5 A and zone3 0.5 A) and "
        "is rated 40 VA: put in a transformer of at least 46 VA, or feed some of it from another"
    )


@pytest.mark.parametrize(
    "text",
    [
        zones("0.9 A", "0.5 A", xfmr="40 VA"),  # 33.6 VA
        zones("20 VA", "20 VA"),  # exactly what it is rated for
        zones("20 VA", "20.3 VA"),  # a rounding
        zones("0.9 A", "0.9 A", "0.9 A", xfmr="75 VA"),
        zones("0.9 A", "0.9 A", "0.9 A", xfmr=""),  # nobody typed what it is rated for
        zones("20 VA", "15 VA", more="part spare is relay: 20 VA\n"),  # hangs on nothing
    ],
)
def test_what_it_is_rated_for_it_may_give(text: str) -> None:
    assert NAME not in [rule for rule, _fault, _text in raised(text)]


def test_heating_and_cooling_are_never_on_together() -> None:
    """30 VA for heating, 35 VA for cooling: 40 VA do."""
    text = """\
part xfmr is transformer: 40 VA
part stat is thermostat
part zone is zone-valve: 30 VA
part ac is contactor: {}
wire xfmr.R to stat to zone to xfmr.C
wire stat.Y to ac to xfmr.C
wire xfmr.C to earth: green
"""
    assert raised(text.format("35 VA")) == []
    assert raised(text.format("45 VA")) == [(NAME, "in-cooling", "40 VA")]


def test_relays_that_relieve_each_other_are_not_added_up() -> None:
    """A resting contact feeds one load, the working contact the other."""
    text = """\
part xfmr is transformer: 40 VA
part stat is thermostat
part k is relay: 4 VA
part summer is load: 30 VA
part winter is load: 30 VA
wire xfmr.R to stat to k to xfmr.C
wire xfmr.R to k.COM
wire k.NO to winter.1
wire k.NC to summer.1
wire winter.2 to xfmr.C
wire summer.2 to xfmr.C
wire xfmr.C to earth: green
"""
    assert raised(text) == []


def test_each_transformer_has_its_own_load() -> None:
    """Two with one earthed common between them: their loads are not added up."""
    text = zones("30 VA", more=zones("30 VA").replace("xfmr", "other").replace("1", "2"))
    assert raised(text) == []


def test_a_burner_with_all_that_hangs_on_it() -> None:
    """Control, both operators, damper and a relay on 20 VA: 27 VA in run."""
    text = """\
part xfmr is transformer: 20 VA
part stat is thermostat
part box is pilot-ignition-control: two-rod
part vent is vent-damper: 5 VA
part valve is gas-valve-3-wire: pilot 0.2 A, main 0.4 A
part pilot is pilot-burner: two-rod
part fan is relay: 4 VA
wire xfmr.R to stat to box.TH
wire xfmr.R to box.24V
wire stat.W to fan to xfmr.C
wire xfmr.C to box.COM
wire xfmr.C to earth: green
plug box to vent: D-HOT to HOT, D-CALL to CALL, D-PROVED to PROVED, D-COM to COM
plug box to valve: PV, MV, VC to C
wire box.SPARK to pilot.SPARK: ignition-cable
wire box.SENSE to pilot.ROD
wire box.GND to pilot.HOOD: green
"""
    found = only(text)
    assert (found.rule, found.fault) == (NAME, "in-run")
    assert "27 VA" in found.message
    assert raised(text.replace("20 VA", "40 VA")) == []


def test_a_load_for_the_line_takes_little_on_24_volts_and_is_told_as_what_it_is() -> None:
    text = """\
part line is mains
part xfmr is transformer: 40 VA
part stat is thermostat
part heat is load: 120 V, 0.5 A
wire line.L1 to xfmr.L1
wire line.N to xfmr.N
wire line.G to earth
wire xfmr.R to stat to heat to xfmr.C
wire xfmr.C to earth: green
"""
    assert NAME not in [rule for rule, _fault, _text in raised(text)]
    assert len(raised(text)) == 1
