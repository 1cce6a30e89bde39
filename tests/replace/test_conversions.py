"""Other systems of valves, pilots and ignition: what comes out works, and nothing else is touched.

Every result is checked by all rules and run, as a right unit must be.
"""

from __future__ import annotations

from functools import cache

import pytest

from tests.replace.units import (
    CONVERSION,
    DIRECT_SYSTEM,
    EXAMPLES,
    MILLIVOLT,
    PILOT_SYSTEM,
    STANDING,
    diagram,
    example,
    goes,
    replaced,
)
from wirecheck import check, load_text
from wirecheck.model.diagram import Diagram
from wirecheck.replace.replacement import Replacement

XFMR = "part xfmr is transformer: primary 120 V, secondary 24 V, rating 40 VA\n"
MAINS = "part line is mains: 120 V\n"
LABELLED_VALVE = 'part v is gas-valve-3-wire\nlabels v: PV as "1", MV as "2", C as "3"\n'

LABELLED_TRANSFORMER = """\
part t is transformer: primary 120/240 V, secondary 24 V, rating 50 VA
labels t: "120V" as "BLACK", R as "RED", C as "BLUE"
"""

CASES: dict[str, tuple[str | Diagram, str]] = {
    "standing pilot to intermittent pilot": (STANDING, CONVERSION),
    "standing pilot to one rod": (
        STANDING,
        PILOT_SYSTEM.replace("pilot-burner", "pilot-burner: one-rod"),
    ),
    "standing pilot to direct ignition": (STANDING, f"{DIRECT_SYSTEM}{LABELLED_VALVE}"),
    "standing pilot to direct ignition, two wires": (
        STANDING,
        f"{DIRECT_SYSTEM}part valve is gas-valve-2-wire\n",
    ),
    "millivolt to intermittent pilot": (MILLIVOLT, f"{PILOT_SYSTEM}{XFMR}{MAINS}"),
    "millivolt to intermittent pilot, line not drawn": (MILLIVOLT, f"{PILOT_SYSTEM}{XFMR}"),
    "millivolt to direct ignition": (
        MILLIVOLT,
        f"{DIRECT_SYSTEM}{XFMR}part valve is gas-valve-2-wire\n",
    ),
    "pilot to direct ignition": (example("furnace-room-heater"), DIRECT_SYSTEM),
    "pilot to direct ignition with a damper": (example("boiler-with-vent-damper"), DIRECT_SYSTEM),
    "pilot to direct ignition, two wires": (
        example("furnace-room-heater"),
        f"{DIRECT_SYSTEM}part valve is gas-valve-2-wire\n",
    ),
    "one rod to direct ignition": (example("workshop-heater-one-rod"), DIRECT_SYSTEM),
    "direct ignition to pilot": (
        example("hangar-heater-direct"),
        "part box is pilot-ignition-control\npart pilot is pilot-burner\n",
    ),
    "direct ignition, two wires, to pilot": (
        example("make-up-air-heater"),
        f"part box is pilot-ignition-control\npart pilot is pilot-burner\n{LABELLED_VALVE}",
    ),
    "three wires to two": (example("hangar-heater-direct"), "part v is gas-valve-2-wire\n"),
    "two wires to three": (example("make-up-air-heater"), LABELLED_VALVE),
    "three wires to three": (example("furnace-room-heater"), LABELLED_VALVE),
    "three wires to three over an adapter": (example("hangar-heater-direct"), LABELLED_VALVE),
    "two rods to one": (
        example("furnace-room-heater"),
        "part box is pilot-ignition-control\npart pilot is pilot-burner: one-rod\n",
    ),
    "one rod to two": (
        example("workshop-heater-one-rod"),
        "part box is pilot-ignition-control\npart pilot is pilot-burner: two-rod\n",
    ),
    "another pilot alone": (example("furnace-room-heater"), "part pilot is pilot-burner\n"),
    "another damper": (
        example("boiler-with-vent-damper"),
        'part d is vent-damper: spring-shut, draft-hood yes\nlabels d: HOT as "A", PROVED as "B"\n',
    ),
    "another thermostat": (example("furnace-room-heater"), "part t is thermostat: 0.75 A\n"),
    "another transformer": (
        example("furnace-room-heater"),
        LABELLED_TRANSFORMER,
    ),
}


@cache
def converted(case: str) -> Replacement:
    """One of the conversions, made once."""
    return replaced(*CASES[case])


