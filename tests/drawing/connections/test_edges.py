"""A lead leaves its block at the edge from which it crosses the fewest columns."""

from tests.drawing.connections.diagrams import HEATER, read
from wirecheck.drawing.connections.blocks import End, sketch_of
from wirecheck.drawing.connections.edges import LEFT, RIGHT, edges


def _edges_of(text: str, columns: dict[str, int]) -> dict[tuple[str, str], int]:
    diagram = read(text).diagram
    sketch = sketch_of(diagram)
    side_of = edges(sketch, [columns[block.key] for block in sketch.blocks])
    return {
        (block.key, row.terminal.name): side_of[end]
        for block in sketch.blocks
        for row in block.rows
        for end in row.ends
    }


def test_a_lead_leaves_towards_its_other_end() -> None:
    columns = {"line": 0, "xfmr": 0, "limit": 1, "stat": 1, "box": 2, "valve": 3, "pilot": 3}
    side = _edges_of(HEATER, columns)
    assert side["box", "TH"] == side["box", "COM"] == LEFT
    assert {side["box", name] for name in ("PV", "MV", "VC", "GND", "SENSE", "SPARK")} == {RIGHT}
    assert {side["pilot", name] for name in ("SPARK", "ROD", "HOOD")} == {LEFT}


def test_the_leads_of_a_plug_leave_together() -> None:
    columns = dict.fromkeys(("line", "xfmr", "limit", "stat", "box", "valve", "pilot"), 0)
    side = _edges_of(HEATER, columns)
    assert len({side["box", name] for name in ("PV", "MV", "VC")}) == 1
    assert len({side["valve", name] for name in ("PV", "MV", "C")}) == 1


def test_leads_of_one_column_meet_in_one_street() -> None:
    text = "part a is high-limit\npart b is high-limit\npart c is high-limit\nwire a.2 to b to c.1"
    diagram = read(text).diagram
    sketch = sketch_of(diagram)
    side = edges(sketch, [0, 0, 0])
    assert side[End(0, at_b=False)] == side[End(0, at_b=True)]
    assert side[End(1, at_b=False)] == side[End(1, at_b=True)]
    assert side[End(0, at_b=True)] != side[End(1, at_b=False)]
