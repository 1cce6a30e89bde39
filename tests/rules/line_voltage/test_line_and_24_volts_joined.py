"""Ways from the line to the 24 V circuit."""

from __future__ import annotations

import pytest

from tests.rules.circuits import FED, PUMP, changed, without
from tests.rules.raised import findings, mended, only, raised
from tests.rules.units import two_rod
from wirecheck.model.finding import Breaks

NAME = "line-and-24-volts-joined"

PUMPED = (
    FED
    + """\
part pump is circulator: 120 V
wire line.L1 to fan.COM: black
wire fan.NO to pump.L: black
wire line.N to pump.N: white
"""
)


def test_a_lead_from_the_line_is_told_in_full() -> None:
    found = only(two_rod(more="wire line.L1 to box.TH\n"))
    assert (found.rule, found.fault, found.breaks) == (NAME, "line-on-24", Breaks.SAFETY)
    assert found.message == (
        "the lead line.L1 to box.TH brings line voltage from line.L1 to box.TH of the 24 V "
        "circuit: take it off"
    )
    assert found.caution.startswith("Line voltage kills")


@pytest.mark.parametrize(
    ("lead", "when"),
    [
        ("wire line.L1 to xfmr.C\n", "as soon as power is on"),
        ("part disc is service-switch\nwire line.L1 to disc to xfmr.C\n", "once disc closes"),
    ],
)
def test_the_hot_line_on_an_earthed_common_is_a_dead_short(lead: str, when: str) -> None:
    found = only(two_rod(more=lead))
    assert (found.rule, found.fault, found.breaks) == (NAME, "line-on-earthed", Breaks.SAFETY)
    assert "xfmr.C of the 24 V circuit, which is earthed: a dead short of the line" in found.message
    assert found.seen_at_unit.startswith(f"The breaker trips {when}, or the thin lead to earth")


def test_a_part_whose_volts_were_not_typed_gets_a_hint() -> None:
    unit = PUMP + "part lit is lamp\nwire disc.2 to lit to line.N\n"
    found = only(unit)
    assert found.message.endswith("take it off, or type the volts of lit if it is made for them")
    assert raised(changed(unit, ("lit is lamp", "lit is lamp: 120 V"))) == []


def test_leads_exchanged_at_a_relay_are_one_finding() -> None:
    unit = changed(
        PUMPED, ("line.L1 to fan.COM", "line.L1 to fan.A"), ("stat.W to fan.A", "stat.W to fan.COM")
    )
    found = only(unit)
    assert (found.fault, found.breaks) == ("exchanged", Breaks.SAFETY)
    assert found.message == (
        "at fan a lead of the line is on fan.A and a lead of the 24 V circuit on fan.COM: exchange "
        "them"
    )
    assert raised(mended(unit)) == []


def test_leads_exchanged_at_the_transformer_are_one_finding() -> None:
    unit = changed(
        FED, ("line.L1 to xfmr.L1", "line.L1 to xfmr.R"), ("xfmr.R to stat.R", "xfmr.L1 to stat.R")
    )
    assert (only(unit).rule, only(unit).fault) == (NAME, "exchanged")


def test_a_motor_for_the_line_on_24_volts_does_not_run() -> None:
    unit = FED + "part pump is circulator\nwire fan.A to pump.L\nwire xfmr.C to pump.N\n"
    found = only(unit)
    assert (found.fault, found.breaks) == ("24-on-line", Breaks.OPERATION)
    assert found.seen_at_unit == "pump does not run on 24 V, and loads the transformer down."


ZONED = """\
part l is mains
part sr is switching-relay
part s is thermostat
part p is circulator
wire l.L1 to sr.L1
wire l.N to sr.N
wire l.G to earth
wire sr.R to s to sr.W
wire sr.R to sr.COM..NO to p to l.N
"""


def test_a_pump_on_a_contact_fed_from_24_volts_is_never_moved_onto_them() -> None:
    found = only(ZONED)
    assert (found.fault, found.breaks) == ("24-through-contact", Breaks.OPERATION)
    assert found.message == (
        "sr.COM is fed from sr.R, 24 V, and feeds p.L, made for line voltage: feed sr.COM from l.L1"
    )
    assert [edit.words for edit in found.edits] == [
        "take the lead from sr.COM off sr.R and land it on l.L1"
    ]
    assert findings(mended(ZONED)) == ()


def test_with_two_hot_legs_it_is_not_known_which_one_feeds_the_contact() -> None:
    both = ZONED.replace("mains", "mains: 120/240 V")
    assert not any(found.edits for found in findings(both))


LOUD = {
    "the neutral on the common": two_rod(more="wire line.N to box.COM\n"),
    "the neutral on the common, at splices": two_rod(
        more="splice nut\nwire line.N to nut\nwire xfmr.C to nut\n"
    ),
    "the limit fed from the line": changed(
        without(two_rod(), "wire line.L1 to xfmr.L1: black, 14 AWG"),
        ("xfmr.R to limit", "line.L1 to limit"),
    )
    + "wire line.L1 to xfmr.L1\n",
    "one throw of a relay contact on each circuit": PUMPED + "wire xfmr.R to fan.NC\n",
    "where the line is not drawn, by the primary": changed(
        without(FED, "part line is mains: 120 V", "wire line.L1 to xfmr.L1: black",
                "wire line.N to xfmr.N: white", "wire line.G to earth: green"),
        ("wire xfmr.R to stat.R", "wire xfmr.R to stat.R\nwire xfmr.L1 to stat.R"),
    ),
}  # fmt: skip


@pytest.mark.parametrize("unit", LOUD.values(), ids=LOUD)
def test_other_ways_are_found_once(unit: str) -> None:
    assert [found.rule for found in findings(unit)] == [NAME]


SILENT = {
    "a transformer stands between": two_rod(),
    "a relay's coil and its contact are apart": PUMPED,
    "both circuits may share the earth": PUMPED + "wire pump.N to earth\n",
    "two poles of a relay may be in two circuits": changed(
        PUMPED, ("is relay", "is relay: poles 2"),
        ("fan.COM", "fan.1.COM"), ("fan.NO", "fan.1.NO"))
    + "part lamp is lamp\nwire xfmr.R to fan.2.COM..2.NO to lamp to xfmr.C\n",
    "a relay for the line": PUMP + "part aid is relay: 120 V\nwire disc.2 to aid to line.N\n",
    "a thermostat for the line": changed(
        PUMP, ("part disc is service-switch", "part disc is thermostat: volts 120 V")
    ),
}  # fmt: skip


@pytest.mark.parametrize("unit", SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(unit: str) -> None:
    assert NAME not in [found.rule for found in findings(unit)]
