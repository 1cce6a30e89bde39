"""Which burner, valve or damper goes with which ignition control, as the leads have it."""

from __future__ import annotations

from collections.abc import Iterable

from wirecheck.model.diagram import EARTH, Diagram, Part, Terminal

#: What a lead from a control may run through on its way to what belongs to it.
_ON_THE_WAY = ("valve-adapter", "safety-switch", "overcurrent", "hand-switch")


class Companions:
    """Looks companions up; built once for a diagram, linear in its leads."""

    def __init__(self, diagram: Diagram) -> None:
        """Note where each lead leads to."""
        self._diagram = diagram
        self._next: dict[Terminal, list[Terminal]] = {}
        self._drawn: dict[str, list[Part]] = {}
        for part in diagram.parts.values():
            self._drawn.setdefault(part.family, []).append(part)
        for lead in diagram.leads:
            self._next.setdefault(lead.a, []).append(lead.b)
            self._next.setdefault(lead.b, []).append(lead.a)

    def of(self, control: Part, family: str) -> Part | None:
        """The part of a family that a lead joins to the control, or the only one drawn.

        Leads straight from the control count before those that run over strips, splices,
        adapters and switches.
        """
        found = self.all_of(control, family)
        return found[0] if found else None

    def all_of(self, control: Part, family: str, *roles: str) -> tuple[Part, ...]:
        """All such parts, the nearest first; by leads from the control's terminals of some roles.

        Args:
            control: the control.
            family: of the parts looked for.
            roles: of the control's terminals; none: all of them.
        """
        terminals = control.with_role(*roles) if roles else self._terminals(control)
        found = self._reached(control, terminals, family)
        if found or roles:
            return found
        drawn = self._drawn.get(family, [])
        return tuple(drawn) if len(drawn) == 1 else ()

    def _terminals(self, part: Part) -> tuple[Terminal, ...]:
        return tuple(part.terminal(name) for name in part.structure.terminals)

    def _reached(self, control: Part, starts: Iterable[Terminal], family: str) -> tuple[Part, ...]:
        """Breadth first, so the nearest come first."""
        parts, splices = self._diagram.parts, self._diagram.splices
        found: dict[str, Part] = {}
        seen = set(starts)
        level = list(starts)
        while level:
            reached: list[Terminal] = []
            for terminal in level:
                for there in self._next.get(terminal, ()):
                    if there in seen or there == EARTH or there.part == control.key:
                        continue
                    seen.add(there)
                    part = parts.get(there.part)
                    if part is not None and part.family == family:
                        found.setdefault(part.key, part)
                    elif part is not None and part.family in _ON_THE_WAY:
                        reached += self._terminals(part)
                    elif there.part in splices or (part is not None and part.family == "strip"):
                        reached.append(there)
            level = [terminal for terminal in reached if self._next.get(terminal)]
            seen.update(level)
        return tuple(found.values())
