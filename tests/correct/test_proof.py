"""The proof sees by the run what no rule may see."""

from tests.benchmarks.campaign import example
from tests.correct.heaters import NO_BURNER_GROUND, heater
from wirecheck.circuit.nets import Nets
from wirecheck.correct.proof import acting_safeties, lost_safeties, proof


def test_a_right_heater_holds() -> None:
    found = proof(heater())
    assert found.holds
    assert [each.part.name for each in acting_safeties(found.checked.nets)] == ["limit"]


def test_a_heater_that_does_not_run_does_not_hold() -> None:
    found = proof(heater(NO_BURNER_GROUND))
    assert not found.holds
    assert found.grave


def test_a_sketch_need_not_run() -> None:
    """With no supply drawn, no call can bring heat, and that is no trouble."""
    sketch = heater(
        ("part xfmr is transformer\n", ""),
        ("xfmr.R to limit to ", ""),
        ("wire xfmr.C to box.COM: blue\n", ""),
        ("wire xfmr.C to earth: green\n", ""),
        ("part limit is high-limit\n", ""),
    )
    assert not proof(sketch).trouble


def test_the_switch_of_a_damper_is_kept_where_its_leads_are_put_right() -> None:
    """A lead astray may bring it into another way as well; out of that again it is not lost."""
    original = example("boiler-with-vent-damper")
    wrong = [
        each
        for each in original.mistakes()
        if each.name == "box.MV to valve.MV: box.MV end on vent.CALL"
    ]
    right = Nets(original.diagram)
    assert "vent" in [each.part.name for each in acting_safeties(right)]
    assert lost_safeties(Nets(original.with_mistakes(*wrong)), right) == []


def test_a_limit_left_out_is_lost() -> None:
    before = Nets(heater())
    after = Nets(heater(("xfmr.R to limit to stat", "xfmr.R to stat")))
    assert lost_safeties(before, after) == ["limit"]
    assert lost_safeties(before, before) == []
