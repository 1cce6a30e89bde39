"""Which burner a control lights, and the terminals their ignition and ground leads join."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from wirecheck.model.diagram import Part, Terminal
from wirecheck.model.finding import Breaks
from wirecheck.rules.facts import Facts


class Hookup(NamedTuple):
    """A control and its burner.

    ``spark``, ``sense`` and ``ground`` are terminals of the control; ``electrode``, ``rod`` (None
    on a one-rod pilot, whose electrode also senses) and ``metal`` are the burner's.
    """

    control: Part
    burner: Part
    spark: Terminal
    sense: Terminal
    ground: Terminal
    electrode: Terminal
    rod: Terminal | None
    metal: Terminal
    direct: bool

    @property
    def senses(self) -> Terminal:
        """What senses the flame at the burner: the rod, or a one-rod pilot's electrode."""
        return self.rod or self.electrode

    @property
    def sense_lead(self) -> tuple[Terminal, ...]:
        """The terminals that the sense lead joins; with one rod nothing belongs on the first."""
        return (self.sense,) if self.rod is None else (self.sense, self.rod)

    @property
    def flame(self) -> str:
        """What is to be lit and proved first: ``pilot`` or, with direct ignition, ``burner``."""
        return "burner" if self.direct else "pilot"

    @property
    def gas(self) -> str:
        """The gas that flows while it tries to light."""
        return "main gas" if self.direct else "pilot gas"

    @property
    def sparkless(self) -> Breaks:
        """What a whole trial breaks in which gas flows and nothing sparks.

        Unlit gas is a safety matter whichever lead is the cause, the more so where it is main gas.
        Only the loss of the one lead of a one-rod pilot the trade counts among the failures to
        light, and so it is counted here.
        """
        return Breaks.SAFETY if self.direct or self.rod is not None else Breaks.OPERATION

    def grounded(self, facts: Facts, end: Terminal) -> bool:
        """Whether an end is on earth, on the burner's metal or on the control's ground."""
        on_earth = facts.net(end) == facts.earth
        return on_earth or facts.joined(end, self.ground) or facts.joined(end, self.metal)

    def exchanged_with_ground(self, facts: Facts) -> bool:
        """Whether spark and ground lead land on each other's place at the burner."""
        spark_on_metal = facts.joined(self.spark, self.metal)
        ground_on_electrode = facts.joined(self.ground, self.electrode)
        return spark_on_metal and ground_on_electrode and not facts.joined(self.spark, self.ground)


def hookups(facts: Facts) -> tuple[Hookup, ...]:
    """Every control that has a burner drawn, with that burner; use it as ``facts.once(hookups)``.

    The spark lead decides which burner is meant, then the sense lead, then any other lead between
    the two, then that there is only one burner that no other control has.
    """
    at_net = dict(reversed(list(_burner_ends(facts))))
    burners: dict[str, Part] = {}
    for control in facts.of("ignition-control"):
        ground = facts.terminal(control, "burner-ground")
        for end in (*control.with_role("spark"), *control.with_role("sense")):
            burner = at_net.get(facts.net(end))
            if burner is not None and not facts.joined(end, ground):
                burners.setdefault(control.key, burner)
    taken = {burner.key for burner in burners.values()}
    found = []
    for control in facts.of("ignition-control"):
        burner = burners.get(control.key)
        if burner is None:
            companion = facts.companion(control, "burner")
            burner = companion if companion and companion.key not in taken else None
        if burner is not None:
            found.append(_hookup(facts, control, burner))
    return tuple(found)


def _burner_ends(facts: Facts) -> Iterator[tuple[int, Part]]:
    """The burners by the nets of their electrodes, then of their rods."""
    for role in ("electrode", "rod"):
        for burner in facts.of("burner"):
            for end in burner.with_role(role):
                yield facts.net(end), burner


def _hookup(facts: Facts, control: Part, burner: Part) -> Hookup:
    def only(part: Part, role: str) -> Terminal:
        (terminal,) = part.with_role(role)
        return terminal

    return Hookup(
        control=control,
        burner=burner,
        spark=only(control, "spark"),
        sense=only(control, "sense"),
        ground=only(control, "burner-ground"),
        electrode=only(burner, "electrode"),
        rod=facts.terminal(burner, "rod"),
        metal=only(burner, "burner-metal"),
        direct=facts.terminal(control, "valve-feed") is not None,
    )
