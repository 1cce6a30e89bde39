"""A diagram run through a script, told: its trace, how it ends, what is dangerous in it."""

from __future__ import annotations

from typing import NamedTuple

from wirecheck.circuit.nets import Nets
from wirecheck.model.diagram import Diagram
from wirecheck.sequence.answers import View
from wirecheck.sequence.chain import chain
from wirecheck.sequence.dangers import Danger, Scene, dangers
from wirecheck.sequence.script import Script
from wirecheck.sequence.simulator import Simulation
from wirecheck.sequence.story import Story
from wirecheck.sequence.trace import Trace
from wirecheck.sequence.untraced import untraced
from wirecheck.sequence.verdict import Outcome, outcome


class Told(NamedTuple):
    """What one control did.

    Attributes:
        control: its name.
        outcome: how it ends.
        dangers: in order of time.
    """

    control: str
    outcome: Outcome
    dangers: tuple[Danger, ...]


class Run(NamedTuple):
    """One run of a diagram.

    Attributes:
        diagram: what ran.
        script: what happened to it.
        view: which answer counted where a coil may or may not act, or metal may or may not conduct.
        trace: who changed when, and why.
        told: of each control; empty if none is drawn.
    """

    diagram: Diagram
    script: Script
    view: View
    trace: Trace
    told: tuple[Told, ...]

    @property
    def dangers(self) -> tuple[Danger, ...]:
        """Those of all controls, each once, in order of time."""
        found = dict.fromkeys(danger for told in self.told for danger in told.dangers)
        return tuple(sorted(found, key=lambda danger: danger.time_s))


def run(diagram: Diagram, script: Script, view: View = View.OPERATION) -> Run:
    """Run a diagram through a script."""
    nets = Nets(diagram)
    simulation = Simulation(nets, script, view)
    trace = simulation.run()
    many = len(simulation.machines) > 1
    stories = [Story(trace, machine.part, many=many) for machine in simulation.machines]
    told = tuple(
        Told(
            story.control.name,
            outcome(story, untraced(nets, story.control)),
            dangers(
                Scene(nets, script, trace, story, chain(nets, story.control) if many else None)
            ),
        )
        for story in stories
    )
    return Run(diagram, script, view, trace, told)
