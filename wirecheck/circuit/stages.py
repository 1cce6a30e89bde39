"""The positions of all contacts in each stage of a call, from what the part library says of them.

A burner that is right goes through these stages: idle, the call, the trial for ignition, the run;
and in the run each safety may open.  What a wrong one really does is for `wirecheck.sequence`.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from enum import Enum
from typing import cast

from wirecheck.circuit.netlist import ElementKey
from wirecheck.circuit.nets import Element, Nets
from wirecheck.model.kind import SwitchSpec


class Stage(Enum):
    """A stage of a call, in the order in which they come.

    CALL: the thermostat has closed and coils have pulled in; nothing has moved yet.
    TRIAL: dampers and zone valves are open, air and water move, the first gas is on.
    RUN: the flame is proved and all gas is on.
    """

    IDLE = 0
    CALL = 1
    TRIAL = 2
    RUN = 3


def positions(nets: Nets, contacts: Sequence[ElementKey], stage: Stage) -> tuple[bool, ...]:
    """Which of the contacts are closed in a stage.

    Args:
        nets: of the diagram.
        contacts: by key, in any order.
        stage: the stage.
    """
    return tuple(
        _closed(_element(nets, key), stage, _since(_element(nets, key), key)) for key in contacts
    )


def each_safety_open(
    nets: Nets, contacts: Sequence[ElementKey]
) -> Iterator[tuple[ElementKey, tuple[bool, ...]]]:
    """The run with one safety open, for each in turn."""
    running = positions(nets, contacts, Stage.RUN)
    for number, key in enumerate(contacts):
        if running[number] and _spec(_element(nets, key)).safety:
            yield key, (*running[:number], False, *running[number + 1 :])


def _closed(element: Element, stage: Stage, since: Stage) -> bool:
    spec = _spec(element)
    return (spec.running if stage.value >= since.value else spec.normal) == "closed"


def _since(element: Element, key: ElementKey) -> Stage:
    """From which stage a contact stands as in a running burner."""
    spec = _spec(element)
    if spec.moved_by == "control":
        return Stage.TRIAL if key.number == 0 else Stage.RUN
    if spec.moved_by in ("motor", "air", "flow"):
        return Stage.TRIAL
    if spec.moved_by == "coil":
        return Stage.CALL
    if spec.moved_by == "temperature" and spec.normal == "open":
        return Stage.CALL if element.part.family == "thermostat" else Stage.RUN
    return Stage.IDLE


def _element(nets: Nets, key: ElementKey) -> Element:
    return nets.elements_of[key.part][key.number]


def _spec(element: Element) -> SwitchSpec:
    return cast(SwitchSpec, element.spec)
