"""Each property: a unit that keeps it, and the same with a lead that breaks it."""

from __future__ import annotations

from itertools import product
from pathlib import Path

import pytest

import wirecheck
from wirecheck.circuit.netlist import ElementKey
from wirecheck.circuit.nets import Nets
from wirecheck.circuit.steady import SteadyStates
from wirecheck.circuit.switching import holds
from wirecheck.properties.contacts import Contacts, Switch
from wirecheck.properties.registry import PROPERTIES, dangerous, look_at_all
from wirecheck.properties.states import States
from wirecheck.properties.unit import Whole
from wirecheck.sequence.answers import View
from wirecheck.sequence.control import ControlMachine, Inputs, Phase

EXAMPLES = Path(__file__).parents[2] / "examples"
RIGHT = (
    "boiler-with-vent-damper",
    "furnace-room-heater",
    "furnace-two-speed-blower",
    "greenhouse-range",
    "hangar-heater-direct",
    "laundry-heater-own-labels",
    "make-up-air-heater",
    "two-zone-boiler",
    "workshop-heater-one-rod",
)
PARTS = """\
part line is mains: 120 V
part xfmr is transformer: primary 120 V, secondary 24 V, rating 40 VA
part limit is high-limit
part rollout is rollout-switch
part stat is thermostat
part box is pilot-ignition-control: two-rod
part valve is gas-valve-3-wire: pilot 0.2 A, main 0.4 A
part pilot is pilot-burner: two-rod
"""
LEADS = {
    "mains": "wire line.L1 to xfmr.L1\nwire line.N to xfmr.N\nwire line.G to earth\n",
    "call": "wire xfmr.R to limit to rollout to stat to box.TH\n",
    "common": "wire xfmr.C to box.COM\nwire xfmr.C to earth\n",
    "valve": "plug box to valve: PV, MV, VC to C\n",
    "spark": "wire box.SPARK to pilot.SPARK: ignition-cable\n",
    "sense": "wire box.SENSE to pilot.ROD\n",
    "ground": "wire box.GND to pilot.HOOD\n",
}


def unit(more: str = "", **leads: str) -> str:
    """A right unit, with some of its leads otherwise."""
    return PARTS + more + "".join({**LEADS, **leads}.values())


def whole(text: str) -> Whole:
    loaded = wirecheck.load_text(text)
    assert not loaded.problems, [problem.message for problem in loaded.problems]
    return Whole(Nets(loaded.diagram))


def broken(text: str) -> dict[str, str]:
    """The properties that do not hold, each with what happens first."""
    found: dict[str, str] = {}
    for looked in look_at_all(whole(text)):
        for each in looked.broken:
            found.setdefault(each.property.name, each.what)
    return found


@pytest.mark.parametrize("name", RIGHT)
def test_right_examples_keep_every_property(name: str) -> None:
    text = (EXAMPLES / f"{name}.wiring").read_text(encoding="utf-8")
    assert broken(text) == {}


def test_a_right_unit_keeps_every_property() -> None:
    assert broken(unit()) == {}


BREAKS = {
    "gas-with-a-safety-open": (
        unit(call="wire xfmr.R to limit to rollout to stat to box.TH\nwire xfmr.R to limit.2\n"),
        "main gas flows with limit open",
    ),
    "gas-with-the-damper-shut": (
        PARTS.replace("two-rod\npart valve", "two-rod, damper-plug fitted\npart valve")
        + "part vent is vent-damper\nplug box to vent: D-HOT to HOT, D-CALL to CALL, D-PROVED to "
        + "PROVED, D-COM to COM\nwire xfmr.R to box.24V\n"
        + "".join(LEADS.values()),
        "main gas flows while vent is not open",
    ),
    "gas-with-no-call": (
        unit(call="wire xfmr.R to limit to rollout to box.TH\nwire stat.W to unused\n").replace(
            "wire stat.W to unused\n", "wire rollout.2 to stat to box.TH\n"
        ),
        "main gas flows with no call",
    ),
    "main-gas-unproved": (
        unit("jumper box.PV to box.MV\n"),
        "main gas flows in the trial, before a flame is proved",
    ),
    "gas-past-the-control": (
        unit(valve="wire box.TH to valve.PV\nwire box.MV to valve.MV\nwire box.VC to valve.C\n"),
        "pilot gas flows while box has no gas on",
    ),
    "part-above-its-volts": (
        unit(mains=LEADS["mains"] + "wire line.L1 to stat.R\n"),
        "",
    ),
    "short-in-some-position": (
        unit(common="wire stat.W to box.COM\nwire xfmr.C to box.COM\nwire xfmr.C to earth\n"),
        "xfmr is shorted",
    ),
    "spark-on-other-leads": (
        unit(sense="wire box.SPARK to pilot.ROD\n"),
        "the ignition voltage of box reaches pilot.ROD",
    ),
    "call-does-not-light": (
        unit(ground=""),
        (
            "the flame is not proved: no path back for the flame signal: no lead joins pilot.HOOD "
            "and box.GND"
        ),
    ),
}


