"""At which moments of a call readings are taken: those of a good unit, which a bad one may miss."""

from __future__ import annotations

from functools import cached_property

from wirecheck.circuit.companions import Companions
from wirecheck.circuit.nets import Nets
from wirecheck.model.diagram import Part, Terminal
from wirecheck.model.quantity import Quantity
from wirecheck.sequence.burner import LIGHTS_FROM_PILOT_S
from wirecheck.sequence.control import Phase
from wirecheck.sequence.script import CALL_LENGTH_S
from wirecheck.troubleshoot.faulty_unit import FaultyUnit, Moment
from wirecheck.troubleshoot.reading import Stage
from wirecheck.troubleshoot.symptoms import story_of

#: So long after something began that it has settled, in seconds.
SETTLED_S = 0.5
#: When a unit of which nothing is known tries, and when it runs: seconds from the call.
TRIES_S, RUNS_S = 1.0, 20.0
#: Volts that a meter tells from none.
NOTICED_V = 1.0


class Moments:
    """The moments of one diagram.

    Attributes:
        controls: its ignition controls, in the order of the text.
        companions: which burner, valve and damper goes with which.
    """

    def __init__(self, nets: Nets, good: FaultyUnit) -> None:
        """Read them off a call of the unit as drawn."""
        self._nets = nets
        self._good = good
        self.companions = Companions(nets.diagram)
        self.controls = [
            part for part in nets.diagram.parts.values() if part.family == "ignition-control"
        ]

    def at_s(self, stage: Stage, control: Part | None) -> float:
        """Seconds from the call; nan in a stage without one."""
        if stage is Stage.TRIAL:
            return self._tries[control.key] if control else TRIES_S
        if stage is Stage.RUN:
            return self._runs[control.key] if control else self._latest_s
        return CALL_LENGTH_S - 1 if stage is Stage.WARM else float("nan")

    def is_late(self, a: Terminal, b: Terminal) -> bool:
        """Whether a good unit shows other volts between two terminals once it is warm."""
        lit, warm = (
            self._good.volts(Moment(gas=True, time_s=self.at_s(stage, None)), a, b)
            for stage in (Stage.RUN, Stage.WARM)
        )
        return abs(lit - warm) > NOTICED_V

    @cached_property
    def _latest_s(self) -> float:
        return max(self._runs.values(), default=RUNS_S)

    @cached_property
    def _tries(self) -> dict[str, float]:
        """When each control tries, with the gas cock shut."""
        trace = self._good.dry_trace
        found = {}
        for control in self.controls:
            trials = story_of(self._nets, trace, control).spans_in(Phase.TRIAL)
            found[control.key] = trials[0].start_s + SETTLED_S if trials else TRIES_S
        return found

    @cached_property
    def _runs(self) -> dict[str, float]:
        """When each has lit: while one that has not still tries."""
        found = {}
        for control in self.controls:
            story = story_of(self._nets, self._good.trace, control)
            runs = story.spans_in(Phase.RUN)
            if not runs:
                found[control.key] = RUNS_S
                continue
            lit_s = runs[0].start_s + LIGHTS_FROM_PILOT_S + SETTLED_S
            trial = control.values.get("trial")
            tries_s = trial.high_base if isinstance(trial, Quantity) else CALL_LENGTH_S
            trials = story.spans_in(Phase.TRIAL)
            found[control.key] = min(lit_s, trials[0].start_s + tries_s - SETTLED_S)
        return found
