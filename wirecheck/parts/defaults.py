"""The values of a part's attributes: as typed, by default, or as the rest of the diagram has it."""

from __future__ import annotations

from collections.abc import Mapping
from functools import lru_cache

from wirecheck.model.diagram import Attributes, Value
from wirecheck.model.kind import AttributeSpec, Kind
from wirecheck.parts.amounts import each_quantity
from wirecheck.parts.library_file import LibraryError
from wirecheck.parts.typed_values import Fault, value_of

#: The supply that nominal line volts imply in North America (ANSI C84.1, from memory).
_SYSTEMS = {208.0: "two-legs", 240.0: "split-phase"}


def values_of(kind: Kind, given: Attributes) -> dict[str, Value]:
    """Every attribute that has a value, looking at this part alone.

    Raises:
        LibraryError: a default in the part library cannot be read.
    """
    return derive(kind, given, None, damper_drawn=False)


def derive(
    kind: Kind, given: Attributes, pilot_drawn: str | None, *, damper_drawn: bool
) -> dict[str, Value]:
    """Every attribute that has a value, in the order of the part library.

    Args:
        kind: the kind of the part.
        given: what was typed for it or for its kind.
        pilot_drawn: ``one-rod`` or ``two-rod`` where the diagram says so: the burner drawn, for a
            control; what was typed for the control, for a burner.
        damper_drawn: whether a lead lands on one of its damper terminals.

    Raises:
        LibraryError: a default in the part library cannot be read.
    """
    values: dict[str, Value] = {}
    defaults = _defaults(kind)
    for name, spec in kind.attributes.items():
        typed = given.get(name)
        if typed is not None:
            values[name] = typed.value
            continue
        value = defaults.get(name)
        if spec.default_from:
            value = _derived(spec, values, pilot_drawn, damper_drawn=damper_drawn) or value
        if value is not None:
            values[name] = value
    return values


@lru_cache(maxsize=256)
def _defaults(kind: Kind) -> Mapping[str, Value]:
    values: dict[str, Value] = {}
    for name, spec in kind.attributes.items():
        if spec.default is not None:
            value = value_of(name, spec.default.split(), spec)
            if isinstance(value, Fault):
                raise LibraryError(f"kind {kind.name}: attributes.{name}.default: {value.message}")
            values[name] = value
    return values


def _derived(
    spec: AttributeSpec,
    values: Mapping[str, Value],
    pilot_drawn: str | None,
    *,
    damper_drawn: bool,
) -> Value | None:
    """A default that follows from what is drawn; None where that says nothing."""
    if spec.default_from in ("burner-drawn", "control-drawn"):
        return pilot_drawn
    if spec.default_from == "pilot-needs":
        return {"one-rod": "fitted", "two-rod": "cut"}.get(str(values.get("pilot")))
    if spec.default_from == "damper-drawn":
        return "removed" if damper_drawn else "fitted"
    return _system(values.get("volts"))


def _system(volts: Value | None) -> str | None:
    """The supply that line volts imply: 240 V and 208 V come from two hot legs."""
    return _SYSTEMS.get(max((each.high_base for each in each_quantity(volts)), default=0.0))
