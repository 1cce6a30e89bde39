"""The judge of the campaign leaves out only runs that cannot differ."""

from __future__ import annotations

import pytest

from tests.benchmarks.campaign import example, sample
from tests.benchmarks.oracle import Behaviour, Judge, differences
from tests.benchmarks.same_runs import circuit, without_idle
from wirecheck.circuit.nets import Nets
from wirecheck.sequence.script import Script, Stimulus
from wirecheck.sequence.simulator import Simulation


@pytest.mark.parametrize("name", ["furnace-two-speed-blower", "workshop-heater-one-rod"])
def test_the_first_difference_is_one_of_all(name: str) -> None:
    original = example(name)
    judge, right = Judge(original.diagram), Behaviour(original.diagram)
    for mistake in sample(original, 20):
        diagram = original.with_mistakes(mistake)
        first = judge.first_difference(diagram)
        other = Behaviour(diagram)
        every = [each for each in (*right.run, *right.metered) if right[each] != other[each]]
        assert first in every if every else first == ""
        assert set(differences(right, other)) == set(every)


def test_the_same_circuit_runs_alike() -> None:
    original = example("two-zone-boiler")
    right = Behaviour(original.diagram)
    diagrams = map(original.with_mistakes, sample(original, 150))
    alike = [each for each in diagrams if circuit(Nets(each)) == right.circuit][:4]
    assert alike
    for diagram in alike:
        other = Behaviour(diagram)
        assert [name for name in right.run if right[name] != other[name]] == []


def test_a_contact_with_nothing_behind_it_changes_no_run() -> None:
    nets = Nets(example("furnace-room-heater").diagram)
    stat = next(part for part in nets.diagram.parts.values() if part.family == "thermostat")
    names = {switch.name for switch in stat.structure.switches}
    left = set()
    for name in names:
        script = Script((Stimulus(0.0, "position", "closed", stat.key, name),), -10.0, 30.0)
        bare = without_idle(nets, script)
        if bare.stimuli:
            left.add(name)
            continue
        whole, without = (Simulation(nets, each).run() for each in (script, bare))
        shown = {track: whole.of(track) for track in without.tracks}
        assert shown == {track: without.of(track) for track in without.tracks}
    assert "heat" in left
    assert left != names
