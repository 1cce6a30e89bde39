"""One valve between two ignition controls."""

from __future__ import annotations

import pytest

from tests.rules.raised import findings, raised
from tests.rules.units import beside, direct, two_rod
from wirecheck.model.finding import Breaks


def test_two_outputs_on_one_operator_are_told_in_full() -> None:
    unit = two_rod(
        more=beside(valve="plug box2 to valve2: PV, VC to C\nwire box2.MV to valve.MV\n")
    )
    found = next(found for found in findings(unit) if found.rule == "valve-on-two-controls")
    assert found.span.text == "valve.MV"
    assert found.message == (
        "valve is fed by box and box2 at once: one valve takes its operators' leads from one "
        "control; take the others off"
    )
    assert found.seen_at_unit == (
        "The valve is open while either control wants gas; a flame lost at one burner does not "
        "shut it."
    )
    assert found.breaks is Breaks.SAFETY


def test_a_common_on_the_output_of_another_control_counts_too() -> None:
    unit = two_rod(
        valve="plug box to valve: PV, MV\nwire box2.MV to valve.C\n",
        more=beside(valve="plug box2 to valve2: PV, VC to C\n"),
    )
    assert ("valve-on-two-controls", "two-controls", "valve.C") in raised(unit)


SILENT = {
    "a valve for each": two_rod(more=beside()),
    "two valves on one control": direct(
        more="part second is gas-valve-2-wire\nwire box.V to second to box.VC\n"
    ),
    "pilot and main in two valves of one control": two_rod(
        valve_is="gas-valve-2-wire",
        valve="wire box.PV to valve.1\nwire box.VC to valve.C\n",
        more="part main is gas-valve-2-wire\nwire box.MV to main.1\nwire box.VC to main.C\n",
    ),
    "the commons of two units joined": two_rod(more=beside() + "wire valve.C to valve2.C\n"),
}


@pytest.mark.parametrize("unit", SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(unit: str) -> None:
    found = [rule for rule, _fault, _text in raised(unit)]
    assert [rule for rule in found if rule != "lead-does-nothing"] == []
