"""The moments that a claim is about: calls for heat that are run, and their rests that fit.

A claim's phase comes in a call with the gas on, or else in one with the gas shut.  Where it says
`when limit open`, that contact is put so: once before the call, and once in the middle of the run.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from typing import Final, NamedTuple

from wirecheck.circuit.companions import Companions
from wirecheck.circuit.nets import Nets
from wirecheck.model.claim import Claim, State
from wirecheck.model.diagram import Part
from wirecheck.model.kind import SwitchSpec
from wirecheck.sequence.answers import View
from wirecheck.sequence.calls import Run, length_without_gas_s
from wirecheck.sequence.control import Phase
from wirecheck.sequence.script import CALL_LENGTH_S, Script, Stimulus, heat_call
from wirecheck.sequence.trace import Rest

#: What belongs to the burner of a control.
_OF_A_BURNER: Final = ("burner", "gas-valve", "vent-damper", "valve-adapter")
#: When in a call a contact moves that moves in the run: all that starts late has started by then.
MID_RUN_S: Final = CALL_LENGTH_S / 2
#: Which phases a sketch without a control has.
_WITHOUT_CONTROL: Final = ("idle", "run")

#: What moves contacts that no run moves by itself.
_BY_THEMSELVES: Final = ("temperature", "pressure", "level", "hand", "door")

#: Whether a state holds at a moment.
Holds = Callable[[State, "Moment"], bool]


class Moment(NamedTuple):
    """The unit at rest in a run."""

    run: Run
    rest: Rest

    @property
    def time_s(self) -> float:
        """When it began."""
        return self.rest.time_s

    @property
    def called(self) -> bool:
        """Whether the call is on."""
        return 0 <= self.time_s < call_ends_s(self.run)


#: Moments that follow each other.
Stretch = tuple[Moment, ...]


class Found(NamedTuple):
    """The moments that a claim is about.

    Attributes:
        stretches: in order; empty if there is none.
        runs: that were looked at.
    """

    stretches: tuple[Stretch, ...]
    runs: tuple[Run, ...]


class _Put(NamedTuple):
    """Contacts put into a position, and when; before the call if it is None."""

    states: tuple[State, ...]
    after_s: float | None


class Moments:
    """The runs of one diagram, each made when it is first asked for.

    Attributes:
        nets: of the diagram.
        controls: its ignition controls.
    """

    def __init__(self, nets: Nets, call: Callable[..., Script] = heat_call) -> None:
        """Run nothing yet; ``call`` writes the script of a call as `heat_call` does."""
        self.nets = nets
        self._call = call
        parts = nets.diagram.parts.values()
        self.controls = [part for part in parts if part.family == "ignition-control"]
        self._companions = Companions(nets.diagram)
        self._runs: dict[tuple[_Put, bool, View], Run] = {}

    def of(self, claim: Claim, holds: Holds, view: View = View.OPERATION) -> Found:
        """The moments of a claim, each at which its phase is on and its conditions hold.

        Args:
            claim: whose.
            holds: says whether a condition holds at a moment.
            view: which answer of a coil counts.
        """
        looked: list[Run] = []
        found: list[Stretch] = []
        flame_out = any(
            each.subject.signal.endswith("flame") and not each.on for each in claim.when
        )
        for gas in (True, False):
            for put in self._puts(claim, holds):
                run = self.run(put, view, gas=gas)
                looked.append(run)
                found += self._stretches(run, claim, holds)
            if found and not flame_out:
                break
        return Found(tuple(found), tuple(looked))

    def run(self, put: _Put, view: View, *, gas: bool) -> Run:
        """A call with contacts put into positions."""
        key = (put, gas, view)
        if key not in self._runs:
            self._runs[key] = Run(self.nets, self._script(put, gas=gas), view)
        return self._runs[key]

    def plain(self, *, gas: bool = True) -> Run:
        """A call in which nothing is put anywhere."""
        return self.run(_Put((), None), View.OPERATION, gas=gas)

    def controls_of(self, claim: Claim) -> list[Part]:
        """The controls that a claim is about: those whose parts it names, or else all."""
        if len(self.controls) < 2:
            return self.controls
        named = [
            control
            for control in self.controls
            if claim.parts
            & {
                control.key,
                *(
                    part.key
                    for family in _OF_A_BURNER
                    for part in self._companions.all_of(control, family)
                ),
            }
        ]
        return named or self.controls

    # ---- what is run -------------------------------------------------------------------------

    def _puts(self, claim: Claim, holds: Holds) -> Iterator[_Put]:
        """Which contacts are put into which position for a claim."""
        contacts = [each for each in claim.when if each.subject.signal == "contact"]
        never = [each for each in contacts if not self._comes(each, holds)]
        opened = [each for each in contacts if not each.on and self._is_moved_here(each)]
        shut = tuple(each for each in never if each.on and self._is_moved_here(each))
        if not any(each in never for each in opened):
            yield _Put(shut, None)
        if opened:
            yield _Put((*shut, *opened), None)
            yield _Put((*shut, *opened), MID_RUN_S)

    def _comes(self, state: State, holds: Holds) -> bool:
        """Whether a contact stands so in some moment of a call, by itself."""
        return any(holds(state, each) for each in _moments(self.plain()))

    def _is_moved_here(self, state: State) -> bool:
        """Whether a contact can be put into a position: it is not the control's own."""
        part = self.nets.diagram.parts[state.subject.part]
        specs = [each for each in part.structure.switches if each.name == state.subject.name]
        return all(_is_outside(each, state) for each in specs)

    def _script(self, put: _Put, *, gas: bool) -> Script:
        length_s = CALL_LENGTH_S if gas else length_without_gas_s(self.controls)
        script = self._call(length_s=length_s, gas=gas)
        at_s = script.starts_s if put.after_s is None else put.after_s
        moved = (
            Stimulus(
                at_s,
                "position",
                "closed" if each.on else "open",
                each.subject.part,
                each.subject.name,
            )
            for each in put.states
        )
        stimuli = sorted((*moved, *script.stimuli), key=lambda each: each.time_s)
        return script._replace(stimuli=tuple(stimuli))

    # ---- which of it -------------------------------------------------------------------------

    def _stretches(self, run: Run, claim: Claim, holds: Holds) -> Iterator[Stretch]:
        controls = self.controls_of(claim)
        ends_s = call_ends_s(run)
        stretch: list[Moment] = []
        for moment in _moments(run):
            is_meant = _is_in_phase(moment, claim, controls, ends_s) and all(
                holds(each, moment) for each in claim.when
            )
            if is_meant:
                stretch.append(moment)
            elif stretch:
                yield tuple(stretch)
                stretch = []
        if stretch:
            yield tuple(stretch)


