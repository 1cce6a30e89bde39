"""A right diagram with mistakes in it: every single one of some kinds, and several at once.

The diagram is first written one lead a statement, so that a mistake changes one line and nothing
else: what is checked is what somebody would have typed who found it so.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from itertools import combinations
from pathlib import Path
from typing import NamedTuple

from wirecheck import load_text
from wirecheck.language.edit import spell
from wirecheck.language.lead_by_lead import lead_statement
from wirecheck.model.diagram import EARTH, Diagram, Terminal

Ends = tuple[Terminal, Terminal]


class Mistake(NamedTuple):
    """One mistake.

    Attributes:
        name: what was done, in words.
        changed: leads by number, with where they now run; None: taken away.
        jumper: a jumper that was put in.
        places: the terminals that it is about, before and after.
    """

    name: str
    changed: Mapping[int, Ends | None]
    jumper: Ends | None
    places: frozenset[Terminal]


class Original:
    """A right diagram, and the mistakes that can be made in it."""

    def __init__(self, path: Path) -> None:
        """Read a diagram and write it one lead a statement.

        Raises:
            ValueError: the text has a problem.
        """
        typed = load_text(path.read_text(encoding="utf-8"), path.name)
        if typed.problems:
            raise ValueError(f"{path}: {typed.problems[0].message}")
        self.head = _without_leads(typed.diagram)
        text = self.head + "".join(
            lead_statement(typed.diagram, each) for each in typed.diagram.leads
        )
        self.diagram = load_text(text, path.name).diagram
        self.terminals = tuple(_terminals(self.diagram))

    def mistakes(self) -> Iterator[Mistake]:
        """Every single one: a lead taken away, an end moved, two ends exchanged, a jumper."""
        yield from self._taken_away()
        yield from self._moved()
        yield from self._exchanged()
        yield from self._jumpered()

    def text(self, *mistakes: Mistake) -> str:
        """The text with some mistakes; of two that change the same lead, the last counts."""
        changed = {number: ends for each in mistakes for number, ends in each.changed.items()}
        lines = [self.head]
        for number, lead in enumerate(self.diagram.leads):
            ends = changed.get(number, (lead.a, lead.b))
            if ends is not None:
                a, b = ends
                lines.append(lead_statement(self.diagram, lead._replace(a=a, b=b)))
        for each in mistakes:
            if each.jumper is not None:
                here, there = (spell(self.diagram, end) for end in each.jumper)
                lines.append(f"jumper {here} to {there}\n")
        return "".join(lines)

    def with_mistakes(self, *mistakes: Mistake) -> Diagram:
        """The diagram read from that text.

        Raises:
            ValueError: the text has a problem: two of the mistakes do not go together.
        """
        built = load_text(self.text(*mistakes), self.diagram.source.name)
        if built.problems:
            raise ValueError(built.problems[0].message)
        return built.diagram

    # ---- kinds of mistakes -----------------------------------------------------------------

    def _taken_away(self) -> Iterator[Mistake]:
        for number, lead in enumerate(self.diagram.leads):
            name = f"{self.diagram.lead_name(lead)} taken away"
            yield Mistake(name, {number: None}, None, frozenset((lead.a, lead.b)))

    def _moved(self) -> Iterator[Mistake]:
        show = self.diagram.show
        for number, (a, b, *_) in enumerate(self.diagram.leads):
            for stays, old in ((b, a), (a, b)):
                for new in self.terminals:
                    if new not in (a, b):
                        name = f"{show(a)} to {show(b)}: {show(old)} end on {show(new)}"
                        ends = (new, b) if old == a else (a, new)
                        yield Mistake(name, {number: ends}, None, frozenset((old, new, stays)))

    def _exchanged(self) -> Iterator[Mistake]:
        """Two ends of two leads; exchanging the two others joins the same terminals."""
        for (one, first), (other, second) in combinations(enumerate(self.diagram.leads), 2):
            a, b = first.a, first.b
            for c, d in ((second.a, second.b), (second.b, second.a)):
                if len({a, b, c, d}) == 4:
                    name = (
                        f"{self.diagram.lead_name(first)} and {self.diagram.lead_name(second)}: "
                        f"{self.diagram.show(a)} end and {self.diagram.show(c)} end exchanged"
                    )
                    changed = {one: (c, b), other: (a, d)}
                    yield Mistake(name, changed, None, frozenset((a, b, c, d)))

    def _jumpered(self) -> Iterator[Mistake]:
        by_part: dict[str, list[Terminal]] = {}
        for terminal in self.terminals:
            by_part.setdefault(terminal.part, []).append(terminal)
        for terminals in by_part.values():
            for a, b in combinations(terminals, 2):
                name = f"jumper from {self.diagram.show(a)} to {self.diagram.show(b)}"
                yield Mistake(name, {}, (a, b), frozenset((a, b)))


def _terminals(diagram: Diagram) -> Iterator[Terminal]:
    """Where a lead can land."""
    for part in diagram.parts.values():
        for name, spec in part.structure.terminals.items():
            if not spec.inner:
                yield part.terminal(name)
    for key in diagram.splices:
        yield Terminal(key, "")
    yield EARTH


def _without_leads(diagram: Diagram) -> str:
    """The text of everything but the leads."""
    text, done, kept = diagram.source.text, 0, []
    for statement in dict.fromkeys(lead.statement for lead in diagram.leads):
        kept.append(text[done : statement.start])
        done = statement.end
    return "".join([*kept, text[done:], "\n"])
