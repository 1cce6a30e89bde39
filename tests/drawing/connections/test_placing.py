"""Blocks stand in the order of the flow, and changing places pays."""

from tests.drawing.connections.diagrams import FURNACE, HEATER, read
from wirecheck.drawing.connections.blocks import sketch_of
from wirecheck.drawing.connections.columns import cuts, ranks
from wirecheck.drawing.connections.edges import LEFT, RIGHT
from wirecheck.drawing.connections.passages import Chord, abreast, crossings
from wirecheck.drawing.connections.placing import Placer


def test_supply_stands_left_and_burner_right() -> None:
    sketch = sketch_of(read(HEATER).diagram)
    plan = Placer(sketch).improved(Placer(sketch).first(4))
    column = {sketch.blocks[b].key: c for c, blocks in enumerate(plan.columns) for b in blocks}
    assert column["line"] <= column["xfmr"] <= column["stat"] <= column["box"]
    assert column["box"] < column["valve"]
    assert column["box"] < column["pilot"]


def test_a_switch_ranks_with_what_it_is_wired_to() -> None:
    sketch = sketch_of(read(FURNACE).diagram)
    rank = dict(zip((block.key for block in sketch.blocks), ranks(sketch), strict=True))
    assert rank["line"] < rank["sw"] < rank["xfmr"]
    assert rank["xfmr"] < rank["rollout"] < rank["box"]


def test_every_block_stands_in_one_column() -> None:
    rank, heights = [3.0, 1.0, 2.0, 1.5, 0.0], [5, 9, 4, 7, 3]
    for count, columns in enumerate(cuts(rank, heights, 5)[1:], start=1):
        assert len(columns) == count
        assert [block for column in columns for block in column] == [4, 1, 3, 2, 0]


def test_columns_are_about_equally_high() -> None:
    assert cuts([1.0] * 6, [10] * 6, 3)[3] == ((0, 1), (2, 3), (4, 5))


def test_changing_places_saves_crossings() -> None:
    sketch = sketch_of(read(FURNACE).diagram)
    placer = Placer(sketch)
    first = placer.first(4)
    better = placer.improved(first)
    assert better.cost < first.cost
    assert sum(map(crossings, better.streets)) < sum(map(crossings, first.streets))


def test_leads_cross_when_their_ends_alternate_round_the_street() -> None:
    across = [Chord(0, LEFT, 1, RIGHT, 5), Chord(1, LEFT, 2, RIGHT, 4)]
    beside = [Chord(0, LEFT, 1, RIGHT, 4), Chord(1, LEFT, 2, RIGHT, 5)]
    nested = [Chord(0, LEFT, 1, LEFT, 9), Chord(1, LEFT, 2, LEFT, 5)]
    linked = [Chord(0, LEFT, 1, LEFT, 5), Chord(1, LEFT, 2, LEFT, 9)]
    assert [crossings(street) for street in (across, beside, nested, linked)] == [1, 0, 0, 1]


def test_the_fullest_place_of_a_street_counts() -> None:
    street = [Chord(0, LEFT, 0, LEFT, 5), Chord(1, LEFT, 4, LEFT, 9), Chord(2, LEFT, 7, RIGHT, 7)]
    assert abreast(street) == 2
