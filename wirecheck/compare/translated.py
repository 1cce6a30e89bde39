"""A diagram in the names of another one, so that the same terminal bears the same name in both."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import replace

from wirecheck.compare.matching import Pair
from wirecheck.model.diagram import Attribute, Diagram, Part, Terminal, Value
from wirecheck.parts.structure import structure_of

#: In front of the key of a part or splice that the other diagram does not have.
_ONLY_HERE = "\x00only "


class Translation:
    """How the names of one diagram are said in another.

    Attributes:
        to: of each key here the key there; what is not matched gets one of its own.
        back: the other way round.
    """

    def __init__(
        self,
        diagram: Diagram,
        other: Diagram,
        pairs: Iterable[Pair],
        turned: Mapping[Terminal, Terminal] | None = None,
    ) -> None:
        """Match keys.

        Args:
            diagram: what is translated.
            other: the diagram in whose names.
            pairs: which part of the other is which here.
            turned: ends of loads, as the other calls them, that are taken for each other.
        """
        self._turned = dict(turned or {})
        self.to = {pair.other: pair.one for pair in pairs}
        for key in (*diagram.parts, *diagram.splices):
            self.to.setdefault(key, f"{_ONLY_HERE}{key}")
        self.back = {there: here for here, there in self.to.items()}
        self._other = other

    def terminal(self, terminal: Terminal) -> Terminal:
        """A terminal of this diagram as the other calls it."""
        there = terminal._replace(part=self.to.get(terminal.part, terminal.part))
        return self._turned.get(there, there)

    def terminal_back(self, terminal: Terminal) -> Terminal:
        """A terminal of the translation as this diagram calls it."""
        straight = self._turned.get(terminal, terminal)
        return straight._replace(part=self.back.get(terminal.part, terminal.part))

    def diagram(
        self,
        diagram: Diagram,
        fittings: Mapping[tuple[str, str], Value | None] | None = None,
    ) -> Diagram:
        """The diagram in the other's names; its leads keep their numbers and places.

        Args:
            diagram: the one that was given.
            fittings: attributes of parts to be put in the place of their own, by key here.
        """
        parts = {
            self.to[key]: self._part(_fitted(part, fittings or {}))
            for key, part in diagram.parts.items()
        }
        splices = {
            self.to[key]: splice._replace(key=self.to[key])
            for key, splice in diagram.splices.items()
        }
        leads = tuple(
            lead._replace(a=self.terminal(lead.a), b=self.terminal(lead.b))
            for lead in diagram.leads
        )
        return replace(diagram, parts=parts, splices=splices, leads=leads, _shown={})

    def _part(self, part: Part) -> Part:
        key = self.to[part.key]
        there = self._other.parts.get(key)
        return replace(part, key=key, name=there.name if there else part.name)


def _fitted(part: Part, fittings: Mapping[tuple[str, str], Value | None]) -> Part:
    changed = {name: value for (key, name), value in fittings.items() if key == part.key}
    if not changed:
        return part
    values = {name: value for name, value in part.values.items() if name not in changed}
    values |= {name: value for name, value in changed.items() if value is not None}
    given = {name: each for name, each in part.given.items() if name not in changed}
    given |= {
        name: Attribute(name, value, part.name_span)
        for name, value in changed.items()
        if value is not None
    }
    return replace(part, given=given, values=values, structure=structure_of(part.kind, values))
