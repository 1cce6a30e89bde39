"""What somebody sees who works a unit: a call for heat, and the same with each protection open.

Two wirings for which it is the same differ in nothing that the simulation shows.
"""

from __future__ import annotations

from collections.abc import Hashable, Iterator
from typing import Final, NamedTuple

from wirecheck.circuit.nets import Element, Nets
from wirecheck.model.diagram import Diagram
from wirecheck.model.kind import SwitchSpec
from wirecheck.sequence.answers import View
from wirecheck.sequence.script import Opening, Script, heat_call
from wirecheck.sequence.simulator import Simulation
from wirecheck.sequence.trace import Trace

#: Seconds of a call in which everything happens that will happen, and of what follows it.
_CALL_S, _AFTER_S = 200.0, 40.0
_TO_OPEN: Final = frozenset({"safety-switch", "hand-switch", "overcurrent"})
_DESTROYED: Final = frozenset({"blows", "trips", "burns out", "destroyed"})


class Behaviour(NamedTuple):
    """What a unit does.

    Attributes:
        call: on a call for heat every track with its states and when they began, to the second;
            the microamps of a flame, which nobody sees, left out.
        begins: on that call there is a spark, or an operator of a valve opens.
        destroys: something blows, trips or burns out.
        protected: the same on a call with each safety, hand switch and fuse open, and on one with
            metal that may conduct and coils that may act taken to.
    """

    call: Hashable
    begins: bool
    destroys: bool
    protected: Hashable


def behaviour_of(diagram: Diagram) -> Behaviour:
    """Run a diagram through its calls."""
    nets = Nets(diagram)
    whole_call = heat_call(length_s=_CALL_S, watch_s=_AFTER_S)
    trace = _run(nets, whole_call, View.OPERATION)
    opened = [
        heat_call(length_s=_CALL_S, watch_s=_AFTER_S, opened=(Opening(each.part.key, each.name),))
        for each in _guards(nets)
    ]
    return Behaviour(
        _history(trace),
        any(
            ("spark" in track or "operator" in track) and trace.ever(track, "on")
            for track in trace.tracks
        ),
        any(change.state in _DESTROYED for change in trace.changes),
        tuple(_history(_run(nets, script, View.DANGER)) for script in (whole_call, *opened)),
    )


def _guards(nets: Nets) -> Iterator[Element]:
    """The contacts that are there to stop the unit."""
    for elements in nets.elements_of.values():
        for each in elements:
            if isinstance(each.spec, SwitchSpec) and (
                each.spec.safety or each.part.family in _TO_OPEN
            ):
                yield each


def _run(nets: Nets, script: Script, view: View) -> Trace:
    return Simulation(nets, script, view).run()


def _history(trace: Trace) -> Hashable:
    return tuple(
        sorted(
            (track, tuple((round(each.time_s), each.state) for each in trace.of(track)))
            for track in trace.tracks
            if "flame signal" not in track
        )
    )
