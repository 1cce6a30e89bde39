"""The new diagram's text: what was typed stays, and what named the old device names the new one."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.replace.units import CONVERSION, STANDING, diagram, example, replaced
from wirecheck import check, load, load_text, replace, variants
from wirecheck.replace.device import Device, device_of
from wirecheck.replace.request import CannotReplaceError

FURNACE = example("furnace-room-heater").source.text
NEW = 'part n is pilot-ignition-control\nlabels n: TH as "W", PV as "P", MV as "M", VC as "P/M"\n'


def test_comments_order_and_style_stay() -> None:
    done = replaced(FURNACE, NEW)
    before, after = FURNACE.splitlines(), done.text.splitlines()
    assert [line for line in before if line.startswith("#")] == [
        line for line in after if line.startswith("#")
    ]
    untouched = [line for line in before if "box" not in line]
    assert [line for line in after if line in untouched] == untouched
    assert "wire xfmr.R to fuse to limit to rollout to stat to box.W: red, 18 AWG, 30 ft" in after
    assert "plug box to valve: P to PV, M to MV, P/M to C" in after
    assert "part box     is pilot-ignition-control: pilot two-rod" in after


def test_line_ends_stay() -> None:
    crlf = FURNACE.replace("\n", "\r\n")
    done = replaced(crlf, NEW)
    assert "\n" not in done.text.replace("\r\n", "")
    assert done.text.replace("\r\n", "\n") == replaced(FURNACE, NEW).text


def test_a_statement_over_several_lines_stays_one() -> None:
    text = FURNACE.replace(
        "wire xfmr.R to fuse to limit to rollout to stat to box.TH: red, 18 AWG, 30 ft",
        "wire xfmr.R to fuse to\n    limit to rollout to  # upstairs\n    stat to box.TH: red,\n"
        "    18 AWG, 30 ft",
    )
    done = replaced(text, NEW)
    assert "    limit to rollout to  # upstairs\n    stat to box.W: red,\n    18 AWG" in done.text
    assert not done.problems


def test_labels_stand_where_the_old_ones_stood() -> None:
    old = 'labels box: TH as "A",\n  PV as "B"\n'
    text = f"{FURNACE}{old}# the end\n".replace("box.TH", "box.A").replace(
        "valve: PV", "valve: B to PV"
    )
    done = replaced(text, NEW)
    assert done.text.count("labels box") == 1
    assert done.text.endswith(
        'labels box: TH as "W", PV as "P", MV as "M", VC as "P/M"\n# the end\n'
    )
    plain = replaced(text, "part n is pilot-ignition-control\n")
    assert "labels" not in plain.text
    assert "to box.TH: red" in plain.text


def test_a_kind_of_the_users_own_goes_with_its_last_part() -> None:
    laundry = example("laundry-heater-own-labels")
    done = replaced(laundry, NEW, part="dryer")
    assert "house-control" not in done.text
    assert "lint-limit" in done.text
    second = laundry.source.text.replace(
        "part dryer  is house-control\n",
        "part dryer  is house-control\npart spare is house-control\n",
    )
    kept = replaced(second, NEW, part="dryer")
    assert "kind house-control is pilot-ignition-control" in kept.text
    assert "labels house-control" in kept.text


def test_a_new_device_of_a_kind_of_its_files_own_is_written_out() -> None:
    new = (
        "kind shelf is pilot-ignition-control: trial 60 s\n"
        'labels shelf: TH as "W"\npart n is shelf: wait 6 min\nlabels n: PV as "P"\n'
    )
    done = replaced(FURNACE, new)
    assert "is pilot-ignition-control: pilot two-rod, trial 60 s, wait 6 min\n" in done.text
    assert 'labels box: TH as "W", PV as "P"\n' in done.text


def test_a_label_of_a_terminal_that_is_not_there_is_left_out() -> None:
    """A pilot with one rod has no terminal for a second, whatever its sheet of labels says."""
    new = 'part p is pilot-burner\nlabels p: ROD as "F", SPARK as "E"\n'
    done = replaced(example("workshop-heater-one-rod"), new)
    assert not done.problems
    assert 'labels pilot: SPARK as "E"\n' in done.text
    strip = "part s is terminal-strip\npart t is transformer\nwire t.R to s.1\n"
    kept = replaced(strip, 'part s is terminal-strip\nlabels s: 1 as "R", 7 as "C"\n')
    assert 'labels s: 1 as "R"' in kept.text
    assert not kept.problems


def test_claims_name_the_new_terminals() -> None:
    text = (
        f"{FURNACE}expect 24 V across box.PV and box.COM during trial\n"
        "expect main-valve off when limit open\nobserve 0 V across box.MV and box.VC\n"
        "expect 0.2 A through valve.PV..C, box.spark off when limit open\n"
    )
    done = replaced(text, NEW)
    assert not done.problems
    assert "expect 24 V across box.P and box.COM during trial\n" in done.text
    assert "observe 0 V across box.M and box.P/M\n" in done.text
    assert "expect main-valve off when limit open\n" in done.text
    assert "expect 0.2 A through valve.PV..C, box.spark off when limit open" in done.text


def test_what_names_a_terminal_that_is_gone_is_set_aside() -> None:
    text = f"{FURNACE}expect 24 V across box.PV and box.COM during trial\n"
    done = replaced(text, "part box is direct-ignition-control\npart burner is direct-burner\n")
    assert not done.problems
    assert done.set_aside == ("expect 24 V across box.PV and box.COM during trial",)
    assert "\n# expect 24 V across box.PV and box.COM during trial\n" in done.text


def test_a_claim_that_holds_no_longer_is_told() -> None:
    text = f"{FURNACE}expect pilot-valve on during trial\nexpect 9 V across box.COM and box.VC\n"
    same = replaced(text, NEW)
    assert same.refuted == ()
    long = text.replace("during trial", "during wait").replace("pilot-valve on", "main-valve off")
    done = replaced(long, "part n is pilot-ignition-control: retry lockout\n")
    assert done.proof.holds
    (told,) = done.refuted
    assert "wait" in told
    assert not done.holds


def test_a_claim_about_a_pilot_is_set_aside_where_there_is_none() -> None:
    text = f"{FURNACE}expect pilot-flame on during run\nexpect main-flame on during run\n"
    done = replaced(text, "part box is direct-ignition-control\npart burner is direct-burner\n")
    assert not done.problems
    assert done.set_aside == ("expect pilot-flame on during run",)
    assert done.holds


VARIANT = """
variant "with damper"
    part vent is vent-damper: draft-hood no
    plug box to vent: D-HOT to HOT, D-CALL to CALL, D-PROVED to PROVED, D-COM to COM
    wire xfmr.R to box.24V: orange, 18 AWG
    set box: damper-plug removed
