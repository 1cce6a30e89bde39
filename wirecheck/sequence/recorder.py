"""Writes down, at every moment, what is to be seen of the unit."""

from __future__ import annotations

from wirecheck.circuit.netlist import ElementKey
from wirecheck.circuit.nets import Nets
from wirecheck.model.kind import LoadSpec
from wirecheck.sequence.answers import Answer
from wirecheck.sequence.burner import BurnerState
from wirecheck.sequence.contacts import Contact
from wirecheck.sequence.control import ControlMachine
from wirecheck.sequence.plant import Plant
from wirecheck.sequence.trace import Trace
from wirecheck.sequence.tracks import MEDIA, load_track, part_track, track_of

#: What a load that may or may not act on its volts is shown as.
MAY = "may"
#: Where a control has its common from, if not over leads.
BY_METAL = "through the metal"
#: Air or water that some switch proves, by the state of its way.
MOVING = {"shut": "still", "opening": "starting", "open": "moving", "closing": "stopping"}


class Recorder:
    """Keeps the trace of one run."""

    def __init__(self, nets: Nets, plant: Plant, trace: Trace, controls: int) -> None:
        """Choose what is worth a track."""
        self._nets = nets
        self._plant = plant
        self._trace = trace
        self._many = controls > 1
        self._loads = {
            key: load_track(nets, key)
            for key, element in plant.coils.elements.items()
            if not (isinstance(element.spec, LoadSpec) and element.spec.type == "electronics")
        }
        self._switches = [
            (number, each) for number, each in enumerate(plant.contacts) if self._is_shown(each)
        ]
        self._media = [(medium, MEDIA[medium]) for medium in plant.proved_media()]
        self.now_s = trace.from_s

    def _is_shown(self, contact: Contact) -> bool:
        """Contacts that move by themselves in a run: proved air and water, the fan's, a probe's."""
        return (
            self._plant.proves(contact.spec)
            or contact.spec.moved_by == "level"
            or (contact.spec.moved_by == "temperature" and contact.spec.name == "fan")
        )

    def note(self, track: str, state: str, reason: str = "") -> None:
        """Write down one state."""
        self._trace.record(self.now_s, track, state, reason)

    def plant(self, closed: tuple[bool, ...]) -> None:
        """Write down dampers, zone valves, proving switches and loads."""
        for part in self._plant.movable:
            self.note(part_track(part), self._plant.travels[part.key].state(self.now_s))
        for medium, name in self._media:
            self.note(name, MOVING[self._plant.travels[medium].state(self.now_s)])
        for number, each in self._switches:
            self.note(part_track(each.part, each.name), "closed" if closed[number] else "open")
        for key, name in self._loads.items():
            self.note(name, self._load(key))

    def load(self, key: ElementKey, reason: str) -> None:
        """Write down why a load is as it is."""
        self.note(self._loads[key], self._load(key), reason)

    def _load(self, key: ElementKey) -> str:
        coils = self._plant.coils
        if key in coils.destroyed:
            return "destroyed"
        if key in coils.held:
            return "chatters"
        answer = coils.answers[key]
        return {Answer.YES: "on", Answer.MAY: MAY, Answer.NO: "off"}[answer]

    def burner(self, burner: BurnerState, machine: ControlMachine) -> None:
        """Write down spark, flames and flame signal."""
        spark, reason = burner.spark_shown(machine.outputs)
        self.note(self.track("spark", machine), spark, reason)
        pilot = self.track("pilot flame", machine)
        if not machine.is_direct or burner.pilot.gas or pilot in self._trace.tracks:
            self.note(pilot, burner.pilot.shown)
        self.note(self.track("main flame", machine), burner.main.shown)
        signal, why = burner.signal_shown()
        self.note(self.track("flame signal", machine), signal, why)

    def flame(
        self, burner: BurnerState, machine: ControlMachine, reason: str, *, main: bool
    ) -> None:
        """Write down why a flame that is to burn does not."""
        flame, name = (burner.main, "main flame") if main else (burner.pilot, "pilot flame")
        self.note(self.track(name, machine), flame.shown, reason)

    def track(self, name: str, machine: ControlMachine) -> str:
        """The track of something at a control's burner; told apart where there are several."""
        return track_of(name, machine.part.name, many=self._many)
