"""Sets two diagrams off: alike by structure, else by function, else what differs."""

from __future__ import annotations

from collections.abc import Hashable, Iterator, Sequence
from typing import NamedTuple

from wirecheck.compare.blocks import turned_loads
from wirecheck.compare.circuits import Circuit
from wirecheck.compare.fittings import Other, others
from wirecheck.compare.function import Function, function, same_order_in_ground
from wirecheck.compare.matching import Pair, by_name, by_structure, by_wiring
from wirecheck.compare.misses import Fitted, Miss, misses
from wirecheck.compare.pattern import pattern, same_pattern
from wirecheck.compare.result import Comparison, Difference, Seen, Voice
from wirecheck.compare.runs import does, runs_apart
from wirecheck.compare.states import seen_at
from wirecheck.compare.translated import Translation
from wirecheck.compare.variables import MOST_VARIABLES
from wirecheck.compare.wired import Wired
from wirecheck.compare.words import Teller, value_shown
from wirecheck.model.collector import collector_paused
from wirecheck.model.diagram import Diagram


class Ready:
    """A diagram made ready to be compared with many: its nets and its pattern."""

    def __init__(self, diagram: Diagram) -> None:
        """Join its nets and draw its pattern."""
        self.wired = Wired(diagram)
        self.pattern = pattern(self.wired)

    @property
    def diagram(self) -> Diagram:
        """What it was made from."""
        return self.wired.diagram


@collector_paused()
def compare(first: Diagram | Ready, second: Diagram, voice: Voice = Voice()) -> Comparison:  # noqa: B008 - it is frozen
    """Whether two diagrams do the same, and what differs.

    Args:
        first: the one that is the measure.
        second: the one that is looked at.
        voice: what they are called in sentences.
    """
    one = first if isinstance(first, Ready) else Ready(first)
    other = Ready(second)
    mapping = same_pattern(one.pattern, other.pattern)
    if mapping is not None:
        return _alike(one, other, mapping, voice)
    return _unlike(one, other, voice)


class _InOneTongue(NamedTuple):
    """The second diagram in the first's names; ``fitted`` with what the first's parts have inside.

    Attributes:
        pairs: which part is which.
        translation: between the names.
        wired: the second as it is; ``fitted`` the same with parts as in the first.
        others: attributes that differ.
    """

    pairs: tuple[Pair, ...]
    translation: Translation
    wired: Wired
    fitted: Wired
    others: tuple[Other, ...]


def _in_one_tongue(one: Wired, other: Wired, pairs: tuple[Pair, ...]) -> _InOneTongue:
    translation = Translation(other.diagram, one.diagram, pairs)
    wired = Wired(translation.diagram(other.diagram))
    turned = turned_loads(wired, one)
    if turned:
        translation = Translation(other.diagram, one.diagram, pairs, turned)
        wired = Wired(translation.diagram(other.diagram))
    differing = tuple(others(one, wired))
    inside = {
        (translation.back[each.part.key], each.attribute): each.here
        for each in differing
        if each.changes_inside
    }
    fitted = Wired(translation.diagram(other.diagram, inside)) if inside else wired
    return _InOneTongue(pairs, translation, wired, fitted, differing)


def _alike(one: Ready, other: Ready, mapping: dict[Hashable, Hashable], voice: Voice) -> Comparison:
    pairs = by_structure(mapping, one.wired)
    said = _in_one_tongue(one.wired, other.wired, pairs)
    remarks = tuple(_renamed(one, other, pairs))
    alike = Comparison(one.diagram, other.diagram, "structure", pairs, remarks=remarks)
    # Wired alike, with a contact that is stuck in one of the two: no run of a call shows that.
    what = function(one.wired, said.wired) if said.others else None
    if what is None or not what.witnesses:
        return _unless_run_differs(one, other, said, voice, alike)
    teller = Teller(one.wired, said.fitted, other.diagram, said.translation, voice)
    return alike._replace(
        how="",
        seen=(seen_at(one.wired, said.wired, what.plainest(one.wired, ()), teller),),
        does_first=does(one.diagram),
        does_second=does(other.diagram),
        remarks=(*remarks, *_values(said.others, voice)),
    )