def _is_outside(spec: SwitchSpec, state: State) -> bool:
    """Whether a contact is put into a position by something that the run does not know of."""
    if state.on:
        return spec.moved_by in _BY_THEMSELVES
    return spec.moved_by not in ("control", "coil")


def _moments(run: Run) -> Iterator[Moment]:
    """The rests of a run, as long as nothing in it has burnt out or blown."""
    return (Moment(run, rest) for rest in run.trace.rests if rest.time_s < run.breaks_s)


def call_ends_s(run: Run) -> float:
    """When the call of a run ends."""
    return max(each.time_s for each in run.script.stimuli if each.what == "call")


def _is_in_phase(moment: Moment, claim: Claim, controls: Sequence[Part], ends_s: float) -> bool:
    in_call = moment.time_s < ends_s
    if not claim.phase:
        return in_call or bool(claim.when)
    called = moment.time_s >= 0 and in_call
    if not controls:
        return in_call and claim.phase == ("run" if called else "idle")
    phases = moment.rest.phases
    stands_by = claim.phase != Phase.IDLE.value or not called or bool(claim.when)
    return in_call and stands_by and all(phases[each.key] == claim.phase for each in controls)


def is_a_phase_here(claim: Claim, controls: Iterable[Part]) -> bool:
    """Whether the diagram can have the phase of a claim: without a control two are left."""
    return not claim.phase or bool(list(controls)) or claim.phase in _WITHOUT_CONTROL
