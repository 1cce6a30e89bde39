"""All symbols by name."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from wirecheck.drawing.symbols import contacts, ignition, joints, loads, supply
from wirecheck.drawing.symbols.symbol import Symbol

_IN_ORDER = (
    *contacts.SYMBOLS,
    *loads.SYMBOLS,
    *supply.SYMBOLS,
    *ignition.SYMBOLS,
    *joints.SYMBOLS,
)

SYMBOLS: Mapping[str, Symbol] = MappingProxyType({symbol.name: symbol for symbol in _IN_ORDER})
