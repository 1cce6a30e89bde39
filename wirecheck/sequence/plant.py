"""What the electricity moves: coils, motors, dampers, end switches, gas and flames.

`Plant` holds the state of everything that is no control, answers in which position each contact
stands, and says when something that takes time will be done.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from wirecheck.circuit.netlist import ElementKey, highest
from wirecheck.circuit.nets import Element, Nets
from wirecheck.model.diagram import Part
from wirecheck.model.kind import LoadSpec, SwitchSpec
from wirecheck.model.quantity import Quantity
from wirecheck.sequence.answers import View, coil_answer

#: Seconds until moved air or water is proved by its switch (common practice, no source).
PROVES_FLOW_S = 3.0
#: Seconds of main flame until a fan switch makes, and without until it breaks (common practice).
FAN_ON_S, FAN_OFF_S = 45.0, 60.0
#: Travel of a damper or zone valve where its kind does not say (common practice, no source).
TRAVEL_S = 15.0


class Timer(NamedTuple):
    """Something under way: when it will be done."""

    done_s: float


class Plant:
    """Everything that moves, beside the controls."""

    def __init__(self, nets: Nets, view: View) -> None:
        """All at rest."""
        self.nets = nets
        self.view = view
        self.call = False
        self.forced: dict[str, str] = {}
        self.blown: set[str] = set()
        self.acting: dict[ElementKey, bool] = {}
        self.proved: dict[str, bool] = {}
        self.travel: dict[str, Timer] = {}
        self.fan_on = False
        self.loads = {
            ElementKey(part, number): element
            for part, elements in nets.elements_of.items()
            for number, element in enumerate(elements)
            if isinstance(element.spec, LoadSpec)
        }
        self._movers = {
            medium: [key for key, element in self.loads.items() if _moves(element) == medium]
            for medium in ("air", "water")
        }

    # ---- coils and motors ------------------------------------------------------------------

    def set_volts(self, volts: dict[ElementKey, float]) -> bool:
        """Take the volts across every load; whether any coil, operator or motor changed."""
        changed = False
        for key, element in self.loads.items():
            spec = element.spec
            assert isinstance(spec, LoadSpec)
            if spec.volts is None or key not in volts:
                continue
            value = element.part.values.get(spec.volts) if isinstance(spec.volts, str) else None
            rated = highest(value) if isinstance(spec.volts, str) else spec.volts
            was = self.acting.get(key, False)
            answer = coil_answer(element.part, volts[key], rated, is_open=was)
            now = answer.counts(self.view) and not _is_dead(element)
            if now != was:
                self.acting[key] = now
                changed = True
        return changed

    def acts(self, part: Part, name: str) -> bool:
        """Whether a load of a part, by its name, acts."""
        return any(
            self.acting.get(ElementKey(part.key, number), False)
            for number, element in enumerate(self.nets.elements_of[part.key])
            if element.type == "load" and element.name == name
        )

    # ---- what takes time -------------------------------------------------------------------

    def start_travel(self, now_s: float) -> None:
        """Begin or give up whatever the coils and motors now ask for."""
        for part in self.nets.diagram.parts.values():
            if part.family in ("vent-damper", "zone-valve"):
                self._aim(part.key, self._wants_open(part), now_s, _travel_s(part))
        for medium, movers in self._movers.items():
            if movers:
                moving = any(self.acting.get(key, False) for key in movers)
                self._aim(medium, moving, now_s, PROVES_FLOW_S)

    def _aim(self, name: str, wanted: bool, now_s: float, takes_s: float) -> None:  # noqa: FBT001
        if not wanted:
            self.proved[name] = False
            self.travel.pop(name, None)
        elif not self.proved.get(name, False) and name not in self.travel:
            self.travel[name] = Timer(now_s + takes_s)

    def finish_travel(self, now_s: float) -> Iterator[str]:
        """Names of what has arrived by now."""
        for name, timer in list(self.travel.items()):
            if timer.done_s <= now_s + 1e-9:
                del self.travel[name]
                self.proved[name] = True
                yield name

    def _wants_open(self, part: Part) -> bool:
        if part.values.get("hold-open") == "set" or part.values.get("stuck") == "open":
            return True
        if part.values.get("stuck") == "closed":
            return False
        if self.acts(part, "motor"):
            return True
        action = part.values.get("action", "spring-shut")
        shuts = self.acts(part, "closing motor")
        if action == "spring-open":
            return not shuts
        return action == "power-both" and not shuts and self.proved.get(part.key, False)

    # ---- contacts --------------------------------------------------------------------------

    def closed(self, key: ElementKey, element: Element, control_closed: dict[ElementKey, bool]) -> bool:
        """Whether a contact is closed."""
        part, spec = element.part, element.spec
        assert isinstance(spec, SwitchSpec)
        stuck = part.values.get("stuck")
        if spec.moved_by == "control":
            return control_closed.get(key, False)
        if part.family == "overcurrent" and (
            part.key in self.blown or part.values.get("element") == "blown"
        ):
            return False
        forced = self.forced.get(part.key)
        if forced in ("open", "closed"):
            return forced == "closed"
        if spec.moved_by == "motor":
            return self._end_switch(part)
        acted = self._acted(part, spec)
        if spec.moved_by == "coil":
            if stuck in ("open", "closed"):
                acted = stuck == "closed"
            return acted == (spec.normal == "open")
        if stuck in ("open", "closed"):
            return stuck == "closed"
        return (spec.running if acted else spec.normal) == "closed"

    def _end_switch(self, part: Part) -> bool:
        state = part.values.get("end-switch")
        if state in ("welded", "never-makes"):
            return state == "welded"
        return self.proved.get(part.key, False)

    def _acted(self, part: Part, spec: SwitchSpec) -> bool:
        """Whether what moves the contact is as in a running burner."""
        if spec.coil:
            return self.acts(part, spec.coil)
        if part.family == "thermostat":
            return self.call
        if spec.moved_by in ("air", "flow"):
            medium = "air" if spec.moved_by == "air" else "water"
            return self.proved.get(medium, False) if self._movers[medium] else True
        if spec.moved_by == "temperature" and spec.name == "fan":
            return self.fan_on
        return True


def _moves(element: Element) -> str:
    return (element.spec.moves or "") if isinstance(element.spec, LoadSpec) else ""


def _is_dead(element: Element) -> bool:
    """A coil recorded open or shorted moves nothing."""
    names = ("coil", f"{element.name.split()[0]}-coil" if element.name else "coil")
    return any(element.part.values.get(name) in ("open", "shorted") for name in names)


def _travel_s(part: Part) -> float:
    value = part.values.get("opening")
    return value.high_base if isinstance(value, Quantity) else TRAVEL_S
