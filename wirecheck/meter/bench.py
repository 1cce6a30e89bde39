"""Where readings are made: the unit, the meter, and what is not to be touched."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from wirecheck.check.engine import Checked
from wirecheck.circuit.companions import Companions
from wirecheck.circuit.conduction import Conduction
from wirecheck.circuit.figures import limit_words, volts_words
from wirecheck.circuit.instrument import Positions, Voltmeter
from wirecheck.circuit.netlist import ElementKey, highest
from wirecheck.circuit.nets import Element, Nets
from wirecheck.meter.chains import Chain, Chains, Link
from wirecheck.meter.reading import Probe, Reading, Wrong
from wirecheck.model.diagram import EARTH, Part, Terminal
from wirecheck.model.finding import Breaks
from wirecheck.model.kind import SourceSpec
from wirecheck.sequence.answers import View
from wirecheck.sequence.callers import callers
from wirecheck.sequence.calls import Runs
from wirecheck.sequence.coils import Coils
from wirecheck.sequence.gas import GasTrain
from wirecheck.sequence.no_go import NoGo
from wirecheck.sequence.trace import Rest

#: Above this a conductor counts as at line voltage, whatever feeds it: the bound of a Class 2
#: circuit with the usual transformer (NEC chapter 9, table 11(A), from memory).
CLASS_2_V = 30.0

#: Shares of the rated volts of a supply between which it may stand (common practice, no source):
#: 30 V, the most of a Class 2 circuit, is the upper one of 24 V.
LEAST_SHARE, MOST_SHARE = 0.9, 1.25


class Bench:
    """One diagram on the bench.

    Attributes:
        nets, diagram: what is measured.
        runs: the calls for heat it is measured in.
        no_go: what is not touched.
        chains: what feeds what.
        companions: which valve, burner and damper goes with which control.
        callers: keys of what calls for heat.
        coils: everything with rated volts that takes current.
        dangers: what is dangerous in a call with the gas on, in sentences.
        left_out: terminals that would have been measured and must not be.
    """

    def __init__(self, checked: Checked) -> None:
        """Look at the diagram and run its calls."""
        self.checked = checked
        self.diagram = checked.diagram
        self.nets: Nets = checked.nets
        self._conduction = Conduction(self.nets)
        self.no_go = NoGo(self.nets, self._conduction)
        self.chains = Chains(self.nets, self._conduction)
        self.companions = Companions(self.diagram)
        self.callers = callers(self.nets)
        self.runs = Runs(self.nets)
        self.dangers = self.runs.dangers()
        self.left_out: dict[Terminal, None] = {}
        self._voltmeter = Voltmeter(self.nets)
        self.coils = Coils(self.nets, View.OPERATION)
        self._chain_of: dict[str, Chain | None] = {}
        self._opened: dict[ElementKey, Rest | None] = {}

    @property
    def controls(self) -> list[Part]:
        """The ignition controls, in the order of the text."""
        return self.runs.controls

    def show(self, terminal: Terminal) -> str:
        """A terminal for people, with the label printed there."""
        return "bare metal of the unit" if terminal == EARTH else self.diagram.show(terminal)

    def probe(self, terminal: Terminal) -> Probe:
        """A probe on a terminal."""
        return Probe(terminal, self.show(terminal))

    def elements(self, *types: str) -> Iterator[tuple[ElementKey, Element]]:
        """Every element of some types, in the order of the text."""
        for part, elements in self.nets.elements_of.items():
            for number, element in enumerate(elements):
                if element.type in types:
                    yield ElementKey(part, number), element

    def key_of(self, element: Element) -> ElementKey:
        """The key of an element."""
        return self.chains.key_of(element)

    def rated_v(self, load: Element) -> float:
        """Rated volts of something that takes current."""
        return self.coils.rated_v[self.key_of(load)]

    def rated_source_v(self, source: Element) -> float:
        """Rated volts of a supply."""
        spec = source.spec
        if not isinstance(spec, SourceSpec):
            return 0.0
        given = spec.volts
        return highest(source.part.values.get(given) if isinstance(given, str) else given)

    def least_v(self, source: Element) -> str:
        """Volts below which a supply is too weak."""
        return limit_words(LEAST_SHARE * self.rated_source_v(source))

    def most_v(self, source: Element) -> str:
        """Volts above which it cannot be right."""
        return limit_words(MOST_SHARE * self.rated_source_v(source))

    def contacts_between(self, a: Terminal, b: Terminal) -> tuple[Element, ...]:
        """The contacts on any way between two terminals."""
        return self._conduction.way(self.nets.net(a), self.nets.net(b)).contacts

    def supplies(self) -> list[Element]:
        """Every secondary: what the mains feed, and not the call terminals of another unit.

        What a pilot flame feeds has volts only while it burns, and is not read here.
        """
        return [
            each
            for _key, each in self.elements("source")
            if isinstance(each.spec, SourceSpec) and each.spec.fed_by
        ]

    def own_calls(self) -> list[tuple[Terminal, Terminal]]:
        """Pairs of terminals with a supply of their own behind them, which a contact joins."""
        return [
            (first, second)
            for part in self.diagram.parts.values()
            if part.kind.own_supply
            for first, second in (part.with_role("call-side"),)
        ]

    def is_earthed(self, source: Element) -> bool:
        """Whether a conductor joins a side of a supply with the unit's earth."""
        return any(self.nets.joined(end, EARTH) for end in (source.a, source.b))

    def primary(self, source: Element) -> tuple[Terminal, Terminal] | None:
        """The two terminals by which a secondary is fed: of several taps the one in use."""
        spec = source.spec
        if not isinstance(spec, SourceSpec) or not spec.fed_by:
            return None
        pairs = [tuple(map(source.part.terminal, pair)) for pair in spec.fed_by]
        hot, other = next((pair for pair in pairs if self.nets.is_wired(pair[0])), pairs[0])
        return hot, other

    @property
    def never_powered(self) -> str:
        """Why this unit gets no power at all as drawn; "" if it may."""
        if self.no_go.keeps_power_off:
            return self.no_go.keeps_power_off
        if self.runs.dry.breaks and self.runs.dry.idle() is None:
            return f"The power stays off: {self.runs.dry.breaks}. Mend that first."
        return ""

    @property
    def never_gassed(self) -> str:
        """Why this unit gets no gas at all as drawn; "" if it may."""
        safety = [each for each in self.checked.findings if each.breaks is Breaks.SAFETY]
        if safety:
            what = "a safety finding stands" if len(safety) == 1 else "safety findings stand"
            return f"The gas stays shut: {what}. Mend, check again, then measure it running."
        if self.dangers:
            return f"The gas stays shut: {'; '.join(self.dangers)}. Mend that first."
        return ""

    def damper(self, control: Part) -> Part | None:
        """The damper that is plugged into a control."""
        roles = ("damper-hot", "damper-call", "damper-proved", "damper-common")
        return next(iter(self.companions.all_of(control, "vent-damper", *roles)), None)

    # ---- what belongs to a control -----------------------------------------------------------

    def chain(self, control: Part) -> Chain | None:
        """What feeds the call of a control."""
        if control.key not in self._chain_of:
            hot, common = call_ends(control)
            self._chain_of[control.key] = self.chains.to(hot, common)
        return self._chain_of[control.key]

    def operators(self, control: Part) -> Iterator[tuple[Element, Terminal]]:
        """The valve operators of a control, each with the control's terminal that feeds it."""
        drawn = sum(part.family == "gas-valve" for part in self.diagram.parts.values())
        train = GasTrain(control, self.companions, drawn)
        for key, feed in train.operators(control, self.coils):
            yield self.coils.elements[key], feed

    # ---- readings ------------------------------------------------------------------------------

    def measured(self, closed: Positions, a: Terminal, b: Terminal) -> float:
        """Volts between two terminals, with the power on and the meter on them."""
        return self._voltmeter.volts(closed, a, b)

    def volts(
        self,
        closed: Positions,
        red: Terminal,
        black: Terminal,
        wrong: Sequence[Wrong],
        *,
        power: bool = True,
    ) -> Iterator[Reading]:
        """A volts reading, if the two terminals may be touched.

        Args:
            closed: which contacts are closed at that moment.
            red: where the red probe goes.
            black: where the black one goes.
            wrong: what other readings mean.
            power: whether the power is on.
        """
        if self._refused(red, black) or red == black:
            return
        value = self._voltmeter.volts(closed, red, black, power=power)
        yield Reading(
            0,
            "volts AC",
            self.probe(red),
            self.probe(black),
            "",
            value,
            volts_words(value),
            tuple(wrong),
            line_voltage=self.line_voltage(closed, red, black),
        )

    def opened_volts(self, link: Link) -> float | None:
        """Volts across a contact that stands open on a call; None if something breaks then."""
        key = link.key
        if key not in self._opened:
            self._opened[key] = self.runs.opened(link.contact.part, link.contact.name)
        rest = self._opened[key]
        return self.measured(rest.closed, link.near, link.far) if rest else None

    def _refused(self, *ends: Terminal) -> bool:
        refused = [end for end in ends if self.no_go.forbids(end, volts=True)]
        inner = [end for end in refused if (spec := self.diagram.spec(end)) and spec.inner]
        self.left_out.update(dict.fromkeys(end for end in refused if end not in inner))
        return bool(refused)

    def line_voltage(self, closed: Positions, *ends: Terminal) -> bool:
        """Whether one of some terminals is at line voltage, or would be with the power on."""
        if any(self.no_go.at_line_voltage(end) for end in ends):
            return True
        return any(self.measured(closed, end, EARTH) > CLASS_2_V for end in ends if end != EARTH)


def call_ends(control: Part) -> tuple[Terminal, Terminal]:
    """Where the call arrives at a control, and its common."""
    return control.with_role("call")[0], control.with_role("control-common")[0]
