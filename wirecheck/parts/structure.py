"""From a kind and the attributes of one part to what that part really has inside.

Conditions (``when``), counts (``per``) and taps (``each``) are settled here.  Parts whose
attributes settle them alike share one structure; those with numbered terminals have their own,
whose terminals grow as leads name them.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import lru_cache
from itertools import groupby
from typing import TypeVar, cast

from wirecheck.model.diagram import Value, key_of
from wirecheck.model.kind import (
    Circuit,
    Condition,
    InsideSpec,
    Kind,
    Pair,
    SourceSpec,
    SwitchSpec,
    TerminalSpec,
)
from wirecheck.model.quantity import Quantity
from wirecheck.model.structure import Structure
from wirecheck.parts.amounts import each_quantity

#: Highest number of a terminal where no attribute limits them.
MOST_NUMBERED = 999
#: Up to so many volts a circuit is a millivolt one (common practice, no source).
MILLIVOLT_CIRCUIT_V = 2.0
#: Up to so many volts a circuit counts as 24 V: the bound of a Class 2 circuit with the usual
#: transformer (NEC chapter 9, table 11(A), from memory).
LOW_VOLTAGE_V = 30.0

_Inside = TypeVar("_Inside", bound=InsideSpec)


def structure_of(kind: Kind, values: Mapping[str, Value]) -> Structure:
    """Terminals and inside of a part of this kind with these attribute values.

    Equal kinds and values give the same object, unless the kind has numbered terminals.
    """
    if kind.numbered is not None:
        return _resolve(kind, values)
    return _shared(kind, tuple(values.get(name) for name in _deciding(kind)))


def numbered_terminal(
    structure: Structure, kind: Kind, values: Mapping[str, Value], text: str
) -> str | None:
    """Name of the numbered terminal that ``text`` means, added if it was not used before.

    None if the kind has no numbered terminals or none with this number.
    """
    numbered = kind.numbered
    if numbered is None or not (text.isascii() and text.isdigit()) or len(text) > 9:
        return None
    number = int(text)
    limit = values.get(numbered.limit) if numbered.limit else None
    if not 1 <= number <= (limit if isinstance(limit, int) else MOST_NUMBERED):
        return None
    name = str(number)
    if name not in structure.terminals:
        terminals = cast(dict[str, TerminalSpec], structure.terminals)
        terminals[name] = TerminalSpec(role=numbered.role, circuit=numbered.circuit)
        cast(dict[str, str], structure.lookup)[name] = name
    return name


@lru_cache(maxsize=1024)
def _shared(kind: Kind, decided: tuple[Value | None, ...]) -> Structure:
    named = zip(_deciding(kind), decided, strict=True)
    return _resolve(kind, {name: value for name, value in named if value is not None})


@lru_cache(maxsize=256)
def _deciding(kind: Kind) -> tuple[str, ...]:
    """The attributes that decide what a part of this kind has."""
    names: dict[str, None] = {}
    for spec in kind.terminals.values():
        names.update(dict.fromkeys(spec.when))
        if not isinstance(spec.must, bool):
            names.update(dict.fromkeys(spec.must))
        names.update(dict.fromkeys(spec.inner_when))
        for name in (spec.per, spec.each, spec.circuit_by):
            if name:
                names[name] = None
    for inside in (*kind.links, *kind.switches, *kind.loads, *kind.sources, *kind.gaps):
        names.update(dict.fromkeys(inside.when))
    for switch in kind.switches:
        if switch.per:
            names[switch.per] = None
    names.update((bond.strength, None) for bond in kind.bonds)
    return tuple(names)


@dataclass(slots=True)
class _Spelled:
    """Terminals so far: by name, by every spelling, and by the name the kind's file gives them."""

    terminals: dict[str, TerminalSpec]
    lookup: dict[str, str]
    copies: dict[str, list[str]]

    def add(self, name: str, spec: TerminalSpec, copy_of: str, also: Iterable[str]) -> None:
        self.terminals[name] = spec
        self.copies.setdefault(copy_of, []).append(name)
        self.lookup[key_of(name)] = name
        for spelling in also:
            self.lookup.setdefault(key_of(spelling), name)

    def pair(self, between: Pair) -> Pair | None:
        """The two terminals a pair of the kind's file means; None if one is not there."""
        a, b = (self.lookup.get(key_of(name)) for name in between)
        return (a, b) if a is not None and b is not None else None


