"""What a meter shows where a claim puts it: volts, amperes, microamps, and ohms without power."""

from __future__ import annotations

from functools import cached_property
from typing import NamedTuple

from wirecheck.check.claim_moments import Moment
from wirecheck.check.claim_signals import NotSimulatedError, Signals
from wirecheck.circuit.figures import amps_words, microamps_words, ohms_words, volts_words
from wirecheck.circuit.found_wrong import SHORTED_OHM, condition
from wirecheck.circuit.instrument import LeadMeter, Ohmmeter, Voltmeter
from wirecheck.circuit.netlist import ElementKey
from wirecheck.circuit.nets import Element, Nets
from wirecheck.circuit.ratings import load_ohms
from wirecheck.model.claim import Claim, Signal, Subject
from wirecheck.model.diagram import Terminal
from wirecheck.model.kind import GapSpec, LoadSpec, SourceSpec
from wirecheck.sequence.calls import Run

#: Circuits in which the solved circuit knows no volts: the spark's, and the flame signal's.
_UNSOLVED = ("ignition", "flame")
#: A clamp shows less as nothing.
LEAST_A = 0.005


class Shown(NamedTuple):
    """What the meter shows: a value in the unit of the claim, and the same for people."""

    value: float
    words: str


class Readings:
    """Meters on one diagram, each built when it is first asked for."""

    def __init__(self, nets: Nets, signals: Signals) -> None:
        """No meter yet."""
        self._nets = nets
        self._signals = signals
        self._volts: dict[tuple[object, ...], float] = {}

    @cached_property
    def _voltmeter(self) -> Voltmeter:
        return Voltmeter(self._nets)

    @cached_property
    def _ohmmeter(self) -> Ohmmeter:
        return Ohmmeter(self._nets)

    @cached_property
    def _lead_meter(self) -> LeadMeter:
        return LeadMeter(self._nets)

    def read(self, claim: Claim, moment: Moment) -> Shown:
        """Volts or amperes at a moment.

        Raises:
            NotSimulatedError: the solved circuit does not tell.
        """
        a, b = _ends(claim)
        if claim.about == "volts":
            volts = self.volts(moment, a, b)
            return Shown(volts, volts_words(volts))
        return self._amps(moment, a, b)

    def volts(self, moment: Moment, a: Terminal, b: Terminal) -> float:
        """Volts between two terminals.

        Raises:
            NotSimulatedError: one of them belongs to the spark or to the flame signal.
        """
        for end in (a, b):
            spec = self._nets.diagram.spec(end)
            if spec is not None and spec.circuit in _UNSOLVED:
                shown = self._nets.diagram.show(end)
                raise NotSimulatedError(
                    f"{shown} belongs to the {_what(spec.circuit)}, where no volts are computed "
                    "and no meter goes"
                )
        closed = moment.rest.closed
        key = (a, b, tuple(closed.values()))
        if key not in self._volts:
            self._volts[key] = self._voltmeter.volts(closed, a, b)
        return self._volts[key]

    def ohms(self, claim: Claim, run: Run) -> Shown:
        """Ohms with the power off, contacts as the conditions have them.

        Raises:
            NotSimulatedError: a condition is none of a contact.
        """
        a, b = _ends(claim)
        closed = dict(run.off)
        for state in claim.when:
            if state.subject.signal != "contact":
                shown = state.subject.shown
                raise NotSimulatedError(f"{shown} cannot be put anywhere with the power off")
            part = state.subject.part
            for number, element in enumerate(self._nets.elements_of[part]):
                if element.type == "switch" and element.name == state.subject.name:
                    closed[ElementKey(part, number)] = state.on
        ohms = self._ohmmeter.ohms(closed, a, b)
        return Shown(ohms, ohms_words(ohms))

    # ---- amperes -----------------------------------------------------------------------------

    def _amps(self, moment: Moment, a: Terminal, b: Terminal) -> Shown:
        spec = self._nets.diagram.spec(a)
        if a == b and spec is not None and spec.role == "sense":
            return self._flame_signal(moment, a)
        if a == b:
            return _amperes(self._at(moment, a))
        key, element = self._between(a, b)
        steady = moment.rest.steady
        if isinstance(element.spec, GapSpec):
            return self._flame_signal(moment, a)
        if isinstance(element.spec, SourceSpec):
            return _amperes(steady.source_amps.get(key, 0.0))
        if isinstance(element.spec, LoadSpec):
            return _amperes(_load_amps(element, element.spec, steady.load_volts.get(key, 0.0)))
        return _amperes(steady.contact_amps.get(key, 0.0))

    def _between(self, a: Terminal, b: Terminal) -> tuple[ElementKey, Element]:
        for number, element in enumerate(self._nets.elements_of[a.part]):
            if {element.a, element.b} == {a, b} and element.type != "bond":
                return ElementKey(a.part, number), element
        show = self._nets.diagram.show
        raise NotSimulatedError(f"nothing lies between {show(a)} and {show(b)} here")

    def _at(self, moment: Moment, terminal: Terminal) -> float:
        """Amperes in the one lead at a terminal."""
        leads = [n for n in self._nets.leads_at(terminal) if self._nets.diagram.leads[n].conducts]
        if len(leads) > 1:
            shown = self._nets.diagram.show(terminal)
            raise NotSimulatedError(
                f"{len(leads)} leads land on {shown}: no meter says what runs through it"
            )
        return self._lead_meter.amps(moment.rest.closed, leads[0]) if leads else 0.0

    def _flame_signal(self, moment: Moment, end: Terminal) -> Shown:
        """Microamps of the flame signal, if the flame burns that is sensed."""
        shown = self._nets.diagram.show(end)
        subject = Subject("flame-signal", end.part, "", shown)
        _machine, burner = self._signals.machine(subject, moment)
        flame: Signal = "main-flame" if burner.is_direct else "pilot-flame"
        burning = self._signals.look(subject._replace(signal=flame), moment).on
        microamps = burner.flame_path.microamps if burning else 0.0
        return Shown(microamps * 1e-6, microamps_words(microamps))


def _ends(claim: Claim) -> tuple[Terminal, Terminal]:
    if claim.ends is None:
        raise ValueError(f"a state has no ends: {claim.text}")
    return claim.ends


def _load_amps(load: Element, spec: LoadSpec, volts: float) -> float:
    """Amperes that a load takes at these volts, as it was found."""
    found = condition(load)
    if found == "open":
        return 0.0
    ohms = SHORTED_OHM if found == "shorted" else load_ohms(spec, load.part.values)
    return volts / abs(ohms) if ohms else 0.0


def _amperes(amps: float) -> Shown:
    return Shown(amps, amps_words(amps) if amps >= LEAST_A else "0 A")


def _what(circuit: str) -> str:
    return "spark" if circuit == "ignition" else "flame signal"
