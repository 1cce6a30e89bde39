"""Kinds of the part library: a list of them, and all that is known of one."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import asdict
from typing import Any

from wirecheck.model.kind import (
    AttributeSpec,
    Condition,
    InsideSpec,
    Kind,
    LoadSpec,
    SourceSpec,
    SwitchSpec,
    TerminalSpec,
)
from wirecheck.model.nearest import both, either
from wirecheck.parts.typed_values import takes
from wirecheck.report.check_json import SCHEMA
from wirecheck.report.kind_block import block_text
from wirecheck.report.page import Page

#: How a default follows from the rest, in words.
_FOLLOWS = {
    "burner-drawn": "as the burner drawn",
    "control-drawn": "as the control drawn says",
    "pilot-needs": "as the pilot needs it",
    "damper-drawn": "fitted unless a lead lands on a damper terminal",
    "mains-volts": "as the line volts imply",
}


def kinds_json(kinds: Sequence[Kind]) -> dict[str, Any]:
    """Return all that the part library states of some kinds."""
    return {"schema": SCHEMA, "kinds": [asdict(kind) for kind in kinds]}


def list_text(kinds: Sequence[Kind], page: Page) -> Iterator[str]:
    """List kinds under their families, a line or two each."""
    families: dict[str, list[Kind]] = {}
    for kind in kinds:
        families.setdefault(kind.family, []).append(kind)
    for family, members in sorted(families.items()):
        yield from page.heading(family)
        for kind in members:
            yield from page.named(kind.name, _first_sentence(kind.about))
        yield ""
    yield from page.item("wirecheck kinds KIND shows its terminals, inside and attributes.", "")


def _first_sentence(about: str) -> str:
    return f"{' '.join(about.split()).split('. ')[0].rstrip('.')}."


def kind_text(kind: Kind, page: Page) -> Iterator[str]:
    """Write all that is known of a kind."""
    yield from page.heading(f"{kind.name}: {kind.title}")
    yield from page.item(f"family {kind.family}, letters {kind.letters}. {kind.about}", "")
    yield ""
    yield from (f"  {line}" for line in block_text(kind))
    yield ""
    yield from _terminals(kind, page)
    inside = list(_inside(kind, page))
    if inside:
        yield ""
        yield from page.heading("inside")
        yield from inside
    if kind.attributes:
        yield ""
        yield from page.heading("attributes")
        for name, spec in kind.attributes.items():
            yield from page.named(name, _attribute(spec))


def _terminals(kind: Kind, page: Page) -> Iterator[str]:
    yield from page.heading("terminals")
    for name, spec in kind.terminals.items():
        if not spec.inner:
            yield from page.named(name, _terminal(spec))
    if kind.numbered:
        limit = f"as many as {kind.numbered.limit} says" if kind.numbered.limit else "as used"
        yield from page.named("1, 2, 3 ...", f"{kind.numbered.role}, {limit}")
    if kind.through:
        yield from page.item(f"named alone in a lead, it is passed {' to '.join(kind.through)}")


def _terminal(spec: TerminalSpec) -> str:
    circuit = f"as {spec.circuit_by} says" if spec.circuit_by else f"{spec.circuit} circuit"
    words = [spec.role, circuit]
    if spec.must:
        beside = f" beside {_families(spec.must_beside)}" if spec.must_beside else ""
        needed = "" if isinstance(spec.must, bool) else f" {_with(spec.must)}"
        words.append(f"must be wired{needed}{beside}")
    if spec.when:
        words.append(f"only {_with(spec.when)}")
    if spec.inner_when:
        words.append(f"inside the device {_with(spec.inner_when)}")
    if spec.per:
        words.append(f"one for each of {spec.per}")
    if spec.each:
        words.append(f"one for each value of {spec.each}")
    if spec.also:
        words.append(f"also written {either(spec.also)}")
    return f"{spec.about} ({'; '.join(words)})"


def _families(names: Sequence[str]) -> str:
    return either([f"a {name}" for name in names])


def _with(condition: Condition) -> str:
    return f"with {both([f'{name} {either(values)}' for name, values in condition.items()])}"


def _inside(kind: Kind, page: Page) -> Iterator[str]:
    words: Mapping[str, Sequence[InsideSpec]] = {
        "link": kind.links,
        "contact": kind.switches,
        "load": kind.loads,
        "source": kind.sources,
        "gap": kind.gaps,
    }
    for word, specs in words.items():
        for spec in specs:
            name = f"{word} {spec.name}" if spec.name and spec.name != word else word
            yield from page.named(name, _between(spec))
    for bond in kind.bonds:
        yield from page.named(
            f"bond of {bond.terminal}", f"to the unit's metal, by {bond.strength}"
        )
    if kind.own_supply:
        yield from page.item("a supply of its own stands behind its terminals")


def _between(spec: InsideSpec) -> str:
    words = [f"{spec.between[0]} to {spec.between[1]}"]
    if isinstance(spec, SwitchSpec):
        words += [f"{spec.normal} on the shelf, {spec.running} while the burner runs"]
        words += [f"moved by {spec.coil or spec.moved_by}", *["a safety"] * spec.safety]
    elif isinstance(spec, LoadSpec):
        words += [spec.type, *_given("takes", spec.takes), *_given("volts", spec.volts)]
    elif isinstance(spec, SourceSpec):
        words += [*_given("volts", spec.volts), *_given("rating", spec.rating)]
        words += [f"behind {' and '.join(pair)}" for pair in spec.fed_by]
    if spec.when:
        words.append(_with(spec.when))
    return ", ".join(words)


def _given(what: str, value: float | str | None) -> list[str]:
    """A number, or the attribute that gives it."""
    if value is None:
        return []
    return [f"{what} as {value}" if isinstance(value, str) else f"{what} {value:g}"]


def _attribute(spec: AttributeSpec) -> str:
    words = ["said by its name alone" if spec.flag else f"takes {takes(spec)}"]
    if spec.several:
        words.append("or several")
    if spec.default_from:
        words.append(_FOLLOWS[spec.default_from])
    if spec.default is not None:
        words.append(f"{'else ' if spec.default_from else ''}{spec.default} unless typed")
        words.append(spec.source)
    if spec.found_wrong:
        words.append(f"{either(spec.found_wrong)}: found wrong")
    return f"{spec.about} ({'; '.join(words)})"
