"""Which burner, valve or damper goes with which ignition control, as the leads have it."""

from __future__ import annotations

from wirecheck.model.diagram import Diagram, Part


class Companions:
    """Looks companions up; built once for a diagram, linear in its leads."""

    def __init__(self, diagram: Diagram) -> None:
        """Note, for each control and family, the first part that a lead joins it to directly."""
        self._direct: dict[tuple[str, str], Part] = {}
        self._drawn: dict[str, list[Part]] = {}
        for part in diagram.parts.values():
            self._drawn.setdefault(part.family, []).append(part)
        controls = {part.key for part in self._drawn.get("ignition-control", ())}
        for lead in diagram.leads:
            for here, there in ((lead.a, lead.b), (lead.b, lead.a)):
                if here.part in controls:
                    other = diagram.parts.get(there.part)
                    if other is not None and other.key != here.part:
                        self._direct.setdefault((here.part, other.family), other)

    def of(self, control: Part, family: str) -> Part | None:
        """The part of a family that a lead joins to the control, or the only one drawn."""
        direct = self._direct.get((control.key, family))
        if direct is not None:
            return direct
        drawn = self._drawn.get(family, [])
        return drawn[0] if len(drawn) == 1 else None
