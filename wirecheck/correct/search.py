"""The search for the fewest changes: best first, guided by what was found.

All single changes are tried first, those at the findings before the others
(`wirecheck.correct.nearness`).  Where none mends the diagram, those that took findings away are
followed, the ones that left the fewest first: whatever mends the rest mends the finding that
fewest changes are at, so those are tried before the others.  Every answer is proved on the result
by all rules, by the properties and by the simulation.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from itertools import count, islice
from time import monotonic
from typing import Final, NamedTuple

from wirecheck.correct.answer import Answer, Bound, Correction, Tried
from wirecheck.correct.likelihood import Rank, grouped, rank
from wirecheck.correct.nearness import Rings, rings
from wirecheck.correct.never import bridged, grounds, misused
from wirecheck.correct.proof import lost_safeties, proof
from wirecheck.correct.rewired import Change, Rewired
from wirecheck.correct.screen import Screen, objected, told
from wirecheck.model.diagram import Diagram
from wirecheck.model.finding import Finding

#: Of the diagrams after a change so many are looked at together; of all looked at the best so many,
#: by each of two orders, are followed by changes at their sharpest finding, and one by all others.
_LOOKED_AT, _FOLLOWED = 24, 2
#: So many are followed further than two changes.
_DEEP: Final = 8
#: No more than so many changes far from the findings are tried before pairs of changes are.
_FEW: Final = 6000


class _Child(NamedTuple):
    """A diagram after a change: how many of the objections before it are left, and its rank."""

    objections: int
    rank: Rank
    number: int
    state: Rewired


class _Node(NamedTuple):
    """A diagram that is followed: how many objections there are to it, and which."""

    left: int
    child: _Child
    grave: tuple[Finding, ...]

    @property
    def state(self) -> Rewired:
        """The diagram."""
        return self.child.state


def _by_what_is_left(node: _Node) -> tuple[int, Rank, int]:
    return node.left, node.child.rank, node.child.number


def _by_what_was_mended(node: _Node) -> tuple[int, Rank, int]:
    return node.child[:3]


def _better(children: Iterable[_Child], before: int) -> list[_Child]:
    """Those in which fewer findings are left, the best first."""
    return sorted(child for child in children if child.objections < before)


def _first(nodes: Iterable[_Node], done: set[int], number: int) -> list[_Node]:
    """The first so many that are not done, which then are."""
    few = list(islice((node for node in nodes if node.child.number not in done), number))
    done.update(node.child.number for node in few)
    return few


def correct(diagram: Diagram, bound: Bound = Bound()) -> Correction:  # noqa: B008 - it is frozen
    """Find the fewest changes after which nothing of safety or operation is left."""
    return _Search(diagram, bound).run()


class _Search:
    def __init__(self, diagram: Diagram, bound: Bound) -> None:
        self._root = Rewired.nothing_changed(diagram)
        self._bridged = bridged(self._root.nets)
        self._grounds = grounds(self._root.nets)
        self._misused = misused(self._root.nets)
        self._bound = bound
        self._ends_at = monotonic() + bound.seconds
        self._seen: set[tuple[object, ...]] = {self._root.key}
        self._answers: list[Answer] = []
        self._nearest: _Node | None = None
        self._fewest_left = 0
        self._tried: dict[int, int] = {}
        self._out_of: dict[int, int] = {}
        self._numbers = count()
        self._late = False

    def run(self) -> Correction:
        before = proof(self._root.diagram)
        if not before.holds and self._bound.edits > 0:
            self._look(objected(self._root) or before.grave)
        answers = grouped(self._answers)
        tried = tuple(
            Tried(edits, number, self._out_of.get(edits)) for edits, number in self._tried.items()
        )
        nearest = None
        if self._nearest and not answers:
            state = self._nearest.state
            nearest = Answer(state, proof(state.diagram), ())
        return Correction(before, answers, tried, not self._late, nearest, self._bound)

    def _look(self, here: tuple[Finding, ...]) -> None:
        root, ways = self._root, rings(self._root, here)
        self._fewest_left = len(here)
        self._out_of[1] = sum(map(len, ways))
        screen = Screen(root, here)
        # The likelier first, in case there is not the time for all.
        likely = sorted(ways.sharpest, key=lambda change: rank(root.after(change)))
        children = self._weighed(root, screen, likely)
        self._tries(root, screen, ways.near)
        if not self._answers:
            self._tries(root, screen, ways.on_the_way)
        is_small = len(ways.far) <= _FEW
        if not self._answers and is_small:
            self._tries(root, screen, ways.far)
        if not self._answers:
            self._follow(here, screen, ways, children)
        fewest = min((len(each.changes) for each in self._answers), default=2)
        if fewest > 1 and not is_small:
            deeper, self._answers = self._answers, []
            self._tries(root, screen, ways.far)
            self._answers = self._answers or deeper

    # ---- further than one change -------------------------------------------------------------

    def _follow(
        self, here: Sequence[Finding], screen: Screen, ways: Rings, children: list[_Child]
    ) -> None:
        """Follow what took findings away to the bound of edits."""
        if self._bound.edits < 2 or self._is_late():
            return
        nodes = self._second(_better(children, len(here))[:_LOOKED_AT], rounds=1)
        if not self._answers:
            more = [*ways.near, *ways.on_the_way]
            self._forget(self._root, more)
            children = [*children, *self._weighed(self._root, screen, more)]
            nodes = self._second(_better(children, len(here)))
        if not self._answers:
            self._second(sorted(each for each in children if each.objections == len(here)))
        for _edits in range(3, self._bound.edits + 1):
            if self._answers or self._is_late():
                return
            nodes = [each for node in nodes[:_DEEP] for each in self._deeper(node)]
            nodes.sort(key=_by_what_is_left)

    def _second(self, children: list[_Child], rounds: int | None = None) -> list[_Node]:
        """Try one more change of diagrams, the most promising first; return these, the best first.

        In each round some more are looked at, as the look at all costs more than it saves.  What
        is left of the findings before, and how much is found now, both tell of promise: a change
        that is right may bring to light what the mistake hid.
        """
        nodes: list[_Node] = []
        narrowly, widely = set[int](), set[int]()
        for _round in range(rounds) if rounds else count():
            new, children = children[:_LOOKED_AT], children[_LOOKED_AT:]
            nodes += [self._node(child) for child in new]
            if self._answers or self._is_late() or len(widely) == len(nodes):
                break
            for order in (_by_what_is_left, _by_what_was_mended):
                nodes.sort(key=order)
                self._note_nearest(nodes[:1])
                for node in _first(nodes, narrowly, _FOLLOWED):
                    self._tries(node.state, *self._ways(node)[:2])
            for node in _first(nodes, widely, 0 if self._answers else 1):
                self._tries(node.state, *self._ways(node)[::2])
        return sorted(nodes, key=_by_what_is_left)

    def _ways(self, node: _Node) -> tuple[Screen, list[Change], list[Change]]:
        """How to judge what it is changed into; the changes at its sharpest finding; others."""
        ways = rings(node.state, node.grave)
        return Screen(node.state, node.grave), ways.sharpest, [*ways.near, *ways.on_the_way]

    def _deeper(self, node: _Node) -> list[_Node]:
        """What a diagram can be changed into that has fewer findings than it, one change on."""
        screen, changes, _others = self._ways(node)
        self._forget(node.state, changes)
        return self._second(_better(self._weighed(node.state, screen, changes), node.left))

    def _node(self, child: _Child) -> _Node:
        here = objected(child.state) or proof(child.state.diagram).grave
        return _Node(len(here), child, here)

    # ---- one change --------------------------------------------------------------------------

    def _weighed(self, state: Rewired, screen: Screen, changes: Iterable[Change]) -> list[_Child]:
        """Make each change, keep the answers, and say how much is left after the others."""
        children: list[_Child] = []
        for child in self._new(state, changes):
            left = screen.objections(child)
            if left or not (screen.passes(child) and self._prove(child)):
                children.append(_Child(left, rank(child), next(self._numbers), child))
        return children

    def _tries(self, state: Rewired, screen: Screen, changes: Iterable[Change]) -> None:
        """Make each change and keep the answers."""
        for child in self._new(state, changes):
            if screen.passes(child):
                self._prove(child)

    def _new(self, state: Rewired, changes: Iterable[Change]) -> Iterator[Rewired]:
        """The diagram after each change, as long as there is time; none a second time."""
        edits = len(state.changes) + 1
        for change in changes:
            if self._is_late():
                return
            self._tried[edits] = self._tried.get(edits, 0) + 1
            child = state.after(change)
            if child.key not in self._seen:
                self._seen.add(child.key)
                if bridged(child.nets) <= self._bridged:
                    yield child

    def _forget(self, state: Rewired, changes: Sequence[Change]) -> None:
        """Let some changes that were tried be tried again, to see how much is left after them."""
        self._seen -= {state.after(change).key for change in changes}
        self._tried[len(state.changes) + 1] -= len(changes)

    def _prove(self, state: Rewired) -> bool:
        if not self._may_be(state) or told(state):
            return False
        found = proof(state.diagram)
        if found.holds:
            self._answers.append(Answer(state, found, ()))
        return found.holds

    def _may_be(self, state: Rewired) -> bool:
        """Whether every safety, earth and burner ground is still there, and nothing astray."""
        after = state.nets
        return (
            self._grounds <= grounds(after)
            and misused(after) <= self._misused
            and not lost_safeties(self._root.nets, after)
        )

    def _note_nearest(self, nodes: Iterable[_Node]) -> None:
        """Remember the best of what was followed, if it loses nothing."""
        for node in nodes:
            fewest = self._nearest.left if self._nearest else self._fewest_left
            if node.left < fewest and self._may_be(node.state):
                self._nearest = node

    def _is_late(self) -> bool:
        self._late = self._late or monotonic() > self._ends_at
        return self._late
