"""Differences in words, as one technician tells another: the switch, the lead, the terminal."""

from __future__ import annotations

from collections.abc import Callable, Iterable

from wirecheck.compare.circuits import Circuits
from wirecheck.compare.losses import Apart, Joined, OffMetal
from wirecheck.compare.misses import Displaced, Extra, Fitted, Miss
from wirecheck.compare.pattern import what_it_is
from wirecheck.compare.places import leads_out_of, place_of
from wirecheck.compare.result import Difference, Voice
from wirecheck.compare.translated import Translation
from wirecheck.compare.wired import Wired
from wirecheck.model.diagram import EARTH, Diagram, Part, Terminal, Value
from wirecheck.model.quantity import Quantity


class Teller:
    """Tells the differences of one comparison."""

    def __init__(
        self,
        first: Wired,
        second: Wired,
        as_typed: Diagram,
        translation: Translation,
        voice: Voice,
    ) -> None:
        """Remember both.

        Args:
            first: the first diagram.
            second: the other one in its names.
            as_typed: the other one in its own.
            translation: between the two.
            voice: what they are called.
        """
        self._first, self._second = first, second
        self._as_typed, self._translation = as_typed, translation
        self._voice = voice
        self._circuits = Circuits(first)

    def told(self, miss: Miss) -> Difference:
        """One difference."""
        match miss:
            case Apart():
                return self._apart(miss)
            case OffMetal():
                return self._off_metal(miss)
            case Joined():
                return self._joined(miss)
            case Displaced():
                return self._displaced(miss)
            case Extra():
                return self._extra(miss)
            case Fitted():
                return self._fitted(miss)

    def show(self, terminal: Terminal) -> str:
        """A terminal as the second calls it, or as the first does if the second has none such."""
        back = self._translation.terminal_back(terminal)
        known = back.part in self._as_typed.parts or terminal == EARTH
        if known and (terminal == EARTH or back.name in self._names(back.part)):
            return self._as_typed.show(back)
        if terminal.part in self._as_typed.splices:
            return self._as_typed.splices[terminal.part].name
        return self._first.diagram.show(terminal)

    def _names(self, part: str) -> Iterable[str]:
        return self._as_typed.parts[part].structure.terminals

    def leads_shown(self, numbers: Iterable[int]) -> str:
        """Leads of the second, each with its line."""
        leads = self._as_typed.leads
        return ", ".join(
            f"line {leads[n].span.line}: {self._as_typed.lead_name(leads[n])}" for n in numbers
        )

    # ---- one kind of difference each --------------------------------------------------------

    def _apart(self, miss: Apart) -> Difference:
        first, second = self._first, self._second
        net = frozenset(first.ports_on(first.net_of[miss.unit]))
        own = self._on_net(net, miss.piece)
        key_leads = leads_out_of(first, miss.piece, lambda end: end in own)
        here, there = self._ends(key_leads, miss)
        is_foreign = self._is_foreign(net)
        stays, other = here, there
        wrong = leads_out_of(second, self._landed(miss.piece), is_foreign)
        if not wrong:
            stays, other = there, here
            wrong = leads_out_of(second, self._landed((there,)), is_foreign)
        if here.part not in second.diagram.parts:
            name = first.diagram.parts[here.part].name
            message = f"{name} is not drawn: {self.show(here)} belongs on {self.show(there)}"
        elif wrong:
            belongs = f"{self.show(stays)} belongs on {self.show(other)}"
            message = f"{belongs}; {self._lands(wrong, is_foreign)}"
        else:
            message = f"no lead joins {self.show(here)} to {self.show(there)}"
        circuit = self._circuits.of(miss.unit)
        landed = self._landed_on(stays, wrong, is_foreign)
        return Difference(circuit, message, miss, (here, there), key_leads, wrong, landed)

    def _landed_on(
        self, stays: Terminal, leads: tuple[int, ...], is_foreign: Callable[[Terminal], bool]
    ) -> tuple[Terminal, Terminal] | None:
        every = self._second.diagram.leads
        ends = [end for n in leads for end in (every[n].a, every[n].b) if is_foreign(end)]
        return (stays, ends[0]) if ends else None

    def _on_net(self, net: frozenset[Terminal], piece: Iterable[Terminal]) -> set[Terminal]:
        """The terminals of a net that are not in a piece of it."""
        rest = net - frozenset(piece)
        return {end for port in rest for end in self._first.port(port)}

    def _ends(self, leads: tuple[int, ...], miss: Apart) -> tuple[Terminal, Terminal]:
        """The ends of the leads that are missing: in the piece, and where it belongs."""
        all_leads = self._first.diagram.leads
        ends = [end for n in leads for end in (all_leads[n].a, all_leads[n].b)]
        pins = [end for end in ends if self._first.is_pin(end)]
        own = {end for pin in miss.piece for end in self._first.port(pin)}
        here = next((end for end in pins if end in own), miss.unit)
        there = next((end for end in pins if end not in own), miss.mate)
        return here, there

    def _landed(self, pins: Iterable[Terminal]) -> list[Terminal]:
        return [pin for pin in pins if pin in self._second.net_of]

    def _is_foreign(self, net: frozenset[Terminal]) -> Callable[[Terminal], bool]:
        own = {end for port in net for end in self._first.port(port)}
        touched = {
            metal
            for number, some in self._first.touches.items()
            if net & set(self._first.ports_on(number))
            for metal in some
        }

        def is_foreign(end: Terminal) -> bool:
            if end in self._second.metal:
                return end not in touched
            return self._second.is_pin(end) and end not in own

        return is_foreign

    def _lands(self, leads: tuple[int, ...], is_foreign: Callable[[Terminal], bool]) -> str:
        """Where leads land instead, and which they are."""
        every = self._second.diagram.leads
        ends = [end for n in leads for end in (every[n].a, every[n].b) if is_foreign(end)]
        where = f"joined to {self.show(ends[0])}" if ends else "on another net"
        return f"in {self._voice.second} it is {where} ({self.leads_shown(leads)})"

    def _off_metal(self, miss: OffMetal) -> Difference:
        ends = [end for pin in miss.pins for end in self._first.port(pin)]
        key_leads = leads_out_of(self._first, (miss.metal,), lambda end: end in ends)
        all_leads = self._first.diagram.leads
        here = next(
            (end for n in key_leads for end in (all_leads[n].a, all_leads[n].b) if end in ends),
            miss.pins[0],
        )
        touches = self._first.touches

        def is_off_it(end: Terminal) -> bool:
            net = self._first.net_of.get(end)
            return net is not None and miss.metal not in touches.get(net, ())

        is_foreign: Callable[[Terminal], bool] = is_off_it
        stays, other = miss.metal, here
        wrong = leads_out_of(self._second, (miss.metal,), is_foreign)
        if not wrong:
            stays, other = here, miss.metal
            is_foreign = self._is_foreign(frozenset(miss.pins))
            wrong = self._straight_from(here, is_foreign)
        message = f"no lead joins {self.show(here)} to {self.show(miss.metal)}"
        if wrong:
            what = "the earth lead" if stays == EARTH else self.show(stays)
            belongs = f"{what} belongs on {self.show(other)}"
            message = f"{belongs}; {self._lands(wrong, is_foreign)}"
        circuit = self._circuits.of(here) if miss.metal == EARTH else self._circuits.of(miss.metal)
        landed = self._landed_on(stays, wrong, is_foreign)
        return Difference(circuit, message, miss, (here, miss.metal), key_leads, wrong, landed)

    def _straight_from(
        self, pin: Terminal, is_foreign: Callable[[Terminal], bool]
    ) -> tuple[int, ...]:
        """The first lead that runs from a terminal to one where it does not belong."""
        leads = self._second.diagram.leads
        for end in self._second.port(pin):
            for number in self._second.nets.leads_at(end):
                far = leads[number].b if leads[number].a == end else leads[number].a
                if is_foreign(far):
                    return (number,)
        return ()

    def _joined(self, miss: Joined) -> Difference:
        others = {end for pin in miss.others for end in (*self._first.port(pin), pin)}
        starts = [
            pin for pin in miss.some if pin in self._second.net_of or pin in self._second.metal
        ]
        leads = leads_out_of(self._second, starts, lambda end: end in others)
        all_leads = self._second.diagram.leads
        ends = [end for n in leads for end in (all_leads[n].a, all_leads[n].b)]
        own = {end for pin in miss.some for end in (*self._first.port(pin), pin)}
        here = next((end for end in ends if end in own), miss.some[0])
        there = next((end for end in ends if end in others), miss.others[0])
        by = f" ({self.leads_shown(leads)})" if leads else ""
        message = (
            f"{self.show(here)} and {self.show(there)} are joined{by}; in {self._voice.first} "
            "they are apart"
        )
        circuit = self._circuits.told_under((here, there))
        landed = (here, there)
        return Difference(circuit, message, miss, (here, there), (), leads, landed)

    def _displaced(self, miss: Displaced) -> Difference:
        contact, voice = miss.contact, self._voice
        part = self._second.diagram.parts.get(contact.part.key)
        where = "not drawn"
        leads: tuple[int, ...] = ()
        if part is not None:
            there = next(
                (
                    each
                    for each in self._second.nets.elements_of[part.key]
                    if each.type == "switch" and each.name == contact.name
                ),
                None,
            )
            where = place_of(self._second, there) if there else "not in it"
            ends = self._second.port(contact.a) + self._second.port(contact.b)
            leads = tuple(n for end in ends for n in self._second.nets.leads_at(end))
        first_leads = tuple(
            n for end in (contact.a, contact.b) for n in self._first.nets.leads_at(end)
        )
        name = f"{contact.part.name} {contact.name}".strip()
        message = f"{name} is {where}; in {voice.first} it is {place_of(self._first, contact)}"
        circuit = self._circuits.of(contact.a)
        ends = (contact.a, contact.b)
        return Difference(circuit, message, miss, ends, first_leads, tuple(dict.fromkeys(leads)))

    def _extra(self, miss: Extra) -> Difference:
        part = miss.part
        message = f"{part.name} ({what_it_is(part)}) is not in {self._voice.first}"
        circuits = Circuits(self._second)
        ends = [part.terminal(name) for name in part.structure.terminals]
        wired = tuple(end for end in ends if self._second.nets.is_wired(end))
        leads = tuple(dict.fromkeys(n for end in wired for n in self._second.nets.leads_at(end)))
        return Difference(circuits.told_under(wired), message, miss, wired, (), leads)

    def _fitted(self, miss: Fitted) -> Difference:
        there, here = value_shown(miss.there), value_shown(miss.here)
        leads: tuple[int, ...] = ()
        new: tuple[Terminal, ...] = ()
        because = ""
        if not miss.typed:
            ends = map(miss.part.terminal, miss.part.structure.terminals)
            first, second = self._first.nets, self._second.nets
            new = tuple(e for e in ends if second.is_wired(e) and not first.is_wired(e))
            leads = tuple(dict.fromkeys(n for end in new for n in second.leads_at(end)))
            because = f", as a lead lands on {self.show(new[0])}" if new else ""
            because += f" ({self.leads_shown(leads)})" if leads else ""
        message = (
            f"{miss.part.name}: {miss.attribute} {there}{because}; in {self._voice.first} it is "
            f"{here}"
        )
        circuit = self._circuits.told_under(new or _some(miss.part))
        return Difference(circuit, message, miss, new, (), leads)


def _some(part: Part) -> tuple[Terminal, ...]:
    """The first terminal of a part, which says what it is there for."""
    return tuple(part.terminal(name) for name in list(part.structure.terminals)[:1])


def value_shown(value: Value | None) -> str:
    """A value of an attribute as it is typed."""
    if value is None:
        return "not given"
    if isinstance(value, tuple) and not isinstance(value, Quantity):
        return "/".join(map(str, value))
    return str(value)
