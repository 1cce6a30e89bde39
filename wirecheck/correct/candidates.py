"""Every single change worth trying on a diagram.

A lead can land on any terminal; of terminals that are one conductor already, the one that suits
the lead's other end best stands for all, as do its neighbours on the device it is on now.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations

from wirecheck.correct.never import takes_out_earth
from wirecheck.correct.rewired import Add, Change, Ends, Exchange, Fit, Move, Rewired, TakeOut
from wirecheck.correct.suits import PAIRED, mismatch
from wirecheck.model.diagram import EARTH, UNKNOWN_END, Diagram, Terminal

_FITTED = "fitted"


class Candidates:
    """The single changes of one diagram as it is now."""

    def __init__(self, state: Rewired) -> None:
        """List where leads can land, by net."""
        self._state = state
        self._diagram = state.diagram
        self._net_of = state.nets.net_of
        self._at: dict[int, list[Terminal]] = {}
        for terminal in _landings(self._diagram):
            self._at.setdefault(self._net_of[terminal], []).append(terminal)
        self._suiting: dict[tuple[Terminal, int], list[Terminal]] = {}

    def __iter__(self) -> Iterator[Change]:
        """Yield every one that a repair may make: moves, exchanges, additions, removals, links."""
        every = (self._moves, self._exchanges, self._additions, self._removals, self._fits)
        for kind in every:
            yield from (change for change in kind() if not takes_out_earth(self._state, change))

    def _leads(self) -> Iterator[tuple[int, Ends]]:
        for number, ends in enumerate(self._state.ends):
            if ends is not None and not any(end.part == UNKNOWN_END for end in ends):
                yield number, ends

    def _moves(self) -> Iterator[Move]:
        """Ends of leads that have not been moved: to move both is to run another lead."""
        moved = {each.lead for each in self._state.changes if isinstance(each, Move)}
        for number, (a, b) in self._leads():
            if number in moved:
                continue
            for old, stays in ((a, b), (b, a)):
                for new in self._targets(old, stays):
                    yield Move(number, old, new)

    def _targets(self, old: Terminal, stays: Terminal) -> Iterator[Terminal]:
        part = self._diagram.parts.get(old.part)
        beside = (
            [
                each
                for each in (part.terminal(name) for name in part.structure.terminals)
                if self._can_land(each)
            ]
            if part
            else []
        )
        own = self._net_of[old]
        best = (end for net in self._at if net != own for end in self._partners(net, stays))
        for new in dict.fromkeys((*beside, *best)):
            if new not in (old, stays):
                yield new

    def _can_land(self, terminal: Terminal) -> bool:
        return terminal in self._at.get(self._net_of[terminal], ())

    def _partners(self, net: int, stays: Terminal) -> list[Terminal]:
        """The terminal of a net that suits best; of each role one that suits as a partner.

        One that needs a lead and has none is where a lead belongs, whatever else is of its net.
        """
        if (stays, net) not in self._suiting:
            by_role: dict[str, tuple[float, Terminal]] = {}
            waiting: list[Terminal] = []
            for each in self._at[net]:
                spec = self._diagram.spec(each)
                cost = mismatch(self._diagram, stays, each)
                role = spec.role if spec else ""
                if role not in by_role or cost < by_role[role][0]:
                    by_role[role] = cost, each
                if spec and spec.must and not self._state.nets.is_wired(each):
                    waiting.append(each)
            ranked = sorted(by_role.values())
            suiting = [
                each for place, (cost, each) in enumerate(ranked) if not place or cost <= PAIRED
            ]
            self._suiting[stays, net] = list(dict.fromkeys((*suiting, *waiting)))
        return self._suiting[stays, net]

    def _exchanges(self) -> Iterator[Exchange]:
        for (one, (a, b)), (other, second) in combinations(self._leads(), 2):
            for c, d in (second, second[::-1]):
                if len({a, b, c, d}) < 4:
                    continue
                # To exchange the two other ends joins the same terminals: those on one device are
                # the likelier to have been taken for each other.
                end, its = (b, d) if b.part == d.part else (a, c)
                if self._net_of[end] != self._net_of[its]:
                    yield Exchange(one, end, other, its)

    def _additions(self) -> Iterator[Add]:
        for one, other in combinations(self._at, 2):
            pairs = sorted(
                (mismatch(self._diagram, a, b), a, b)
                for a in self._at[one]
                for b in self._partners(other, a)
            )
            by_role: dict[frozenset[str], tuple[float, Terminal, Terminal]] = {}
            for pair in pairs:
                by_role.setdefault(self._roles(*pair[1:]), pair)
            for place, (cost, a, b) in enumerate(by_role.values()):
                if not place or cost <= PAIRED:
                    yield Add(a, b, described(self._diagram, a, b))
        yield from self._burner_grounds()

    def _roles(self, *terminals: Terminal) -> frozenset[str]:
        specs = (self._diagram.spec(terminal) for terminal in terminals)
        return frozenset(spec.role if spec else "" for spec in specs)

    def _burner_grounds(self) -> Iterator[Add]:
        """A burner ground is a lead of its own, even where other leads join its ends."""
        parts = self._diagram.parts.values()
        metals = [end for part in parts for end in part.with_role("burner-metal")]
        for ground in (end for part in parts for end in part.with_role("burner-ground")):
            for metal in metals:
                if self._net_of[ground] == self._net_of[metal]:
                    yield Add(ground, metal, "green")

    def _removals(self) -> Iterator[TakeOut]:
        yield from (TakeOut(number) for number, _ends in self._leads())

    def _fits(self) -> Iterator[Fit]:
        """Links and plugs of devices, whose attribute has the choice ``fitted``."""
        for part in self._diagram.parts.values():
            for name, spec in part.kind.attributes.items():
                if _FITTED in spec.choices:
                    for value in spec.choices:
                        if value != part.values.get(name):
                            yield Fit(part.key, name, value)


def _landings(diagram: Diagram) -> Iterator[Terminal]:
    for part in diagram.parts.values():
        for name, spec in part.structure.terminals.items():
            if not spec.inner:
                yield part.terminal(name)
    for key in diagram.splices:
        yield Terminal(key, "")
    yield EARTH


def described(diagram: Diagram, a: Terminal, b: Terminal) -> str:
    """What a new lead between two terminals has to be, as typed."""
    specs = [diagram.spec(end) for end in (a, b)]
    roles = {spec.role for spec in specs if spec}
    if any(spec is not None and spec.circuit == "ignition" for spec in specs):
        return "ignition-cable"
    if EARTH in (a, b) or {"burner-ground", "burner-metal"} <= roles:
        return "green"
    return ""


def terminals_of(state: Rewired, change: Change) -> frozenset[Terminal]:
    """The terminals that a change is about, before and after."""
    match change:
        case Move(lead, _old, new):
            return frozenset((*(state.ends[lead] or ()), new))
        case Exchange(lead, _end, other, _other_end):
            return frozenset((*(state.ends[lead] or ()), *(state.ends[other] or ())))
        case Add(a, b):
            return frozenset((a, b))
        case TakeOut(lead):
            return frozenset(state.ends[lead] or ())
    return frozenset()
