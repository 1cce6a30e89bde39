"""Everything that moves beside the gas: coils and contacts, dampers and zone valves, air and water.

`Plant` answers in which position each contact stands, follows the volts that the circuit then has,
and says when something that takes time will be done.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import cast

from wirecheck.circuit.netlist import ElementKey
from wirecheck.circuit.nets import Element, Nets
from wirecheck.model.diagram import Part
from wirecheck.model.kind import LoadSpec, SwitchSpec
from wirecheck.model.quantity import Quantity
from wirecheck.sequence.answers import View
from wirecheck.sequence.coils import Coils
from wirecheck.sequence.contacts import Mover, contact
from wirecheck.sequence.control import OFF, Outputs
from wirecheck.sequence.travel import INSTANT_S, Travel

#: Seconds until moved air or water is proved by its switch (common practice, no source).
PROVES_FLOW_S = 3.0
#: Seconds of main flame until a fan switch makes, and without until it breaks (common practice).
FAN_ON_S, FAN_OFF_S = 45.0, 60.0
#: Travel of a damper or zone valve where its kind does not say (common practice, no source).
TRAVEL_S = 15.0


class Plant:
    """Everything that moves, beside the gas.

    Attributes:
        coils: coils, operators and motors.
        contacts: all contacts, in the order of the circuit's switches.
        callers: keys of the parts that can call for heat.
        calling: keys of those that do.
        forced: positions put from outside, by part and contact name ("" for all of a part).
        blown: keys of fuses and breakers that opened in this run.
        outputs: what each control does, by its key.
        travels: what is on its way, by part key, or by ``air``, ``water``, ``heat``.
    """

    def __init__(
        self, nets: Nets, order: Sequence[ElementKey], view: View, callers: frozenset[str]
    ) -> None:
        """All as on the shelf.

        Args:
            nets: of the diagram.
            order: the contacts in the order in which `positions` gives them.
            view: which answer of a coil counts.
            callers: keys of the parts that call for heat.
        """
        self.callers = callers
        self._nets = nets
        self.coils = Coils(nets, view)
        self.calling: set[str] = set()
        self.forced: dict[tuple[str, str], str] = {}
        self.blown: set[str] = set()
        self.outputs: dict[str, Outputs] = {}
        self.travels: dict[str, Travel] = {}
        self._fan_on = False
        self._media = _media(self.coils.elements)
        for name, movers in self._media.items():
            if movers:
                self.travels[name] = Travel(PROVES_FLOW_S, 0.0)
        self.movable = [
            part
            for part in nets.diagram.parts.values()
            if part.family in ("vent-damper", "zone-valve")
        ]
        for part in self.movable:
            self.travels[part.key] = _blade(part)
        self.contacts = [
            contact(key, element, self._mover(element))
            for key in order
            for element in (nets.elements_of[key.part][key.number],)
        ]

    # ---- contacts --------------------------------------------------------------------------

    def positions(self, now_s: float) -> tuple[bool, ...]:
        """Which contacts are closed, in their order."""
        forced = self.forced
        if not forced:
            return tuple(each.closed(now_s, "") for each in self.contacts)
        return tuple(
            each.closed(
                now_s,
                forced.get((each.key.part, each.spec.name)) or forced.get((each.key.part, ""), ""),
            )
            for each in self.contacts
        )

    def _mover(self, element: Element) -> Mover:
        """What moves a contact."""
        part, spec = element.part, cast(SwitchSpec, element.spec)
        if spec.moved_by == "motor":
            return self.travels[part.key].is_open
        medium = self._medium(spec)
        if medium is not None:
            return self.travels[medium].is_open
        if spec.moved_by == "temperature" and spec.name == "fan":
            self.travels.setdefault("heat", Travel(FAN_ON_S, FAN_OFF_S))
            return lambda _now_s: self._fan_on
        if part.family == "thermostat" or part.key in self.callers:
            return lambda _now_s: part.key in self.calling and self._is_powered(part)
        place = 0 if element is self._nets.elements_of[part.key][0] else 1
        coil = spec.coil or ""
        at_once: dict[str, Mover] = {
            "control": lambda _now_s: self.outputs.get(part.key, OFF)[place],
            "overcurrent": lambda _now_s: part.key not in self.blown,
            "coil": lambda _now_s: self.coils.acts(part, coil),
            "level": lambda _now_s: self._is_powered(part),
        }
        return at_once.get(spec.moved_by, lambda _now_s: True)

    def _medium(self, spec: SwitchSpec) -> str | None:
        """What must move for a proving switch to make; None if nothing drawn moves it.

        An air switch proves the combustion air where that has a fan of its own.  A pressure
        switch that closes proves the draught of such a fan; without one it stands as in a
        running burner.
        """
        inducer = "combustion-air" if self._media["combustion-air"] else None
        air = "air" if self._media["air"] else None
        water = "water" if self._media["water"] else None
        if spec.moved_by == "pressure" and spec.normal == "open":
            return inducer
        return {"air": inducer or air, "flow": water}.get(spec.moved_by)

    def _is_powered(self, part: Part) -> bool:
        """Whether a thermostat or probe that needs power of its own has it.

        A thermostat that robs its power through the load it calls keeps some in store.
        """
        if part.values.get("power") == "robbing" or not self.coils.keys(part, "electronics"):
            return True
        return self.coils.acts(part, "electronics")

    # ---- what takes time -------------------------------------------------------------------

    def aim(self, now_s: float, *, heat: bool) -> None:
        """Send everything the way that its motor, and the heat of the flame, now ask for."""
        for part in self.movable:
            wanted = self._wants_open(part)
            if wanted is not None:
                self.travels[part.key].aim(now_s, wanted_open=wanted)
        for medium, movers in self._media.items():
            if movers:
                moving = any(self.coils.acting[key] for key in movers)
                self.travels[medium].aim(now_s, wanted_open=moving)
        fan = self.travels.get("heat")
        if fan is not None:
            fan.aim(now_s, wanted_open=heat)
            if fan.is_open(now_s):
                self._fan_on = True
            elif fan.is_shut(now_s):
                self._fan_on = False

    def _wants_open(self, part: Part) -> bool | None:
        """Which way a damper or zone valve goes; None if it stays where it is."""
        if part.values.get("stuck"):
            return None
        if part.values.get("hold-open") == "set" or self.coils.acts(part, "motor"):
            return True
        action = part.values.get("action", "spring-shut")
        if action == "spring-shut":
            return False
        if self.coils.acts(part, "closing motor"):
            return False
        return True if action == "spring-open" else None

    def next_arrival_s(self, now_s: float) -> float | None:
        """When the next thing under way arrives."""
        arrivals = (travel.arrives_s for travel in self.travels.values())
        return min(
            (time_s for time_s in arrivals if time_s is not None and time_s > now_s + INSTANT_S),
            default=None,
        )

    def proved_media(self) -> Iterator[str]:
        """What moves and is proved by some switch: ``combustion-air``, ``air``, ``water``."""
        proved = {self._medium(each.spec) for each in self.contacts}
        return (medium for medium in self._media if medium in proved)

    def proves(self, spec: SwitchSpec) -> bool:
        """Whether a contact is there to prove that air or water moves."""
        return self._medium(spec) is not None


def _media(loads: Mapping[ElementKey, Element]) -> dict[str, list[ElementKey]]:
    """The motors that move each medium."""
    media: dict[str, list[ElementKey]] = {"combustion-air": [], "air": [], "water": []}
    for key, element in loads.items():
        if isinstance(element.spec, LoadSpec) and element.spec.moves:
            media[element.spec.moves].append(key)
    return media


def _blade(part: Part) -> Travel:
    """A damper or zone valve as the unit stands idle: shut, unless it is held or stuck open."""
    opening = part.values.get("opening")
    travel = Travel(opening.high_base if isinstance(opening, Quantity) else TRAVEL_S)
    if part.values.get("hold-open") == "set" or part.values.get("stuck") == "open":
        travel.put(1.0)
    return travel
