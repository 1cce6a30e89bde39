"""Wires, jumpers and plugs: one lead for each pair of neighbouring ends."""

from __future__ import annotations

from typing import Final, NamedTuple, cast

from wirecheck.language import statements as st
from wirecheck.language.read import Parsed
from wirecheck.language.scope import Scope
from wirecheck.language.words import read_attributes
from wirecheck.model.diagram import (
    OPEN_END,
    UNKNOWN_END,
    Attribute,
    Lead,
    LeadRole,
    NamedAlone,
    Part,
    PassedThrough,
    Terminal,
    key_of,
)
from wirecheck.model.nearest import both
from wirecheck.model.quantity import Quantity
from wirecheck.model.text import Span
from wirecheck.parts.library import lead_attributes

_NOTHING_GIVEN: Final[dict[str, Attribute]] = {}


class _Way(NamedTuple):
    """A stop once resolved: where the lead arrives, where the next one leaves."""

    arrive: Terminal
    leave: Terminal
    span: Span


class LeadBuilder:
    """Collects the leads of a diagram, in the order of the text."""

    def __init__(self, scope: Scope) -> None:
        """Start with no leads; parts and splices are all in the scope by now."""
        self.scope = scope
        self.leads: list[Lead] = []
        self.passed: list[PassedThrough] = []
        self.named_alone: list[NamedAlone] = []
        self._specs = lead_attributes()
        self._runs = 0

    def add(self, parsed: Parsed) -> None:
        """Add the leads of a statement, if it states any."""
        statement = parsed.statement
        if isinstance(statement, st.WireStatement):
            self._run(parsed, statement.stops, statement.attributes, LeadRole.WIRE)
        elif isinstance(statement, st.JumperStatement):
            self._run(parsed, statement.stops, statement.attributes, LeadRole.JUMPER)
        elif isinstance(statement, st.PlugStatement):
            self._plug(parsed, statement)
        elif isinstance(statement, st.LostLeads):
            self._lost(parsed, statement)

    def _run(
        self,
        parsed: Parsed,
        stops: list[st.Stop],
        attributes: list[st.Words],
        role: LeadRole,
    ) -> None:
        self._runs += 1
        last = len(stops) - 1
        if stops[0].own:
            span = parsed.at(stops[0].place.name)
            message = "brackets describe the lead that arrives here, and none does"
            self.scope.problem(message, span)
        passed_before = len(self.passed)
        ways = [self._way(parsed, stop.place, at, last) for at, stop in enumerate(stops)]
        if len(self.passed) > passed_before + 1:
            self._refuse_passing_twice(self.passed[passed_before:])
        shared = self._attributes(parsed, attributes) if attributes else _NOTHING_GIVEN
        left = ways[0]
        for stop, right in zip(stops[1:], ways[1:], strict=True):
            given, shared_length = shared, last > 1 and "length" in shared
            if stop.own:
                own = self._attributes(parsed, stop.own)
                shared_length = shared_length and "length" not in own
                given = shared | own
            if left.leave == right.arrive:
                self._lead_to_itself(left, right)
            else:
                self.leads.append(
                    Lead(
                        left.leave,
                        right.arrive,
                        left.span,
                        right.span,
                        role,
                        given,
                        shared_length,
                        parsed.span,
                        self._runs,
                    )
                )
            left = right

    def _lead_to_itself(self, left: _Way, right: _Way) -> None:
        span = Span(left.span.source, left.span.start, right.span.end)
        self.scope.problem("this lead runs from a terminal to itself", span)

    def _attributes(self, parsed: Parsed, attributes: list[st.Words]) -> dict[str, Attribute]:
        given = read_attributes(self.scope, parsed, attributes, self._specs, "a lead")
        run_in = given.get("in")
        if run_in:
            cable = self.scope.cables.get(key_of(str(run_in.value)))
            if cable is None and key_of(str(run_in.value)) in self.scope.spoiled:
                del given["in"]
            elif cable is None:
                del given["in"]
                known = [cable.name for cable in self.scope.cables.values()]
                declare = "; declare it with: cable NAME: 18/5"
                hint = f"; there are {both(known)}" if known else declare
                message = f"no cable is called “{run_in.value}”{hint}"
                self.scope.problem(message, run_in.span)
            elif "size" not in given:
                size = Quantity(cable.gauge_awg, cable.gauge_awg, "AWG")
                given["size"] = Attribute("size", size, run_in.span)
        return given

    def _refuse_passing_twice(self, passed: list[PassedThrough]) -> None:
        """The same part (or contact) passed twice in one lead: once is what was meant."""
        seen: set[frozenset[Terminal]] = set()
        for through in passed:
            contact = frozenset((through.entered, through.left))
            if contact in seen:
                message = f"this lead passes {self.scope.parts[through.part].name} twice"
                self.scope.problem(message, through.span)
            seen.add(contact)

    def _way(self, parsed: Parsed, place: st.Place, at: int, last: int) -> _Way:
        span = Span(parsed.source, place.start, place.end)
        if place.terminal is None:
            node = self.scope.node(place.name)
            if node is None:
                return self._alone(parsed, place, at, last, span)
            if node.part == OPEN_END and 0 < at < last:
                message = f"“{place.name.text}” is a loose end; no lead goes on behind it"
                self.scope.problem(message, span)
            if node.part in (OPEN_END, UNKNOWN_END):
                return _Way(node, self.scope.made_up(node.part), span)
            return _Way(node, node, span)
        if place.through is None:
            landing = self._landing(parsed, place)
            return _Way(landing, landing, span)
        return self._contact(parsed, place, span, inside=0 < at < last)

    def _landing(self, parsed: Parsed, place: st.Place) -> Terminal:
        landing = self.scope.landing(place, parsed.source)
        if landing is None:
            return self.scope.made_up(UNKNOWN_END)
        return landing

    def _alone(self, parsed: Parsed, place: st.Place, at: int, last: int, span: Span) -> _Way:
        """A part named alone is passed through, or entered at its first, left at its second."""
        part = self.scope.part(place.name, parsed.source, ends_a_lead=True)
        through = part.structure.through if part else None
        if part is None or through is None:
            if part is not None:
                self._name_a_terminal(part, span, inside=0 < at < last)
            unknown = self.scope.made_up(UNKNOWN_END)
            return _Way(unknown, unknown, span)
        way = _Way(part.terminal(through[0]), part.terminal(through[1]), span)
        if 0 < at < last:
            self.passed.append(PassedThrough(part.key, way.arrive, way.leave, span))
        else:
            landed = way.leave if at == 0 else way.arrive
            self.named_alone.append(NamedAlone(part.key, landed, span))
        return way

    def _name_a_terminal(self, part: Part, span: Span, *, inside: bool) -> None:
        names = [name for name, spec in part.structure.terminals.items() if not spec.inner]
        has = f"one of {', '.join(names)}" if names else "by its number"
        fault = "is not passed through by its name" if inside else "has more than one way in"
        message = f"{part.name} {fault}; name the terminal: {has}"
        near = f"{part.name}.{names[0]}" if names else None
        self.scope.problem(message, span, near)

    def _contact(self, parsed: Parsed, place: st.Place, span: Span, *, inside: bool) -> _Way:
        """``part.terminal..terminal``: passed by the contact (or load) between the two."""
        one, other = cast(st.Name, place.terminal), cast(st.Name, place.through)
        part = self.scope.part(place.name, parsed.source)
        entered, left = self._terminal(part, one, parsed), self._terminal(part, other, parsed)
        if part and entered and left:
            if not _is_element(part, entered.name, left.name):
                ends = f"{one.text} and {other.text}"
                self.scope.problem(f"{part.name} has nothing to pass between {ends}", span)
            elif not inside:
                message = "nothing is passed where a lead begins or ends; name one terminal"
                self.scope.problem(message, span)
            else:
                self.passed.append(PassedThrough(part.key, entered, left, span))
        arrive = entered or self.scope.made_up(UNKNOWN_END)
        leave = left or self.scope.made_up(UNKNOWN_END)
        return _Way(arrive, leave, span)

    def _plug(self, parsed: Parsed, plug: st.PlugStatement) -> None:
        """A harness: one lead for each named terminal."""
        self._runs += 1
        one = self.scope.part(plug.part, parsed.source)
        other = self.scope.part(plug.to, parsed.source)
        for pin in plug.pins:
            end = pin.to or pin.terminal
            a = self._terminal(one, pin.terminal, parsed)
            said = one is not None and a is None and pin.to is None
            b = None if said else self._terminal(other, end, parsed)  # one slip, one problem
            if a is not None and a == b:
                message = "this conductor runs from a terminal to itself"
                self.scope.problem(message, parsed.at(pin.terminal))
                continue
            self.leads.append(
                Lead(
                    a or self.scope.made_up(UNKNOWN_END),
                    b or self.scope.made_up(UNKNOWN_END),
                    parsed.at(pin.terminal),
                    parsed.at(end),
                    LeadRole.PLUG,
                    {},
                    shared_length=False,
                    statement=parsed.span,
                    run=self._runs,
                )
            )

    def _lost(self, parsed: Parsed, lost: st.LostLeads) -> None:
        """Of leads that could not be read: one not traced from each terminal they may land on."""
        self._runs += 1
        touched: dict[Terminal, Span] = {}
        for place in lost.places:
            span = Span(parsed.source, place.start, place.end)
            for terminal in self._touched(place, lost):
                touched.setdefault(terminal, span)
        for terminal, span in touched.items():
            self.leads.append(
                Lead(
                    terminal,
                    self.scope.made_up(UNKNOWN_END),
                    span,
                    span,
                    LeadRole(lost.role),
                    {},
                    shared_length=False,
                    statement=parsed.span,
                    run=self._runs,
                )
            )

    def _touched(self, place: st.Place, lost: st.LostLeads) -> list[Terminal]:
        """Where a lead that names this place may land."""
        part = self.scope.parts.get(key_of(place.name.text))
        found: list[Terminal | None] = []
        if part is not None and place.terminal is not None:
            names = [name for name in (place.terminal, place.through) if name is not None]
            found = [self.scope.find_terminal(part, name.text) for name in names]
        elif part is not None and part.structure.through:
            found = [part.terminal(name) for name in part.structure.through]
        elif lost.role == LeadRole.PLUG.value:
            named = [self.scope.parts.get(key_of(each.name.text)) for each in lost.places]
            ends = [end for end in named if end is not None][:2]
            found = [self.scope.find_terminal(end, place.name.text) for end in ends]
        return [terminal for terminal in found if terminal is not None]

    def _terminal(self, part: Part | None, name: st.Name, parsed: Parsed) -> Terminal | None:
        return self.scope.terminal(part, name, parsed.source) if part else None


def _is_element(part: Part, entered: str, left: str) -> bool:
    """Whether something stands between two terminals, at once or over points inside the device."""
    structure = part.structure
    elements = (*structure.switches, *structure.loads, *structure.links)
    reached, waiting = {entered}, [entered]
    while waiting:
        here = waiting.pop()
        for element in elements:
            if here in element.between:
                there = element.between[here == element.between[0]]
                if there == left:
                    return True
                if there not in reached and structure.terminals[there].inner:
                    reached.add(there)
                    waiting.append(there)
    return False
