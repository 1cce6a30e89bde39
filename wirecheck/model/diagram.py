"""The wiring as typed: parts, leads and what else a file states, each with its place in the text.

Nothing here knows what is right; it is the picture the checker works on.  Everything is immutable.
Names compare by their *key* (NFC, case folded) and are shown as first typed.
"""

from __future__ import annotations

import unicodedata
from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import Enum
from typing import TYPE_CHECKING, Final, NamedTuple

from wirecheck.model.kind import Kind, TerminalSpec
from wirecheck.model.quantity import Quantity
from wirecheck.model.structure import Structure
from wirecheck.model.text import SourceFile, Span

if TYPE_CHECKING:
    from wirecheck.model.claim import Claim


def key_of(name: str) -> str:
    """The form under which a name is compared: canonical composition, case folded."""
    if name.isascii():
        return name.lower()
    return unicodedata.normalize("NFC", unicodedata.normalize("NFC", name).casefold())


class Terminal(NamedTuple):
    """A place where leads can land: the identity used by nets and findings.

    ``part`` is the key of the part or splice, ``name`` the terminal's own name in the part
    library ("" for a splice).  See `EARTH`, and `Diagram.show` for the form people read.
    """

    part: str
    name: str


#: The unit's earth: every lead to ``earth`` lands here.
EARTH: Final = Terminal("earth", "")

#: ``part`` of the made-up terminals of loose and of untraced ends; no typed name equals them.
OPEN_END: Final = "\x00open"
UNKNOWN_END: Final = "\x00unknown"

#: The value of an attribute: a word or text, a whole number, a quantity, or a list of quantities.
Value = str | int | Quantity | tuple[Quantity, ...]


class Attribute(NamedTuple):
    """One attribute as typed; ``span`` covers key and value."""

    name: str
    value: Value
    span: Span


Attributes = Mapping[str, Attribute]


class Label(NamedTuple):
    """A label printed at a terminal."""

    terminal: str
    text: str
    span: Span


@dataclass(frozen=True, slots=True, eq=False)
class Part:
    """A device.

    Attributes:
        name: as first typed; ``key`` is its comparable form.
        kind: what it is.  For a kind of the user's own, ``kind.name`` is that kind.
        given: attributes typed for it (or for its kind), by name.
        values: every attribute that has a value, given or by default.
        structure: its terminals and inside, worked out for these values.
        labels: printed labels by terminal name, those of its kind included.
        span: the whole statement; ``name_span`` and ``kind_span`` the words in it.
    """

    name: str
    key: str
    kind: Kind
    given: Attributes
    values: Mapping[str, Value]
    structure: Structure
    labels: Mapping[str, Label]
    span: Span
    name_span: Span
    kind_span: Span

    @property
    def family(self) -> str:
        """What the part is to the checker (`Kind.family`)."""
        return self.kind.family

    def terminal(self, name: str) -> Terminal:
        """The identity of one of its terminals, by the library's name."""
        return Terminal(self.key, name)

    def with_role(self, *roles: str) -> tuple[Terminal, ...]:
        """Its terminals that play one of these roles, in the order of the library."""
        return tuple(
            Terminal(self.key, name)
            for name, spec in self.structure.terminals.items()
            if spec.role in roles
        )

    def found_wrong(self) -> tuple[Attribute, ...]:
        """What the text records as found broken on this part."""
        return tuple(
            attribute
            for attribute in self.given.values()
            if attribute.value in self.kind.attributes[attribute.name].found_wrong
        )


class Splice(NamedTuple):
    """A wire-nut or crimp: one node."""

    name: str
    key: str
    given: Attributes
    span: Span
    name_span: Span


class LeadRole(Enum):
    """How a lead was stated."""

    WIRE = "wire"
    JUMPER = "jumper"
    PLUG = "plug"


