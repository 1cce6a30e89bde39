"""Dampers, zone valves, relays, thermostats, probes and fans, and what is found wrong with them."""

from __future__ import annotations

import pytest

from tests.sequence.heater import (
    DAMPERED,
    HEATER,
    INDUCED,
    VALVE_PLUG,
    changed,
    danger_words,
    diagram,
    log,
    outcome,
    phases,
    ran,
    sentence,
    without,
)
from wirecheck.sequence.answers import View
from wirecheck.sequence.named import NotThereError, caller, opening
from wirecheck.sequence.run import Run
from wirecheck.sequence.script import Opening, heat_call

MINUTE = heat_call(length_s=60)


def spans(run: Run, track: str) -> list[tuple[float, str]]:
    return [(span.start_s, span.state) for span in run.trace.spans(track)]


# ---- the damper ----------------------------------------------------------------------------


def damper(words: str) -> str:
    return changed(DAMPERED, ("opening 15 s", f"opening 15 s, {words}"))


@pytest.mark.parametrize("action", ["spring-shut", "power-both", "spring-open"])
def test_a_damper_of_any_action_opens_on_the_call_and_shuts_after_it(action: str) -> None:
    run = ran(damper(action), MINUTE)
    assert spans(run, "vent") == [
        (-10, "shut"), (0, "opening"), (15, "open"), (60, "closing"), (75, "shut"),
    ]  # fmt: skip
    assert outcome(run) == "runs"


@pytest.mark.parametrize(
    ("action", "after_s", "then"),
    [("spring-shut", 60, "closing"), ("power-both", 60, "open"), ("spring-open", 60, "open")],
)
def test_without_its_hot_lead_only_a_spring_shuts_it(
    action: str, after_s: float, then: str
) -> None:
    run = ran(changed(damper(action), ("D-HOT to HOT, ", "")), MINUTE)
    assert run.trace.at("vent", after_s) == then


def test_a_damper_shut_by_power_opens_when_the_power_fails() -> None:
    run = ran(damper("spring-open"), heat_call(power_lost_s=30, length_s=60, watch_s=5))
    assert run.trace.at("vent", 30) == "open"
    run = ran(damper("spring-shut"), heat_call(power_lost_s=30, length_s=60, watch_s=5))
    assert run.trace.at("vent", 30) == "closing"


@pytest.mark.parametrize("words", ["hold-open set", "stuck open"])
def test_a_damper_that_stands_open_passes_the_call_on_at_once(words: str) -> None:
    run = ran(damper(words), MINUTE)
    assert spans(run, "vent") == [(-10, "open")]
    assert phases(run)[1] == (0, "trial")


@pytest.mark.parametrize(
    ("words", "reason"),
    [
        ("stuck closed", "vent is stuck shut: its end switch never makes"),
        ("end-switch never-makes", "the end switch of vent does not make, however far it is open"),
    ],
)
def test_a_damper_that_never_proves_keeps_the_burner_off(words: str, reason: str) -> None:
    run = ran(damper(words), MINUTE)
    assert sentence(run) == f"the call is there, but the ignition waits: {reason}"
    assert not run.trace.ever("valve pilot operator", "on")


def test_a_welded_end_switch_lets_it_light_with_the_damper_shut() -> None:
    run = ran(damper("end-switch welded"), MINUTE)
    assert danger_words(run) == {"damper-not-open"}


def test_a_call_too_short_for_the_damper_lights_nothing_and_the_next_goes_on_from_there() -> None:
    text = DAMPERED
    run = ran(text, heat_call(length_s=10))
    assert spans(run, "vent") == [(-10, "shut"), (0, "opening"), (10, "closing"), (20, "shut")]
    assert sentence(run) == (
        "the call is there, but the ignition waits: "
        "waits here: the end switch of vent has not passed the call on"
    )


# ---- zones ---------------------------------------------------------------------------------

