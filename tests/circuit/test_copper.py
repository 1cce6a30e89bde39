"""Lead resistance against published tables."""

from __future__ import annotations

import pytest

from wirecheck.circuit.copper import lead_ohms
from wirecheck.model.quantity import Quantity

FOOT_M = 0.3048


def awg(gauge: float) -> Quantity:
    return Quantity(gauge, gauge, "AWG")


def mm2(area: float) -> Quantity:
    return Quantity(area, area, "mm2")


@pytest.mark.parametrize(("gauge", "ohm_per_kft"), [(18, 7.77), (16, 4.89), (14, 3.07), (12, 1.93)])
def test_solid_copper_at_75_c(gauge: float, ohm_per_kft: float) -> None:
    """Ohm per 1000 ft, uncoated solid: NFPA 70 (NEC), chapter 9, table 8."""
    assert lead_ohms(awg(gauge), 1000 * FOOT_M, 75) == pytest.approx(ohm_per_kft, rel=5e-3)


@pytest.mark.parametrize(
    ("gauge", "loop_ohm"), [(18, 0.6385), (20, 1.0153), (22, 1.6143), (24, 2.5669)]
)
def test_a_loop_of_100_ft_at_20_c(gauge: float, loop_ohm: float) -> None:
    """Worked out from ASTM B258 diameters and the resistivity of IEC 60028 (from memory).

    18 AWG comes from the table of NFPA 70, brought from 75 C to 20 C by its own coefficient, and
    so differs in the third place.
    """
    assert lead_ohms(awg(gauge), 100 * FOOT_M) == pytest.approx(loop_ohm, rel=2e-3)


@pytest.mark.parametrize(
    ("gauge", "at_20_c", "at_75_c"),
    [
        (14, 8.286, 10.076), (15, 10.448, 12.706), (16, 13.174, 16.022), (17, 16.613, 20.204),
        (18, 20.948, 25.476), (19, 26.415, 32.125), (20, 33.309, 40.509), (21, 42.002, 51.081),
        (22, 52.963, 64.411), (23, 66.786, 81.221), (24, 84.215, 102.418),
    ],
)  # fmt: skip
def test_ohm_per_km_of_every_gauge(gauge: float, at_20_c: float, at_75_c: float) -> None:
    """Solid, of the conductivity of IEC 60028 (from memory) and the diameters of ASTM B258 (same).

    Gauges that NFPA 70 lists come from its table, which is rounded to three places.
    """
    assert lead_ohms(awg(gauge), 1000, 20) == pytest.approx(at_20_c, rel=3e-3)
    assert lead_ohms(awg(gauge), 1000, 75) == pytest.approx(at_75_c, rel=3e-3)


@pytest.mark.parametrize(
    ("gauge", "ohm_per_kft"),
    [(24, 26.15), (22, 16.45), (20, 10.34), (18, 6.505), (16, 4.091), (14, 2.573)],
)
def test_an_independent_list_of_annealed_copper(gauge: float, ohm_per_kft: float) -> None:
    """Its values are those at 25 C, which it does not state (a table for electricians)."""
    assert lead_ohms(awg(gauge), 1000 * FOOT_M, 25) == pytest.approx(ohm_per_kft, rel=5e-3)


@pytest.mark.parametrize(
    ("area", "ohm_per_km"),
    [(0.5, 36.0), (0.75, 24.5), (1.0, 18.1), (1.5, 12.1), (2.5, 7.41), (4, 4.61), (6, 3.08)],
)
def test_metric_sizes_at_20_c(area: float, ohm_per_km: float) -> None:
    """Highest ohm per km of classes 1 and 2, plain copper: IEC 60228."""
    assert lead_ohms(mm2(area), 1000) == pytest.approx(ohm_per_km)


def test_warm_copper_against_cold() -> None:
    """R(75 C) / R(20 C) = 1.2162, from 0.00393 per kelvin (IEC 60028, from memory)."""
    assert lead_ohms(awg(22), 1, 75) / lead_ohms(awg(22), 1) == pytest.approx(1.2162, abs=1e-4)
    assert lead_ohms(mm2(1.0), 1, 75) / lead_ohms(mm2(1.0), 1) == pytest.approx(1.2162, abs=1e-4)


def test_no_size_is_the_usual_control_lead() -> None:
    """18 AWG serves 24 V controls (common practice, no source)."""
    assert lead_ohms(None, 12.5) == lead_ohms(awg(18), 12.5)
