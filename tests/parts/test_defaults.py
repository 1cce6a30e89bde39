"""Values taken as given, and those that follow from the rest of the diagram."""

import pytest

from tests.parts.typed import given
from wirecheck.model.quantity import Quantity
from wirecheck.parts.defaults import derive, values_of
from wirecheck.parts.library import kind

CONTROL = kind("pilot-ignition-control")


def test_what_is_typed_wins() -> None:
    values = values_of(CONTROL, given(CONTROL, "trial 15 s", "lockout"))
    assert values["trial"] == Quantity(15, 15, "s")
    assert values["wait"] == Quantity(5, 5, "min")
    assert values["retry"] == "lockout"
    assert "pilot-contact" not in values


@pytest.mark.parametrize(("pilot", "link"), [("one-rod", "fitted"), ("two-rod", "cut")])
def test_the_control_is_taken_to_suit_the_burner_drawn(pilot: str, link: str) -> None:
    values = derive(CONTROL, {}, pilot, damper_drawn=False)
    assert (values["pilot"], values["sense-link"]) == (pilot, link)


def test_what_is_typed_for_the_control_is_not_bent_to_the_burner() -> None:
    typed = given(CONTROL, "two-rod", "damper-plug fitted")
    values = derive(CONTROL, typed, "one-rod", damper_drawn=True)
    assert (values["pilot"], values["sense-link"]) == ("two-rod", "cut")
    assert values["damper-plug"] == "fitted"


def test_the_plug_is_out_where_a_damper_is_drawn() -> None:
    assert derive(CONTROL, {}, None, damper_drawn=True)["damper-plug"] == "removed"
    assert values_of(CONTROL, {})["damper-plug"] == "fitted"


def test_a_burner_is_taken_to_suit_what_was_typed_for_the_control() -> None:
    burner = kind("pilot-burner")
    assert derive(burner, {}, "one-rod", damper_drawn=False)["pilot"] == "one-rod"
    assert values_of(burner, {})["pilot"] == "two-rod"


@pytest.mark.parametrize(
    ("typed", "system"),
    [
        ("120 V", "single-phase"),
        ("230 V", "single-phase"),
        ("208 V", "two-legs"),
        ("120/208 V", "two-legs"),
        ("240 V", "split-phase"),
        ("0.24 kV", "split-phase"),
    ],
)
def test_line_volts_imply_the_supply(typed: str, system: str) -> None:
    mains = kind("mains")
    assert values_of(mains, given(mains, typed))["system"] == system
    stated = given(mains, typed, "three-phase")
    assert values_of(mains, stated)["system"] == "three-phase"