@pytest.mark.parametrize("case", CASES)
def test_a_conversion_works_then(case: str) -> None:
    done = converted(case)
    assert done.problems == ()
    assert [(f.rule, f.message) for f in done.proof.checked.findings] == []
    assert done.proof.trouble == ()
    again = load_text(done.text)
    assert not again.problems
    ends = [{done.after.show(lead.a), done.after.show(lead.b)} for lead in done.after.leads]
    for new_lead in done.missing:
        assert {new_lead.a, new_lead.b} in ends
    for each in done.crossings:
        if each.to:
            assert any(each.to in pair for pair in ends), each
    expected = len(done.found.leads) - len(done.left_over) + len(done.missing)
    assert len(done.after.leads) == expected


@pytest.mark.parametrize("case", CASES)
def test_a_conversion_touches_nothing_else(case: str) -> None:
    """A lead that runs between parts that stay runs as it did."""
    done = converted(case)
    request = done.plan.request
    gone = {swap.old.key for swap in request.swaps} | {part.key for part in done.plan.out}
    kept = {frozenset((lead.a, lead.b)) for lead in done.after.leads}
    for lead in done.found.leads:
        if not gone & {lead.a.part, lead.b.part}:
            assert frozenset((lead.a, lead.b)) in kept


def test_a_standing_pilot_gives_way_to_control_valve_pilot_and_harness() -> None:
    done = replaced(STANDING, CONVERSION)
    assert goes(done) == {
        "valve.1": "control.CALL",
        "valve.C": "control.24V COM",
        "couple.PLUS": "",
        "couple.MINUS": "",
        "valve.TC": "",
        "valve.TC-C": "",
    }
    run = {(each.a, each.b): each.lead for each in done.missing}
    assert run == {
        ("control.PILOT", "valve.PV"): "brown, 18 AWG",
        ("control.MAIN", "valve.MV"): "violet, 18 AWG",
        ("control.VALVE COM", "valve.C"): "blue, 18 AWG",
        ("control.IGNITER", "pilot.SPARK"): "ignition-cable",
        ("control.FLAME", "pilot.ROD"): "yellow, 18 AWG",
        ("control.BURNER", "pilot.HOOD"): "green, 18 AWG",
    }
    assert "couple" not in done.after.parts
    words = " ".join(task.words for task in done.tasks)
    assert "cut the sense link of the new control" in words
    assert "set the anticipator to 0.75 A" in words


def test_a_millivolt_system_gets_24_volts() -> None:
    done = replaced(MILLIVOLT, f"{PILOT_SYSTEM}{XFMR}{MAINS}")
    assert goes(done)["valve.GEN"] in ("", "xfmr.R")
    (feed,) = [each for each in done.crossings if each.other == "limit.1"]
    assert feed.to == "xfmr.R"
    assert goes(done)["valve.CALL"] == "box.TH"
    assert len(done.left_over) == 2
    run = {frozenset((each.a, each.b)) for each in done.missing}
    for pair in (
        ("xfmr.C", "box.COM"),
        ("xfmr.C", "earth"),
        ("line.L1", "xfmr.L1"),
        ("line.N", "xfmr.N"),
    ):
        assert frozenset(pair) in run
    words = " ".join(task.words for task in done.tasks)
    assert "stat: see that it is made for 24 V" in words
    assert "limit: see that it is made for 24 V" in words


def test_a_direct_control_drives_three_wires_over_an_adapter() -> None:
    done = replaced(example("furnace-room-heater"), DIRECT_SYSTEM)
    assert done.after.parts["adapter"].kind.name == "valve-adapter"
    assert goes(done)["box.PV"] == "adapter.PV"
    assert goes(done)["box.MV"] == "adapter.MV"
    assert goes(done)["pilot.HOOD"] == "pilot.FRAME"
    assert {(each.a, each.b) for each in done.missing} == {
        ("box.V", "adapter.V"),
        ("adapter.C", "valve.C"),
    }


def test_an_adapter_comes_out_with_the_valve_it_tied() -> None:
    done = replaced(example("hangar-heater-direct"), "part v is gas-valve-2-wire\n")
    assert "tie" not in done.after.parts
    assert (goes(done)["tie.V"], goes(done)["tie.VC"]) == ("valve.1", "valve.C")
    assert len(done.left_over) == 3
    assert done.missing == ()


def test_what_ties_the_operators_goes_when_a_pilot_control_comes() -> None:
    text = example("hangar-heater-direct").source.text
    tied = text.replace("part tie     is valve-adapter\n", "").replace(
        "plug box to tie: V, VC\nplug tie to valve: PV, MV, C\n",
        "plug box to valve: V to PV, VC to C\njumper valve.PV to valve.MV\n",
    )
    done = replaced(tied, "part box is pilot-ignition-control\npart pilot is pilot-burner\n")
    assert done.before.holds
    assert done.proof.holds
    assert done.left_over == ("the lead from valve.PV to valve.MV",)
    assert goes(done)["box.V"] == "box.PV"
    assert [(each.a, each.b) for each in done.missing] == [("box.MV", "valve.MV")]


