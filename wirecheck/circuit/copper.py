"""Copper leads: resistance by size, length and temperature, and the most they carry.

From the tables in ``shared/``.
"""

from __future__ import annotations

import tomllib
from collections.abc import Mapping
from functools import cache, lru_cache
from types import MappingProxyType
from typing import Any

from wirecheck.model.quantity import Quantity, conductor_area_mm2
from wirecheck.resources import shared_text


@cache
def _tables() -> dict[str, Any]:
    return tomllib.loads(shared_text("conductors.toml"))


@lru_cache(maxsize=1024)
def lead_ohms(size: Quantity | None, length_m: float, temperature_c: float = 20.0) -> float:
    """Resistance of one copper conductor in ohm.

    Sizes of the published tables by table (NFPA 70 chapter 9 table 8, IEC 60228), others from
    the cross-section and the resistivity of IEC 60028.  The DC value serves at 50 and 60 Hz:
    skin effect is negligible at these sizes (from memory).

    Args:
        size: in AWG or mm2; None for the usual control lead.
        length_m: of the conductor, one way.
        temperature_c: of the copper.
    """
    tables = _tables()
    if size is None:
        gauge = float(tables["default"]["gauge_awg"])
        size = Quantity(gauge, gauge, "AWG")
    table = tables["awg_75_c"] if size.dimension == "gauge" else tables["mm2_20_c"]
    listed = table["ohm_per_km"].get(f"{size.low:g}")
    if listed is not None and size.dimension == "gauge":
        warmer = 1 + table["temperature_coefficient_75_c"] * (temperature_c - 75)
        return float(listed * warmer * length_m / 1000)
    copper = tables["copper"]
    warmer = 1 + copper["temperature_coefficient_20_c"] * (temperature_c - 20)
    if listed is not None:
        return float(listed * warmer * length_m / 1000)
    area = conductor_area_mm2(size.low) if size.dimension == "gauge" else size.low
    return float(copper["resistivity_ohm_mm2_per_m"] * warmer * length_m / area)


@cache
def most_amps() -> Mapping[float, float]:
    """The most that a conductor is protected for, in amperes, by gauge (NFPA 70, 240.4(D))."""
    table = _tables()["awg_most_amps"]["amps"]
    return MappingProxyType({float(gauge): float(amps) for gauge, amps in table.items()})