ZONES = """\
part xfmr is transformer
part t1 is thermostat
part t2 is thermostat
part z1 is zone-valve: opening 40 s
part z2 is zone-valve
part boiler is boiler-call
wire xfmr.R to t1 to z1 to xfmr.C
wire xfmr.R to t2 to z2 to xfmr.C
wire boiler.1 to z1.E1..E2 to boiler.2
wire boiler.1 to z2.E1..E2 to boiler.2
"""
SERIES = changed(
    ZONES,
    ("wire boiler.1 to z1.E1..E2 to boiler.2\n", ""),
    ("boiler.1 to z2.E1..E2", "boiler.1 to z1.E1..E2 to z2.E1..E2"),
)


def test_a_zone_valve_calls_the_boiler_once_it_is_open() -> None:
    assert log(ran(ZONES, heat_call(calling=("t1",), length_s=100))) == (
        """\
0 call: on
0 z1: opening
0 z1 motor: on
40 z1: open
40 boiler own relay: on
100 call: off
100 z1: closing
100 z1 motor: off
100 boiler own relay: off
140 z1: shut
"""
    )


def test_end_switches_in_series_call_only_when_both_zones_do() -> None:
    one = ran(SERIES, heat_call(calling=("t1",), length_s=100))
    assert not one.trace.ever("boiler own relay", "on")
    both = ran(SERIES, heat_call(length_s=100))
    assert spans(both, "boiler own relay") == [(-10, "off"), (60, "on"), (100, "off")]


def test_end_switches_fed_from_the_zone_transformer_tie_two_sources() -> None:
    fed = changed(ZONES, ("boiler.1 to z1.E1", "xfmr.R to z1.E1"))
    run = ran(f"{fed}wire xfmr.C to boiler.1\n", heat_call(calling=("t1",), length_s=100))
    states = {change.state for change in run.trace.changes}
    assert "burns out" in states or run.trace.ever("boiler own relay", "destroyed")


def test_a_zone_motor_on_r_is_always_open() -> None:
    text = changed(ZONES, ("xfmr.R to t1 to z1", "xfmr.R to z1"))
    run = ran(text, heat_call(calling=("t2",), length_s=100))
    assert spans(run, "z1") == [(-10, "opening"), (30, "open")]
    assert spans(run, "boiler own relay") == [(-10, "off"), (30, "on")]


THREE_WIRE = """\
part xfmr is transformer
part t1 is thermostat
part z1 is zone-valve-3-wire
part k1 is relay
wire xfmr.R to z1.ME
wire z1.M to t1 to xfmr.C
wire z1.E to k1 to xfmr.C
"""


@pytest.mark.parametrize(
    ("found", "relay"),
    [
        ("", [(-10, "off"), (60, "on"), (100, "off")]),
        (": end-switch welded", [(-10, "on")]),
        (": end-switch never-makes", [(-10, "off")]),
        (": motor dead", [(-10, "off")]),
    ],
)
def test_a_three_wire_zone_valve(found: str, relay: list[tuple[float, str]]) -> None:
    text = changed(THREE_WIRE, ("is zone-valve-3-wire", f"is zone-valve-3-wire{found}"))
    assert spans(ran(text, heat_call(length_s=100)), "k1 coil") == relay


# ---- relays and switches -------------------------------------------------------------------


@pytest.mark.parametrize(
    ("found", "expected"),
    [
        ("stuck open", "no-start"),
        ("coil open", "no-start"),
        ("coil shorted", "burns-out"),
        ("stuck closed", "runs"),
    ],
)
def test_a_relay_found_bad(found: str, expected: str) -> None:
    assert outcome(ran(changed(INDUCED, ("is relay", f"is relay: {found}")), MINUTE)) == expected


