"""What a check says it could not judge for want of numbers."""

from __future__ import annotations

from tests.rules.units import two_rod
from wirecheck import check, load_text

_TYPED = two_rod().replace("stat is thermostat", "stat is thermostat: anticipator 0.75 A")
_TYPED = _TYPED.replace("is transformer", "is transformer: 40 VA")
_TYPED = _TYPED.replace("box.TH: red", "box.TH: red, 12 ft")


def unjudged(text: str) -> list[str]:
    """The reasons given for volts and currents."""
    items = check(load_text(text, "unit.wiring").diagram).not_checked
    return [item.reason for item in items if item.what == "volts and currents"]


def test_all_that_is_missing_stands_in_one_sentence() -> None:
    (reason,) = unjudged(two_rod())
    assert reason == (
        "not typed, and so not judged: the rating of xfmr, the length of any lead and the "
        "anticipator setting of stat"
    )


def test_with_all_numbers_typed_nothing_is_missing() -> None:
    assert unjudged(_TYPED) == []


def test_an_ignition_lead_is_no_length_of_the_24_volt_circuit() -> None:
    text = _TYPED.replace(", 12 ft", "").replace("ignition-cable", "ignition-cable, 24 in")
    assert unjudged(text) == ["not typed, and so not judged: the length of any lead"]


def test_the_length_of_a_cable_will_do() -> None:
    text = _TYPED.replace(", 12 ft", ", in wall") + "cable wall: 18/5, 12 ft\n"
    assert unjudged(text) == []


def test_a_digital_thermostat_has_no_anticipator() -> None:
    text = _TYPED.replace("anticipator 0.75 A", "battery")
    assert unjudged(text) == []


def test_many_are_counted() -> None:
    text = _TYPED + "".join(f"part f{n} is fuse\n" for n in range(5))
    (reason,) = unjudged(text)
    assert reason.endswith("the rating of f0, f1, f2 and 2 more")