def _resolve(kind: Kind, values: Mapping[str, Value]) -> Structure:
    spelled = _Spelled({}, {}, {})
    here = [each for each in kind.terminals.items() if _holds(each[1].when, values)]
    for per, group in groupby(here, key=lambda each: each[1].per):
        _add_group(spelled, list(group), values, values.get(per) if per else 1)
    return Structure(
        terminals=spelled.terminals,
        lookup={
            key: name for key, name in spelled.lookup.items() if not spelled.terminals[name].inner
        },
        through=spelled.pair(kind.through) if kind.through else None,
        links=_present(spelled, kind.links, values),
        switches=tuple(_switches(spelled, kind.switches, values)),
        loads=_present(spelled, kind.loads, values),
        sources=tuple(_sources(spelled, kind.sources, values)),
        gaps=_present(spelled, kind.gaps, values),
        bonds=tuple(
            (name, str(values.get(bond.strength, "none")))
            for bond in kind.bonds
            for name in spelled.copies.get(bond.terminal, ())
        ),
    )


def _add_group(
    spelled: _Spelled,
    group: Sequence[tuple[str, TerminalSpec]],
    values: Mapping[str, Value],
    poles: Value | None,
) -> None:
    """Add neighbouring terminals that all come once for each pole, pole by pole."""
    count = poles if isinstance(poles, int) else 1
    for pole in range(1, count + 1):
        for name, spec in group:
            settled = _settled(spec, values)
            if count > 1:
                spelled.add(f"{pole}.{name}", settled, name, ())
            elif spec.per:
                spelled.add(name, settled, name, (*spec.also, f"1.{name}"))
            else:
                _add_taps(spelled, name, settled, values)


def _add_taps(
    spelled: _Spelled, name: str, spec: TerminalSpec, values: Mapping[str, Value]
) -> None:
    """Add a terminal, or one for each of several values of its attribute."""
    taps = each_quantity(values.get(spec.each)) if spec.each else ()
    if len(taps) < 2:
        spelled.add(name, spec, name, spec.also)
        return
    one_of = replace(spec, must=False)
    for tap in taps:
        spelled.add(f"{tap.low:g}{tap.unit}", one_of, name, (f"{tap.low:g}",))


def _settled(spec: TerminalSpec, values: Mapping[str, Value]) -> TerminalSpec:
    """A terminal with what hangs on attributes decided."""
    must = spec.must if isinstance(spec.must, bool) else _holds(spec.must, values)
    volts = values.get(spec.circuit_by) if spec.circuit_by else None
    circuit = _circuit(volts) if isinstance(volts, Quantity) else spec.circuit
    inner = spec.inner or (bool(spec.inner_when) and _holds(spec.inner_when, values))
    return replace(spec, must=must and not inner, circuit=circuit, inner=inner)


def _holds(condition: Condition, values: Mapping[str, Value]) -> bool:
    return all(str(values.get(name)) in accepted for name, accepted in condition.items())


def _circuit(volts: Quantity) -> Circuit:
    if volts.high_base <= MILLIVOLT_CIRCUIT_V:
        return "millivolt"
    return "24V" if volts.high_base <= LOW_VOLTAGE_V else "line"


def _present(
    spelled: _Spelled, specs: tuple[_Inside, ...], values: Mapping[str, Value]
) -> tuple[_Inside, ...]:
    """Those that are there, between terminals that are there."""
    return tuple(
        replace(spec, between=pair)
        for spec in specs
        if _holds(spec.when, values) and (pair := spelled.pair(spec.between))
    )


def _switches(
    spelled: _Spelled, specs: tuple[SwitchSpec, ...], values: Mapping[str, Value]
) -> Iterator[SwitchSpec]:
    """Those that are there; one for each pole where the kind's file says so."""
    for spec in specs:
        poles = values.get(spec.per) if spec.per else 1
        if not isinstance(poles, int) or poles == 1:
            yield from _present(spelled, (spec,), values)
            continue
        a, b = spec.between
        each = (
            replace(spec, between=(f"{pole}.{a}", f"{pole}.{b}"), name=f"{pole}.{spec.name}")
            for pole in range(1, poles + 1)
        )
        yield from _present(spelled, tuple(each), values)


def _sources(
    spelled: _Spelled, specs: tuple[SourceSpec, ...], values: Mapping[str, Value]
) -> Iterator[SourceSpec]:
    """Those that are there, with a winding for each tap."""
    for spec in _present(spelled, specs, values):
        windings = tuple(
            (a, b)
            for first, second in spec.fed_by
            for a in spelled.copies.get(first, ())
            for b in spelled.copies.get(second, ())
        )
        yield replace(spec, fed_by=windings)