@pytest.mark.parametrize(("coil_v", "works", "endangers"), [(24, 1, 1), (40, 0, 1), (120, 0, 0)])
def test_a_coil_has_three_answers(coil_v: int, works: int, endangers: int) -> None:
    """Some 26 V on a coil of 24, 40 and 120 V: 108 %, 65 % and 22 %."""
    text = changed(HEATER, ("part stat", f"part k1 is relay: {coil_v} V, takes 4 VA\npart stat"))
    text += "wire xfmr.R to k1 to xfmr.C\n"
    state = {(1, 1): "on", (0, 1): "may", (0, 0): "off"}[works, endangers]
    assert ran(text, MINUTE).trace.at("k1 coil", 0) == state


def test_a_normally_closed_contact_opens_while_the_coil_is_pulled_in() -> None:
    text = changed(HEATER, ("stat to box.TH", "stat to k1.COM..NC to box.TH"))
    text += "part k1 is relay\npart t2 is thermostat\nwire xfmr.R to t2 to k1 to xfmr.C\n"
    assert outcome(ran(text, heat_call(calling=("stat",)))) == "runs"
    assert sentence(ran(text)) == "nothing happens: no 24 V at box.TH: k1 NC stands open"


@pytest.mark.parametrize(
    ("kind", "found", "expected"),
    [
        ("fuse", "blown", "no-start"),
        ("breaker", "tripped", "no-start"),
        ("breaker", "stuck open", "no-start"),
        ("fusible-link", "blown", "no-start"),
        ("low-water-cutoff", "stuck open", "no-start"),
        ("pressure-switch", "stuck open", "no-start"),
        ("door-switch", "stuck open", "no-start"),
        ("emergency-stop", "stuck open", "no-start"),
        ("flow-switch", "stuck open", "no-start"),
        ("spill-switch", "stuck open", "no-start"),
        ("rollout-switch", "stuck open", "no-start"),
        ("service-switch", "stuck open", "no-start"),
        ("operating-control", "stuck open", "no-start"),
        ("high-limit", "stuck open", "no-start"),
    ],
)
def test_a_switch_found_open_stops_the_call_and_is_named(
    kind: str, found: str, expected: str
) -> None:
    text = changed(HEATER, ("is high-limit", f"is {kind}"))
    assert outcome(ran(text, MINUTE)) == "runs"
    run = ran(changed(HEATER, ("is high-limit", f"is {kind}: {found}")), MINUTE)
    assert outcome(run) == expected
    assert "limit " in sentence(run)


@pytest.mark.parametrize(
    ("attribute", "expected", "dangers"),
    [
        ("pilot-contact stuck-open", "not-lit", set()),
        ("pilot-contact stuck-closed", "runs", set()),
        ("main-contact stuck-open", "no-main", set()),
        ("main-contact stuck-closed", "runs", {"main-gas-unproved"}),
        ("spark-coil dead", "not-lit", {"unlit-gas"}),
    ],
)
def test_a_control_found_bad(attribute: str, expected: str, dangers: set[str]) -> None:
    run = ran(changed(HEATER, ("control: two-rod", f"control: two-rod, {attribute}")))
    assert outcome(run) == expected
    assert danger_words(run) == dangers


def test_a_welded_pilot_contact_lets_gas_through_the_wait() -> None:
    text = changed(HEATER, ("control: two-rod", "control: two-rod, pilot-contact stuck-closed"))
    run = ran(text, heat_call(dirty_rods=True, length_s=200))
    assert danger_words(run) == {"pilot-gas-past-control"}


@pytest.mark.parametrize(
    ("attribute", "reason"),
    [
        ("pilot-coil open", "spark, but no gas: valve pilot operator: its coil was found open"),
        ("main-coil open", "but the main burner does not: valve main operator: its coil was found"),
        ("pilot-coil shorted", "xfmr burns out on the call"),
        ("main-coil shorted", "xfmr burns out when the main gas is to open"),
    ],
)
def test_a_valve_coil_found_bad(attribute: str, reason: str) -> None:
    text = changed(HEATER, ("main 60 ohm", f"main 60 ohm, {attribute}"))
    assert reason in sentence(ran(text))


