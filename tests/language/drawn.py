"""Random wiring, typed in every way the language allows."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from hypothesis import strategies as st

from wirecheck.language.spelling import quoted, spell_name, spell_terminal
from wirecheck.model.diagram import key_of
from wirecheck.parts.defaults import values_of
from wirecheck.parts.library import kind
from wirecheck.parts.structure import structure_of

KINDS = (
    "relay", "high-limit", "thermostat", "transformer", "gas-valve-3-wire", "pilot-burner",
    "pilot-ignition-control", "vent-damper", "mains", "zone-valve",
)  # fmt: skip
NAMES = (
    "k1", "K-2", "old box", 'say "when"', "24V", "to", "wire", "end", "open", "a/b", "Öl-Kessel",
    "клапан", "n.o.", "part", "x" * 70, "1", "über_3", "12/3",
)  # fmt: skip
COLOURS = ("red", "RD", "White", "green/yellow", "blue", "grey")
LEAD_ATTRIBUTES = (
    "18 AWG", "0.75mm2", "12 ft", "length 3.5 m", "ignition-cable", "200 F", "number 17",
    'number "1 a, b"', "broken", "loose 200 ohm", "touches earth", "24\tin",
)  # fmt: skip
COMMENTS = ("", "", "", "  # as found", '# "unclosed', " #", "   # wire a.1 to b.1")


@dataclass(frozen=True)
class Device:
    """A part to be drawn: how it is spelled, and where leads may land on it."""

    name: str
    terminals: tuple[str, ...]
    alone: bool
    contacts: tuple[tuple[str, str], ...]


def device(name: str, kind_name: str) -> Device:
    found = kind(kind_name)
    structure = structure_of(found, values_of(found, {}))
    terminals = tuple(name for name, spec in structure.terminals.items() if not spec.inner)
    contacts = tuple(
        switch.between for switch in structure.switches if set(switch.between) <= set(terminals)
    )
    return Device(name, terminals, structure.through is not None, contacts)


@st.composite
def spelled(draw: st.DrawFn, name: str) -> str:
    """A name as somebody may type it: in any case, in quotes without need."""
    typed = draw(st.sampled_from([name, name, name.upper(), name.lower()]))
    typed = typed if key_of(typed) == key_of(name) else name
    return quoted(typed) if draw(st.integers(0, 4)) == 0 else spell_name(typed)


@st.composite
def ends(
    draw: st.DrawFn, devices: Sequence[Device], splices: Sequence[str], *, inside: bool
) -> str:
    """One END of a lead."""
    others = ["earth", *splices] if inside else ["earth", "unknown", *splices]
    if draw(st.integers(0, 5)) == 0:
        return draw(spelled(draw(st.sampled_from(others))))
    chosen = draw(st.sampled_from(devices))
    name = draw(spelled(chosen.name))
    if chosen.alone and draw(st.booleans()):
        return name
    if inside and chosen.contacts and draw(st.booleans()):
        one, other = draw(st.sampled_from(chosen.contacts))
        return f"{name}.{spell_terminal(one)}..{spell_terminal(other)}"
    return f"{name}.{spell_terminal(draw(st.sampled_from(chosen.terminals)))}"


@st.composite
def attribute_lists(draw: st.DrawFn) -> str:
    """Attributes of a lead, each taken once."""
    chosen = draw(st.lists(st.sampled_from(LEAD_ATTRIBUTES), max_size=2, unique_by=_owner))
    if draw(st.booleans()):
        chosen.insert(0, draw(st.sampled_from(COLOURS)))
    return draw(st.sampled_from([",", ", ", " ,  "])).join(chosen)


def _owner(attribute: str) -> str:
    unit = attribute.rsplit(maxsplit=1)[-1]
    return (
        "length"
        if unit in ("ft", "m", "in")
        else "size"
        if "AWG" in unit or "mm2" in unit
        else attribute[:6]
    )


@st.composite
def runs(draw: st.DrawFn, devices: Sequence[Device], splices: Sequence[str]) -> str:
    """A wire or a jumper, over one line or several."""
    count = draw(st.integers(2, 5))
    blank = draw(st.sampled_from([" ", "  ", "\t"]))
    text = draw(st.sampled_from(["wire", "Wire", "jumper", "WIRE"])) + blank
    for number in range(count):
        text += draw(ends(devices, splices, inside=0 < number < count - 1))
        if number and draw(st.integers(0, 4)) == 0:
            own = draw(attribute_lists())
            text += f" ({own})" if own else ""
        if number < count - 1:
            text += draw(st.sampled_from([" to ", " TO ", " to\n    ", " to  # on\n\n  "]))
    attributes = draw(attribute_lists())
    return f"{text}:{blank}{attributes}" if attributes else text


@st.composite
def plugs(draw: st.DrawFn, devices: Sequence[Device]) -> str:
    """A harness between two parts."""
    one, other = draw(st.sampled_from(devices)), draw(st.sampled_from(devices))
    both = [name for name in one.terminals if name in other.terminals]
    pins = []
    for _ in range(draw(st.integers(1, 3))):
        if draw(st.booleans()) and both:
            pins.append(spell_terminal(draw(st.sampled_from(both))))
        else:
            a, b = (draw(st.sampled_from(end.terminals)) for end in (one, other))
            pins.append(f"{spell_terminal(a)} to {spell_terminal(b)}")
    joined = draw(st.sampled_from([", ", ",\n    "])).join(pins)
    return f"plug {draw(spelled(one.name))} to {draw(spelled(other.name))}: {joined}"


@st.composite
def wirings(draw: st.DrawFn) -> str:
    """The text of a diagram.  Now and then a lead of it runs to itself: ask for its problems."""
    names = draw(st.lists(st.sampled_from(NAMES), min_size=3, max_size=7, unique_by=key_of))
    splices = names[: draw(st.integers(0, 2))]
    lines = [f"splice {spell_name(name)}: wire-nut" for name in splices]
    devices = []
    for name in names[len(splices) :]:
        kind_name = draw(st.sampled_from(KINDS))
        devices.append(device(name, kind_name))
        lines.append(f"part {draw(spelled(name))} is {kind_name}")
    run = runs(devices, splices)
    statement: st.SearchStrategy[str] = st.one_of(run, run, plugs(devices))
    lines += draw(st.lists(statement, min_size=1, max_size=6))
    text = "\n".join(
        draw(st.sampled_from(["", "", "  "])) + line + draw(st.sampled_from(COMMENTS))
        + draw(st.sampled_from(["", "", "\n", "\n\n# between"]))
        for line in lines
    )  # fmt: skip
    text += draw(st.sampled_from(["", "\n"]))
    return text.replace("\n", "\r\n") if draw(st.integers(0, 4)) == 0 else text
