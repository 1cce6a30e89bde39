"""What the benchmarks measure is a sound diagram of the size they say."""

from pathlib import Path

import pytest

import wirecheck
from tests.benchmarks.diagrams import statements


@pytest.mark.parametrize("leads", [14, 40, 1000])
def test_the_diagram_has_that_many_leads_and_no_mistake(leads: int, tmp_path: Path) -> None:
    file = tmp_path / "units.wiring"
    file.write_text("\n".join(statements(leads)), encoding="utf-8")
    loaded = wirecheck.load(file)
    assert loaded.problems == ()
    assert len(loaded.diagram.leads) == leads
    assert wirecheck.check(loaded.diagram).findings == ()
