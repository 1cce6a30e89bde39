"""Numbers with units, as people type them."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from wirecheck.model.quantity import UNITS, Quantity
from wirecheck.parts.amounts import amount_of, decimal_of, parse_quantity


@pytest.mark.parametrize(
    ("text", "quantity"),
    [
        ("24 V", Quantity(24, 24, "V")),
        ("24v", Quantity(24, 24, "V")),
        (".5 a", Quantity(0.5, 0.5, "A")),
        ("5. s", Quantity(5, 5, "s")),
        ("10-30 s", Quantity(10, 30, "s")),
        ("10 - 30 s", Quantity(10, 30, "s")),
        ("10\N{EN DASH}30 s", Quantity(10, 30, "s")),
        ("1 \N{MICRO SIGN}A", Quantity(1, 1, "uA")),
        ("1 \N{GREEK SMALL LETTER MU}A", Quantity(1, 1, "uA")),
        ("10 M\N{OHM SIGN}", Quantity(10, 10, "Mohm")),
        ("10 k\N{GREEK CAPITAL LETTER OMEGA}", Quantity(10, 10, "kohm")),
        ("200\N{DEGREE SIGN}F", Quantity(200, 200, "F")),
        ("95 \N{DEGREE CELSIUS}", Quantity(95, 95, "C")),
        ("0.75 mm\N{SUPERSCRIPT TWO}", Quantity(0.75, 0.75, "mm2")),
        ("0.75 MM2", Quantity(0.75, 0.75, "mm2")),
        ("85%", Quantity(85, 85, "%")),
        ("24\N{NO-BREAK SPACE}V", Quantity(24, 24, "V")),
    ],
)
def test_a_quantity_is_read(text: str, quantity: Quantity) -> None:
    assert parse_quantity(text) == quantity


@pytest.mark.parametrize(
    "text", ["", "V", "24", "24 volts", "1/2 in", "30-10 s", "1,5 V", "-5 V", "1e3 V", "24 V x"]
)
def test_anything_else_is_no_quantity(text: str) -> None:
    assert parse_quantity(text) is None


@given(st.sampled_from(sorted(UNITS)), st.integers(0, 10**6), st.sampled_from(["", " ", "  "]))
def test_every_unit_is_read_in_any_case(unit: str, number: int, blank: str) -> None:
    symbol = UNITS[unit].symbol
    for spelled in (unit, unit.upper(), symbol):
        assert parse_quantity(f"{number}{blank}{spelled}") == Quantity(number, number, symbol)


@given(st.text(max_size=30))
def test_any_text_is_read_or_refused(text: str) -> None:
    amount = amount_of(text)
    assert amount is None or amount.numbers
    decimal_of(text)


@pytest.mark.parametrize(
    ("text", "decimal"),
    [
        ("1/2 in", "0.5 in"),
        ("1 1/2 in", "1.5 in"),
        ("1-1/2in", "1.5 in"),
        ("\N{VULGAR FRACTION ONE HALF} in", "0.5 in"),
        ("1\N{VULGAR FRACTION THREE QUARTERS} ft", "1.75 ft"),
        ("1/0 in", None),
        ("0.5 in", None),
    ],
)
def test_a_fraction_has_a_decimal(text: str, decimal: str | None) -> None:
    assert decimal_of(text) == decimal