variant "no ground"
    remove wire box.GND to pilot.HOOD
end
"""


def test_variants_go_with_the_device() -> None:
    new = f'{NEW}labels n: D-HOT as "1", D-CALL as "2", 24V as "R", GND as "BRN"\n'
    done = replaced(f"{FURNACE}{VARIANT}", new)
    assert not done.problems
    assert (
        "    plug box to vent: 1 to HOT, 2 to CALL, D-PROVED to PROVED, D-COM to COM\n" in done.text
    )
    assert "    wire xfmr.R to box.R: orange, 18 AWG\n" in done.text
    assert "    remove wire box.BRN to pilot.HOOD\n" in done.text
    assert [each.name for each in done.variants] == ["with damper", "no ground"]
    damper, ground = done.variants
    assert damper.proof.holds
    assert [finding.rule for finding in ground.proof.grave] == ["burner-ground-missing"]
    assert not ground.is_worse
    assert not done.new_mistakes
    assert not done.holds
    for each in variants(load_text(done.text)):
        assert not each.problems


def test_a_variant_that_no_longer_suits_is_told() -> None:
    new = "part box is pilot-ignition-control: damper-socket no\n"
    done = replaced(f"{FURNACE}{VARIANT}", new)
    assert done.new_mistakes


def test_a_valve_passed_by_its_name_is_passed_at_its_terminals() -> None:
    text = """\
