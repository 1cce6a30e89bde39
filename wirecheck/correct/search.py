"""The search for the fewest changes: best first, guided by what was found.

All single changes are tried first, those at the leads and terminals of the findings before the
others.  Where none mends the diagram, those that took findings away are followed further, the ones
that left the fewest first, and only by changes at what is still found: a change that touches no
finding mends none.  Every answer is proved on the result by all rules and by the simulation.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace
from itertools import count
from time import monotonic
from typing import NamedTuple

from wirecheck.correct.answer import Answer, Bound, Correction, Tried
from wirecheck.correct.candidates import Candidates, terminals_of
from wirecheck.correct.likelihood import Rank, grouped, rank
from wirecheck.correct.never import bridged, grounds
from wirecheck.correct.proof import Proof, lost_safeties, proof
from wirecheck.correct.rewired import Change, Fit, Rewired
from wirecheck.correct.screen import Screen, objected
from wirecheck.model.diagram import Diagram, Terminal
from wirecheck.model.finding import Finding

#: So many children of those that took findings away, and of those that took none, are followed;
#: and so many of them further than two changes.
_BETTER, _SAME, _DEEP = 60, 20, 12
#: No more than so many changes far from the findings are tried before pairs of changes are.
_FEW = 3000
#: They are checked so many at a time, and then the best so many are followed.
_CHECKED, _FOLLOWED = 20, 3


class _Node(NamedTuple):
    """A diagram that is followed: how many objections there are to it, its rank, and which."""

    left: int
    rank: Rank
    number: int
    state: Rewired
    grave: tuple[Finding, ...]


class _Child(NamedTuple):
    """A diagram after a change: how many objections of those before are left, and its rank."""

    objections: int
    rank: Rank
    number: int
    state: Rewired


def correct(diagram: Diagram, bound: Bound = Bound()) -> Correction:  # noqa: B008 - it is frozen
    """Find the fewest changes after which nothing of safety or operation is left."""
    return _Search(diagram, bound).run()


class _Search:
    def __init__(self, diagram: Diagram, bound: Bound) -> None:
        self._root = Rewired.nothing_changed(diagram)
        self._bridged = bridged(self._root.nets)
        self._bound = bound
        self._ends_at = monotonic() + bound.seconds
        self._seen: set[tuple[object, ...]] = {self._root.key}
        self._answers: list[Answer] = []
        self._nearest: _Node | None = None
        self._root_grave: tuple[Finding, ...] = ()
        self._tried: dict[int, int] = {}
        self._out_of: dict[int, int] = {}
        self._late = False

    def run(self) -> Correction:
        before = proof(self._root.diagram)
        self._root_grave = before.grave
        if not before.holds and self._bound.edits > 0:
            self._look(before)
        answers = grouped(self._answers)
        tried = tuple(
            Tried(edits, number, self._out_of.get(edits)) for edits, number in self._tried.items()
        )
        nearest = None
        if self._nearest and not answers:
            state = self._nearest.state
            nearest = Answer(state, proof(state.diagram), ())
        return Correction(before, answers, tried, not self._late, nearest, self._bound)

    def _look(self, before: Proof) -> None:
        near, far = _by_nearness(self._root, before.grave)
        self._out_of[1] = len(near) + len(far)
        children = self._tries(self._root, before.grave, near, weigh=True)
        if not self._answers and len(far) <= _FEW:
            self._tries(self._root, before.grave, far, weigh=False)
            far = []
        if not self._answers:
            self._follow(before, children)
            deeper, self._answers = self._answers, []
            self._tries(self._root, before.grave, far, weigh=False)
            self._answers = self._answers or deeper

    # ---- further than one change -------------------------------------------------------------

    def _follow(self, before: Proof, children: list[_Child]) -> None:
        """Follow what took findings away to the bound of edits, the fewest left first."""
        left = Screen(before.grave).objections(self._root)
        for edits in range(2, self._bound.edits + 1):
            if self._answers:
                return
            nodes: list[_Node] = []
            for few in self._promising(children, left):
                for node in few:
                    near, _far = _by_nearness(node.state, node.grave)
                    self._tries(node.state, node.grave, near, weigh=False)
                nodes += few
                self._note_nearest(few)
                if self._answers or self._is_late():
                    return
            if edits < self._bound.edits:
                nodes.sort(key=lambda node: node[:2])
                children = [child for node in nodes[:_DEEP] for child in self._weighed(node)]

    def _promising(self, children: list[_Child], left: int) -> Iterator[list[_Node]]:
        """The children that took most away, those before others in which fewer findings are left.

        They are checked a few at a time, as the check of all costs more than it saves.
        """
        better = sorted(child for child in children if child.objections < left)
        same = sorted(child for child in children if child.objections == left)
        unchecked = [*better[:_BETTER], *same[:_SAME]]
        checked: list[_Node] = []
        places = count()
        while unchecked or checked:
            for child in unchecked[:_CHECKED]:
                here = objected(child.state)
                place = next(places)
                checked.append(_Node(len(here), child.rank, place, child.state, here))
            checked.sort()
            yield checked[:_FOLLOWED]
            unchecked, checked = unchecked[_CHECKED:], checked[_FOLLOWED:]

    def _weighed(self, node: _Node) -> list[_Child]:
        """What a diagram can be changed into that has fewer findings than it."""
        state, here = node.state, node.grave
        near, _far = _by_nearness(state, here)
        self._seen -= {state.after(change).key for change in near}
        left = Screen(here).objections(state)
        children = self._tries(state, here, near, weigh=True)
        return [child for child in children if child.objections < left]

    def _tries(
        self, state: Rewired, here: Sequence[Finding], changes: Iterable[Change], *, weigh: bool
    ) -> list[_Child]:
        """Make each change and keep the answers; if wished, say what is left after the others."""
        screen = Screen(here)
        children: list[_Child] = []
        edits = len(state.changes) + 1
        for change in changes:
            if self._is_late():
                break
            self._tried[edits] = self._tried.get(edits, 0) + 1
            child = state.after(change)
            if child.key in self._seen:
                continue
            self._seen.add(child.key)
            if not bridged(child.nets) <= self._bridged:
                continue
            left = screen.objections(child) if weigh else 0
            if left == 0 and screen.passes(child):
                self._prove(child)
            elif weigh:
                children.append(_Child(left, rank(child), len(children), replace(child)))
        return children

    def _prove(self, state: Rewired) -> None:
        found = proof(state.diagram)
        if found.holds and self._may_be(state):
            self._answers.append(Answer(state, found, ()))

    def _may_be(self, state: Rewired) -> bool:
        """Whether every safety, earth and burner ground is still there."""
        before, after = self._root.nets, state.nets
        return grounds(before) <= grounds(after) and not lost_safeties(before, after)

    def _note_nearest(self, nodes: Iterable[_Node]) -> None:
        """Remember the best of what was followed, if it loses nothing."""
        for node in nodes:
            fewest = self._nearest.left if self._nearest else len(self._root_grave)
            if node.left < fewest and self._may_be(node.state):
                self._nearest = node

    def _is_late(self) -> bool:
        self._late = self._late or monotonic() > self._ends_at
        return self._late


def _by_nearness(state: Rewired, here: Sequence[Finding]) -> tuple[list[Change], list[Change]]:
    """The changes at what was found, the likelier first, and all others."""
    places = frozenset(_places(state, here))
    near: list[tuple[Rank, int, Change]] = []
    far: list[Change] = []
    for number, change in enumerate(Candidates(state)):
        is_near = isinstance(change, Fit) or terminals_of(state, change) & places
        if is_near or not here:
            near.append((rank(state.after(change)), number, change))
        else:
            far.append(change)
    near.sort()
    return [change for *_, change in near], far


def _places(state: Rewired, here: Sequence[Finding]) -> Iterator[Terminal]:
    """The terminals of the findings, and the ends of their leads."""
    leads = state.diagram.leads
    for finding in here:
        yield from finding.at_terminals
        for number in finding.lead_numbers:
            yield leads[number].a
            yield leads[number].b
