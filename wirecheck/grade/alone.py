"""The key with one mistake of a drawing in it, and no other: what that mistake does by itself.

Two mistakes can hide each other: a bridged limit does nothing where no supply is landed.  So each
is judged in a unit that is right but for it.
"""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache
from typing import NamedTuple

from wirecheck.check.engine import check
from wirecheck.compare.engine import compare
from wirecheck.compare.misses import Displaced, Extra, Fitted
from wirecheck.compare.result import Difference, Voice
from wirecheck.compare.runs import ends
from wirecheck.correct.rewired import Add, Change, Fit, Move, Rewired, TakeOut
from wirecheck.grade.key import Key
from wirecheck.model.diagram import EARTH, Diagram, Terminal
from wirecheck.model.finding import Breaks, Finding
from wirecheck.parts.structure import structure_of


class Alone(NamedTuple):
    """What a mistake does by itself.

    Attributes:
        unsafe: what of it can hurt somebody, by the rules: their findings.
        effect: what the unit would have done, in a sentence; "" if nothing is known.
    """

    unsafe: tuple[Finding, ...]
    effect: str


def alone(key: Key, difference: Difference) -> Alone | None:
    """Put one mistake into the key; None if that cannot be done by leads of the key."""
    changes = _changes(key, difference)
    is_switch = isinstance(difference.miss, Displaced)
    return _tried(key, changes, is_switch=is_switch) if changes else None


def exchanged(
    key: Key, differences: Sequence[Difference], instead: Sequence[tuple[Terminal, Terminal, str]]
) -> Alone:
    """Put leads that have changed places into the key, all at once.

    Args:
        key: the key.
        differences: what of it is not joined any more.
        instead: the leads that run there in the drawing, by their ends and what they must be.
    """
    away = dict.fromkeys(n for each in differences for n in each.first_leads)
    ends = [lead for lead in instead if all(_is_there(key, end) for end in lead[:2])]
    return _tried(key, (*map(TakeOut, away), *(Add(*lead) for lead in ends)), is_switch=False)


@lru_cache(maxsize=4096)
def _tried(key: Key, changes: tuple[Change, ...], *, is_switch: bool) -> Alone:
    state = Rewired.nothing_changed(key.diagram)
    for change in changes:
        state = state.after(change)
    diagram = state.diagram
    new = sorted(key.beyond(check(diagram).findings), key=lambda each: -each.breaks)
    unsafe = tuple(each for each in new if each.breaks is Breaks.SAFETY)
    effect = _effect(key, diagram, new, is_switch=is_switch)
    return Alone(unsafe, effect)


def _effect(key: Key, diagram: Diagram, new: Sequence[Finding], *, is_switch: bool) -> str:
    """What is seen at the unit, or at least in some position of its switches."""
    ended = {each: runs for each, runs in ends(diagram).items() if each not in key.does}
    stopped = "; ".join(each for each, runs in ended.items() if not runs)
    is_unsafe = bool(new) and new[0].breaks is Breaks.SAFETY
    # Of a switch that is left out, a rule says that it does nothing; better to say what it stops.
    seen_by_rule = new[0].seen_at_unit if new and (is_unsafe or not is_switch) else ""
    if is_unsafe and seen_by_rule:
        return f"{seen_by_rule} On a call: {stopped}" if stopped else seen_by_rule
    if stopped or seen_by_rule:
        return stopped or seen_by_rule
    if ended:
        return "; ".join(ended)
    seen = compare(key.ready, diagram, Voice("the key", "the unit")).seen
    return f"nothing is seen on a call for heat; {seen[0].when}, {seen[0].second}" if seen else ""


def _changes(key: Key, difference: Difference) -> tuple[Change, ...]:
    """What has to change in the key so that it has this mistake."""
    miss, landed = difference.miss, difference.landed
    if isinstance(miss, Displaced | Extra):
        return _left_out(key, miss) if isinstance(miss, Displaced) else ()
    if isinstance(miss, Fitted):
        return _fitted(key, miss)
    if landed is not None and not all(_is_there(key, end) for end in landed):
        landed = None
    numbers = difference.first_leads
    if landed and len(numbers) == 1:
        lead = key.diagram.leads[numbers[0]]
        stays, new = landed
        if stays in (lead.a, lead.b) and new not in (lead.a, lead.b):
            old = lead.b if lead.a == stays else lead.a
            return (Move(numbers[0], old, new),)
    changes: tuple[Change, ...] = (TakeOut(numbers[0]),) if numbers else ()
    return (*changes, Add(*landed)) if landed else changes


def _fitted(key: Key, miss: Fitted) -> tuple[Change, ...]:
    """A part set otherwise; what lands on a terminal that it then has not is taken off first."""
    part, value = miss.part, miss.there
    if not isinstance(value, str):
        return ()
    then = structure_of(part.kind, {**part.values, miss.attribute: value}).terminals
    gone = [part.terminal(name) for name in part.structure.terminals if name not in then]
    off = dict.fromkeys(lead for end in gone for lead in key.nets.leads_at(end))
    return (*map(TakeOut, off), Fit(part.key, miss.attribute, value))


def _left_out(key: Key, miss: Displaced) -> tuple[Change, ...]:
    """A switch left out of its row: the lead behind it lands where the one ahead comes from."""
    ends = (miss.contact.a, miss.contact.b)
    ahead, behind = (key.nets.leads_at(end) for end in ends)
    if len(ahead) != 1 or len(behind) != 1 or ahead == behind:
        return ()
    lead = key.diagram.leads[ahead[0]]
    far = lead.b if lead.a == ends[0] else lead.a
    other = key.diagram.leads[behind[0]]
    if far in (other.a, other.b):
        return ()
    return (TakeOut(ahead[0]), Move(behind[0], ends[1], far))


def _is_there(key: Key, end: Terminal) -> bool:
    return end == EARTH or end in key.nets.net_of
