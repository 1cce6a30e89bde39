"""The cross-section of a gauge, against published tables."""

import pytest

from wirecheck.model.quantity import conductor_area_mm2


@pytest.mark.parametrize(("awg", "area_mm2"), [(18, 0.823), (16, 1.31), (14, 2.08), (12, 3.31)])
def test_area_agrees_with_the_code_table(awg: int, area_mm2: float) -> None:
    """NFPA 70, chapter 9, table 8, which gives three figures."""
    assert conductor_area_mm2(awg) == pytest.approx(area_mm2, rel=0.003)


@pytest.mark.parametrize(("awg", "diameter_in"), [(-3, 0.46), (36, 0.005)], ids=["4/0", "36"])
def test_area_meets_the_fixed_points(awg: int, diameter_in: float) -> None:
    """ASTM B258, from memory: 0.4600 in for 0000 and 0.0050 in for 36."""
    area_mm2 = 3.141592653589793 / 4 * (diameter_in * 25.4) ** 2
    assert conductor_area_mm2(awg) == pytest.approx(area_mm2, rel=1e-9)


def test_ten_gauges_are_about_ten_times_the_area() -> None:
    """ASTM B258, from memory: a step is 92^(1/39) in diameter, 1.261 in area."""
    assert conductor_area_mm2(14) / conductor_area_mm2(15) == pytest.approx(1.261, abs=5e-4)
    assert conductor_area_mm2(14) / conductor_area_mm2(24) == pytest.approx(10, rel=0.02)