def test_operators_tied_by_a_lead_stay_so_with_another_direct_control() -> None:
    text = example("hangar-heater-direct").source.text
    tied = text.replace("part tie     is valve-adapter\n", "").replace(
        "plug box to tie: V, VC\nplug tie to valve: PV, MV, C\n",
        "plug box to valve: V to PV, VC to C\njumper valve.PV to valve.MV\n",
    )
    new = 'part box is direct-ignition-control: trial 4 s\nlabels box: V as "GAS"\n'
    done = replaced(tied, new)
    assert "adapter" not in done.after.parts
    assert (done.left_over, done.missing) == ((), ())
    assert done.proof.holds


def test_a_redundant_valve_needs_both_operators_where_a_single_seat_did_with_one() -> None:
    text = example("hangar-heater-direct").source.text
    single = (
        text.replace("part tie     is valve-adapter\n", "")
        .replace("redundant", "single-seat")
        .replace(
            "plug box to tie: V, VC\nplug tie to valve: PV, MV, C\n",
            "wire box.V to valve.MV: brown\nwire box.VC to valve.C: blue\n",
        )
    )
    done = replaced(single, "part v is gas-valve-3-wire: redundant\n")
    assert goes(done)["valve.MV"] == "adapter.V"
    assert goes(done)["valve.C"] == "adapter.VC"
    assert len(done.missing) == 3
    assert done.left_over == ()
    assert done.proof.holds


STRIP = """\
part strip is terminal-strip
splice nut
wire box.PV to strip.1 to valve.PV: brown
wire box.MV to strip.2 to strip.3 to valve.MV: violet
wire box.VC to nut to valve.C: blue
"""


def test_leads_over_joints_are_moved_at_their_devices_only() -> None:
    text = example("furnace-room-heater").source.text
    strip = text.replace("plug box to valve: PV, MV, VC to C\n", STRIP)
    done = replaced(strip, DIRECT_SYSTEM)
    assert done.proof.checked.findings == ()
    assert "wire adapter.PV to strip.1 to valve.PV: brown\n" in done.text
    assert "wire adapter.MV to strip.2 to strip.3 to valve.MV: violet\n" in done.text
    assert "wire box.VC to nut to adapter.VC: blue\n" in done.text
    assert [(each.a, each.b) for each in done.missing] == [
        ("box.V", "adapter.V"),
        ("adapter.C", "valve.C"),
    ]
    two = replaced(strip, f"{DIRECT_SYSTEM}part v is gas-valve-2-wire\n")
    assert len(two.left_over) == 5
    assert two.proof.holds


def test_the_lead_of_the_rod_comes_and_goes_with_the_rod() -> None:
    one_rod = "part box is pilot-ignition-control\npart pilot is pilot-burner: one-rod\n"
    done = replaced(example("furnace-room-heater"), one_rod)
    assert goes(done)["box.SENSE"] == goes(done)["pilot.ROD"] == ""
    assert "leave the sense link in place" in " ".join(task.words for task in done.tasks)
    two_rod = one_rod.replace("one-rod", "two-rod")
    back = replaced(example("workshop-heater-one-rod"), two_rod)
    assert [(each.a, each.b) for each in back.missing] == [("box.SENSE", "pilot.ROD")]
    assert "cut the sense link" in " ".join(task.words for task in back.tasks)


def test_a_control_that_stays_has_its_link_changed_for_another_pilot() -> None:
    text = example("furnace-room-heater").source.text
    for typed in ("", ", sense-link cut"):
        old = text.replace(": two-rod, trial 90 s", f": trial 90 s{typed}")
        done = replaced(old, "part p is pilot-burner: one-rod\n")
        assert done.proof.holds
        assert goes(done)["pilot.ROD"] == ""
        assert "fit the sense link anew" in " ".join(task.words for task in done.tasks)
    other = example("workshop-heater-one-rod").source.text.replace(
        "one-rod, sense-link fitted, ", ""
    )
    done = replaced(other, "part p is pilot-burner: two-rod\n")
    assert done.proof.holds
    assert "box: cut the sense link" in " ".join(task.words for task in done.tasks)


