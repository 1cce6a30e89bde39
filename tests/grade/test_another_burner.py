"""A drawing of another burner than the key's is marked like any other."""

from tests.contract.source import ROOT
from wirecheck import grade, load


def test_a_one_rod_drawing_is_marked_against_a_two_rod_key() -> None:
    key, drawn = (
        load(ROOT / "examples" / f"{name}.wiring").diagram
        for name in ("furnace-room-heater", "workshop-heater-one-rod")
    )
    marked = grade(drawn, key)
    assert 0 < marked.mark < marked.out_of
    assert any("pilot one-rod" in lost.reason for lost in marked.lost)
