"""Which of several answers is the likelier mistake.

The weights are our own judgement: an end on the wrong terminal is likelier than two exchanged, a
lead forgotten than one too many, and the lead labelled alike wins.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from wirecheck.correct.answer import Answer
from wirecheck.correct.never import protects
from wirecheck.correct.rewired import Add, Change, Exchange, Fit, Move, Rewired, TakeOut
from wirecheck.correct.suits import mismatch
from wirecheck.model.diagram import LeadRole, Terminal

#: The smaller, the likelier.
Rank = float

_KIND: dict[type, float] = {Move: 0.0, TakeOut: 1.5, Add: 1.0, Exchange: 1.0, Fit: 1.0}
#: A finding of workmanship that the answer leaves weighs as much as a badly suited lead.
_WORKMANSHIP = 4.0
_NEEDS, _GREEN = 2.0, 3.0


def rank(state: Rewired) -> Rank:
    """How unlikely it is that these changes undo what somebody did wrong."""
    before = Rewired.nothing_changed(state.found)
    total = 0.0
    for change in state.changes:
        total += _KIND[type(change)] + _gain(before, change)
        before = before.after(change)
    return total


def _gain(before: Rewired, change: Change) -> float:
    """By how much worse the leads suit after a change; negative where they suit better."""
    found = before.found

    def cost(state: Rewired, *leads: int) -> float:
        pairs = ((lead, state.ends[lead]) for lead in leads)
        return sum(
            mismatch(found, *pair) + _miscoloured(state, lead) for lead, pair in pairs if pair
        )

    after = before.after(change)
    match change:
        case Move(lead, old, new):
            change_of_cost = cost(after, lead) - cost(before, lead)
            return change_of_cost + _fills(before, new) - _fills(after, old)
        case Exchange(lead, _end, other, _other_end):
            return cost(after, lead, other) - cost(before, lead, other)
        case Add(a, b):
            return mismatch(found, a, b) + _fills(before, a) + _fills(before, b)
        case TakeOut(lead):
            return -cost(before, lead)
    return 0.0


def _fills(before: Rewired, terminal: Terminal) -> float:
    """A terminal that needs a lead and has none is likely where one belongs."""
    spec = before.found.spec(terminal)
    empty = not any(ends and terminal in ends for ends in before.ends)
    return -_NEEDS if spec is not None and empty and spec.must else 0.0


def _miscoloured(state: Rewired, lead: int) -> float:
    """A green lead belongs on an earth or a ground."""
    if lead >= len(state.found.leads):
        return 0.0
    colour = state.found.leads[lead].given.get("colour")
    is_green = colour is not None and colour.value == "green"
    return _GREEN if is_green and not protects(state.found, state.ends[lead]) else 0.0


def grouped(answers: Iterable[Answer]) -> tuple[Answer, ...]:
    """The answers that join different terminals, the likelier first, others as good beside them."""
    groups: dict[frozenset[frozenset[Terminal]], list[Answer]] = {}
    for answer in sorted(_without_jumpers_moved(answers), key=_unlikeliness):
        groups.setdefault(joins(answer.state), []).append(answer)
    return tuple(
        first._replace(as_good=tuple(other.state for other in rest))
        for first, *rest in groups.values()
    )


def _without_jumpers_moved(answers: Iterable[Answer]) -> list[Answer]:
    """Leave out what lands a jumper elsewhere where taking it out will do: it belongs nowhere."""
    every = list(answers)
    made = {frozenset(answer.state.changes) for answer in every}
    return [answer for answer in every if _taken_out(answer.state) not in made]


def _taken_out(state: Rewired) -> frozenset[Change] | None:
    """The changes with each jumper that is moved taken out; None if none is."""
    leads = state.found.leads
    out = [
        TakeOut(change.lead)
        if isinstance(change, Move) and leads[change.lead].role is LeadRole.JUMPER
        else change
        for change in state.changes
    ]
    return frozenset(out) if out != list(state.changes) else None


def _unlikeliness(answer: Answer) -> float:
    workmanship = len(answer.proof.checked.findings) - len(answer.proof.grave)
    return rank(answer.state) + _WORKMANSHIP * workmanship


def joins(state: Rewired) -> frozenset[frozenset[Terminal]]:
    """Which terminals of devices are one conductor, whatever the leads and splices."""
    return frozenset(frozenset(_of_devices(state, net)) for net in state.nets.members)


def _of_devices(state: Rewired, net: Iterable[Terminal]) -> Iterator[Terminal]:
    for terminal in net:
        if terminal.part in state.found.parts or terminal.part == "earth":
            yield terminal
