"""The faults of parts: contacts, coils, windings, the control, damper and burner, gas and power."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from typing import cast

from wirecheck.circuit.companions import Companions
from wirecheck.circuit.nets import Element, Nets
from wirecheck.model.diagram import Part, Value
from wirecheck.model.finding import Finding
from wirecheck.model.kind import FLAG_SET, LoadSpec, SwitchSpec
from wirecheck.model.quantity import Quantity
from wirecheck.model.text import Span
from wirecheck.troubleshoot.alteration import Alteration
from wirecheck.troubleshoot.fault import Fault
from wirecheck.troubleshoot.modes import modes

#: More than any flame sends: the threshold of a control that sees none.
NEVER = Quantity(1.0, 1.0, "A")

#: So many mistakes of the drawing are named in a sentence.
MOST_NAMED = 2


def part_faults(nets: Nets) -> Iterator[Fault]:
    """Every fault of every part, in the order of the text."""
    companions = Companions(nets.diagram)
    for part in nets.diagram.parts.values():
        if part.family == "ignition-control":
            yield from _of_control(part)
            burner = companions.of(part, "burner")
            if burner is not None:
                yield from _of_burner(burner, part)
        elif part.family in ("vent-damper", "zone-valve"):
            yield from _of_blade(part)
        for element in nets.elements_of[part.key]:
            if isinstance(element.spec, SwitchSpec):
                yield from _of_contact(element)
            elif isinstance(element.spec, LoadSpec):
                yield from _of_load(element)
        yield from _starved(nets, part)
        if "winding" in part.kind.attributes:
            yield from _of_transformer(part)


def outside_faults(nets: Nets, mistakes: Sequence[Finding] = ()) -> Iterator[Fault]:
    """What comes from outside the wiring, and nothing at all: or the drawing's own mistakes."""
    diagram = nets.diagram
    nowhere = Span(diagram.source, 0, 0)

    def fault(mode: str, alters: Alteration) -> Fault:
        stated = modes()[mode]
        return Fault(
            mode, mode, stated.what, stated.repair, mode, stated.likelihood, nowhere, alters
        )

    as_drawn = fault("as-drawn", Alteration())
    yield _mistaken(as_drawn, mistakes) if mistakes else as_drawn
    if any(part.family == "gas-valve" for part in diagram.parts.values()):
        yield fault("gas-off", Alteration(gas_off=True))
    yield fault("power-off", Alteration(power_off=True))


def _mistaken(as_drawn: Fault, mistakes: Sequence[Finding]) -> Fault:
    """That a unit is wired as drawn, where the drawing is wrong: its mistakes are the cause."""
    named = "; ".join(each.message for each in mistakes[:MOST_NAMED])
    more = len(mistakes) - MOST_NAMED
    edits = [edit.words for each in mistakes for edit in each.edits[:1]]
    repair = "; ".join(edits or [each.message for each in mistakes])
    return replace(
        as_drawn,
        what=f"the wiring as drawn is wrong: {named}" + (f"; and {more} more" if more > 0 else ""),
        repair=repair[:1].upper() + repair[1:],
        span=mistakes[0].span,
    )


def _fault(  # noqa: PLR0913 - what a fault of a part is made of
    mode: str,
    part: Part,
    *values: tuple[str, Value],
    it: str = "",
    about: str = "",
    site: str = "",
    seems: Alteration | None = None,
) -> Fault:
    """A fault of a part; ``site`` tells work at one place of the part from that at another."""
    stated = modes()[mode]
    name = it or part.name
    return Fault(
        ":".join(filter(None, (mode, part.key, about))),
        mode,
        stated.what.format(it=name, part=part.name),
        stated.repair.format(it=name, part=part.name),
        ":".join(filter(None, ("part", part.key, site))),
        stated.likelihood,
        part.name_span,
        _values(part, *values),
        seems or Alteration(),
    )


def _values(part: Part, *values: tuple[str, Value]) -> Alteration:
    return Alteration(values=tuple((part.key, name, value) for name, value in values))


# ---- the control and its burner ------------------------------------------------------------


def _of_control(part: Part) -> Iterator[Fault]:
    first = "pilot-contact" if "pilot-contact" in part.kind.attributes else "valve-contact"
    yield _fault("first-output-dead", part, (first, "stuck-open"))
    yield _fault("first-output-welded", part, (first, "stuck-closed"))
    if "main-contact" in part.kind.attributes:
        yield _fault("main-output-dead", part, ("main-contact", "stuck-open"))
        yield _fault("main-output-welded", part, ("main-contact", "stuck-closed"))
    yield _fault("spark-dead", part, ("spark-coil", "dead"))
    yield _fault("control-dead", part, ("dead", FLAG_SET))
    yield _fault("flame-not-seen", part, ("threshold", NEVER))
    yield _fault("false-flame", part, seems=Alteration(false_flame=True))


def _of_burner(part: Part, control: Part) -> Iterator[Fault]:
    yield _fault("rod-dirty", part, ("rod", "dirty"), site="rod")
    # To the run it is as if no spark were made; the meter finds all well.
    seems = _values(control, ("spark-coil", "dead"))
    yield _fault("gap-wrong", part, site="gap", seems=seems)