def test_links_and_plugs_are_told_by_how_the_device_comes() -> None:
    def told(new: str, old: str = "furnace-room-heater") -> str:
        return " | ".join(task.words for task in replaced(example(old), new).tasks)

    control = "part box is pilot-ignition-control"
    assert "the sense link is cut, as a pilot" in told(f"{control}: sense-link cut\n")
    assert "fit the sense link" in told(f"{control}: sense-link cut\n", "workshop-heater-one-rod")
    assert "fit the shorting plug" in told(f"{control}: damper-plug removed\n")
    assert "leave the shorting plug" in told(f"{control}\n")
    assert "take the shorting plug out" in told(f"{control}\n", "boiler-with-vent-damper")
    assert "plug" not in told(f"{control}: damper-socket no\n")


def test_what_tells_of_the_appliance_stays() -> None:
    text = example("furnace-room-heater").source.text
    lp = text.replace("wait 5 min\n", "retry lockout, gas lp\n").replace(
        "pilot-burner: two-rod", "pilot-burner: two-rod, bond solid"
    )
    new = "part box is pilot-ignition-control: retry lockout\npart pilot is pilot-burner\n"
    done = replaced(lp, new)
    assert done.after.parts["box"].values["gas"] == "lp"
    assert done.after.parts["pilot"].values["bond"] == "solid"


def test_the_unit_that_is_meant_is_found_by_its_leads() -> None:
    """Of two units in one diagram only the one of the named control is touched."""
    found = example("greenhouse-range")
    done = replaced(found, "part heater is direct-ignition-control\npart burner is direct-burner\n")
    assert {swap.old.name for swap in done.plan.request.swaps} == {"heater", "burner"}
    done = replaced(found, "part v is gas-valve-2-wire\n", part="gas")
    assert set(goes(done)) == {"gas.1", "gas.C"}


def test_one_of_two_units_is_converted() -> None:
    """The other unit's control is none of its business, and neither is its transformer."""
    other = example("hangar-heater-direct").source.text
    both = f"{other}{STANDING.partition('diagram')[2].partition(chr(10))[2]}"
    both = both.replace("part line   is mains: 120 V\n", "").replace(
        "wire line.L1 to xfmr.L1: black, 14 AWG\nwire line.N to xfmr.N: white, 14 AWG\n"
        "wire line.G to earth: green, 14 AWG\n",
        "",
    )
    head, tail = both[: len(other)], both[len(other) :]
    for name in ("xfmr", "limit", "stat", "valve", "pilot", "couple"):
        tail = tail.replace(f"{name} ", f"{name}-2 ").replace(f"{name}.", f"{name}-2.")
    new = (
        "part box-2 is pilot-ignition-control\npart valve-2 is gas-valve-3-wire\n"
        "part pilot-2 is pilot-burner\n"
    )
    done = replaced(f"{head}{tail}", new)
    assert done.after.parts["box-2"].kind.name == "pilot-ignition-control"
    assert goes(done)["valve-2.1"] == "box-2.TH"
    kept = [each for each in done.found.leads if "-2" not in f"{each.a.part} {each.b.part}"]
    then = {frozenset((lead.a, lead.b)) for lead in done.after.leads}
    assert {frozenset((lead.a, lead.b)) for lead in kept} <= then
    assert [f.rule for f in done.proof.grave] == [f.rule for f in done.before.grave]
    assert not done.new_mistakes


def test_metric_leads_are_suggested_where_leads_are_metric() -> None:
    text = STANDING.replace("14 AWG", "2.5 mm2").replace("18 AWG", "0.75 mm2")
    done = replaced(text, CONVERSION)
    assert [each.lead for each in done.missing][:1] == ["brown, 1 mm2"]


def test_a_lead_goes_to_the_tap_for_its_volts() -> None:
    new = "part t is transformer: primary 120/208/240 V, secondary 24 V, rating 50 VA\n"
    assert goes(replaced(example("hangar-heater-direct"), new))["xfmr.L1"] == "xfmr.240V"
    assert goes(replaced(example("furnace-room-heater"), new))["xfmr.L1"] == "xfmr.120V"


def test_results_can_be_replaced_again() -> None:
    """Two wires to three and back: the second result does what the first diagram did."""
    found = example("make-up-air-heater")
    there: Replacement = replaced(found, LABELLED_VALVE)
    back = replaced(there.after, "part v is gas-valve-2-wire: 0.5 A\n")
    pairs = [{frozenset((lead.a, lead.b)) for lead in each.leads} for each in (found, back.after)]
    assert pairs[0] == pairs[1]


def test_the_files_to_try_it_with_are_right() -> None:
    """The standing pilot raises nothing, and the new devices are stated without a problem."""
    assert check(diagram(STANDING)).findings == ()
    for file in (EXAMPLES / "replacing").iterdir():
        text = file.read_text(encoding="utf-8")
        assert text.startswith("# ")
        assert not load_text(text).problems
