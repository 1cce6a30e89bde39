"""Lets the circuit come to rest: contacts take their places, the circuit is solved, coils follow.

That goes round until nothing changes any more.  On the way fuses and breakers open, and what
carries or gets far too much burns out.  A coil that never comes to rest (a relay that opens its
own coil) is found by the state that comes back, and held for this moment.
"""

from __future__ import annotations

from collections.abc import Callable

from wirecheck.circuit.netlist import ElementKey, highest
from wirecheck.circuit.nets import Nets
from wirecheck.circuit.steady import Steady, SteadyStates
from wirecheck.model.diagram import Part
from wirecheck.model.kind import SourceSpec
from wirecheck.sequence.answers import View
from wirecheck.sequence.plant import Plant
from wirecheck.sequence.tracks import load_track, part_track
from wirecheck.sequence.why import Moment

#: A fuse or breaker opens from so many times its rating (135 % within the hour, UL 248 and
#: UL 489, from memory).
OPENS_AT = 1.35
#: So many times its rated amperes burn out a transformer (common practice, no source).
BURNS_OUT_AT = 4.0

#: Writes down a track's new state and the reason.
Record = Callable[[str, str, str], None]


class CircuitAtRest:
    """The circuit of one run.

    Attributes:
        power: whether the supply is on.
        gone: loads and secondaries that are burnt out.
        moment: how it stands since `settle` was last called.
    """

    def __init__(self, nets: Nets, plant: Plant, states: SteadyStates, record: Record) -> None:
        """Power on, nothing burnt."""
        self._nets = nets
        self._plant = plant
        self._states = states
        self._record = record
        self._ratings = {
            each.key: highest(each.part.values.get("rating"))
            for each in plant.contacts
            if each.spec.moved_by == "overcurrent" and each.found != "closed"
        }
        self.power = True
        self.gone: frozenset[ElementKey] = frozenset()
        self.moment: Moment

    def settle(self, now_s: float, *, heat: bool) -> None:
        """Go round until it rests.

        Args:
            now_s: the time.
            heat: whether a main flame burns.
        """
        coils = self._plant.coils
        coils.held.clear()
        history: list[tuple[tuple[bool, ...], list[ElementKey]]] = []
        while True:
            closed = self._plant.positions(now_s)
            steady = self._states.at(closed, power=self.power, gone=self.gone)
            if self._breaks(steady):
                history.clear()
                continue
            changed = coils.take(steady.load_volts)
            self._plant.aim(now_s, heat=heat)
            if not changed and self._plant.positions(now_s) == closed:
                self.moment = Moment(now_s, closed, steady, self.gone, self.power)
                return
            state = (*closed, *coils.acting.values())
            before = [number for number, (known, _changed) in enumerate(history) if known == state]
            history.append((state, changed))
            if before:
                self._hold({key for _state, keys in history[before[-1] + 1 :] for key in keys})
                history.clear()

    def _hold(self, restless: set[ElementKey]) -> None:
        """Take what chatters for off, or for on where danger is looked for."""
        coils = self._plant.coils
        for key in coils.elements:
            if key in restless:
                coils.held[key] = coils.view is View.DANGER
                reason = "it never comes to rest: it takes away its own volts"
                self._record(load_track(self._nets, key), "chatters", reason)

    def _breaks(self, steady: Steady) -> bool:
        """Open a fuse or burn out what these amperes and volts destroy; whether one went."""
        return self._opens_fuse(steady) or self._burns_out(steady) or self._destroys(steady)

    def _opens_fuse(self, steady: Steady) -> bool:
        for key, rating in self._ratings.items():
            amps = steady.contact_amps[key]
            if amps > OPENS_AT * rating > 0 and key.part not in self._plant.blown:
                self._plant.blown.add(key.part)
                part = self._nets.diagram.parts[key.part]
                opens = "blows" if "blown" in part.kind.attributes else "trips"
                self._record(part_track(part), opens, f"{amps:.0f} A through its {rating:g} A")
                return True
        return False

    def _burns_out(self, steady: Steady) -> bool:
        for key, amps in steady.source_amps.items():
            part = self._nets.diagram.parts[key.part]
            rated = _rated_amps(part, self._nets.elements_of[key.part][key.number].spec)
            if rated and amps > BURNS_OUT_AT * rated:
                self.gone |= {key}
                reason = f"a short circuit: about {amps:.0f} A, {rated:.2g} A is its rating"
                self._record(part_track(part), "burns out", reason)
                return True
        return False

    def _destroys(self, steady: Steady) -> bool:
        coils = self._plant.coils
        key = coils.overvolted(steady.load_volts)
        if key is None:
            return False
        coils.destroyed.add(key)
        self.gone |= {key}
        volts = f"{steady.load_volts[key]:.0f} V where {coils.rated_v[key]:g} V belong"
        self._record(load_track(self._nets, key), "destroyed", volts)
        return True


def _rated_amps(part: Part, spec: object) -> float:
    """Of a secondary; 0 where its rating or its volts are not known."""
    if not isinstance(spec, SourceSpec) or spec.rating is None:
        return 0.0
    given = part.values.get(spec.volts) if isinstance(spec.volts, str) else spec.volts
    volts = highest(given)
    return highest(part.values.get(spec.rating)) / volts if volts else 0.0
