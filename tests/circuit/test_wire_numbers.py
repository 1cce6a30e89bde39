"""Wire numbers: one for a net, typed ones kept, the same whatever else is numbered."""

from tests.drawing.ladder.networks import diagram
from wirecheck.circuit.nets import Nets
from wirecheck.circuit.wire_numbers import wire_numbers
from wirecheck.model.diagram import Terminal

WIRING = """
part t is transformer
part a is high-limit
part k is relay
wire t.R to a to k.A
wire k.B to t.C
"""


def _numbers(text: str) -> dict[str, str]:
    nets = Nets(diagram(text))
    numbers = wire_numbers(nets)
    wanted = {"t.R": Terminal("t", "R"), "a.2": Terminal("a", "2"), "k.B": Terminal("k", "B")}
    return {name: numbers[nets.net(terminal)] for name, terminal in wanted.items()}


def test_nets_are_counted_in_the_order_of_the_text() -> None:
    assert _numbers(WIRING) == {"t.R": "1", "a.2": "2", "k.B": "3"}


def test_a_typed_number_is_kept_and_not_used_again() -> None:
    assert _numbers(WIRING + "wire k.B to earth: number 1") == {"t.R": "2", "a.2": "3", "k.B": "1"}


def test_a_net_without_a_lead_has_no_number() -> None:
    nets = Nets(diagram(WIRING))
    assert nets.net(Terminal("k", "COM")) not in wire_numbers(nets)
