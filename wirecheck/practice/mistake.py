"""The mistakes that people make with a screwdriver in hand, one change of a right diagram each.

A lead is forgotten, or lands on a screw beside its own; two leads of one device change places; a
jumper stays in after a test; a link or plug is left as it came out of the box.  A lead that runs to
quite another device is no mistake that anybody has to learn to see.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator
from enum import Enum
from itertools import combinations
from typing import Final, NamedTuple

from wirecheck.correct.rewired import Add, Change, Exchange, Fit, Move, TakeOut
from wirecheck.model.diagram import OPEN_END, UNKNOWN_END, Diagram, Part, Terminal

_NOWHERE: Final = frozenset({OPEN_END, UNKNOWN_END})
#: The value of a link or plug that can be there or not.
_FITTED: Final = "fitted"


class Form(Enum):
    """What kind of a mistake it is; the value is the word for it on the command line."""

    MISSING = "missing-lead"
    WRONG_TERMINAL = "wrong-terminal"
    EXCHANGED = "leads-exchanged"
    JUMPER = "jumper-left-in"
    LINK = "link-or-plug"


class Mistake(NamedTuple):
    """One mistake.

    Attributes:
        form: its kind.
        change: what makes the right diagram wrong.
        words: what was done, for the key: a sentence without its full stop.
        places: the terminals it is about; for a link or plug those of its device.
    """

    form: Form
    change: Change
    words: str
    places: frozenset[Terminal]

    @property
    def leads(self) -> frozenset[int]:
        """Numbers of the leads it changes; two mistakes of one exercise share none."""
        match self.change:
            case Move(lead) | TakeOut(lead):
                return frozenset({lead})
            case Exchange(lead, _end, other):
                return frozenset({lead, other})
        return frozenset()


def mistakes(diagram: Diagram) -> Iterator[Mistake]:
    """Every mistake that somebody might make in a diagram."""
    at: dict[str, list[tuple[int, Terminal]]] = defaultdict(list)
    for number, lead in enumerate(diagram.leads):
        if not _NOWHERE & {lead.a.part, lead.b.part}:
            yield _missing(diagram, number)
            for end in (lead.a, lead.b):
                at[end.part].append((number, end))
    for key, part in diagram.parts.items():
        landings = [
            part.terminal(name) for name, spec in part.structure.terminals.items() if not spec.inner
        ]
        for number, end in at[key]:
            yield from _wrong_terminal(diagram, number, end, _in_reach(diagram, end, landings))
        for (one, end), (other, its) in combinations(at[key], 2):
            if one != other and end != its:
                yield _exchanged(diagram, Exchange(one, end, other, its))
        yield from _jumpers(diagram, part)
        yield from _links(part)


def _missing(diagram: Diagram, number: int) -> Mistake:
    lead = diagram.leads[number]
    words = f"the lead from {diagram.show(lead.a)} to {diagram.show(lead.b)} is missing"
    return Mistake(Form.MISSING, TakeOut(number), words, frozenset((lead.a, lead.b)))


def _in_reach(diagram: Diagram, end: Terminal, landings: list[Terminal]) -> list[Terminal]:
    """Where a lead can land by mistake: one on a screw not in a socket, and none the other way."""
    return [each for each in landings if _is_pin(diagram, each) == _is_pin(diagram, end)]


def _is_pin(diagram: Diagram, terminal: Terminal) -> bool:
    """Whether a terminal of a control is a pin of the socket for the damper's harness."""
    spec = diagram.spec(terminal)
    is_control = diagram.parts[terminal.part].family == "ignition-control"
    return is_control and spec is not None and spec.role.startswith("damper-")


def _wrong_terminal(
    diagram: Diagram, number: int, end: Terminal, landings: list[Terminal]
) -> Iterator[Mistake]:
    other = _far_end(diagram, number, end)
    for new in landings:
        if new not in (end, other):
            words = (
                f"the lead from {diagram.show(other)} is on {diagram.show(new)}; "
                f"it belongs on {diagram.show(end)}"
            )
            places = frozenset((end, new, other))
            yield Mistake(Form.WRONG_TERMINAL, Move(number, end, new), words, places)


def _exchanged(diagram: Diagram, change: Exchange) -> Mistake:
    one, other = (
        f"from {diagram.show(_far_end(diagram, lead, end))}, which belongs on {diagram.show(end)},"
        for lead, end in ((change.lead, change.end), (change.other, change.other_end))
    )
    words = f"the lead {one} and the one {other} have changed places"
    return Mistake(Form.EXCHANGED, change, words, frozenset((change.end, change.other_end)))


def _far_end(diagram: Diagram, number: int, end: Terminal) -> Terminal:
    lead = diagram.leads[number]
    return lead.b if end == lead.a else lead.a


def _jumpers(diagram: Diagram, part: Part) -> Iterator[Mistake]:
    """A jumper across each contact of a device that is there to open a circuit."""
    inner = {name for name, spec in part.structure.terminals.items() if spec.inner}
    for pair in dict.fromkeys(switch.between for switch in part.structure.switches):
        if not inner.intersection(pair):
            a, b = map(part.terminal, pair)
            words = f"a jumper was left in from {diagram.show(a)} to {diagram.show(b)}"
            yield Mistake(Form.JUMPER, Add(a, b), words, frozenset((a, b)))


def links_of(part: Part) -> Iterator[tuple[str, str]]:
    """The links and plugs of a part, each with how it is: attributes with the choice ``fitted``."""
    for name, spec in part.kind.attributes.items():
        if _FITTED in spec.choices and name in part.values:
            yield name, str(part.values[name])


def _links(part: Part) -> Iterator[Mistake]:
    """A link or plug as it should not be."""
    for name, right in links_of(part):
        for value in part.kind.attributes[name].choices:
            if value != right:
                words = f"the {name.replace('-', ' ')} of {part.name} is {value}, not {right}"
                places = frozenset(part.terminal(each) for each in part.structure.terminals)
                yield Mistake(Form.LINK, Fit(part.key, name, value), words, places)
