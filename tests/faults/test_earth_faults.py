"""Earth faults past a limit in the hot or the common leg, solved, and solved by ngspice.

24 V behind 0.5 ohm, a coil of 60 ohm, faults of 1 mohm, the limit open unless said.  The figures
are our own; what they show is why all contacts belong between the switched conductor and one end of
the coil (IEC 60204-1, 9.4.3, method a, read where a page quotes it).
"""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.circuit.spice import needs_ngspice, node_volts
from wirecheck.circuit.elimination import Elimination
from wirecheck.circuit.numbered import Branch, Case, Circuit, SourceBranch, Switch

HOT, COMMON, BETWEEN = 1, 2, 3
FAULT_OHM = 1e-3


def circuit(leg: str, *, earthed: bool) -> tuple[Circuit, tuple[int, int]]:
    """The circuit, and the two nodes of its coil."""
    coil = (BETWEEN, COMMON) if leg == "hot" else (HOT, BETWEEN)
    limit = Switch(HOT, BETWEEN) if leg == "hot" else Switch(BETWEEN, COMMON)
    branches = (Branch(*coil, 60.0), *((Branch(COMMON, 0, FAULT_OHM),) if earthed else ()))
    source = SourceBranch(HOT, COMMON, 24.0, 0.5)
    return Circuit(4, branches, (limit,), (source,)), coil


def faults(*nodes: int) -> tuple[Branch, ...]:
    return tuple(Branch(node, 0, FAULT_OHM) for node in nodes)


#: Leg, earthed, earth faults at, limit closed: volts at the coil, amperes of the source.
TABLE = (
    ("hot", True, (), False, 0.0, 0.0),
    ("hot", True, (BETWEEN,), False, 0.0, 0.0),
    ("hot", True, (BETWEEN,), True, 0.10, 47.7),
    ("hot", True, (BETWEEN, HOT), False, 0.05, 47.8),
    ("hot", True, (BETWEEN, COMMON), False, 0.0, 0.0),
    ("hot", False, (), False, 0.0, 0.0),
    ("hot", False, (BETWEEN,), False, 0.0, 0.0),
    ("hot", False, (BETWEEN,), True, 23.8, 0.4),
    ("hot", False, (BETWEEN, HOT), False, 23.8, 0.4),
    ("hot", False, (BETWEEN, COMMON), False, 0.0, 0.0),
    ("common", True, (), False, 0.0, 0.0),
    ("common", True, (BETWEEN,), False, 23.8, 0.4),
    ("common", True, (BETWEEN, HOT), False, 0.05, 47.8),
    ("common", True, (BETWEEN, COMMON), False, 23.8, 0.4),
    ("common", False, (), False, 0.0, 0.0),
    ("common", False, (BETWEEN,), False, 0.0, 0.0),
    ("common", False, (BETWEEN, HOT), False, 0.0, 0.0),
    ("common", False, (BETWEEN, COMMON), False, 23.8, 0.4),
)


@pytest.mark.parametrize(("leg", "earthed", "at", "closed", "volts", "amps"), TABLE)
def test_coil_and_source(  # noqa: PLR0913  # a row of the table
    leg: str, at: tuple[int, ...], volts: float, amps: float, *, earthed: bool, closed: bool
) -> None:
    numbered, coil = circuit(leg, earthed=earthed)
    rest = Elimination(numbered).solve(Case((closed,), added=faults(*at)))
    found = abs(rest.across(*coil) or 0.0)
    assert found == pytest.approx(volts, abs=0.06)
    source_v = abs(rest.across(HOT, COMMON) or 0.0)
    assert (24.0 - source_v) / 0.5 == pytest.approx(amps, abs=0.06)


@needs_ngspice
@pytest.mark.parametrize("leg", ["hot", "common"])
@pytest.mark.parametrize("earthed", [True, False])
def test_ngspice_says_the_same(leg: str, tmp_path: Path, *, earthed: bool) -> None:
    numbered, _coil = circuit(leg, earthed=earthed)
    cases = [Case((row[3],), added=faults(*row[2])) for row in TABLE if row[:2] == (leg, earthed)]
    ours = [Elimination(numbered).solve(case) for case in cases]
    theirs = node_volts(numbered, cases, [rest.island for rest in ours], tmp_path)
    for rest, volts in zip(ours, theirs, strict=True):
        assert volts == pytest.approx(rest.volts, abs=1e-6)