# ---- thermostats, probes, fans -------------------------------------------------------------


def test_a_thermostat_powered_by_its_common_needs_it() -> None:
    text = changed(HEATER, ("is thermostat", "is thermostat: power common"))
    run = ran(text, MINUTE)
    assert sentence(run) == "nothing happens: no 24 V at box.TH: stat has no power"
    assert outcome(ran(f"{text}wire stat.C to xfmr.C\n", MINUTE)) == "runs"


def test_a_thermostat_that_robs_its_power_leaks_through_the_load_it_calls() -> None:
    """50 mA at 24 V are 480 ohm, in series with a control of 160 ohm and a relay of 240."""
    text = changed(HEATER, ("is thermostat", "is thermostat: power robbing, draw 50 mA"))
    text += "part k1 is relay: takes 240 ohm\nwire stat.W to k1 to xfmr.C\n"
    run = ran(text, MINUTE)
    assert outcome(run) == "runs"
    bare = without(text, "wire stat.W to k1 to xfmr.C") + "wire stat.W to k1 to xfmr.C\n"
    leaking = changed(bare, ("limit to stat to box.TH", "limit to stat.R"))
    assert ran(leaking, MINUTE).trace.at("k1 coil", -1) == "off"
    strong = changed(leaking, ("draw 50 mA", "draw 80 mA"))
    assert ran(strong, MINUTE).trace.at("k1 coil", -1) == "may"
    switching = f"{strong}part lamp is lamp\nwire xfmr.R to k1.COM..NO to lamp to xfmr.C\n"
    assert ran(switching, MINUTE).trace.at("lamp", -1) == "off"
    assert ran(switching, MINUTE, View.DANGER).trace.at("lamp", -1) == "on"


def test_the_heating_contact_alone_is_stuck_when_a_thermostat_is() -> None:
    text = changed(HEATER, ("is thermostat", "is thermostat: stuck closed"))
    text += "part k1 is relay\nwire stat.G to k1 to xfmr.C\n"
    run = ran(text, MINUTE)
    assert outcome(run) == "no-call"
    assert run.trace.at("k1 coil", 0) == "off"


def test_a_low_water_probe_needs_its_power_to_pass_the_call_on() -> None:
    text = changed(HEATER, ("is high-limit", "is low-water-probe"))
    assert sentence(ran(text, MINUTE)) == "nothing happens: no 24 V at box.TH: limit stands open"
    assert outcome(ran(f"{text}wire limit.C to xfmr.C\n", MINUTE)) == "runs"


def test_the_fan_follows_the_heat() -> None:
    text = f"""{HEATER}part line is mains
wire line.L1 to xfmr.L1
wire line.N to xfmr.N
part plenum is fan-limit-control: link removed
part fan is blower: one-speed
wire line.L1 to plenum.FAN-1
wire plenum.FAN-2 to fan to line.N
"""
    run = ran(text, heat_call(length_s=100))
    assert spans(run, "fan motor") == [(-10, "off"), (49, "on"), (160, "off")]
    stuck = changed(text, ("link removed", "link removed, fan-stuck open"))
    assert spans(ran(stuck, MINUTE), "fan motor") == [(-10, "off")]
    stuck = changed(text, ("link removed", "link removed, fan-stuck closed"))
    assert spans(ran(stuck, MINUTE), "fan motor") == [(-10, "on")]


def test_a_flow_switch_follows_the_circulator() -> None:
    text = f"""{HEATER}part line is mains
wire line.L1 to xfmr.L1
wire line.N to xfmr.N
part ctl is boiler-control
part pump is circulator
wire line.L1 to ctl.L1
wire line.N to ctl.N
wire ctl.R to t2 to ctl.W
part t2 is thermostat
wire ctl.PUMP to pump to ctl.PUMP-N
"""
    text = changed(text, ("is high-limit", "is flow-switch"))
    run = ran(text, MINUTE)
    assert phases(run)[1:3] == [(3, "trial"), (5, "proving")]
    assert outcome(run) == "runs"
    dead = ran(changed(text, ("is circulator", "is circulator: motor dead")), MINUTE)
    assert sentence(dead) == "nothing happens: no 24 V at box.TH: limit stands open"


