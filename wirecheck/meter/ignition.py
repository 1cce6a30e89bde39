"""Readings while a control opens its damper, tries to light, waits or is locked out, and runs."""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.circuit.figures import limit_words, microamps_words
from wirecheck.circuit.instrument import Positions
from wirecheck.circuit.nets import Element
from wirecheck.meter.bench import Bench
from wirecheck.meter.reading import Probe, Reading, Wrong
from wirecheck.model.diagram import Part, Terminal
from wirecheck.model.quantity import Quantity
from wirecheck.sequence.answers import OPENS, View
from wirecheck.sequence.flame import flame_path, terminal_of

#: A steady flame signal of a clean pilot (common practice, no source).
HEALTHY_UA = "2 to 5 uA is usual"


class Ignition:
    """One control and its burner, in one moment of a call."""

    def __init__(self, bench: Bench, control: Part, closed: Positions) -> None:
        """Its contacts stand as told."""
        self._bench = bench
        self._control = control
        self._closed = closed

    # ---- the damper --------------------------------------------------------------------------

    def damper_opening(self, damper: Part) -> Iterator[Reading]:
        """At the damper: its motor, and that the call is not passed on yet."""
        box, vent = self._control.name, damper.name
        hot, call, proved, common = _damper_ends(damper)
        yield from self._volts(
            hot, common, [Wrong("0 V", f"the harness of {vent}: its hot or its common lead")]
        )
        yield from self._volts(
            call,
            common,
            [
                Wrong("0 V", f"the harness between {box} and {vent}: call or common lead"),
                Wrong("right, yet it stands still", f"the motor or the blade of {vent}"),
            ],
        )
        early = f"the end switch of {vent} is welded, or the shorting plug is still in {box}"
        yield from self._volts(proved, common, [Wrong("24 V before it is open", early)])

    def damper_open(self, damper: Part) -> Iterator[Reading]:
        """At the damper: the call is passed on."""
        _hot, _call, proved, common = _damper_ends(damper)
        stuck = f"the end switch of {damper.name} has not made: blade not fully open, or the switch"
        yield from self._volts(proved, common, [Wrong("0 V", stuck)])

    # ---- the valve ---------------------------------------------------------------------------

    def trial(self) -> Iterator[Reading]:
        """At the valve: what is to open in the trial, and that nothing else does."""
        for operator, feed in self._bench.operators(self._control):
            if feed in self._control.with_role("main-valve"):
                early = "main gas before the pilot is proved: gas cock stays shut; find what feeds"
                yield from self._volts(*_ends(operator), [Wrong("24 V", early)])
            else:
                yield from self._volts(*_ends(operator), self._unfed(operator, feed, "no click"))

    def stopped(self) -> Iterator[Reading]:
        """At the valve: nothing."""
        name = self._control.name
        stuck = f"a contact of {name} is stuck, or a lead feeds past it: gas cock stays shut"
        for operator, _feed in self._bench.operators(self._control):
            yield from self._volts(*_ends(operator), [Wrong("24 V", stuck)])

    def run(self) -> Iterator[Reading]:
        """At the valve: every operator has its volts."""
        for operator, feed in self._bench.operators(self._control):
            yield from self._volts(*_ends(operator), self._unfed(operator, feed, "no gas"))
            for contact in self._bench.contacts_between(feed, operator.a):
                if contact.part.key != self._control.key:
                    opened = f"{contact.part.name} is open: find out why; never bridge it"
                    yield from self._volts(contact.a, contact.b, [Wrong("24 V", opened)])

    def _unfed(self, operator: Element, feed: Terminal, missing: str) -> list[Wrong]:
        """What it means that an operator has no volts, or does nothing with them."""
        show, name = self._bench.show, f"{operator.part.name} {operator.name}".strip()
        common = self._control.with_role("valve-common")[0]
        weak = limit_words(OPENS * self._bench.rated_v(operator))
        return [
            Wrong(
                "0 V",
                f"read {show(feed)} to {show(common)}: volts there, the lead or plug between; "
                f"none, {self._control.name} does not feed it",
            ),
            Wrong(f"under {weak}", "a coil in series, a poor joint or a weak supply"),
            Wrong(f"right, yet {missing}", f"{name} is open or stuck"),
        ]

    # ---- the flame ---------------------------------------------------------------------------

    def flame_signal(self, *, proved: bool) -> Iterator[Reading]:
        """The flame signal, the meter in series with the lead of a separate rod.

        Args:
            proved: whether the control gets to run; else it is read while the flame burns.
        """
        sense = terminal_of(self._control, "sense")
        number = self._sense_lead()
        if sense is None or number is None:
            return
        path = flame_path(self._bench.nets, self._control)
        shown = self._bench.show(sense)
        least = _least_ua(self._control)
        when = "once the spark is off" if proved else "while the flame burns"
        good = microamps_words(path.microamps)
        if path.answer.counts(View.OPERATION):
            good = f"{good}, steady ({HEALTHY_UA})"
        else:
            good = f"{good}: {path.reason}"
        wrong = (
            Wrong("0 uA", "no flame on the rod, sense lead or burner ground open, rod on metal"),
            Wrong(f"under {least:g} uA", "no proof: dirty rod, rusty burner ground, weak flame"),
            Wrong("it wanders", "a flame that lifts or is blown about, a loose joint"),
            Wrong("minus", "the probes are changed over; that does no harm"),
        )
        yield Reading(
            0,
            "microamps DC",
            self._bench.probe(sense),
            Probe(sense, f"end of the lead taken off {shown}", number),
            f"power off: lead off {shown}, meter between; power on; read {when}",
            path.microamps,
            good,
            wrong,
            in_series=True,
        )

    def _sense_lead(self) -> int | None:
        """The one lead at SENSE, if a meter may go into it."""
        sense = terminal_of(self._control, "sense")
        if sense is None or self._bench.no_go.senses_by_spark_lead(self._control):
            return None
        leads = self._bench.nets.leads_at(sense)
        if len(leads) != 1 or self._bench.no_go.forbids(sense, volts=False):
            return None
        lead = self._bench.diagram.leads[leads[0]]
        ends = (lead.a, lead.b)
        if any(self._bench.no_go.forbids(end, volts=False) for end in ends):
            return None
        return leads[0]

    def _volts(self, red: Terminal, black: Terminal, wrong: list[Wrong]) -> Iterator[Reading]:
        return self._bench.volts(self._closed, red, black, wrong)


def _ends(load: Element) -> tuple[Terminal, Terminal]:
    return load.a, load.b


def _damper_ends(damper: Part) -> tuple[Terminal, ...]:
    return tuple(
        damper.with_role(role)[0]
        for role in ("damper-hot", "damper-call", "damper-proved", "damper-common")
    )


def _least_ua(control: Part) -> float:
    value = control.values.get("threshold")
    return value.high_base * 1e6 if isinstance(value, Quantity) else 1.0
