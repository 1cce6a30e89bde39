"""The three leads of the valve in every wrong order: volts at the coils, and what gas that gives.

The coils have 120 and 60 ohm; in series the pilot operator so gets two thirds of what there is.
"""

from __future__ import annotations

from typing import NamedTuple

import pytest

from tests.sequence.heater import HEATER, VALVE_PLUG, changed, danger_words, outcome, ran, volts
from wirecheck.sequence.answers import View
from wirecheck.sequence.run import Run
from wirecheck.sequence.script import heat_call

PILOT, MAIN = "pilot operator", "main operator"
#: Share of the secondary's volts that a contact and the leads may take.
LOST = 1e-3


class Order(NamedTuple):
    """Where PV, MV and VC of the control land, and the shares of the volts at pilot and main."""

    lands: tuple[str, str, str]
    trial: tuple[float, float]
    run: tuple[float, float]


RIGHT = Order(("PV", "MV", "C"), (1, 0), (1, 1))
EXCHANGED_PV_MV = Order(("MV", "PV", "C"), (0, 1), (1, 1))
EXCHANGED_PV_C = Order(("C", "MV", "PV"), (1, 0), (1, 0))
EXCHANGED_MV_C = Order(("PV", "C", "MV"), (2 / 3, 1 / 3), (0, 1))
ROUND_ONE_WAY = Order(("MV", "C", "PV"), (2 / 3, 1 / 3), (1, 0))
ROUND_OTHER_WAY = Order(("C", "PV", "MV"), (0, 1), (1, 1))
ORDERS = [
    RIGHT, EXCHANGED_PV_MV, EXCHANGED_PV_C, EXCHANGED_MV_C, ROUND_ONE_WAY, ROUND_OTHER_WAY,
]  # fmt: skip


def ran_with(order: Order, seats: str, view: View, *, extra: str = "") -> Run:
    pv, mv, vc = order.lands
    leads = f"wire box.PV to valve.{pv}\nwire box.MV to valve.{mv}\nwire box.VC to valve.{vc}"
    text = changed(HEATER, (VALVE_PLUG, leads), ("main 60 ohm", f"main 60 ohm, {seats}{extra}"))
    return ran(text, heat_call(length_s=60), view)


def shares(run: Run, phase: str) -> tuple[float, float]:
    """Volts of pilot and main operator as shares of the secondary's, in a phase."""
    rest = next(rest for rest in run.trace.rests if rest.phases["box"] == phase)
    (secondary,) = rest.steady.source_volts.values()
    return volts(run, "valve", PILOT, phase) / secondary, volts(
        run, "valve", MAIN, phase
    ) / secondary


@pytest.mark.parametrize("order", ORDERS, ids=lambda order: " ".join(order.lands))
def test_the_coils_get_the_volts_of_their_order(order: Order) -> None:
    """Coils that surely open at these volts, so that the trial comes to a run either way."""
    run = ran_with(order, "single-seat", View.DANGER)
    assert shares(run, "trial") == pytest.approx(order.trial, abs=LOST)
    if order.trial[0]:
        assert shares(run, "run") == pytest.approx(order.run, abs=LOST)
    else:
        assert not run.trace.ever("box", "run")


def test_series_coils_at_24_v_get_16_and_8() -> None:
    """With a stiff transformer: 24 V loaded or not."""
    text = changed(
        HEATER,
        (VALVE_PLUG, "wire box.PV to valve.PV\nwire box.MV to valve.C\nwire box.VC to valve.MV"),
        ("is transformer", "is transformer: regulation 0.01 %, rating 1000 VA"),
    )
    run = ran(text)
    assert volts(run, "valve", PILOT, "trial") == pytest.approx(16, abs=0.05)
    assert volts(run, "valve", MAIN, "trial") == pytest.approx(8, abs=0.05)


@pytest.mark.parametrize(
    ("order", "seats", "works", "endangers"),
    [
        (EXCHANGED_PV_MV, "redundant", "not-lit", "not-lit"),
        (EXCHANGED_PV_MV, "single-seat", "not-lit", "not-lit"),
        (EXCHANGED_PV_C, "redundant", "no-main", "no-main"),
        (EXCHANGED_PV_C, "single-seat", "no-main", "no-main"),
        (EXCHANGED_MV_C, "redundant", "not-lit", "loses-flame"),
        (EXCHANGED_MV_C, "single-seat", "not-lit", "loses-flame"),
        (ROUND_ONE_WAY, "redundant", "not-lit", "no-main"),
        (ROUND_ONE_WAY, "single-seat", "not-lit", "no-main"),
        (ROUND_OTHER_WAY, "redundant", "not-lit", "not-lit"),
        (ROUND_OTHER_WAY, "single-seat", "not-lit", "not-lit"),
    ],
)
def test_how_it_ends(order: Order, seats: str, works: str, endangers: str) -> None:
    assert outcome(ran_with(order, seats, View.OPERATION)) == works
    assert outcome(ran_with(order, seats, View.DANGER)) == endangers


@pytest.mark.parametrize("order", [EXCHANGED_PV_MV, ROUND_OTHER_WAY])
def test_main_gas_flows_unproved_through_a_single_seat_and_not_through_a_redundant_valve(
    order: Order,
) -> None:
    single = ran_with(order, "single-seat", View.OPERATION)
    assert danger_words(single) == {"main-gas-unproved", "unlit-gas"}
    assert not ran_with(order, "redundant", View.DANGER).dangers


@pytest.mark.parametrize("order", [EXCHANGED_PV_C, ROUND_ONE_WAY])
def test_main_gas_never_flows_where_the_main_coil_gets_nothing_in_run(order: Order) -> None:
    for view in View:
        assert not ran_with(order, "single-seat", view).trace.ever("main flame", "on")


def test_an_open_main_operator_may_hang_on_at_8_v_and_pass_gas_in_the_next_trial() -> None:
    """It opens in run at 24 V and is sure to drop out only below a quarter of that."""
    run = ran_with(EXCHANGED_MV_C, "single-seat", View.DANGER)
    assert run.trace.at("valve main operator", 4) == "may"
    assert danger_words(run) == {"main-gas-unproved"}
