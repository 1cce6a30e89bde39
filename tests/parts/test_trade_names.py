"""Words of the trade lead to the kind they mean, and every one of them leads to a kind."""

import pytest

from wirecheck.parts.library import kind, kind_names
from wirecheck.parts.trade_names import KINDS, TERMINALS, is_trade_name, kind_meant


@pytest.mark.parametrize(
    ("word", "meant"),
    [
        ("aquastat", "operating-control"),
        ("Pump", "circulator"),
        ("LWCO", "low-water-cutoff or low-water-probe"),
        ("limit switch", "high-limit"),
        ("spark_module", "pilot-ignition-control or direct-ignition-control"),
        ("igniter", "pilot-burner or direct-burner (its terminal SPARK)"),
        ("circulater", "circulator"),
    ],
)
def test_what_was_meant(word: str, meant: str) -> None:
    found = kind_meant(word)
    assert found is not None
    assert (found.words, found.nearest) == (meant, meant.split(maxsplit=1)[0])


def test_the_users_own_kinds_are_looked_at_too() -> None:
    found = kind_meant("my-controll", ["my-control"])
    assert found is not None
    assert found.nearest == "my-control"
    assert kind_meant("qqqq") is None


def test_every_trade_name_means_kinds_that_have_the_terminal_it_names() -> None:
    for word, kinds in KINDS.items():
        assert is_trade_name(word)
        assert word not in kind_names()
        for each in kinds:
            terminal = TERMINALS.get(word)
            assert terminal is None or terminal in kind(each).terminals, (word, each)
