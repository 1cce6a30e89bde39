"""The names of one diagram while it is built, and what a place in the text refers to."""

from __future__ import annotations

from dataclasses import dataclass, field

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
from wirecheck.model.nearest import either, nearest
from wirecheck.model.text import SourceFile, Span
from wirecheck.parts.structure import numbered_terminal


@dataclass(slots=True)
class UserKind:
    """A kind of the user's own: the library kind behind it, and what was stated for it."""

    kind: Kind
    given: dict[str, Attribute]
    labels: dict[str, Label]
    span: Span


@dataclass(slots=True)
class Scope:
    """Everything named so far, by key, and the problems met."""

    kinds: dict[str, UserKind] = field(default_factory=dict)
    parts: dict[str, Part] = field(default_factory=dict)
    splices: dict[str, Splice] = field(default_factory=dict)
    cables: dict[str, Cable] = field(default_factory=dict)
    problems: list[Problem] = field(default_factory=list)
    _lookups: dict[str, dict[str, str]] = field(default_factory=dict)
    _places: dict[tuple[str, str], Terminal] = field(default_factory=dict)
    _made_up: int = 0

    def problem(self, message: str, span: Span, near: str | None = None) -> None:
        """Keep a problem."""
        self.problems.append(Problem(message, span, near))

    def made_up(self, part: str) -> Terminal:
        """A terminal of its own for a loose end or an end not traced."""
        self._made_up += 1
        return Terminal(part, str(self._made_up))

    def part(self, name: Name, source: SourceFile) -> Part | None:
        """The part of that name; a problem if there is none."""
        part = self.parts.get(key_of(name.text))
        if part is None:
            self.no_such_part(name, source)
        return part

    def no_such_part(self, name: Name, source: SourceFile) -> None:
        """The problem of a name that nothing bears."""
        known = [part.name for part in self.parts.values()]
        known += [splice.name for splice in self.splices.values()]
        near = nearest(name.text, known)
        if near:
            hint = f"; did you mean {near}?"
        elif len(known) <= 12:
            hint = f"; there are {either(known)}" if known else "; no part is declared"
        else:
            hint = "; declare it with: part NAME is KIND"
        span = Span(source, name.start, name.end)
        self.problem(f"no part or splice is called “{name.text}”{hint}", span, near)

    def terminal(self, part: Part, name: Name, source: SourceFile) -> Terminal | None:
        """A terminal of a part by its label or name; a problem if it has none such."""
        lookup = self._lookups.get(part.key)
        if lookup is None:
            lookup = self._lookups[part.key] = _spellings(part)
        key = key_of(name.text)
        own = lookup.get(key)
        if own is None:
            own = numbered_terminal(part.structure, part.kind, part.values, name.text)
        if own is None:
            self._no_such_terminal(part, name, source)
            return None
        return Terminal(part.key, own)

    def _no_such_terminal(self, part: Part, name: Name, source: SourceFile) -> None:
        span = Span(source, name.start, name.end)
        hidden = part.labels.get(part.structure.lookup.get(key_of(name.text), ""))
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
        has = ", ".join(shown) if shown else "none yet: they are numbered from 1"
        self.problem(f"no terminal {name.text} on {part.name}; it has {has}", span, near)

    def landing(self, place: Place, source: SourceFile) -> Terminal | None:
        """The terminal of ``part.terminal``; None, with a problem, if there is none.

        Found places are remembered: a file names each many times.
        """
        assert place.terminal is not None
        texts = (place.name.text, place.terminal.text)
        known = self._places.get(texts)
        if known is None:
            part = self.part(place.name, source)
            known = self.terminal(part, place.terminal, source) if part else None
            if known is not None:
                self._places[texts] = known
        return known

    def node(self, name: Name) -> Terminal | None:
        """What a name alone stands for if it is not a part: earth, a splice, a loose end."""
        key = key_of(name.text)
        if key == "earth":
            return EARTH
        if key in self.splices:
            return Terminal(key, "")
        if key in self.parts:
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
