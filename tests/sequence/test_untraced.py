"""Leads that were not traced: a run with them open proves no failure."""

from __future__ import annotations

import pytest

from tests.sequence.heater import HEATER, changed, outcome, ran, sentence, without

TO_UNKNOWN = (" to box.TH", "\nwire stat.W to unknown\nwire unknown to box.TH")


def test_an_untraced_call_lead_is_no_open_one() -> None:
    told = sentence(ran(changed(HEATER, TO_UNKNOWN)))
    assert told.startswith(
        "cannot say: the leads at stat.W and box.TH are not traced; taken as open, nothing happens"
    )


@pytest.mark.parametrize(
    "text",
    [
        changed(HEATER, ("box.GND to pilot.HOOD", "box.GND to unknown")),
        changed(HEATER, ("box.SENSE to pilot.ROD", "unknown to pilot.ROD")),
        changed(HEATER, ("PV, MV, VC to C", "MV, VC to C")) + "wire valve.PV to unknown\n",
    ],
)
def test_nor_is_any_other_lead_of_the_unit(text: str) -> None:
    assert outcome(ran(text)) == "cannot-say"


def test_an_untraced_lead_of_a_fan_is_no_excuse() -> None:
    text = without(HEATER, "wire box.GND to pilot.HOOD") + "wire stat.G to unknown\n"
    assert outcome(ran(text)) == "not-proved"


def test_a_unit_that_runs_all_the_same_runs() -> None:
    assert outcome(ran(HEATER + "wire box.COM to unknown\n")) == "runs"
