"""Call terminals with their own 24 V behind them are joined by dry contacts, fed from nowhere else.

Zone valves have end switches for this: they pass the boiler's own 24 V back to it.  Fed from the
zone transformer they tie two supplies together.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final, NamedTuple

from wirecheck.model.diagram import Part, Terminal
from wirecheck.model.finding import Breaks, Finding
from wirecheck.rules.cautions import MOVING_LEADS
from wirecheck.rules.facts import Facts, Supply
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule

#: Roles of call terminals with a supply behind them, and of the dry contacts made for them.
_OF_THE_CALL: Final = frozenset({"call-side", "coil", "end-switch", "motor-end-switch"})

_GOOD = """\
part xfmr is transformer
part stat is thermostat
part zone is zone-valve
part boiler is boiler-call
wire xfmr.R to stat to zone to xfmr.C
wire xfmr.C to earth: green
wire boiler.1 to zone.E1
wire zone.E2 to boiler.2
"""
_BAD = (
    _GOOD.replace("boiler.1 to zone.E1", "xfmr.R to zone.E1").replace(
        "zone.E2 to boiler.2", "zone.E2 to boiler.1"
    )
    + "wire xfmr.C to boiler.2\n"
)

RULE = Rule(
    name="own-supply-tied",
    title="Call terminals with a supply of their own are joined by dry contacts only",
    family="supply",
    breaks=Breaks.SAFETY,
    why=(
        "Two transformers on one pair of leads feed each other: the boiler's relay chatters, stays "
        "in or burns out, and a circuit that was switched off is live from the other side."
    ),
    blind_spots="Call terminals that the maker says must be fed from outside.",
    caution=MOVING_LEADS + " Switching one transformer off does not make it dead.",
    sources=(PRACTICE,),
    faults={
        "tied": Fault(
            "{supply} feeds {feed} and {call}, which have 24 V of their own behind them: take the "
            "lead {lead} off, and let the contacts join {feed} to {call} with nothing else on them",
            "Two supplies work against each other: the call is erratic, and either transformer may "
            "burn out.",
        ),
    },
    bad=(Example(_BAD, (("tied", "xfmr.R"),)),),
    good=(Example(_GOOD),),
    stands_back_for=("line-and-24-volts-joined",),
)


class Call(NamedTuple):
    """The two terminals that are to be joined for a call; the supply's own hot side is ``feed``."""

    part: Part
    feed: Terminal
    call: Terminal


class Tie(NamedTuple):
    """A supply that lies across a call with a supply of its own."""

    call: Call
    supply: Supply


def check(facts: Facts) -> Iterator[Finding]:
    """Find pairs of call terminals that lie across a supply other than their own."""
    for call, tied in facts.once(ties):
        side = tied.hot if _is_at(facts, tied.hot, call.feed) else tied.common
        trace = facts.sides.trace(side, call.feed)
        leads = trace.leads if trace is not None else ()
        cause = _tying(facts, leads)
        yield RULE.finding(
            facts,
            "tied",
            facts.end_span(*cause) if cause else call.part.name_span,
            leads=dict.fromkeys((*((cause[0],) if cause else ()), *leads)),
            terminals=(call.feed, call.call, tied.hot, tied.common),
            supply=tied.part.name,
            feed=facts.show(call.feed),
            call=facts.show(call.call),
            lead=facts.lead(cause[0]) if cause else tied.part.name,
        )


def _tying(facts: Facts, leads: tuple[int, ...]) -> tuple[int, Terminal] | None:
    """The last lead on the way to the call that comes from the other circuit, and that end.

    Leads between the call and dry contacts for it are as they should be.
    """
    for number in reversed(leads):
        for end in facts.diagram.leads[number][:2]:
            if facts.role(end) not in _OF_THE_CALL and facts.part(end) is not None:
                return number, end
    return None


def ties(facts: Facts) -> tuple[Tie, ...]:
    """The supplies tied to calls, one for each call; use it as ``facts.once(ties)``."""
    found = []
    for call in calls_with_supply(facts):
        tied = next((s for s in _at(facts, call) if _across(facts, s, call)), None)
        if tied is not None:
            found.append(Tie(call, tied))
    return tuple(found)


def calls_with_supply(facts: Facts) -> Iterator[Call]:
    """Pairs of call terminals with a source of the same part behind them."""
    for supply in facts.supplies:
        part = supply.part
        ends = part.with_role("call-side") or part.with_role("coil")
        other = next((end for end in ends if end != supply.hot), None)
        if part.family != "transformer" and other is not None:
            yield Call(part, supply.hot, other)


def _at(facts: Facts, call: Call) -> Iterator[Supply]:
    """Other supplies that reach the call's feed."""
    sides = facts.sides
    for supply in (*sides.hot_beyond(call.feed), *sides.common_beyond(call.feed)):
        if supply.part.key != call.part.key:
            yield supply


def _across(facts: Facts, supply: Supply, call: Call) -> bool:
    """Whether the call's two terminals are on different sides of the supply."""
    hot, common = supply.hot, supply.common
    return (_is_at(facts, hot, call.feed) and _is_at(facts, common, call.call)) or (
        _is_at(facts, common, call.feed) and _is_at(facts, hot, call.call)
    )


def _is_at(facts: Facts, side: Terminal, terminal: Terminal) -> bool:
    """Whether contacts, leads or earth bring a side of a supply to a terminal."""
    by_earth = facts.is_grounded(side) and facts.is_grounded(terminal)
    return facts.sides.may_join(side, terminal) or by_earth
