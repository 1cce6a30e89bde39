"""Claims and observations, names resolved: what is said of which place, when, and how much.

One of these is one sentence: a list in one statement becomes several, each under the conditions
and the phase that govern the whole list.
"""

from __future__ import annotations

from typing import Literal, NamedTuple

from wirecheck.model.diagram import Terminal
from wirecheck.model.text import Span

#: What can be on or off, open or closed.  ``load`` and ``contact`` have a name in their part;
#: ``phase`` is that of a control; ``blade`` is what moves in a damper or zone valve.
Signal = Literal[
    "spark", "pilot-flame", "main-flame", "flame-signal", "pilot-valve", "main-valve", "call",
    "phase", "blade", "load", "contact",
]  # fmt: skip

#: What a claim is about: ``state`` of a subject, or a reading of a meter.
About = Literal["volts", "amps", "continuity", "state"]

#: The unit of the bounds of an amount.
UNITS = {"volts": "V", "amps": "A"}


class Subject(NamedTuple):
    """Something that has a state.

    Attributes:
        signal: what of the part is meant.
        part: key of the part.
        name: of the load or contact in the part, or of the phase; "" where the signal says all.
        shown: for people.
    """

    signal: Signal
    part: str
    name: str
    shown: str


class State(NamedTuple):
    """A subject in a state: ``limit open``.

    Attributes:
        subject: of what.
        on: whether it is on, lit, closed (a contact) or open (a valve, a damper).
        word: as typed.
        span: of the two words.
    """

    subject: Subject
    on: bool
    word: str
    span: Span

    def __str__(self) -> str:
        """As people say it."""
        return f"{self.subject.shown} {self.word}"


class Bounds(NamedTuple):
    """An amount that is claimed, in V or A: from ``low`` to ``high``; ``text`` is as typed."""

    low: float
    high: float
    text: str

    def hold(self, value: float) -> bool:
        """Whether a value lies in them."""
        return self.low <= value <= self.high


class Claim(NamedTuple):
    """One claim, or one observation.

    Attributes:
        word: the statement it stands in.
        about: what kind of thing is said.
        text: all of it as people read it, without the statement's word.
        state: for a state: which; None else.
        ends: for volts and continuity the two ends, for amperes the terminals of what they run
            through; None for a state.  Amperes at one terminal alone have it twice.
        bounds: for an amount; None else.
        continuity: whether there is to be continuity, where it is about that.
        when: conditions; all hold at the moments meant.
        phase: at which moments; "" for all.
        span: the claim itself; ``statement`` all of it.
        inherited: it is the base diagram's, and this is a variant.
    """

    word: Literal["expect", "observe"]
    about: About
    text: str
    state: State | None
    ends: tuple[Terminal, Terminal] | None
    bounds: Bounds | None
    continuity: bool
    when: tuple[State, ...]
    phase: str
    span: Span
    statement: Span
    inherited: bool = False

    @property
    def parts(self) -> frozenset[str]:
        """Keys of the parts it names: the claim falls with any of them."""
        named = {end.part for end in self.ends or ()}
        states = (*((self.state,) if self.state else ()), *self.when)
        return frozenset(named | {each.subject.part for each in states})
