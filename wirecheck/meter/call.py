"""Readings on a call: that it arrives, and where it stops if it does not."""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.circuit.figures import TELLS_V, limit_words, volts_words
from wirecheck.circuit.instrument import Positions
from wirecheck.circuit.nets import Element
from wirecheck.meter.bench import Bench, call_ends
from wirecheck.meter.chains import Chain, Link, name_of
from wirecheck.meter.reading import Reading, Wrong
from wirecheck.model.diagram import Part, Terminal
from wirecheck.model.kind import SwitchSpec
from wirecheck.sequence.answers import OPENS


class Call:
    """The unit with a call on, in one moment of it."""

    def __init__(self, bench: Bench, closed: Positions) -> None:
        """Its contacts stand as told."""
        self._bench = bench
        self._closed = closed

    def control(self, control: Part) -> Iterator[Reading]:
        """The call at the control, then each contact on its way, then what moves those."""
        hot, common = call_ends(control)
        yield from self._bench.volts(self._closed, hot, common, self._call_wrong(control))
        chain = self._bench.chain(control)
        if chain is None:
            return
        told: set[tuple[Terminal, Terminal]] = set()
        yield from self._links(chain, told)
        for coil, fed in self._bench.chains.behind(chain):
            yield from self.load(coil)
            if fed:
                yield from self._links(fed, told)

    def _call_wrong(self, control: Part) -> list[Wrong]:
        weak = f"under {OPENS * 24:.0f} V"
        return [
            Wrong("0 V", "the call stops on its way: read across each contact below"),
            Wrong(weak, "overloaded transformer, a long thin lead or a poor joint"),
            Wrong(
                "right, yet it does nothing",
                f"the common lead of {control.name}, its damper plug, or {control.name} itself",
            ),
        ]

    def arrived(self, control: Part) -> Iterator[Reading]:
        """The call at the control alone."""
        hot, common = call_ends(control)
        wrong = [Wrong("0 V", "the call is gone, or the transformer: look there first")]
        yield from self._bench.volts(self._closed, hot, common, wrong)

    def load(self, load: Element) -> Iterator[Reading]:
        """Volts at something that takes current."""
        name = f"{load.part.name} {load.name}".strip()
        rated = self._bench.rated_v(load)
        wrong = [
            Wrong("0 V", f"what feeds {name} is open: a contact, a lead, its common"),
            Wrong(
                f"under {limit_words(OPENS * rated)}",
                "too weak to act surely: supply, long leads, a poor joint",
            ),
            Wrong("right, yet it does not act", f"{name} is open or stuck"),
        ]
        yield from self._bench.volts(self._closed, load.a, load.b, wrong)

    # ---- contacts ----------------------------------------------------------------------------

    def _links(self, chain: Chain, told: set[tuple[Terminal, Terminal]]) -> Iterator[Reading]:
        for link in chain.all_links:
            if (link.near, link.far) not in told:
                told.add((link.near, link.far))
                yield from self._across(link)

    def _across(self, link: Link) -> Iterator[Reading]:
        """Volts across one contact, and what they are with it open."""
        contact, spec = link.contact, link.contact.spec
        safety = isinstance(spec, SwitchSpec) and spec.safety
        opened = self._bench.opened_volts(link)
        if opened is not None and opened < TELLS_V:
            if not safety:
                return
            wrong = Wrong("0 V, open or closed", f"as drawn a way past {name_of(contact)} is left")
        else:
            reading = "24 V" if opened is None else volts_words(opened)
            wrong = Wrong(reading, self._open_words(contact))
        yield from self._bench.volts(self._closed, link.near, link.far, [wrong])

    def _open_words(self, contact: Element) -> str:
        """What volts across a contact mean."""
        spec, name, part = contact.spec, name_of(contact), contact.part
        if part.key in self._bench.callers:
            return f"{name} does not call"
        if not isinstance(spec, SwitchSpec):
            return f"{name} is open"
        means = {
            "overcurrent": "is blown: find the short before a new one goes in",
            "coil": "has not pulled in: read at its coil, below",
            "motor": "has not made: read at the motor, below",
        }.get(spec.moved_by)
        if means is None and spec.normal == "open":
            means = f"is open: prove {_PROVES[spec.moved_by]} first; never bridge it"
        if means is None and not spec.safety:
            means = "is open: satisfied, or bad"
        usual = "is open: find out why it tripped before it is reset; never bridge it"
        return f"{name} {means or usual}"


#: What a contact waits for that is open on the shelf.
_PROVES = {
    "air": "the air",
    "flow": "the flow",
    "pressure": "the draught or pressure",
    "level": "the water",
    "temperature": "the heat",
    "door": "the door",
    "hand": "the handle",
    "overcurrent": "the fuse",
    "control": "its control",
}