def _of_blade(part: Part) -> Iterator[Fault]:
    yield _fault("damper-stuck-shut", part, ("stuck", "closed"), site="blade")
    yield _fault("damper-stuck-open", part, ("stuck", "open"), site="blade")


# ---- contacts ------------------------------------------------------------------------------


def _of_contact(element: Element) -> Iterator[Fault]:
    part, spec = element.part, cast(SwitchSpec, element.spec)
    if spec.moved_by == "control":
        return
    several = len(part.structure.switches) > 1
    it = f"{part.name} {spec.name}".strip() if several else part.name
    about = spec.name if several else ""
    if spec.moved_by == "overcurrent":
        found = "blown" if "blown" in part.kind.attributes else "tripped"
        yield _fault("blown", part, (found, FLAG_SET))
    elif spec.moved_by == "motor":
        yield _fault("end-switch-open", part, ("end-switch", "never-makes"))
        yield _fault("end-switch-welded", part, ("end-switch", "welded"))
    elif spec.moved_by == "coil":
        if element.spec is next(
            each for each in part.structure.switches if each.moved_by == "coil"
        ):
            yield _fault("contact-open", part, ("stuck", "open"))
            yield _fault("contact-welded", part, ("stuck", "closed"))
    elif part.family in ("thermostat", "operating-control"):
        if part.family != "thermostat" or spec.name == "heat":
            yield _fault("not-calling", part, ("stuck", "open"))
            yield _fault("calls-always", part, ("stuck", "closed"))
    else:
        yield from _of_switch(part, spec, it, about)


def _of_switch(part: Part, spec: SwitchSpec, it: str, about: str) -> Iterator[Fault]:
    """A limit or a switch by hand: it stands open, or it never opens."""
    own = f"{spec.name}-stuck"
    stuck = own if own in part.kind.attributes else "stuck"
    opened = "switched-off" if spec.moved_by in ("hand", "door") else "limit-open"
    if spec.running == "closed":
        yield _fault(opened, part, (stuck, "open"), it=it, about=about)
        if opened == "limit-open":
            warm = Alteration(opens_warm=((part.key, spec.name),))
            yield _fault("opens-warm", part, it=it, about=about, seems=warm)
    yield _fault("contact-welded", part, (stuck, "closed"), it=it, about=about)


# ---- coils, motors, windings ---------------------------------------------------------------

_BARE = ("coil", "motor", "dead", "burnt-out")


def load_attribute(element: Element) -> str:
    """Under which name a load is found bad, as `wirecheck.circuit.found_wrong` reads it."""
    attributes = element.part.kind.attributes
    own = f"{element.name.partition(' ')[0]}-coil"
    return next((name for name in (own, *_BARE) if name in attributes), "burnt-out")


def _of_load(element: Element) -> Iterator[Fault]:
    part, spec = element.part, cast(LoadSpec, element.spec)
    if spec.type in ("electronics", "spark-coil", "amplifier", "heater") or spec.takes is None:
        return
    attribute = load_attribute(element)
    several = len(part.structure.loads) > 1
    it = f"{element.name or spec.type} of {part.name}"
    about = element.name if several else "coil"
    yield _fault("coil-open", part, (attribute, "open"), it=it, about=about)
    known = part.kind.attributes.get(attribute)
    if known is not None and "shorted" in known.choices:
        yield _fault("coil-shorted", part, (attribute, "shorted"), it=it, about=about)
    if spec.type == "operator":
        # In the run it is shut whatever it gets; to the meter its coil is well.
        shut = _values(part, (attribute, "open"))
        yield _fault("valve-sticks", part, it=it, about=about, seems=shut)


def _starved(nets: Nets, part: Part) -> Iterator[Fault]:
    """No gas behind an operator that opens; in the run it is as if that stayed shut."""
    coils = operators(nets, part)
    for element in coils:
        mode = "pilot-starved" if element.name.startswith("pilot") else "main-starved"
        shut = _values(part, (load_attribute(element), "open"))
        yield _fault(mode, part, site=mode, seems=shut)


def operators(nets: Nets, valve: Part) -> list[Element]:
    """The operators behind each of which gas can be missed: of a burner with no pilot the last."""
    coils = [
        each
        for each in nets.elements_of[valve.key]
        if isinstance(each.spec, LoadSpec) and each.spec.type == "operator"
    ]
    parts = nets.diagram.parts.values()
    has_pilot = any(p.family == "ignition-control" and p.with_role("main-valve") for p in parts)
    return coils if has_pilot else coils[-1:]


def _of_transformer(part: Part) -> Iterator[Fault]:
    yield _fault("transformer-dead", part, ("winding", "open"))
    yield _fault("transformer-shorted", part, ("winding", "shorted"))
    secondary = part.values.get("secondary")
    if isinstance(secondary, Quantity):
        share = modes()["transformer-weak"].weak
        weak = Quantity(secondary.low * share, secondary.high * share, secondary.unit)
        yield _fault("transformer-weak", part, ("secondary", weak))
