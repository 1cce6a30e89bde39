"""Units and gauges against the published definitions."""

from __future__ import annotations

import math

import pytest

from wirecheck.model.quantity import UNITS, Quantity, conductor_area_mm2

INCH_MM = 25.4  # international yard and pound agreement of 1959, exact; from memory


@pytest.mark.parametrize(
    ("quantity", "base"),
    [
        (Quantity(24, 24, "V"), 24.0),
        (Quantity(750, 750, "mV"), 0.75),
        (Quantity(20, 20, "kV"), 20_000.0),
        (Quantity(3, 3, "uA"), 3e-6),
        (Quantity(5, 5, "mA"), 5e-3),
        (Quantity(40, 40, "VA"), 40.0),
        (Quantity(2, 2, "kohm"), 2_000.0),
        (Quantity(10, 10, "Mohm"), 10e6),
        (Quantity(1, 1, "in"), INCH_MM / 1000),
        (Quantity(1, 1, "ft"), 12 * INCH_MM / 1000),
        (Quantity(3, 3, "ft"), 0.9144),  # a yard: 0.9144 m, exact
        (Quantity(5, 5, "mm"), 0.005),
        (Quantity(5, 5, "min"), 300.0),
        (Quantity(32, 32, "F"), 0.0),  # ice melts at 32 F, water boils at 212 F
        (Quantity(212, 212, "F"), 100.0),
        (Quantity(-40, -40, "F"), -40.0),
        (Quantity(60, 60, "C"), 60.0),
    ],
)
def test_values_in_the_base_unit(quantity: Quantity, base: float) -> None:
    assert quantity.low_base == pytest.approx(base, rel=1e-12, abs=1e-12)
    assert quantity.high_base == quantity.low_base


def test_a_range_has_two_ends() -> None:
    quantity = Quantity(1, 5, "min")
    assert (quantity.low_base, quantity.high_base, quantity.dimension) == (60.0, 300.0, "time")


@pytest.mark.parametrize(
    ("quantity", "text"),
    [
        (Quantity(24, 24, "V"), "24 V"),
        (Quantity(10, 30, "s"), "10-30 s"),
        (Quantity(0.75, 0.75, "mm2"), "0.75 mm2"),
    ],
)
def test_it_is_written_as_a_technician_writes_it(quantity: Quantity, text: str) -> None:
    assert str(quantity) == text


def test_units_are_found_by_their_symbol_in_lower_case() -> None:
    assert all(UNITS[unit.symbol.casefold()] is unit for unit in UNITS.values())


@pytest.mark.parametrize(
    ("gauge", "diameter_in"),
    [(-3, 0.46), (36, 0.005)],  # gauges 0000 and 36 are fixed: ASTM B258, from memory
)
def test_the_two_gauges_that_define_the_others(gauge: float, diameter_in: float) -> None:
    diameter_mm = math.sqrt(conductor_area_mm2(gauge) * 4 / math.pi)
    assert diameter_mm == pytest.approx(diameter_in * INCH_MM, rel=1e-9)


def test_thirty_nine_equal_steps_lie_between_them() -> None:
    """One gauge thinner is an area 92^(2/39) = 1.261 times less (ASTM B258, from memory)."""
    for gauge in range(-3, 36):
        ratio = conductor_area_mm2(gauge) / conductor_area_mm2(gauge + 1)
        assert ratio == pytest.approx(92 ** (2 / 39))


@pytest.mark.parametrize(
    ("gauge", "area_mm2"),
    # NFPA 70, chapter 9, table 8 (read in a copy); rounded to three figures there.
    [(18, 0.823), (16, 1.31), (14, 2.08), (12, 3.31)],
)
def test_areas_of_the_usual_gauges(gauge: float, area_mm2: float) -> None:
    assert conductor_area_mm2(gauge) == pytest.approx(area_mm2, rel=3e-3)
