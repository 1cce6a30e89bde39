"""A control replaced by one with other letters, and back, leaves the diagram as it was."""

from __future__ import annotations

from collections import Counter
from collections.abc import Hashable

import pytest

from tests.benchmarks.oracle import behaviour, differences
from tests.contract.test_examples import RIGHT, WRONG
from tests.replace.units import example, goes
from wirecheck import check, replace
from wirecheck.circuit.nets import Nets
from wirecheck.model.diagram import Diagram, Part
from wirecheck.replace.device import Device, device_of

#: Every terminal under another name than its own; some need quotes, one is another's own name.
LETTERS = {
    "TH": "W",
    "24V": "R hot",
    "COM": "C",
    "PV": "P-1",
    "MV": 'M "1"',
    "V": "GAS +",
    "VC": "TH",
    "GND": "# 3",
    "SENSE": "to",
    "SPARK": "HV",
    "D-HOT": "1",
    "D-CALL": "2",
    "D-PROVED": "3",
    "D-COM": "COM",
}
CONTROLS = [
    (name, part.name)
    for name in (*RIGHT, *WRONG)
    for part in example(name).parts.values()
    if part.family == "ignition-control"
]
#: Here a plug of the control itself is wrong, and a new control comes with it as it must be.
PLUG_LEFT_IN = "damper-plug-left-in"
#: So many leads are few enough to run everything that can be run.
SMALL = 20


def relabelled(part: Part) -> Device:
    """A control as this one, with other letters on it."""
    device = device_of(part)
    labels = {
        name: LETTERS[name] for name, spec in part.structure.terminals.items() if not spec.inner
    }
    return Device(device.name, device.kind, device.attributes, labels)


def leads(diagram: Diagram) -> Counter[Hashable]:
    """Where every lead runs, and what is known of it."""
    return Counter(
        (
            frozenset((lead.a, lead.b)),
            lead.role,
            tuple(sorted((name, str(given.value)) for name, given in lead.given.items())),
        )
        for lead in diagram.leads
    )


def nets(diagram: Diagram) -> set[frozenset[Hashable]]:
    return {frozenset(members) for members in Nets(diagram).members}


def but_for_the_part(diagram: Diagram, name: str) -> list[str]:
    """The lines of a text without the one that states a part."""
    return [line for line in diagram.source.text.splitlines() if f"part {name} " not in line]


@pytest.mark.parametrize(("name", "control"), CONTROLS)
def test_a_control_with_other_letters_and_back(name: str, control: str) -> None:
    found = example(name)
    part = found.parts[control]
    there = replace(found, [relabelled(part)], part=control)
    assert not there.problems
    new = there.after.parts[control]
    assert {label.text for label in new.labels.values()} <= set(LETTERS.values())
    assert leads(there.after) == leads(found)
    back = replace(there.after, [device_of(part)], part=control)
    assert not back.problems
    assert leads(back.after) == leads(found)
    if name != PLUG_LEFT_IN:
        assert nets(back.after) == nets(found)
    if part.kind.name not in found.kinds:
        assert but_for_the_part(back.after, control) == but_for_the_part(found, control)
    labels = {name: label.text for name, label in back.after.parts[control].labels.items()}
    assert labels == {name: label.text for name, label in part.labels.items()}
    if name in RIGHT:
        assert not there.left_over
        assert not there.missing
        assert there.proof.holds
        assert back.proof.holds
        assert dict(back.after.parts[control].values) == dict(part.values)


@pytest.mark.parametrize("name", [name for name in RIGHT if len(example(name).leads) <= SMALL])
def test_there_and_back_it_does_the_same(name: str) -> None:
    found = example(name)
    (control,) = [part for part in found.parts.values() if part.family == "ignition-control"]
    there = replace(found, [relabelled(control)])
    back = replace(there.after, [device_of(control)])
    assert differences(behaviour(found), behaviour(there.after)) == []
    assert differences(behaviour(found), behaviour(back.after)) == []


def test_the_cross_reference_names_old_and_new_labels() -> None:
    found = example("laundry-heater-own-labels")
    done = replace(found, [relabelled(found.parts["dryer"])])
    assert goes(done) == {
        "dryer.W": "dryer.W",
        "dryer.24 C": "dryer.C",
        "dryer.P": "dryer.P-1",
        "dryer.M": 'dryer.M "1"',
        "dryer.P/M C": "dryer.TH",
        "dryer.HV": "dryer.HV",
        "dryer.FLAME": "dryer.to",
        "dryer.BRN GND": "dryer.# 3",
    }
    (call,) = [each for each in done.crossings if each.off == "dryer.W"]
    assert (call.wire, call.colour, call.other) == ("7", "red", "timer.2")


def test_what_was_wrong_before_is_wrong_then_and_said() -> None:
    found = example("no-burner-ground")
    done = replace(found, [relabelled(found.parts["box"])])
    assert [finding.rule for finding in done.before.grave] == ["burner-ground-missing"]
    assert [finding.rule for finding in done.proof.grave] == ["burner-ground-missing"]
    assert not done.new_mistakes
    assert [f.rule for f in check(done.after).findings] == ["burner-ground-missing"]


def test_a_plug_that_was_wrong_is_right_on_the_new_control() -> None:
    found = example(PLUG_LEFT_IN)
    done = replace(found, [relabelled(found.parts["box"])])
    assert [finding.rule for finding in done.before.grave] == [PLUG_LEFT_IN]
    assert done.proof.holds
    assert "take the shorting plug out of the damper socket" in " ".join(
        task.words for task in done.tasks
    )
