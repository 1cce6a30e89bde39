"""Every single edit of a diagram, tried one by one: what a search must not have overlooked.

Nothing of the search is used but its words for an edit: no order, no screen, no terminal that
stands for others.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations

from wirecheck.correct.candidates import Candidates, described
from wirecheck.correct.never import bridged, grounds, takes_out_earth
from wirecheck.correct.proof import lost_safeties, proof
from wirecheck.correct.rewired import Add, Change, Exchange, Fit, Move, Rewired, TakeOut
from wirecheck.correct.screen import told
from wirecheck.model.diagram import EARTH, Diagram, Terminal


def landings(diagram: Diagram) -> list[Terminal]:
    """Every terminal on which a lead can land."""
    return [
        *(
            part.terminal(name)
            for part in diagram.parts.values()
            for name, spec in part.structure.terminals.items()
            if not spec.inner
        ),
        *(Terminal(key, "") for key in diagram.splices),
        EARTH,
    ]


def every_change(diagram: Diagram) -> list[Change]:
    """Every single edit there is, none left out for another."""
    ends = landings(diagram)
    leads = list(enumerate(diagram.leads))
    changes: list[Change] = [TakeOut(number) for number, _lead in leads]
    for number, lead in leads:
        for old in (lead.a, lead.b):
            changes += [Move(number, old, new) for new in ends if new not in (lead.a, lead.b)]
    for (one, first), (other, second) in combinations(leads, 2):
        if len({first.a, first.b, second.a, second.b}) == 4:
            changes += [
                Exchange(one, end, other, its)
                for end in (first.a, first.b)
                for its in (second.a, second.b)
            ]
    changes += [Add(a, b, described(diagram, a, b)) for a, b in combinations(ends, 2)]
    state = Rewired.nothing_changed(diagram)
    return [*changes, *(each for each in Candidates(state) if isinstance(each, Fit))]


def mending(diagram: Diagram) -> Iterator[Rewired]:
    """The diagram after each single edit that mends it."""
    before = Rewired.nothing_changed(diagram)
    for change in every_change(diagram):
        after = before.after(change)
        if not takes_out_earth(before, change) and mends(before, after):
            yield after


def mends(before: Rewired, after: Rewired) -> bool:
    """Whether a diagram is mended after an edit, by all that is asked of an answer."""
    return (
        bridged(after.nets) <= bridged(before.nets)
        and grounds(before.nets) <= grounds(after.nets)
        and not lost_safeties(before.nets, after.nets)
        and not told(after)
        and proof(after.diagram).holds
    )
