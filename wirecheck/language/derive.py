"""Defaults that follow from the rest of the diagram: the pilot from the burner drawn, and so on."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace

from wirecheck.model.diagram import Lead, Part, Terminal
from wirecheck.parts.defaults import derive
from wirecheck.parts.structure import structure_of

_DAMPER_ROLES = frozenset({"damper-hot", "damper-call", "damper-proved", "damper-common"})


def with_derived_defaults(
    parts: Mapping[str, Part], leads: Sequence[Lead]
) -> dict[str, Part]:
    """The parts with every default filled in that depends on what else is drawn."""
    waiting = {
        key
        for key, part in parts.items()
        if any(spec.default_from for spec in part.kind.attributes.values())
    }
    if not waiting:
        return dict(parts)
    burners = [part for part in parts.values() if part.family == "burner"]
    only_burner = burners[0] if len(burners) == 1 else None
    burner_of: dict[str, Part] = {}
    dampers: set[str] = set()
    for lead in leads:
        for here, there in ((lead.a, lead.b), (lead.b, lead.a)):
            if here.part in waiting:
                other = parts.get(there.part)
                if other is not None and other.family == "burner":
                    burner_of.setdefault(here.part, other)
                if _is_damper_terminal(parts[here.part], here):
                    dampers.add(here.part)
    derived = dict(parts)
    for key in waiting:
        part = parts[key]
        burner = burner_of.get(key, only_burner)
        pilot = str(burner.values["pilot"]) if burner and "pilot" in burner.values else None
        values = derive(part.kind, part.given, pilot, damper_drawn=key in dampers)
        derived[key] = replace(part, values=values, structure=structure_of(part.kind, values))
    return derived


def _is_damper_terminal(part: Part, terminal: Terminal) -> bool:
    spec = part.structure.terminals.get(terminal.name)
    return spec is not None and spec.role in _DAMPER_ROLES