@pytest.mark.parametrize("name", BREAKS)
def test_a_lead_breaks_a_property(name: str) -> None:
    text, what = BREAKS[name]
    found = broken(text)
    assert name in found
    assert not what or found[name] == what


def test_every_property_is_broken_by_some_test() -> None:
    assert {*BREAKS, "ignition-with-no-call"} == {*PROPERTIES}


def test_ignition_with_no_call_without_a_valve() -> None:
    text = unit(call=LEADS["call"] + "wire limit.2 to box.TH\n", valve="")
    assert "ignition-with-no-call" in broken(text)


def test_a_relay_that_holds_itself_goes_on_after_the_call() -> None:
    """Its own contact feeds the coil: from standstill all is well, after a call it never ends."""
    call = (
        "wire xfmr.R to limit to rollout to stat to hold.A\nwire hold.B to xfmr.C\n"
        "wire rollout.2 to hold.COM\nwire hold.NO to hold.A\nwire hold.A to box.TH\n"
    )
    found = broken(unit("part hold is relay\n", call=call))
    assert found["gas-with-no-call"] == "main gas flows with no call, once it has run"


def test_operators_in_series_by_their_volts() -> None:
    """PV to MV, MV to C, VC to PV: in the trial both lie in series, and both operators may act."""
    valve = "wire box.PV to valve.MV\nwire box.MV to valve.C\nwire box.VC to valve.PV\n"
    looked = next(look_at_all(whole(unit(valve=valve))))
    assert looked.broken


# ---- against other ways of finding out --------------------------------------------------------


@pytest.mark.parametrize("name", ["furnace-room-heater", "limit-in-common", "two-zone-boiler"])
def test_what_acts_is_what_the_circuit_says_in_every_state(name: str) -> None:
    """Every position of the switches is solved by itself, with the contacts as the tables say."""
    text = (EXAMPLES / f"{name}.wiring").read_text(encoding="utf-8")
    drawn = whole(text)
    (each,) = drawn.units()
    states = dangerous(drawn, each)
    settled = states.idle_first
    solver = SteadyStates(drawn.nets, poor_bonds=True)
    shorted = 0
    for feed in settled.feeds.each:
        shorted |= feed.short
    compared = 0
    for state in range(states.positions.count):
        if holds(shorted, state):
            continue
        closed = tuple(holds(settled.closed.get(key, 0), state) for key in solver.contacts)
        volts = solver.at(closed).load_volts
        for key in settled.fed:
            if key in volts:
                assert holds(settled.acts[key], state) == (volts[key] > 9.6), (key, state)
                compared += 1
    assert compared > 40


def test_variables_of_a_row_are_one_and_every_other_is_there() -> None:
    drawn = whole(unit())
    (each,) = drawn.units()
    contacts = Contacts(drawn, each)
    limit, rollout = (contacts.variable[ElementKey(part, 0)] for part in ("limit", "rollout"))
    assert limit == rollout
    kinds = sorted(v.what for v in contacts.positions.variables if isinstance(v, Switch))
    assert kinds == ["call", "contact", "first gas", "main gas"]


def test_more_switches_than_are_gone_through_are_named() -> None:
    many = "".join(f"part s{n} is thermostat\n" for n in range(24))
    calls = "".join(f"wire rollout.2 to s{n} to box.TH\n" for n in range(24))
    found = wirecheck.check(wirecheck.load_text(unit(many, call=LEADS["call"] + calls)).diagram)
    said = [each.reason for each in found.not_checked if "position" in each.what]
    assert len(said) == 1
    assert "taken as in a running burner were" in said[0]


@pytest.mark.parametrize("name", ["two-rod", "direct"])
def test_a_control_never_starts_on_a_flame_it_sees(name: str) -> None:
    """Every phase with every input: no trial begins, and no main gas comes, past a signal."""
    kind = "pilot-ignition-control: two-rod" if name == "two-rod" else "direct-ignition-control"
    part = wirecheck.load_text(f"part box is {kind}\n").diagram.parts["box"]
    flags = (True, False)
    for phase, call, powered, flame in product(Phase, flags, flags, flags):
        machine = ControlMachine(part)
        machine.step(0.0, Inputs(call=False, powered=True, flame=False))
        machine.phase, machine.deadline_s = phase, 0.0
        machine.step(1000.0, Inputs(call=call, powered=powered, flame=flame))
        if flame and machine.phase is Phase.TRIAL:
            assert phase is Phase.TRIAL
        if machine.phase is Phase.RUN:
            assert flame or phase is Phase.RUN
            assert phase in (Phase.PROVING, Phase.RUN)


def test_the_two_views_differ_where_rust_conducts() -> None:
    drawn = whole(unit(common="wire xfmr.C to earth\n"))
    (each,) = drawn.units()
    fed = {
        view: bool(
            States(drawn, each, view, Contacts(drawn, each)).idle_first.acts[ElementKey("box", 2)]
        )
        for view in View
    }
    assert fed == {View.OPERATION: False, View.DANGER: True}
