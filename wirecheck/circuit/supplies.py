"""What stands behind the terminals of a supply: its volts with no load, and its impedance."""

from __future__ import annotations

import math
from typing import NamedTuple

from wirecheck.circuit.ratings import highest
from wirecheck.model.diagram import Part
from wirecheck.model.kind import SourceSpec

#: Behind the terminals of the line, in ohm: some thousand amperes into a bolted short (common
#: practice, no source).
MAINS_OHM = 0.1
#: The bond of neutral and ground at the service, in ohm (common practice, no source).
SERVICE_BOND_OHM = 0.01
#: What a small transformer takes unloaded, in VA (common practice, no source).
EXCITING_VA = 3.0
#: Leakage reactance of a small transformer for each ohm of its windings: with the usual rise of
#: 10 % a bolted short of 24 V and 40 VA takes 12 A (common practice, no source).
REACTANCE_SHARE = 1.3
#: A supply inside a device that states neither: its rise to no load in %, and its VA (common
#: practice, no source).
USUAL_RISE_PERCENT, USUAL_VA = 10.0, 40.0
#: Inside a pilot generator, in ohm (common practice, no source).
GENERATOR_OHM = 1.5
#: No winding has less, in ohm.
LEAST_OHM = 1e-3


class Behind(NamedTuple):
    """Volts with no load, and the impedance in ohm behind which they stand."""

    unloaded_v: float
    ohms: complex


def source_behind(part: Part, spec: SourceSpec) -> Behind:
    """Volts with no load of a source, and its impedance in ohm."""
    volts = highest(part.values.get(spec.volts) if isinstance(spec.volts, str) else spec.volts)
    if part.family == "mains":
        return Behind(volts, MAINS_OHM)
    if part.family == "pilot-generator":
        return Behind(volts, GENERATOR_OHM)
    rise = highest(part.values.get(spec.regulation)) if spec.regulation else USUAL_RISE_PERCENT
    rating = highest(part.values.get(spec.rating)) if spec.rating else USUAL_VA
    return _secondary(volts, rating, rise)


def _secondary(rated_v: float, rated_va: float, rise_percent: float) -> Behind:
    """A transformer that gives its rated volts at its rated load, a plain resistance.

    With resistance r, reactance x = k r and I = VA/V, unloaded volts E follow from
    E^2 = (V + I r)^2 + (I x)^2.

    Args:
        rated_v: at full load.
        rated_va: the full load.
        rise_percent: from full load to none.
    """
    unloaded = rated_v * (1 + rise_percent / 100)
    if not (rated_v and rated_va and rise_percent):
        return Behind(unloaded, MAINS_OHM)
    square = 1 + REACTANCE_SHARE**2
    amps = rated_va / rated_v
    over = unloaded**2 - rated_v**2
    resistance = (math.sqrt(rated_v**2 + square * over) - rated_v) / (amps * square)
    resistance = max(resistance, LEAST_OHM)
    return Behind(unloaded, complex(resistance, REACTANCE_SHARE * resistance))
