"""Calls that wait for themselves, or for another call."""

from __future__ import annotations

import pytest

from tests.rules.call_chain.units import CALL, unit
from tests.rules.raised import findings, only
from wirecheck.model.finding import Breaks

NAME = "call-cannot-arrive"
PARTS = """\
part draw is contactor: poles 1
part fan is inducer
part air is air-switch
"""
FAN = "wire line.L1 to draw.COM..NO to fan.L: black\nwire line.N to fan.N: white\n"
PROVED = CALL.replace("stat to box", "stat.R\nwire stat.W to air to box")
COIL = "wire stat.W to draw to xfmr.C\n"


def proved(coil: str) -> str:
    """A heater that waits for the air its inducer moves; the lead of the contactor's coil last."""
    return unit(PROVED + coil + FAN, parts=PARTS)


def test_a_fan_started_behind_the_switch_that_proves_it() -> None:
    found = only(proved(COIL.replace("stat.W", "air.2")))
    assert (found.rule, found.fault, found.breaks) == (NAME, "waits", Breaks.OPERATION)
    assert found.message == (
        "the call to box.TH never arrives: air would have to close first, and fan is not fed on "
        "a call for heat before it has; feed fan ahead of air, from the call itself"
    )
    assert found.seen_at_unit == "Nothing lights on a call: air stays open."


def test_a_fan_that_the_cooling_call_alone_starts() -> None:
    found = only(proved(COIL.replace("stat.W", "stat.Y")))
    assert (found.rule, found.span.text) == (NAME, "air")


def test_a_transformer_behind_the_relay_that_it_feeds() -> None:
    line = "wire line.L1 to draw.COM..NO to xfmr.L1: black\n"
    found = only(unit(CALL + COIL, parts="part draw is contactor: poles 1\n", line=line))
    assert found.rule == NAME
    assert found.terminals == ("box.TH", "draw.COM", "draw.NO", "draw.A", "draw.B")


PLENUM = "part plenum is fan-limit-control: link removed\n"


def test_a_fan_contact_in_the_feed_is_told_in_full() -> None:
    line = "wire line.L1 to plenum.FAN-1..FAN-2 to xfmr.L1: black\n"
    limited = CALL.replace("stat to box", "stat to plenum.LIMIT-1..LIMIT-2 to box")
    found = only(unit(limited, parts=PLENUM, line=line))
    assert (found.rule, found.fault) == (NAME, "cold")
    assert found.message == (
        "the call to box.TH never arrives: the fan contact of plenum stands in what feeds it, and "
        "closes only once the burner is hot; move the fan contact of plenum to the fan that it is "
        "to start"
    )


SILENT = {
    "a fan contact that starts a blower": unit(
        CALL.replace("stat to box", "stat to plenum.LIMIT-1..LIMIT-2 to box")
        + "wire line.L1 to plenum.FAN-1..FAN-2 to fan.L: black\nwire line.N to fan.N: white\n",
        parts=PLENUM + "part fan is blower: one-speed\n",
    ),
    "a fan that the call starts": proved(COIL),
    "a fan that runs all the time": unit(
        PROVED + "wire line.L1 to fan.L: black\nwire line.N to fan.N: white\n",
        parts="part fan is inducer\npart air is air-switch\n",
    ),
    "a fan that is not drawn": unit(PROVED, parts="part air is air-switch\n"),
    "a fan whose supply is not drawn": unit(
        PROVED + "wire plug.1 to fan.L: black\nwire plug.2 to fan.N: white\n",
        parts="part fan is inducer\npart air is air-switch\npart plug is plug\n",
    ),
    "a relay pulled in by the call": unit(
        CALL.replace("stat to box", "stat to aid.COM..NO to box")
        + "wire stat.W to aid to xfmr.C\n",
        parts="part aid is relay\n",
    ),
    "a relay that holds itself in once a hand has started it": unit(
        CALL.replace("stat to box", "stat to aid.COM..NO to box")
        + "wire stat.W to start to aid to xfmr.C\nwire aid.NO to start.2\n",
        parts="part aid is relay\npart start is service-switch\n",
    ),
}


@pytest.mark.parametrize("text", SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(text: str) -> None:
    assert NAME not in [found.rule for found in findings(text)]