def test_an_operating_control_calls_where_no_thermostat_does() -> None:
    text = changed(HEATER, ("is thermostat", "is operating-control"))
    run = ran(text, MINUTE)
    assert phases(run)[1:] == [(0, "trial"), (2, "proving"), (3, "run"), (60, "idle")]
    assert outcome(run) == "runs"


def test_an_operating_control_beside_a_thermostat_only_stands_in_the_way() -> None:
    text = changed(HEATER, ("is high-limit", "is operating-control"))
    assert outcome(ran(text, heat_call(calling=("stat",)))) == "runs"


# ---- several valves ------------------------------------------------------------------------

TWO_VALVES = changed(
    HEATER,
    ("part valve is gas-valve-3-wire: pilot 120 ohm, main 60 ohm",
     "part pilot-gas is gas-valve-2-wire\npart main-gas is gas-valve-2-wire"),
    (VALVE_PLUG, "wire box.PV to pilot-gas to box.VC\nwire box.MV to main-gas to box.VC"),
)  # fmt: skip


def test_a_pilot_valve_and_a_main_valve_of_two_wires_each() -> None:
    run = ran(TWO_VALVES, MINUTE)
    assert outcome(run) == "runs"
    assert not run.dangers
    crossed = changed(TWO_VALVES, ("box.MV to main-gas", "box.PV to main-gas"))
    assert danger_words(ran(crossed, MINUTE)) == {"main-gas-unproved"}


def test_one_valve_of_two_wires_on_a_pilot_control_opens_everything_in_the_trial() -> None:
    text = changed(
        TWO_VALVES,
        ("part main-gas is gas-valve-2-wire\n", ""),
        ("wire box.MV to main-gas to box.VC\n", ""),
    )
    assert danger_words(ran(text.replace("\npart main-gas is gas-valve-2-wire", ""), MINUTE)) == {
        "main-gas-unproved"
    }


def test_which_valve_is_meant_is_said_to_be_unclear() -> None:
    text = changed(
        TWO_VALVES,
        ("wire box.PV to pilot-gas to box.VC\n", ""),
        ("wire box.MV to main-gas to box.VC\n", ""),
    )
    assert "which of the 2 gas valves goes with box is not clear" in sentence(ran(text, MINUTE))


# ---- names ---------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("limit", Opening("limit")),
        ("LIMIT at 60 s", Opening("limit", "", 60.0)),
        ("limit at 2 min", Opening("limit", "", 120.0)),
        ("limit at 5", Opening("limit", "", 5.0)),
        ("vent.end switch", Opening("vent", "end switch")),
    ],
)
def test_a_contact_by_its_name(text: str, expected: Opening) -> None:
    assert opening(diagram(DAMPERED), text) == expected


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("limti", "there is no part “limti”; did you mean limit?"),
        ("xfmr", "xfmr is a control transformer: it has no contact to open"),
        ("limit.NC", "limit has no contact “NC”; it has one without a name"),
        ("box.K3", "box has no contact “K3”; it has K1, K2"),
        ("limit at noon", "“noon” is no time; write it like 90 s or 5 min"),
    ],
)
def test_a_contact_that_is_not_there(text: str, words: str) -> None:
    with pytest.raises(NotThereError, match=r".") as error:
        opening(diagram(DAMPERED), text)
    assert str(error.value) == words


def test_who_calls() -> None:
    assert caller(diagram(HEATER), "STAT") == "stat"
    with pytest.raises(NotThereError, match="limit is a high limit: it calls for no heat"):
        caller(diagram(HEATER), "limit")
