"""Defaults that follow from the rest of the diagram: the pilot from the burner drawn, and so on."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace

from wirecheck.model.diagram import Lead, Part
from wirecheck.parts.defaults import derive
from wirecheck.parts.structure import structure_of

_DAMPER_ROLES = frozenset({"damper-hot", "damper-call", "damper-proved", "damper-common"})


def with_derived_defaults(parts: Mapping[str, Part], leads: Sequence[Lead]) -> dict[str, Part]:
    """The parts with every default filled in that depends on what else is drawn.

    A default gives way to what is drawn: one that would take away a terminal where a lead lands
    is not taken.
    """
    derived = dict(parts)
    waiting = {key for key, part in parts.items() if has_derived_defaults(part)}
    if not waiting:
        return derived
    landed, beside = _drawn(waiting, leads)
    burners = _of_family(parts, "burner")
    controls = _of_family(parts, "ignition-control")
    for key in waiting.intersection(burners):
        control = _companion(beside.get(key, ()), controls)
        typed = parts[control].given.get("pilot") if control else None
        pilot = str(typed.value) if typed else None
        derived[key] = _derived(parts[key], pilot, landed.get(key, set()))
    for key in waiting.difference(burners):
        burner = _companion(beside.get(key, ()), burners)
        value = derived[burner].values.get("pilot") if burner else None
        pilot = str(value) if value else None
        derived[key] = _derived(parts[key], pilot, landed.get(key, set()))
    return derived


def has_derived_defaults(part: Part) -> bool:
    """Whether some default of a part follows from what else is drawn."""
    return any(spec.default_from for spec in part.kind.attributes.values())


def _of_family(parts: Mapping[str, Part], family: str) -> dict[str, None]:
    return dict.fromkeys(part.key for part in parts.values() if part.family == family)


def _drawn(
    waiting: set[str], leads: Sequence[Lead]
) -> tuple[dict[str, set[str]], dict[str, dict[str, None]]]:
    """Of each waiting part: the terminals where leads land, and the parts they come from."""
    landed: dict[str, set[str]] = {}
    beside: dict[str, dict[str, None]] = {}
    for lead in leads:
        for here, there in ((lead.a, lead.b), (lead.b, lead.a)):
            if here.part in waiting:
                landed.setdefault(here.part, set()).add(here.name)
                beside.setdefault(here.part, {})[there.part] = None
    return landed, beside


def _companion(beside: Iterable[str], candidates: Mapping[str, None]) -> str | None:
    """The candidate that a lead comes from, or else the only one there is."""
    if len(candidates) == 1:
        return next(iter(candidates))
    return next((key for key in beside if key in candidates), None)


def _derived(part: Part, pilot: str | None, landed: set[str]) -> Part:
    terminals = part.structure.terminals
    damper = any(terminals[name].role in _DAMPER_ROLES for name in landed)
    values = derive(part.kind, part.given, pilot, damper_drawn=damper)
    structure = structure_of(part.kind, values)
    if not landed <= structure.terminals.keys():
        return part
    return replace(part, values=values, structure=structure)
