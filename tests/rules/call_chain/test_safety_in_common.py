"""Safeties in the common lead."""

from __future__ import annotations

import pytest

from tests.rules.call_chain.units import CALL, unit
from tests.rules.raised import only, raised
from wirecheck.model.finding import Breaks

CALL_WITHOUT = "wire xfmr.R to rollout to stat to box.TH\n"
IN_COMMON = "wire xfmr.C to limit to box.COM\n"


def test_earthed_at_both_ends_it_is_bypassed_already() -> None:
    found = only(unit(CALL_WITHOUT, common=IN_COMMON))
    assert (found.rule, found.fault, found.span.text) == ("safety-in-common", "bypassed", "limit")
    assert found.message == (
        "limit: in the common lead, between xfmr.C and box.COM, and bypassed already, since both "
        "ends reach earth; put it into the hot lead to the call, and run the common straight"
    )
    assert found.seen_at_unit == (
        "With limit open the current comes back through the burner ground, and the burner runs on "
        "through overheating."
    )
    assert found.breaks is Breaks.SAFETY
    assert "NFPA 79 9.1.4" in found.source


def test_not_earthed_it_works_until_the_first_earth_fault() -> None:
    """Nobody is told to earth that common: the earth would bypass the limit at once."""
    found = only(unit(CALL_WITHOUT, common=IN_COMMON, earth=""))
    assert found.rule == "safety-in-common"
    assert (found.fault, found.breaks) == ("earth-fault", Breaks.SAFETY)
    assert found.seen_at_unit.startswith("It works until the first earth fault")


def test_burner_metal_earthed_by_a_lead_makes_no_jumper_of_it() -> None:
    text = unit(CALL_WITHOUT, common=IN_COMMON, ground="wire pilot.HOOD to earth: green\n")
    assert only(text).rule == "safety-in-common"


def test_two_safeties_in_one_common_lead_are_one_mistake() -> None:
    common = "wire xfmr.C to limit to rollout to box.COM\n"
    found = only(unit("wire xfmr.R to stat to box.TH\n", common=common))
    assert found.message.startswith("limit and rollout: in the common lead")


def test_an_emergency_stop_there_is_a_safety_too() -> None:
    common = "wire xfmr.C to stop to box.COM\n"
    found = only(unit(common=common, parts="part stop is emergency-stop\n"))
    assert (found.rule, found.seen_at_unit[-25:]) == (
        "safety-in-common",
        " a pulled emergency stop.",
    )


def test_printed_labels_and_a_splice_change_nothing() -> None:
    text = unit(
        CALL_WITHOUT,
        common="wire box.COM to nut to limit to xfmr.C\n",
        parts='splice nut\nlabels box: COM as "24 V RETURN"\n',
    ).replace("wire box.COM", 'wire box."24 V RETURN"')
    assert "between xfmr.C and box.24 V RETURN" in only(text).message


def test_a_valve_without_a_control_is_looked_at_too() -> None:
    sketch = (
        "part xfmr is transformer\npart limit is high-limit\npart stat is thermostat\n"
        "part valve is gas-valve-2-wire\nwire xfmr.R to stat to valve to limit to xfmr.C\n"
        "wire xfmr.C to earth: green\n"
    )
    assert [rule for rule, _fault, _text in raised(sketch)] == ["safety-in-common"]


def test_the_coil_of_a_relay_in_the_call_is_looked_at_too() -> None:
    call = (
        "wire xfmr.R to stat to aid to limit to xfmr.C\n"
        "wire xfmr.R to rollout to aid.COM..NO to box.TH\n"
    )
    found = only(unit(call, parts="part aid is relay\n"))
    assert (found.rule, found.fault) == ("safety-in-common", "earth-fault")


SILENT = {
    "a fuse in the common is told by another rule": "wire xfmr.C to spare to box.COM\n",
    "the common over a strip": "wire xfmr.C to strip.1 to box.COM\n",
    "the common was not traced": "wire xfmr.C to unknown\n",
}


@pytest.mark.parametrize("common", SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(common: str) -> None:
    text = unit(common=common, parts="part spare is fuse\npart strip is terminal-strip\n")
    assert "safety-in-common" not in [rule for rule, _fault, _text in raised(text)]


def test_beside_a_straight_common_it_is_in_no_path_and_the_common_stays() -> None:
    found = only(unit(CALL_WITHOUT, common=IN_COMMON + "wire xfmr.C to box.COM\n"))
    assert (found.rule, found.edits) == ("safety-not-in-chain", ())


def test_in_the_earth_lead_it_is_in_no_path_and_the_earth_stays() -> None:
    found = only(unit(CALL_WITHOUT, earth="wire xfmr.C to limit to earth: green\n"))
    assert (found.rule, found.edits) == ("safety-not-in-chain", ())


def test_hot_and_common_exchanged_put_no_safety_into_the_common() -> None:
    text = unit(CALL.replace("xfmr.R", "xfmr.C"), common="wire xfmr.R to box.COM\n")
    assert "safety-in-common" not in [rule for rule, _fault, _text in raised(text)]
