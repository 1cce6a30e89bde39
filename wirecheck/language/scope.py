"""The names of one diagram while it is built, and what a place in the text refers to."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field
from typing import Final, cast

from wirecheck.language.statements import Name, Place
from wirecheck.model.diagram import (
    EARTH,
    OPEN_END,
    UNKNOWN_END,
    Attribute,
    Cable,
    Label,
    Part,
    Splice,
    Terminal,
    key_of,
)
from wirecheck.model.finding import Problem
from wirecheck.model.kind import Kind
from wirecheck.model.nearest import both, nearest
from wirecheck.model.text import SourceFile, Span
from wirecheck.parts.structure import MOST_NUMBERED, numbered_terminal

#: So many comparisons of a wrong name with a right one are made in one diagram (a second's work).
MOST_COMPARED = 400_000
#: So many names are listed in a message.
MOST_LISTED = 12
#: Words of the trade for ends that are no parts.
_MEANT_ENDS: Final = {
    "ground": "earth", "gnd": "earth", "grd": "earth", "chassis": "earth", "cabinet": "earth",
    "frame": "earth", "metal": "earth", "pe": "earth", "nothing": "open", "none": "open",
    "nowhere": "open", "nc": "open", "loose": "open", "not-traced": "unknown",
    "untraced": "unknown", "somewhere": "unknown",
}  # fmt: skip


@dataclass(slots=True)
class UserKind:
    """A kind of the user's own: the library kind behind it, and what was stated for it.

    ``base`` is the key of the user's kind it is made from, if it is made from one.
    """

    kind: Kind
    given: dict[str, Attribute]
    labels: dict[str, Label]
    span: Span
    base: str | None


@dataclass(slots=True)
class Scope:
    """Everything named so far, by key, and the problems met.

    ``spoiled`` are the keys of names whose declaration had a problem of its own: that nothing
    bears them is not said again.  ``lacks_a_file``: an include could not be read, so that a name
    unlike all others may stand there.
    """

    kinds: dict[str, UserKind] = field(default_factory=dict)
    parts: dict[str, Part] = field(default_factory=dict)
    splices: dict[str, Splice] = field(default_factory=dict)
    cables: dict[str, Cable] = field(default_factory=dict)
    problems: list[Problem] = field(default_factory=list)
    spoiled: set[str] = field(default_factory=set)
    lacks_a_file: bool = False
    _lookups: dict[str, dict[str, str]] = field(default_factory=dict)
    _places: dict[tuple[str, str], Terminal] = field(default_factory=dict)
    _made_up: int = 0
    _compared: int = 0

    def problem(self, message: str, span: Span, near: str | None = None) -> None:
        """Keep a problem."""
        self.problems.append(Problem(message, span, near))

    def made_up(self, part: str) -> Terminal:
        """A terminal of its own for a loose end or an end not traced."""
        self._made_up += 1
        return Terminal(part, str(self._made_up))

    def nearest_name(self, word: str, *more: str) -> str | None:
        """The part, splice or other word that was meant; None once that was asked often enough."""
        self._compared += len(self.parts) + len(self.splices) + len(more)
        return nearest(word, [*self.names(), *more]) if self._compared <= MOST_COMPARED else None

    def names(self) -> Iterator[str]:
        """The names of parts and splices, as first typed."""
        yield from (part.name for part in self.parts.values())
        yield from (splice.name for splice in self.splices.values())

    def forget(self, key: str) -> None:
        """A part is not what it was: no more of what was looked up of it holds."""
        self._lookups.pop(key, None)
        self._places.clear()

    def part(self, name: Name, source: SourceFile, *, ends_a_lead: bool = False) -> Part | None:
        """The part of that name; a problem if there is none.

        Where it ``ends_a_lead``, earth, open or unknown may have been meant.
        """
        part = self.parts.get(key_of(name.text))
        if part is None:
            meant = _MEANT_ENDS.get(key_of(name.text)) if ends_a_lead else None
            self._no_such_part(name, source, meant)
        return part

    def _no_such_part(self, name: Name, source: SourceFile, meant: str | None) -> None:
        key = key_of(name.text)
        span = Span(source, name.start, name.end)
        if key in self.spoiled:
            return
        if self.is_node(name):
            what = "the unit's earth" if key == EARTH.part else "a splice"
            message = f"{name.text} is {what}: name it alone, it has no terminals"
            self.problem(message, span, name.text)
            return
        inside, _, terminal = name.text.partition(".")
        if terminal and (key_of(inside) in self.parts or key_of(inside) in self.spoiled):
            message = f"quotes hold one name; the dot stands outside them: {inside}.{terminal}"
            self.problem(message, span, f"{inside}.{terminal}")
            return
        near = meant or self.nearest_name(name.text)
        if near:
            hint = f"; did you mean {near}?"
        elif self.lacks_a_file:
            return
        elif 0 < len(self.parts) + len(self.splices) <= MOST_LISTED:
            known = list(self.names())
            hint = f"; there {'is' if len(known) == 1 else 'are'} {both(known)}"
        else:
            hint = "; declare it with: part NAME is KIND"
        self.problem(f"no part or splice is called “{name.text}”{hint}", span, near)

    def terminal(self, part: Part, name: Name, source: SourceFile) -> Terminal | None:
        """A terminal of a part by its label or name; a problem if it has none such."""
        found = self.find_terminal(part, name.text)
        if found is None:
            own = numbered_terminal(part.structure, part.kind, part.values, name.text)
            self.no_such_terminal(part, name, own, source)
        return found

    def find_terminal(self, part: Part, text: str) -> Terminal | None:
        """A terminal of a part by its label or name, if it has one such."""
        lookup = self._lookups.get(part.key)
        if lookup is None:
            lookup = self._lookups[part.key] = _spellings(part)
        own = lookup.get(key_of(text))
        if own is None:
            own = numbered_terminal(part.structure, part.kind, part.values, text)
            if own is None or own in part.labels:
                return None
        return Terminal(part.key, own)

    def no_such_terminal(self, part: Part, name: Name, own: str | None, source: SourceFile) -> None:
        """The problem of a terminal that is not there; ``own`` is it if a label hides its name."""
        span = Span(source, name.start, name.end)
        hidden = part.labels.get(own or part.structure.lookup.get(key_of(name.text), ""))
        if hidden:
            message = f"{part.name}'s {name.text} is labelled “{hidden.text}” here; use the label"
            self.problem(message, span, hidden.text)
            return
        shown = [
            part.labels[terminal].text if terminal in part.labels else terminal
            for terminal, spec in part.structure.terminals.items()
            if not spec.inner
        ]
        near = nearest(name.text, shown)
        has = ", ".join(shown) if shown else "no terminals"
        if part.kind.numbered is not None:
            limit = part.values.get(part.kind.numbered.limit or "", MOST_NUMBERED)
            has = f"terminals 1 to {limit}"
        self.problem(f"no terminal {name.text} on {part.name}; it has {has}", span, near)

    def landing(self, place: Place, source: SourceFile) -> Terminal | None:
        """The terminal of ``part.terminal``; None, with a problem, if there is none.

        Found places are remembered: a file names each many times.
        """
        terminal = cast(Name, place.terminal)
        texts = (place.name.text, terminal.text)
        known = self._places.get(texts)
        if known is None:
            part = self.part(place.name, source)
            known = self.terminal(part, terminal, source) if part else None
            if known is not None:
                self._places[texts] = known
        return known

    def is_node(self, name: Name) -> bool:
        """Whether a name alone stands for earth or for a splice."""
        key = key_of(name.text)
        return key == EARTH.part or key in self.splices

    def node(self, name: Name) -> Terminal | None:
        """What a name alone stands for if it is not a part: earth, a splice, a loose end."""
        key = key_of(name.text)
        if key == EARTH.part:
            return EARTH
        if key in self.splices:
            return Terminal(key, "")
        if key in self.parts or key in self.spoiled:
            return None
        if key == "open":
            return self.made_up(OPEN_END)
        return self.made_up(UNKNOWN_END) if key == "unknown" else None


def _spellings(part: Part) -> dict[str, str]:
    """Every spelling a lead may use at a part; a label hides the terminal's own name."""
    lookup = part.structure.lookup
    if not part.labels:
        return dict(lookup)
    spellings = {key: own for key, own in lookup.items() if own not in part.labels}
    spellings.update((key_of(label.text), own) for own, label in part.labels.items())
    return spellings
