"""A device that is to go in, as a diagram will state it.

However it was given (a kind alone, a part of a file, a part of a kind of the user's own), it is
written out here: a kind of the part library, its attributes, and the labels printed on it.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from functools import cached_property

from wirecheck.language.load import load_text
from wirecheck.language.spelling import quoted, spell_first, spell_name
from wirecheck.model.diagram import Part, Terminal
from wirecheck.parts.library import kind, kind_names

#: Where a line of labels is folded.
_LINE_WIDTH = 92


@dataclass(frozen=True)
class Device:
    """A device to go in.

    Attributes:
        name: the part it becomes; "" as long as that is not known.
        kind: its kind in the part library.
        attributes: as typed (``trial 90 s``), by their names.
        labels: what is printed at its terminals, by the part library's names.
    """

    name: str
    kind: str
    attributes: Mapping[str, str]
    labels: Mapping[str, str]

    def called(self, name: str) -> Device:
        """The same under another name."""
        return replace(self, name=name)

    def with_attribute(self, name: str, value: str) -> Device:
        """The same with an attribute as it must be in its place."""
        return replace(self, attributes={name: f"{name} {value}"} | self.attributes_but(name))

    def attributes_but(self, name: str) -> dict[str, str]:
        """Its attributes without one."""
        return {other: text for other, text in self.attributes.items() if other != name}

    @cached_property
    def part(self) -> Part:
        """The device as a part, alone on a sheet."""
        return _read([self.statement, *self.label_statement])

    def terminal(self, role: str) -> Terminal | None:
        """Its terminal of a role, if it has one."""
        return next(iter(self.part.with_role(role)), None)

    @property
    def stated(self) -> str:
        """Kind and attributes, as they stand behind ``is``."""
        attributes = f": {', '.join(self.attributes.values())}" if self.attributes else ""
        return f"{self.kind}{attributes}"

    @property
    def statement(self) -> str:
        """The statement of the part."""
        return f"part {spell_name(self.name or 'device')} is {self.stated}"

    @property
    def label_statement(self) -> list[str]:
        """The lines of its labels, of those terminals that it has as it is set."""
        if not self.labels:
            return []
        there = _read([self.statement]).structure.terminals
        numbered = kind(self.kind).numbered is not None
        labels = {name: text for name, text in self.labels.items() if numbered or name in there}
        if not labels:
            return []
        lines, line = [], f"labels {spell_name(self.name or 'device')}:"
        for number, (terminal, label) in enumerate(labels.items(), 1):
            comma = "," if number < len(labels) else ""
            item = f" {spell_first(terminal)} as {quoted(label)}{comma}"
            if len(line) + len(item) > _LINE_WIDTH:
                lines.append(line)
                line = " "
            line += item
        return [*lines, line]


def _read(lines: list[str]) -> Part:
    built = load_text("\n".join(lines), "the new device")
    (part,) = built.diagram.parts.values()
    return part


def device_of(part: Part) -> Device:
    """Write out a part of a diagram; what was found wrong with it is left behind."""
    found_wrong = {attribute.name for attribute in part.found_wrong()}
    return Device(
        name=part.name,
        kind=_library_kind(part),
        attributes={
            name: " ".join(given.span.text.split())
            for name, given in part.given.items()
            if name not in found_wrong
        },
        labels={name: part.labels[name].text for name in _own_order(part)},
    )


def _own_order(part: Part) -> Iterator[str]:
    """The labelled terminals in the order of the part library."""
    return (name for name in part.structure.terminals if name in part.labels)


def _library_kind(part: Part) -> str:
    """The kind of the library that a kind of the user's own is made from."""
    if part.kind.name in kind_names():
        return part.kind.name
    made_from = (name for name in kind_names() if kind(name).terminals is part.kind.terminals)
    return next(made_from)
