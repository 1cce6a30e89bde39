"""What a kind of part is, as the part library states it.

A kind says which terminals a part has, what joins, switches, loads and feeds them
inside, which attributes may be typed and where each default comes from.  Some of it depends on
the attributes (a two-rod burner has a ROD, a relay of two poles two sets of contacts): ``when``
and ``per`` say so, and `wirecheck.parts.structure` works out what one part really has.

The library is data from outside, and `wirecheck.parts.library` has pydantic validate it against
these classes.  They are plain dataclasses so that a check need not wait for pydantic to start.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import ClassVar, Final, Literal

#: Attribute values under which something holds: every named attribute has one of the values.
Condition = dict[str, tuple[str, ...]]

Circuit = Literal["line", "24V", "millivolt", "ignition", "flame", "earth", "any"]
Pair = tuple[str, str]


@dataclass(frozen=True, kw_only=True, eq=False)
class _Spec:
    #: Read by pydantic: a field that is not there is refused.
    __pydantic_config__: ClassVar[dict[str, str]] = {"extra": "forbid"}


@dataclass(frozen=True, kw_only=True)
class TerminalSpec(_Spec):
    """One terminal of a kind.

    Attributes:
        role: what the terminal is for, the same word on every kind with such a terminal
            (``call``, ``common``, ``burner-ground``, ``pilot-valve`` …); rules ask for roles.
        circuit: the circuit it belongs to.
        circuit_by: an attribute with rated volts that decides the circuit instead: up to 2 V
            millivolt, up to 30 V 24V, above that line.
        must: it has to be wired (or only under the given condition).
        must_beside: families of parts: it has to be wired only where a part of one of them is
            drawn, so that a sketch may leave out what lies beyond.
        about: one line for the reader.
        also: other spellings accepted.
        when: the terminal is there only under this condition.
        per: one such terminal for each of as many as this attribute says (``1.COM``, ``2.COM``);
            with a count of one the plain name.
        each: one such terminal for each value of this attribute, named by the value (transformer
            taps: ``120V``, ``240V``); with a single value the plain name.  One of several is
            enough, so none of them must be wired.
        inner: a point inside the device: no lead can land on it.
        inner_when: it is a point inside under this condition.
    """

    role: str
    circuit: Circuit
    circuit_by: str | None = None
    must: bool | Condition = False
    must_beside: tuple[str, ...] = ()
    about: str = ""
    also: tuple[str, ...] = ()
    when: Condition = field(default_factory=dict)
    per: str | None = None
    each: str | None = None
    inner: bool = False
    inner_when: Condition = field(default_factory=dict)


@dataclass(frozen=True, kw_only=True)
class InsideSpec(_Spec):
    """Something between two terminals inside the device; ``when`` says under which condition."""

    between: Pair
    name: str = ""
    when: Condition = field(default_factory=dict)


@dataclass(frozen=True, kw_only=True)
class LinkSpec(InsideSpec):
    """A conductor inside the device, from the factory or by a plug or clip (then named)."""


@dataclass(frozen=True, kw_only=True)
class SwitchSpec(InsideSpec):
    """A contact.

    Attributes:
        name: the contact's name on drawings (``K1``, ``end switch``); may be empty if there is one.
        normal: its position on the shelf, nothing acting on it.
        running: its position in a healthy burner that is running.
        moved_by: what moves it.
        safety: it is there to stop the gas: bypassing it is a safety matter.
        coil: the load of the same part that moves it, if one does.
        per: as with terminals.
    """

    normal: Literal["open", "closed"]
    running: Literal["open", "closed"]
    moved_by: Literal[
        "temperature", "pressure", "flow", "air", "level", "hand", "door", "coil", "motor",
        "overcurrent", "control",
    ]  # fmt: skip
    safety: bool = False
    coil: str | None = None
    per: str | None = None


@dataclass(frozen=True, kw_only=True)
class LoadSpec(InsideSpec):
    """Something between two terminals that takes current.

    Attributes:
        type: what it is, which also chooses its symbol.
        volts: rated volts: a number, or the attribute that gives them.
        takes: the attribute with its current, volt-amperes, watts or ohms.
        power_factor: of the load at its rated volts.
        moves: what it sets in motion, which a flow or air switch then proves.
    """

    type: Literal[
        "coil", "operator", "motor", "lamp", "electronics", "heater", "spark-coil", "amplifier",
        "appliance",
    ]  # fmt: skip
    volts: float | str | None = None
    takes: str | None = None
    power_factor: float = 1.0
    moves: Literal["combustion-air", "air", "water"] | None = None


@dataclass(frozen=True, kw_only=True)
class SourceSpec(InsideSpec):
    """Something that feeds two terminals: a supply, or a secondary behind its primary.

    Attributes:
        volts: a number, or the attribute that gives them (of a list the highest).
        share: of those volts between these two terminals: 0.5 from a leg of a split-phase supply.
        phase_deg: by which it leads the first leg, in degrees.
        rating: the attribute with its volt-amperes.
        regulation: the attribute with its rise from full load to none, in percent.
        fed_by: windings behind it, each by its two terminals; fed through one, it is live, and
            so are the others.  Empty: it needs nothing.
        fed_volts: the attribute with the rated volts of those windings, in the same order.
    """

    volts: float | str
    share: float = 1.0
    phase_deg: float = 0.0
    rating: str | None = None
    regulation: str | None = None
    fed_by: tuple[Pair, ...] = ()
    fed_volts: str | None = None


@dataclass(frozen=True, kw_only=True)
class BondSpec(_Spec):
    """How a terminal's metal touches the appliance's earth: by the attribute named ``strength``."""

    terminal: str
    strength: str


@dataclass(frozen=True, kw_only=True)
class GapSpec(InsideSpec):
    """A spark gap, or the flame between a rod and the burner metal."""

    type: Literal["spark", "flame"]


@dataclass(frozen=True, kw_only=True)
class AttributeSpec(_Spec):
    """An attribute that may be typed for a part or a lead.

    One that takes neither quantity nor word nor number is a flag: its name alone says it.

    Attributes:
        about: one line for the reader.
        also: other spellings of its name.
        units: dimensions accepted (``volts``, ``amps`` …); the value is then a quantity.
        choices: words accepted; the value is then one of them.
        spellings: other spellings of choices, each with the choice it means.
        tracer: two choices joined by a slash are accepted too (``red/white``).
        whole: the value is a whole number without a unit, from 1 to ``most``.
        text: the value is any word or quoted text.
        several: a list of values may be given (``120/208/240 V``).
        keyed: it is never understood from its value alone.
        default: taken when nothing is typed, as it would be typed.
        default_from: how the default follows from the rest of the diagram or of the part;
            ``default`` stands where that says nothing.
        found_wrong: values that record something found broken, not how the part was bought.
        source: where the default comes from.
    """

    about: str
    also: tuple[str, ...] = ()
    units: tuple[str, ...] = ()
    choices: tuple[str, ...] = ()
    spellings: dict[str, str] = field(default_factory=dict)
    tracer: bool = False
    whole: bool = False
    most: int = 99
    text: bool = False
    several: bool = False
    keyed: bool = False
    default: str | None = None
    default_from: (
        Literal["burner-drawn", "control-drawn", "pilot-needs", "damper-drawn", "mains-volts"]
        | None
    ) = None
    found_wrong: tuple[str, ...] = ()
    source: str = "common practice, no source"

    @property
    def flag(self) -> bool:
        """Whether its name alone says it; the value is then `FLAG_SET`."""
        return not (self.units or self.choices or self.whole or self.text)


#: The value of an attribute that is a flag.
FLAG_SET: Final = "yes"


@dataclass(frozen=True, kw_only=True)
class NumberedSpec(_Spec):
    """Terminals named 1, 2, 3 … as many as used, or as the attribute ``limit`` says."""

    role: str
    circuit: Circuit
    limit: str | None = None


@dataclass(frozen=True, kw_only=True)
class Wiring(_Spec):
    """The attributes of what runs between parts, by name."""

    leads: dict[str, AttributeSpec]
    splices: dict[str, AttributeSpec]
    cables: dict[str, AttributeSpec]


@dataclass(frozen=True, kw_only=True, eq=False)
class Kind(_Spec):
    """A kind of part.

    Attributes:
        name: as it is typed.
        title: in words, for sheets and messages ("high limit").
        family: what it is to the checker; rules ask for families, so a user's kind works too.
        letters: device letters for drawings (JIC practice, from memory).
        about: a few lines for the reader.
        through: the two terminals used when the part is named alone in a lead.
        own_supply: a source stands behind its terminals that the diagram does not draw.

    A kind is compared by identity: the library gives out one object for each.
    """

    name: str
    title: str
    family: str
    letters: str
    about: str
    terminals: dict[str, TerminalSpec] = field(default_factory=dict)
    numbered: NumberedSpec | None = None
    through: Pair | None = None
    links: tuple[LinkSpec, ...] = ()
    switches: tuple[SwitchSpec, ...] = ()
    loads: tuple[LoadSpec, ...] = ()
    sources: tuple[SourceSpec, ...] = ()
    bonds: tuple[BondSpec, ...] = ()
    gaps: tuple[GapSpec, ...] = ()
    attributes: dict[str, AttributeSpec] = field(default_factory=dict)
    own_supply: bool = False