class Lead(NamedTuple):
    """One conductor between two neighbouring ends of a statement.

    Attributes:
        a, b: where it lands, in the order typed.
        a_span, b_span: the two ends in the text (the same span for both sides of a part that
            is passed through).
        role: wire, jumper or plug.
        given: its attributes; those of the whole statement, overlaid by its own in brackets.
        shared_length: whether its ``length`` is that of the whole run it belongs to.
        statement: the whole statement's span.
        run: number of the statement among wires, jumpers and plugs: leads of one run share it.
    """

    a: Terminal
    b: Terminal
    a_span: Span
    b_span: Span
    role: LeadRole
    given: Attributes
    shared_length: bool
    statement: Span
    run: int

    @property
    def span(self) -> Span:
        """From the one end to the other."""
        return Span(self.a_span.source, self.a_span.start, self.b_span.end)

    @property
    def conducts(self) -> bool:
        """False for a lead found broken."""
        return "broken" not in self.given


class Cable(NamedTuple):
    """A cable: so many conductors of one gauge, and which leads run in it is `Lead.given["in"]`."""

    name: str
    key: str
    gauge_awg: float
    conductors: int
    given: Attributes
    span: Span
    name_span: Span


class PassedThrough(NamedTuple):
    """A part named alone inside a lead, or a contact passed with ``..``: from which to which."""

    part: str
    entered: Terminal
    left: Terminal
    span: Span


class NamedAlone(NamedTuple):
    """A part named alone at the start or end of a lead, and the terminal that stood for."""

    part: str
    landed: Terminal
    span: Span


class NotEvaluated(NamedTuple):
    """A statement that was read but whose meaning this run does not work out."""

    statement: str
    reason: str
    span: Span


class Note(NamedTuple):
    """A remark for the printed sheet."""

    text: str
    span: Span


@dataclass(frozen=True, slots=True, eq=False)
class Diagram:
    """One wiring diagram.

    Attributes:
        title: for sheets; the file's name where the text has none.
        source: the file first named; ``sources`` also has the included ones.
        parts, splices, cables: by key, in the order typed.
        kinds: kinds of the user's own, by key.
        leads: in the order typed.
        passed: parts passed through by name or by ``..``.
        named_alone: parts named alone at the start or end of a lead.
        claims: what is to hold, as ``expect`` states it.
        observations: what was seen or measured, as ``observe`` states it.
    """

    title: str
    source: SourceFile
    sources: tuple[SourceFile, ...]
    parts: Mapping[str, Part]
    splices: Mapping[str, Splice]
    cables: Mapping[str, Cable]
    kinds: Mapping[str, Kind]
    leads: tuple[Lead, ...]
    passed: tuple[PassedThrough, ...] = ()
    named_alone: tuple[NamedAlone, ...] = ()
    notes: tuple[Note, ...] = ()
    not_evaluated: tuple[NotEvaluated, ...] = ()
    claims: tuple[Claim, ...] = ()
    observations: tuple[Claim, ...] = ()
    _shown: dict[Terminal, str] = field(default_factory=dict, repr=False)

    def show(self, terminal: Terminal) -> str:
        """A terminal as people read it: the part's name and the label printed there."""
        shown = self._shown.get(terminal)
        if shown is None:
            shown = self._shown[terminal] = self._name(terminal)
        return shown

    def _name(self, terminal: Terminal) -> str:
        if terminal == EARTH:
            return "earth"
        if terminal.part == OPEN_END:
            return "a loose end"
        if terminal.part == UNKNOWN_END:
            return "an end not traced"
        splice = self.splices.get(terminal.part)
        if splice is not None:
            return splice.name
        part = self.parts[terminal.part]
        label = part.labels.get(terminal.name)
        return f"{part.name}.{label.text if label else terminal.name}"

    def spec(self, terminal: Terminal) -> TerminalSpec | None:
        """What the part library says of a terminal; None for earth, splices and loose ends."""
        part = self.parts.get(terminal.part)
        return part.structure.terminals[terminal.name] if part else None

    def lead_name(self, lead: Lead) -> str:
        """A lead as people read it: ``box.GND to pilot.HOOD``."""
        return f"{self.show(lead.a)} to {self.show(lead.b)}"
