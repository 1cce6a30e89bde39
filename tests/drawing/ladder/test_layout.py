"""Cells keep to themselves, contacts go with the current, loads stand against the rail."""

from itertools import combinations

import pytest
from hypothesis import given, settings

from tests.drawing.ladder.networks import HEATER, Shorthand, diagram, network, shorthands
from wirecheck.circuit.nets import Nets
from wirecheck.drawing.geometry import Box
from wirecheck.drawing.ladder.layout import Layout, lay_out
from wirecheck.drawing.ladder.plan import plan
from wirecheck.drawing.ladder.series_parallel import split


def _boxes(layout: Layout) -> list[Box]:
    return [Box(cell.left, cell.row, cell.left + 1, cell.row + 1) for cell in layout.cells]


@settings(max_examples=80, deadline=None)
@given(shorthands())
def test_no_two_cells_overlap_and_no_wire_runs_through_one(shorthand: Shorthand) -> None:
    tree, _ = split(network(shorthand), 0, 1)
    assert tree is not None
    layout = lay_out(tree, least=3)
    room = Box(0, 0, layout.width, layout.rows).grown(1e-6)
    boxes = _boxes(layout)
    assert all(room.holds(box) for box in boxes)
    assert not any(one.overlaps(other, 1e-6) for one, other in combinations(boxes, 2))
    for wire in layout.wires:
        line = Box(wire.left, wire.top + 0.5, wire.right, wire.bottom + 0.5).grown(1e-9)
        assert not any(line.overlaps(box, 1e-6) for box in boxes), wire


@settings(max_examples=80, deadline=None)
@given(shorthands())
def test_every_row_has_a_branch(shorthand: Shorthand) -> None:
    tree, _ = split(network(shorthand), 0, 1)
    assert tree is not None
    layout = lay_out(tree)
    assert {cell.row for cell in layout.cells} == set(range(layout.rows))


def _control() -> Layout:
    _, section = plan(Nets(diagram(HEATER))).sections
    assert section.tree is not None
    return lay_out(section.tree)


def test_loads_stand_against_the_common_rail_and_the_controls_own_do_not() -> None:
    layout = _control()
    at_rail = [c.leaf.branch.name for c in layout.cells if c.left + 1 == layout.width]
    assert at_rail == ["pilot operator", "main operator"]


def test_contacts_stand_in_the_order_of_the_current() -> None:
    left_of = {c.leaf.branch.part.name + c.leaf.branch.name: c.left for c in _control().cells}
    assert left_of["limit"] < left_of["statheat"] < left_of["boxK1"] < left_of["boxK2"]


@pytest.mark.parametrize(("contacts", "rows"), [(5, 1), (10, 2), (25, 6)])
def test_a_rung_too_long_goes_on_in_the_next_row(contacts: int, rows: int) -> None:
    tree, _ = split(network(("+", *"abcdefghijklmnopqrstuvwxy"[:contacts])), 0, 1)
    assert tree is not None
    layout = lay_out(tree, most=6)
    assert layout.rows == rows
    assert layout.width <= 6
    out_and_in = [(flag.row, flag.other, flag.net) for flag in layout.flags]
    for (row, other, net), back in zip(out_and_in[::2], out_and_in[1::2], strict=True):
        assert other == row + 1
        assert back == (other, row, net)
    in_order = sorted(layout.cells, key=lambda cell: (cell.row, cell.left))
    assert [cell.leaf.branch.number for cell in in_order] == list(range(contacts))


@pytest.mark.parametrize("most", [3, 5, 100])
def test_what_cannot_be_cut_stays_whole(most: float) -> None:
    tree, _ = split(network(("|", "a", ("+", ("|", "b", "c"), "d", "e", "f"))), 0, 1)
    assert tree is not None
    assert not lay_out(tree, most=most).flags
