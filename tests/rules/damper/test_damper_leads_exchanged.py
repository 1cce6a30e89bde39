"""The damper's leads in another order."""

from __future__ import annotations

from itertools import permutations

import pytest

from tests.rules.damper.units import HARNESS, crossed, unit
from tests.rules.raised import findings, mended, only, raised
from wirecheck.model.finding import Breaks

TERMINALS = ("HOT", "CALL", "PROVED", "COM")


def test_call_and_proved_exchanged_are_told_in_full() -> None:
    found = only(unit(crossed("HOT", "PROVED", "CALL", "COM")))
    assert (found.rule, found.fault) == ("damper-leads-exchanged", "call-proved")
    assert found.message == (
        "vent.CALL and vent.PROVED are exchanged: vent.CALL is on box.D-PROVED and vent.PROVED is "
        "on box.D-CALL; swap the two leads"
    )
    assert found.seen_at_unit == (
        "The damper's motor gets no call: it does not open, and the burner never lights."
    )
    assert found.breaks is Breaks.OPERATION


def test_hot_and_call_exchanged_light_the_burner_with_no_call() -> None:
    assert only(unit(crossed("CALL", "HOT", "PROVED", "COM"))).breaks is Breaks.SAFETY


@pytest.mark.parametrize("order", [o for o in permutations(TERMINALS) if o != TERMINALS])
def test_every_other_order_is_one_rule_s_matter(order: tuple[str, ...]) -> None:
    found = findings(unit(crossed(*order)))
    assert {f.rule for f in found} == {"damper-leads-exchanged"}
    moved = sum(a != b for a, b in zip(order, TERMINALS, strict=True))
    assert len(found) == (2 if moved == 4 and "-" in found[0].fault else 1)


def test_swapping_two_single_leads_mends_it() -> None:
    harness = (
        "wire box.D-HOT to vent.HOT\nwire box.D-CALL to vent.PROVED\n"
        "wire box.D-PROVED to vent.CALL\nwire box.D-COM to vent.COM\n"
    )
    assert raised(mended(unit(harness))) == []


def test_one_lead_astray_is_told_with_its_right_place() -> None:
    found = only(unit(HARNESS.replace("D-PROVED to PROVED", "D-CALL to PROVED")))
    assert found.fault == "astray"
    assert found.message == (
        "vent.PROVED lands on the wrong terminal of box: vent.PROVED is on box.D-CALL; move it to "
        "box.D-PROVED"
    )


@pytest.mark.parametrize(
    ("action", "breaks"),
    [("spring-shut", Breaks.WORKMANSHIP), ("power-both", Breaks.OPERATION)],
)
def test_hot_astray_matters_where_no_spring_shuts(action: str, breaks: Breaks) -> None:
    """A damper shut by a spring has nothing on its HOT; one shut by power stays open."""
    harness = HARNESS.replace("D-HOT to HOT", "D-CALL to HOT")
    text = unit(harness).replace("is vent-damper", f"is vent-damper: action {action}")
    assert only(text).breaks is breaks


def test_printed_labels_are_used() -> None:
    labels = 'labels vent: CALL as "2", PROVED as "3"\n'
    harness = labels + crossed("HOT", "3", "2", "COM")
    assert only(unit(harness)).message.startswith("vent.2 and vent.3 are exchanged")


SILENT = {
    "the order of the pins in the text": unit(
        "plug box to vent: D-COM to COM, D-PROVED to PROVED, D-CALL to CALL, D-HOT to HOT\n"
    ),
    "seen from the damper": unit(
        "plug vent to box: HOT to D-HOT, CALL to D-CALL, PROVED to D-PROVED, COM to D-COM\n"
    ),
    "the call taken from the call terminal": unit(
        "wire box.D-HOT to vent.HOT\nwire box.TH to vent.CALL\n"
        "wire vent.PROVED to box.D-PROVED\nwire box.COM to vent.COM\n"
    ),
}


@pytest.mark.parametrize("text", SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(text: str) -> None:
    assert raised(text) == []
