"""A position of the switches in words, and what two diagrams do in it."""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.compare.function import Witness
from wirecheck.compare.result import Seen
from wirecheck.compare.variables import Variable
from wirecheck.compare.wired import Wired
from wirecheck.compare.words import Teller
from wirecheck.model.diagram import Part


def seen_at(first: Wired, second: Wired, witness: Witness, teller: Teller) -> Seen:
    """What a witness shows, in words."""
    standing = ", ".join(_standing(first, second, witness))
    when = f"with {standing}" if standing else "in every position of the switches"
    pin, beside = teller.show(witness.pin), teller.show(witness.beside)
    over = " by leads" if witness.by_leads_only else ""
    joined, apart = f"{pin} is joined to {beside}{over}", f"{pin} is not joined to {beside}{over}"
    if witness.joined_in_first:
        return Seen(when, joined, apart, witness)
    return Seen(when, apart, joined, witness)


def _standing(first: Wired, second: Wired, witness: Witness) -> Iterator[str]:
    """How the switches stand that do not stand as in a running burner, and the controls."""
    outputs: dict[str, list[bool]] = {}
    for variable, is_on in witness.state.items():
        part = first.diagram.parts.get(variable.part) or second.diagram.parts[variable.part]
        if part.family == "ignition-control":
            outputs.setdefault(part.name, []).append(is_on)
        elif not is_on:
            yield _off(part, variable)
    for name, on in outputs.items():
        words = "in its run" if all(on) else "in its trial" if any(on) else "in standby"
        yield f"{name} {words}"


def _off(part: Part, variable: Variable) -> str:
    if variable.what.startswith("coil"):
        return f"{part.name} let go"
    if part.family == "thermostat" and variable.what in ("", "heat"):
        return f"{part.name} not calling"
    if part.family == "vent-damper":
        return f"{part.name} not open"
    return f"{part.name} {variable.what} open".replace("  ", " ")