def _unlike(one: Ready, other: Ready, voice: Voice) -> Comparison:
    said, found = _fewest(one.wired, other.wired)
    teller = Teller(one.wired, said.fitted, other.diagram, said.translation, voice)
    differences = tuple(_in_order(_told(teller, found)))
    about = {end for each in differences for end in each.terminals}
    what = function(one.wired, said.wired, {end.part for end in about})
    comparison = Comparison(
        one.diagram,
        other.diagram,
        "",
        said.pairs,
        differences,
        remarks=tuple(_not_gone_through(one, what)),
    )
    if not what.witnesses and not what.held and same_order_in_ground(one.wired, said.wired):
        return _unless_run_differs(one, other, said, voice, comparison._replace(how="function"))
    does_first, does_second = does(one.diagram), does(other.diagram)
    seen: tuple[Seen, ...] = ()
    if what.witnesses:
        seen = (seen_at(one.wired, said.wired, what.plainest(one.wired, about), teller),)
    return comparison._replace(seen=seen, does_first=does_first, does_second=does_second)


def _told(teller: Teller, found: Sequence[Miss]) -> Iterator[Difference]:
    """The differences; one that follows from a lead that is told already is not told again."""
    leads: set[int] = set()
    for miss in found:
        difference = teller.told(miss)
        follows = isinstance(miss, Fitted) and not miss.typed
        if not follows or not leads & set(difference.leads):
            yield difference
        leads.update(difference.leads)


def _not_gone_through(one: Ready, what: Function) -> Iterator[str]:
    if what.held:
        parts = one.diagram.parts
        names = (parts[each.part].name if each.part in parts else each.part for each in what.held)
        yield (
            f"more than {MOST_VARIABLES} switches hang together, so that not every position was "
            f"gone through; all open or all closed stood {', '.join(names)}"
        )


def _fewest(one: Wired, other: Wired) -> tuple[_InOneTongue, tuple[Miss, ...]]:
    """The matching of parts by which the fewest things differ, that by name first."""
    best: tuple[_InOneTongue, tuple[Miss, ...]] | None = None
    tried: set[frozenset[tuple[str, str]]] = set()
    for match in (by_name, by_wiring):
        pairs = match(one, other)
        key = frozenset((pair.one, pair.other) for pair in pairs)
        if key in tried:
            continue
        tried.add(key)
        said = _in_one_tongue(one, other, pairs)
        found = _all_misses(one, said)
        if best is None or len(found) < len(best[1]):
            best = said, found
    assert best is not None  # noqa: S101
    return best


def _all_misses(one: Wired, said: _InOneTongue) -> tuple[Miss, ...]:
    """Leads and switches, and what is fitted otherwise."""
    fitted = (
        Fitted(each.part, each.attribute, each.here, each.there.values.get(each.attribute), typed)
        for each in said.others
        for typed in (each.typed,)
        if each.changes_inside
    )
    return (*misses(one, said.fitted), *fitted)


def _in_order(differences: Iterator[Difference]) -> list[Difference]:
    order = list(Circuit)
    return sorted(differences, key=lambda each: order.index(each.circuit))


def _unless_run_differs(
    one: Ready, other: Ready, said: _InOneTongue, voice: Voice, same: Comparison
) -> Comparison:
    """The same, unless values of parts make a call run otherwise."""
    values = [each for each in said.others if not each.changes_inside]
    remarks = (*same.remarks, *_values(values, voice))
    same = same._replace(remarks=remarks)
    if same.how == "structure" and not said.others:
        return same
    apart = runs_apart(one.diagram, said.wired.diagram)
    if apart is None:
        return same
    does_first, does_second = does(one.diagram), does(other.diagram)
    return same._replace(how="", seen=(apart,), does_first=does_first, does_second=does_second)


def _values(values: Sequence[Other], voice: Voice) -> Iterator[str]:
    for each in values:
        here, there = value_shown(each.here), value_shown(each.there.values.get(each.attribute))
        yield f"{each.part.name}: {each.attribute} {there}; in {voice.first} it is {here}"


def _renamed(one: Ready, other: Ready, pairs: Sequence[Pair]) -> Iterator[str]:
    """The parts that are called otherwise."""
    for pair in pairs:
        if pair.one != pair.other:
            mine, theirs = one.diagram.parts[pair.one], other.diagram.parts[pair.other]
            yield f"{theirs.name} is {mine.name}"
