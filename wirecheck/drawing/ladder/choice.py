"""Which symbol shows a branch, and what is lettered inside it."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from wirecheck.drawing.ladder.branches import Branch
from wirecheck.drawing.symbols import contacts, ignition, loads, supply
from wirecheck.drawing.symbols.symbol import Symbol
from wirecheck.model.kind import GapSpec, LoadSpec, SourceSpec, SwitchSpec

# What moves a contact: its symbol open at rest, and closed at rest.
_SWITCHES: Mapping[str, tuple[Symbol, Symbol]] = MappingProxyType(
    {
        "temperature": (contacts.TEMPERATURE_MAKE, contacts.TEMPERATURE_BREAK),
        "pressure": (contacts.PRESSURE_MAKE, contacts.PRESSURE_BREAK),
        "flow": (contacts.FLOW_MAKE, contacts.FLOW_BREAK),
        "air": (contacts.FLOW_MAKE, contacts.FLOW_BREAK),
        "level": (contacts.LEVEL_MAKE, contacts.LEVEL_BREAK),
        "hand": (contacts.HAND_MAKE, contacts.HAND_BREAK),
        "door": (contacts.POSITION_MAKE, contacts.POSITION_BREAK),
        "motor": (contacts.POSITION_MAKE, contacts.POSITION_BREAK),
        "coil": (contacts.MAKE_CONTACT, contacts.BREAK_CONTACT),
        "control": (contacts.MAKE_CONTACT, contacts.BREAK_CONTACT),
        "overcurrent": (supply.FUSE, supply.FUSE),
    }
)
_LOADS: Mapping[str, Symbol] = MappingProxyType(
    {
        "coil": loads.COIL,
        "operator": loads.VALVE_OPERATOR,
        "motor": loads.MOTOR,
        "lamp": loads.LAMP,
        "electronics": loads.ELECTRONICS,
        "heater": loads.HEATER,
        "spark-coil": ignition.SPARK_COIL,
        "amplifier": ignition.FLAME_AMPLIFIER,
        "appliance": loads.GENERIC_LOAD,
    }
)
_GAPS: Mapping[str, Symbol] = MappingProxyType(
    {"spark": ignition.SPARK_GAP, "flame": ignition.FLAME_ROD}
)
# Kinds whose symbol is not that of what moves them.
_SPECIAL: Mapping[str, Symbol] = MappingProxyType(
    {
        "breaker": supply.BREAKER,
        "fusible-link": supply.FUSIBLE_LINK,
        "emergency-stop": contacts.EMERGENCY_STOP,
    }
)


def symbol_for(branch: Branch) -> Symbol:
    """Return the symbol of a branch."""
    spec = branch.spec
    if isinstance(spec, SwitchSpec):
        return _switch_symbol(branch, spec)
    if isinstance(spec, LoadSpec):
        return _LOADS[spec.type]
    if isinstance(spec, GapSpec):
        return _GAPS[spec.type]
    if branch.type == "winding":
        return supply.PRIMARY_WINDING
    return supply.METAL_BOND if branch.type == "bond" else source_symbol(branch)


def source_symbol(source: Branch) -> Symbol:
    """Return the symbol of a source: a winding behind a primary, a pilot generator, a supply."""
    if isinstance(source.spec, SourceSpec) and source.spec.fed_by:
        return supply.SECONDARY_WINDING
    if source.part.family == "pilot-generator":
        return ignition.PILOT_GENERATOR
    return supply.SOURCE


def _switch_symbol(branch: Branch, spec: SwitchSpec) -> Symbol:
    special = _SPECIAL.get(branch.part.kind.name)
    if special is not None:
        return special
    make, broken = _SWITCHES[spec.moved_by]
    if spec.normal == "closed":
        return broken
    # A heating contact closes as it cools: it is the one that is closed in a running burner.
    heats = branch.part.family == "thermostat" and spec.running == "closed"
    return contacts.THERMOSTAT if heats else make


def inside(branch: Branch) -> str:
    """Return what is lettered inside the symbol: M in a motor, else the device letters."""
    if isinstance(branch.spec, LoadSpec) and branch.spec.type == "motor":
        return "M"
    return branch.part.kind.letters
