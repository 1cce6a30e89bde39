"""Readings of the unit as a whole while its burners run: loaded volts, currents, other loads."""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.circuit.figures import TELLS_V, amps_words
from wirecheck.circuit.netlist import ElementKey, highest
from wirecheck.circuit.nets import Element
from wirecheck.meter.bench import Bench
from wirecheck.meter.call import Call
from wirecheck.meter.reading import Probe, Reading, Wrong
from wirecheck.model.diagram import Terminal
from wirecheck.model.kind import LoadSpec, SourceSpec
from wirecheck.model.quantity import Quantity
from wirecheck.sequence.trace import Rest

#: A clamp meter shows little of less than an ampere: ten turns make it ten times as much.
_TEN_TURNS = "ten turns through the clamp, a tenth of what it shows"
#: Loads that have readings of their own.
_TOLD_ELSEWHERE = ("operator", "electronics")
#: Less than this a clamp does not show.
NO_AMPS = 0.005


class Running:
    """The unit at work."""

    def __init__(self, bench: Bench, rest: Rest) -> None:
        """It stands as told."""
        self._bench = bench
        self._rest = rest

    def supply(self) -> Iterator[Reading]:
        """Volts of each secondary under load, and what it gives."""
        for source in self._bench.supplies():
            name = source.part.name
            wrong = [
                Wrong(
                    f"under {self._bench.least_v(source)}",
                    f"{name} is overloaded, or the line is low",
                ),
                Wrong(f"over {self._bench.most_v(source)}", f"{name} is on the wrong tap"),
            ]
            yield from self._bench.volts(self._rest.closed, source.a, source.b, wrong)
            yield from self._secondary_amps(self._bench.key_of(source), source)

    def _secondary_amps(self, key: ElementKey, source: Element) -> Iterator[Reading]:
        amps = self._rest.steady.source_amps.get(key)
        leads = len(self._bench.nets.leads_at(source.a))
        if amps is None or not leads or self._bench.no_go.forbids(source.a, volts=False):
            return
        volts = self._bench.rated_source_v(source)
        rated = _rating_va(source) / volts if volts else 0.0
        behind = f" of {amps_words(rated)} ({_rating_va(source):g} VA)" if rated else ""
        shown = self._bench.show(source.a)
        what = "the lead" if leads == 1 else f"all {leads} leads together"
        wrong = [Wrong("far more", "a coil shorted, or more on it than is drawn")]
        if rated:
            over = f"over {amps_words(rated)}"
            wrong.append(Wrong(over, f"{source.part.name} is too small for what hangs on it"))
        yield Reading(
            0,
            "amps AC",
            Probe(source.a, f"clamp round {what} at {shown}"),
            None,
            "",
            amps,
            f"{amps_words(amps)}{behind}",
            tuple(wrong),
            line_voltage=self._bench.line_voltage(self._rest.closed, source.a),
        )

    def own_calls(self) -> Iterator[Reading]:
        """Call terminals with a supply of their own: closed, they show nothing."""
        for first, second in self._bench.own_calls():
            means = "the contact that is to join them has not made: read at what moves it"
            wrong = [Wrong("24 V", means)]
            yield from self._bench.volts(self._rest.closed, first, second, wrong)

    def thermostats(self) -> Iterator[Reading]:
        """The current through each thermostat, against its anticipator."""
        for key, contact in self._bench.elements("switch"):
            part = contact.part
            spec = self._bench.diagram.spec(contact.a)
            low_volts = spec is not None and spec.circuit == "24V"
            if part.family != "thermostat" or not low_volts or not self._rest.closed[key]:
                continue
            amps = self._rest.steady.contact_amps[key]
            leads = self._bench.nets.leads_at(contact.b)
            ends = (contact.a, contact.b)
            at_line = self._bench.line_voltage(self._rest.closed, *ends)
            if amps < NO_AMPS or len(leads) != 1 or at_line:
                continue
            if not any(self._bench.no_go.forbids(end, volts=True) for end in ends):
                yield self._through(contact, amps, leads[0])

    def _through(self, contact: Element, amps: float, lead: int) -> Reading:
        part, shown = contact.part, self._bench.show(contact.b)
        setting = part.values.get("anticipator")
        behind, advice = "", f"set the anticipator of {part.name}, if it has one, to what you read"
        if isinstance(setting, Quantity):
            behind = f"; anticipator set at {setting.high_base:g} A"
            advice = f"set the anticipator of {part.name} to what you read"
        wrong = (
            Wrong("other than the setting", f"{advice}: low short-cycles, high overshoots"),
            Wrong("far less", "an operator or relay behind it takes nothing: open coil or lead"),
            Wrong("far more", "a coil behind it is shorted, or more hangs on it than is drawn"),
        )
        return Reading(
            0,
            "amps AC",
            self._bench.probe(contact.b),
            Probe(contact.b, f"end of the lead taken off {shown}", lead),
            f"power off: lead off {shown}, meter between; or clamp round it: {_TEN_TURNS}",
            amps,
            f"{amps_words(amps)}{behind}",
            wrong,
            in_series=True,
        )

    def loads(self, told: set[tuple[Terminal, Terminal]]) -> Iterator[Reading]:
        """Everything else that has volts now; ``told`` are the ends of what was read before."""
        for _key, load in self._bench.elements("load"):
            spec = load.spec
            if not isinstance(spec, LoadSpec) or spec.volts is None or (load.a, load.b) in told:
                continue
            if spec.type in _TOLD_ELSEWHERE:
                continue
            volts = self._bench.measured(self._rest.closed, load.a, load.b)
            if volts >= TELLS_V:
                yield from Call(self._bench, self._rest.closed).load(load)


def _rating_va(source: Element) -> float:
    """Rated volt-amperes of a secondary; 0 where they are not known."""
    spec = source.spec
    rating = spec.rating if isinstance(spec, SourceSpec) else None
    return highest(source.part.values.get(rating)) if rating else 0.0
