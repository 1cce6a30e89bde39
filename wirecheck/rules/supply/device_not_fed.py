"""Whatever takes current lies across a supply that is drawn.

Both ends on one leg, or one lead that ends short of the supply, and a transformer with all that
hangs on it, a relay or a motor is dead.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final, NamedTuple

from wirecheck.model.diagram import Part, Terminal
from wirecheck.model.finding import Breaks, Finding
from wirecheck.model.kind import LoadSpec
from wirecheck.model.nearest import both
from wirecheck.rules.earthed import carries_current
from wirecheck.rules.empty import any_wired, needed_and_empty
from wirecheck.rules.facts import Facts
from wirecheck.rules.legs import Legs
from wirecheck.rules.line_voltage.crossings import mixed_areas
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule
from wirecheck.rules.supply.dead_branch import dead_branch

#: Families whose own chapters say what feeds them.
_ELSEWHERE: Final = frozenset(
    {"ignition-control", "gas-valve", "vent-damper", "boiler-call", "thermostat"}
)
#: Loads that have no use with both ends on one side; a lamp across a switch tells of a trip.
_NEVER_ON_ONE_SIDE: Final = frozenset({"coil", "motor"})

_GOOD = """\
part line is mains: 120 V
part xfmr is transformer
part fan is relay
part stat is thermostat
wire line.L1 to xfmr.L1: black
wire line.N to xfmr.N: white
wire line.G to earth: green
wire xfmr.R to stat to fan to xfmr.C
wire xfmr.C to earth: green
"""
_LAMP = "part shine is lamp: 120 V\nwire line.L1 to shine to line.N\n"

_ZONE = """\
part xfmr is transformer
part stat is thermostat
part zone is zone-valve
part boiler is boiler-call
wire xfmr.R to stat to zone.E1
wire zone.E2 to boiler.2
wire boiler.1 to zone.M1
wire zone.M2 to xfmr.C
wire xfmr.C to earth: green
"""

RULE = Rule(
    name="device-not-fed",
    title="Whatever takes current lies across a supply",
    family="supply",
    breaks=Breaks.OPERATION,
    why=(
        "Without volts across it a coil or motor does nothing, and a transformer gives none: the "
        "whole 24 V circuit is dead."
    ),
    blind_spots="A device fed from a supply that is not drawn beside the one that is.",
    caution="",
    sources=(PRACTICE,),
    faults={
        "unwired": Fault(
            "the primary of {devices} has no leads: run them from the line to {ends}",
            "No 24 V: nothing responds to the thermostat.",
        ),
        "one-side": Fault(
            "both ends of {devices} are on {side}: of {ends} land one on the other side of the "
            "supply",
            "Dead: no volts across {devices}.",
        ),
        "two-supplies": Fault(
            "{end} is fed from {side} and {other} from {far}, which are different supplies: land "
            "both ends of {devices} on one of them",
            "Dead: no volts across {devices}.",
        ),
        "not-reached": Fault(
            "{end} does not reach the supply, so {devices} cannot be fed: lead it back to the "
            "other side of what feeds {other}",
            "Dead: no volts across {devices}.",
        ),
    },
    bad=(
        Example(
            _LAMP
            + _GOOD.replace("wire line.L1 to xfmr.L1: black\n", "").replace(
                "wire line.N to xfmr.N: white\n", ""
            ),
            (("unwired", "xfmr"),),
        ),
        Example(
            _LAMP + _GOOD.replace("line.L1 to xfmr.L1: black", "line.N to xfmr.L1: white"),
            (("one-side", "xfmr.L1"),),
        ),
        Example(
            _LAMP
            + _GOOD.replace("line.L1 to xfmr.L1: black", "xfmr.L1 to joint: black")
            + "splice joint\n",
            (("not-reached", "xfmr.L1"),),
        ),
        Example(_ZONE, (("two-supplies", "zone.M1"),)),
    ),
    good=(Example(_GOOD), Example(_LAMP + _GOOD)),
    stands_back_for=(
        "hot-and-common-exchanged",
        "hot-side-earthed",
        "call-fed-from-common",
        "coils-in-series",
        "line-shorted",
    ),
)


class _Taker(NamedTuple):
    """Something that takes current between two wired ends; ``may_idle``: not if on one side."""

    part: Part
    a: Terminal
    b: Terminal
    may_idle: bool


def check(facts: Facts) -> Iterator[Finding]:
    """Find primaries and loads that are not across a supply; one finding for each cause."""
    wired = facts.as_wired
    yield from _unwired(wired)
    if wired.once(mixed_areas):
        return
    empty = {_circuit(wired, end) for end in wired.once(needed_and_empty) if _must(wired, end)}
    short: dict[int, list[tuple[Terminal, Terminal, Part]]] = {}
    one_sided: dict[Terminal, list[_Taker]] = {}
    for taker in _takers(wired):
        a, b = taker.a, taker.b
        if _circuit(wired, a) in wired.once(_miswired) or _is_across(wired, a, b):
            continue
        if not wired.is_traced(a) or not wired.is_traced(b):
            continue
        at_a, at_b = _reached_by(wired, a), _reached_by(wired, b)
        if at_a and at_b and not _on_one(wired, a, b):
            yield _by_two(wired, taker, at_a, at_b)
        elif at_a and at_b and not taker.may_idle:
            one_sided.setdefault(at_a, []).append(taker)
        elif (at_a is None) != (at_b is None) and not empty & {_circuit(wired, a), "any"}:
            end, other = (b, a) if at_a else (a, b)
            conductor = wired.sides.conductor(end)
            short.setdefault(conductor, []).append((end, other, taker.part))
    for side, takers in one_sided.items():
        yield _on_one_side(wired, takers, side)
    for ends in (each for each in short.values() if not _in_series(wired, each)):
        yield _not_reached(wired, ends)


def _unwired(facts: Facts) -> Iterator[Finding]:
    """Transformers that are wired, but not on their primary, beside a line that is drawn."""
    for part in facts.diagram.parts.values() if facts.once(Legs).sources else ():
        pairs = {name for spec in part.structure.sources for pair in spec.fed_by for name in pair}
        ends = [part.terminal(name) for name in part.structure.terminals if name in pairs]
        if ends and any_wired(facts, part) and not any(facts.is_wired(end) for end in ends):
            yield RULE.finding(
                facts,
                "unwired",
                part.name_span,
                terminals=ends,
                devices=part.name,
                ends=both([facts.show(end) for end in ends]),
            )


def _takers(facts: Facts) -> Iterator[_Taker]:
    for part in facts.diagram.parts.values():
        pairs = [(pair, False) for spec in part.structure.sources for pair in spec.fed_by]
        if part.family not in _ELSEWHERE:
            pairs += [(spec.between, _may_idle(spec)) for spec in part.structure.loads]
        for (a, b), may_idle in pairs:
            ends = (part.terminal(a), part.terminal(b))
            if facts.is_wired(ends[0]) and facts.is_wired(ends[1]):
                yield _Taker(part, *ends, may_idle)


def _may_idle(spec: LoadSpec) -> bool:
    return spec.type not in _NEVER_ON_ONE_SIDE


def _pairs_at(facts: Facts, end: Terminal) -> list[tuple[Terminal, tuple[Terminal, ...]]]:
    """Sides of supplies that leads and contacts bring to an end, each with its other sides."""
    sides, legs = facts.sides, facts.once(Legs)
    return [
        *((leg.terminal, legs.beside(leg.terminal)) for leg in legs.at(end)),
        *((supply.hot, (supply.common,)) for supply in sides.hot_beyond(end)),
        *((supply.common, (supply.hot,)) for supply in sides.common_beyond(end)),
    ]


def _is_across(facts: Facts, a: Terminal, b: Terminal) -> bool:
    """Whether two sides of one supply reach the two ends.

    The end with fewer supplies is looked at: the common of a hundred units is one conductor.
    """
    near, far = sorted((a, b), key=lambda end: _supplies_at(facts, end))
    if not _supplies_at(facts, near):
        near, far = far, near
    return any(
        facts.sides.may_join(other, far)
        or (carries_current(facts, other) and carries_current(facts, far))
        for _side, others in _pairs_at(facts, near)
        for other in others
    )


def _supplies_at(facts: Facts, end: Terminal) -> int:
    """How many supplies reach an end by leads and contacts."""
    sides, legs = facts.sides, facts.once(Legs)
    return len(legs.at(end)) + len(sides.hot_beyond(end)) + len(sides.common_beyond(end))


def _reached_by(facts: Facts, end: Terminal) -> Terminal | None:
    """A side of a supply that reaches an end, over earth too."""
    pair = next(iter(_pairs_at(facts, end)), None)
    if pair is not None:
        return pair[0]
    return facts.once(_grounded_common) if carries_current(facts, end) else None


def _grounded_common(facts: Facts) -> Terminal | None:
    return next((s.common for s in facts.supplies if carries_current(facts, s.common)), None)


def _on_one(facts: Facts, a: Terminal, b: Terminal) -> bool:
    """Whether both ends are on the same side of what reaches them."""
    return facts.sides.may_join(a, b) or (carries_current(facts, a) and carries_current(facts, b))


def _circuit(facts: Facts, end: Terminal) -> str:
    spec = facts.diagram.spec(end)
    return spec.circuit if spec else ""


def _must(facts: Facts, end: Terminal) -> bool:
    """Whether a terminal has to be wired, not only where the other side of its contact is."""
    spec = facts.diagram.spec(end)
    return spec is not None and bool(spec.must)


def _miswired(facts: Facts) -> frozenset[str]:
    """Circuits whose two sides are joined, reversed or on the ground: that is the mistake then."""
    legs, sides = facts.once(Legs), facts.sides
    grounds = (end for mains in facts.of("mains") for end in mains.with_role("line-ground"))
    found = set()
    if any(sides.may_join(source.a, source.b) for source in legs.sources) or any(
        facts.is_wired(end) and facts.net(end) != facts.earth for end in grounds
    ):
        found.add("line")
    if any(sides.may_join(supply.hot, supply.common) for supply in facts.supplies):
        found.add("24V")
    return frozenset(found)


def _in_series(facts: Facts, ends: list[tuple[Terminal, Terminal, Part]]) -> bool:
    """Whether what meets at a conductor comes from two sides: then current flows through both."""
    first = ends[0][1]
    return any(not _on_one(facts, first, other) for _end, other, _part in ends[1:])


def _by_two(facts: Facts, taker: _Taker, a: Terminal, b: Terminal) -> Finding:
    own = (*facts.nets.leads_at(taker.a), *facts.nets.leads_at(taker.b))
    return RULE.finding(
        facts,
        "two-supplies",
        facts.place(taker.a),
        leads=dict.fromkeys((*own, *_way(facts, a, taker.a), *_way(facts, b, taker.b))),
        terminals=(taker.a, taker.b, a, b),
        devices=taker.part.name,
        end=facts.show(taker.a),
        other=facts.show(taker.b),
        side=facts.show(a),
        far=facts.show(b),
    )


def _on_one_side(facts: Facts, takers: list[_Taker], side: Terminal) -> Finding:
    first = takers[0]
    own = (*facts.nets.leads_at(first.a), *facts.nets.leads_at(first.b))
    ways = (*_way(facts, side, first.b), *_way(facts, side, first.a))
    empty = [end for end in _other_sides(facts, side) if not facts.is_wired(end)]
    return RULE.finding(
        facts,
        "one-side",
        facts.place(first.a),
        leads=dict.fromkeys((*own, *ways)),
        terminals=[*(end for taker in takers for end in (taker.a, taker.b)), side, *empty],
        devices=both(list(dict.fromkeys(taker.part.name for taker in takers))),
        ends=f"{facts.show(first.a)} and {facts.show(first.b)}",
        side=facts.show(side),
    )


def _way(facts: Facts, side: Terminal, end: Terminal) -> tuple[int, ...]:
    trace = facts.sides.trace(side, end)
    return trace.leads if trace else ()


def _other_sides(facts: Facts, side: Terminal) -> tuple[Terminal, ...]:
    """The other sides of the supply that a terminal is a side of."""
    return tuple(end for one, others in _pairs_at(facts, side) if one == side for end in others)


def _not_reached(facts: Facts, ends: list[tuple[Terminal, Terminal, Part]]) -> Finding:
    end, other, _part = ends[0]
    branch = dead_branch(facts, end)
    reached = _reached_by(facts, other)
    empty = [e for e in _other_sides(facts, reached) if not facts.is_wired(e)] if reached else []
    return RULE.finding(
        facts,
        "not-reached",
        facts.place(end),
        leads=branch.leads,
        terminals=dict.fromkeys((*(each[0] for each in ends), *branch.terminals, *empty)),
        devices=both(list(dict.fromkeys(part.name for _end, _other, part in ends))),
        end=facts.show(end),
        other=facts.show(other),
    )