part box is direct-ignition-control
part valve is gas-valve-2-wire
wire box.V to valve to box.VC
"""
    new = 'part v is gas-valve-2-wire\nlabels v: 1 as "HOT", C as "COLD"\n'
    assert "wire box.V to valve to box.VC\n" in replaced(text, new).text
    named = "part box is direct-ignition-control\npart v is gas-valve-2-wire\nwire box.V to v\n"
    assert "wire box.V to v\n" in replaced(named, new).text
    alias = "part v is gas-valve-2-wire\npart t is transformer\nwire t.R to v.V\nwire t.C to v.2\n"
    assert replaced(alias, "part v is gas-valve-2-wire: 0.3 A\n").text.endswith(
        "wire t.R to v.V\nwire t.C to v.2\n"
    )
    relay = "part k is relay\npart t is transformer\nwire t.R to k.A..B to t.C\n"
    labelled = 'part n is relay\nlabels n: A as "85", B as "86"\n'
    assert "wire t.R to k.85..86 to t.C\n" in replaced(relay, labelled).text


def test_a_part_passed_by_its_name_may_need_its_terminals_named() -> None:
    """The thermostat of two feeds is not passed as the plain one is."""
    text = "part t is transformer\npart s is thermostat\npart k is relay\nwire t.R to s to k.A\n"
    done = replaced(text, "part n is thermostat: feeds two\n")
    assert not done.problems
    lead = [{done.after.show(each.a), done.after.show(each.b)} for each in done.after.leads]
    assert {"t.R", "s.Rh"} in lead


@pytest.mark.parametrize("label", ['say "1"', "# 1", "to", "wire", "a.b", "é", "24V", "=1+1"])
def test_any_label_reads_back(label: str) -> None:
    found = diagram(FURNACE)
    device = Device("n", "pilot-ignition-control", {}, {"TH": label, "24V": "other"})
    done = replace(found, [device])
    assert not done.problems
    assert done.after.parts["box"].labels["TH"].text == label
    back = replace(done.after, [device_of(found.parts["box"])])
    assert {frozenset((lead.a, lead.b)) for lead in back.after.leads} == {
        frozenset((lead.a, lead.b)) for lead in found.leads
    }


def test_loose_and_untraced_ends_come_along() -> None:
    text = (
        f"{FURNACE}wire box.PV to open: blue\nwire box.MV to open: blue, capped\n"
        "wire box.D-CALL to unknown: blue\nwire box.GND to unknown: blue\n"
    )
    done = replaced(text, NEW)
    assert not done.problems
    assert "wire box.P to open: blue\n" in done.text
    direct = replaced(text, "part box is direct-ignition-control\npart b is direct-burner\n")
    assert not direct.problems
    assert "to open" not in direct.text
    assert direct.text.count("to unknown") == 2
    assert len([words for words in direct.left_over if "loose end" in words]) == 2


def test_a_file_that_includes_others_is_refused(tmp_path: Path) -> None:
    (tmp_path / "parts.wiring").write_text("part limit is high-limit\n", encoding="utf-8")
    main = tmp_path / "main.wiring"
    text = FURNACE.replace("part limit   is high-limit: setting 93 C", 'include "parts.wiring"')
    main.write_text(text, encoding="utf-8")
    built = load(main)
    assert not built.problems
    with pytest.raises(CannotReplaceError, match="includes other files"):
        replace(built.diagram, diagram(NEW))


def test_a_sketch_is_replaced_as_far_as_it_is_drawn() -> None:
    text = "part box is pilot-ignition-control\npart limit is high-limit\nwire limit to box.TH\n"
    done = replaced(text, NEW)
    assert "wire limit to box.W\n" in done.text
    assert (done.missing, done.left_over) == ((), ())
    assert [f.rule for f in check(done.after).findings] == [
        f.rule for f in done.before.checked.findings
    ]


@pytest.mark.parametrize(
    ("old", "new", "ground"),
    [
        (
            "furnace-room-heater",
            "part box is direct-ignition-control\npart pilot is direct-burner\n",
            "wire box.GND to pilot.FRAME",
        ),
        (
            "hangar-heater-direct",
            "part box is pilot-ignition-control\npart burner is pilot-burner\n",
            "burner.HOOD",
        ),
    ],
)
def test_text_and_table_name_the_terminal_of_the_new_kind(old: str, new: str, ground: str) -> None:
    done = replaced(example(old), new)
    assert ground in done.text
    (to,) = [each.to for each in done.crossings if each.off in ("pilot.HOOD", "burner.FRAME")]
    assert to in ground
    assert f"{to}:" in done.text
    assert done.proof.holds


def test_what_tells_of_the_old_wiring_is_to_be_read_again() -> None:
    done = replaced(STANDING, CONVERSION)
    lines = done.text.split("\n")
    title, header, *comments = done.old_comments
    assert title == "the title “Fire station heater, standing pilot”"
    assert header.startswith("line 1: # The heater of a fire station, whose pilot burns day and")
    assert [each.partition(": ")[2] for each in comments] == [
        "# the thermostat feeds the valve, past no control",
        "# the thermocouple",
    ]
    for each in comments:
        place, _, comment = each.removeprefix("line ").partition(": ")
        assert lines[int(place) - 1] == comment


def test_a_comment_over_leads_of_other_letters_stays_true() -> None:
    control = 'part box is pilot-ignition-control\nlabels box: PV as "P1", SENSE as "FS"\n'
    old = example("furnace-room-heater").source.text
    assert replaced(diagram(old), control).old_comments == ()
    behind = old.replace("plug box to valve: PV, MV, VC to C", "wire box.PV to valve.PV  # a # b")
    direct = "part box is direct-ignition-control\npart pilot is direct-burner\n"
    told = replaced(diagram(behind), direct).old_comments
    assert any(each.endswith(": # a # b") for each in told)
