"""Readings with the power on and no call: the supply, and that nothing gets past the call."""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.circuit.figures import TELLS_V
from wirecheck.circuit.instrument import Positions
from wirecheck.circuit.nets import Element
from wirecheck.meter.bench import Bench, call_ends
from wirecheck.meter.chains import Chain, Link, name_of
from wirecheck.meter.reading import Reading, Wrong
from wirecheck.model.diagram import EARTH, Part, Terminal


class Idle:
    """The unit with the power on, the gas shut and no call."""

    def __init__(self, bench: Bench, closed: Positions) -> None:
        """Its contacts stand as told."""
        self._bench = bench
        self._closed = closed

    # ---- the supply --------------------------------------------------------------------------

    def supply(self) -> Iterator[Reading]:
        """Line volts, secondary volts, and which side of the secondary is earthed."""
        for source in self._bench.supplies():
            primary = self._bench.primary(source)
            if primary:
                yield from self._volts(*primary, self._line_wrong(source, primary[0]))
            yield from self._volts(source.a, source.b, self._secondary_wrong(source))
            yield from self._earth(source)

    def _line_wrong(self, source: Element, hot: Terminal) -> list[Wrong]:
        before = self._switches_before(hot)
        opened = f"{before} open, or " if before else ""
        rated = source.part.values.get("primary")
        several = isinstance(rated, tuple) and len(rated) > 1
        tap = "another line voltage, or the wrong tap" if several else "another line voltage"
        return [
            Wrong("0 V", f"{opened}the disconnect, breaker or a lead of the line open"),
            Wrong("far off", f"{tap} than {self._bench.show(hot)} is for"),
        ]

    def _switches_before(self, hot: Terminal) -> str:
        """Names of the contacts between the mains and a primary."""
        names = [
            name_of(contact)
            for _key, mains in self._bench.elements("source")
            if mains.part.family == "mains"
            for contact in self._bench.contacts_between(mains.a, hot)
        ]
        return " or ".join(dict.fromkeys(names))

    def _secondary_wrong(self, source: Element) -> list[Wrong]:
        name, bench = source.part.name, self._bench
        return [
            Wrong("0 V", f"with line volts on: a winding of {name} is open, or its own fuse"),
            Wrong(f"over {bench.most_v(source)}", f"{name} is on the wrong tap for its line"),
            Wrong(f"under {bench.least_v(source)}", f"{name} is overloaded, or on the wrong tap"),
        ]

    def _earth(self, source: Element) -> Iterator[Reading]:
        """The side that is not earthed, against the metal of the unit."""
        earthed = [end for end in (source.a, source.b) if self._bench.nets.joined(end, EARTH)]
        if len(earthed) != 1:
            return
        other = source.b if earthed[0] == source.a else source.a
        shown = self._bench.show(earthed[0])
        wrong = [Wrong("0 V or wandering", f"the lead from {shown} to the unit's earth is off")]
        yield from self._volts(other, EARTH, wrong)

    # ---- the call ----------------------------------------------------------------------------

    def control(self, control: Part) -> Iterator[Reading]:
        """The chain up to what calls, what calls, and that nothing gets past it."""
        hot, common = call_ends(control)
        chain = self._bench.chain(control)
        yield from self._always_hot(control, common)
        if chain:
            yield from self._up_to_caller(chain)
        wrong = [Wrong("24 V", "something feeds the call past the thermostat: find that lead")]
        yield from self._volts(hot, common, wrong)

    def _always_hot(self, control: Part, common: Terminal) -> Iterator[Reading]:
        for hot in control.with_role("control-hot"):
            if self._bench.nets.is_wired(hot):
                wrong = [Wrong("0 V", f"the lead to {self._bench.show(hot)}, or the common lead")]
                yield from self._volts(hot, common, wrong)

    def _up_to_caller(self, chain: Chain) -> Iterator[Reading]:
        """The first open contact: volts in front of it, and across it."""
        place = next((n for n, link in enumerate(chain.links) if not self._closed[link.key]), None)
        if place is None:
            return
        link = chain.links[place]
        show, name = self._bench.show, name_of(link.contact)
        before = _names(chain.links[:place])
        blame = f"{before} open, or a lead on the way" if before else "a lead on the way"
        steps = f"; step back towards {show(chain.feed)}: the first with volts is just before it"
        wrong = [Wrong("0 V", f"{blame}{steps if before else ''}")]
        yield from self._volts(link.near, chain.common, wrong)
        # With another contact open behind it, there are no volts across this one either way.
        if self._bench.measured(self._closed, link.near, link.far) >= TELLS_V:
            means = f"{name} is closed or jumpered, or nothing is joined behind it"
            yield from self._volts(link.near, link.far, [Wrong("0 V", means)])

    def gas(self, control: Part) -> Iterator[Reading]:
        """That no operator has volts."""
        for operator, _feed in self._bench.operators(control):
            yield from self._volts(operator.a, operator.b, NO_GAS)

    def own_calls(self) -> Iterator[Reading]:
        """Terminals with a supply of their own behind them, which a contact is to join."""
        for first, second in self._bench.own_calls():
            whose = self._bench.diagram.parts[first.part].name
            wrong = [Wrong("0 V", f"{whose} is called already, or gives nothing")]
            yield from self._volts(first, second, wrong)

    def _volts(self, red: Terminal, black: Terminal, wrong: list[Wrong]) -> Iterator[Reading]:
        return self._bench.volts(self._closed, red, black, wrong)


#: An operator that must have no volts.
NO_GAS = [Wrong("24 V", "gas is let through and must not be: gas cock stays shut, find what feeds")]


def _names(links: tuple[Link, ...]) -> str:
    """``fuse, limit or rollout``."""
    names = list(dict.fromkeys(name_of(link.contact) for link in links))
    return " or ".join(filter(None, [", ".join(names[:-1]), *names[-1:]]))
