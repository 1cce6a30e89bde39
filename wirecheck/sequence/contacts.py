"""In which position each contact stands, and what moves it."""

from __future__ import annotations

from collections.abc import Callable
from typing import NamedTuple, cast

from wirecheck.circuit.netlist import ElementKey
from wirecheck.circuit.nets import Element
from wirecheck.model.diagram import Part
from wirecheck.model.kind import SwitchSpec

#: Whether what moves a contact has it as in a running burner, at a time in seconds.  One that is
#: closed on the shelf and in a running burner is open otherwise: a blown fuse, a satisfied control.
Mover = Callable[[float], bool]


class Contact(NamedTuple):
    """One contact.

    Attributes:
        key: of the contact.
        part: it is in.
        spec: what the part library says of it.
        mover: what moves it.
        found: the position it was found stuck in, "" if it moves.
        stuck_mover: what moves it was found stuck as if always (or never) acting; None if not.
    """

    key: ElementKey
    part: Part
    spec: SwitchSpec
    mover: Mover
    found: str
    stuck_mover: bool | None

    @property
    def name(self) -> str:
        """For people: the part's name, with the contact's own where it has several."""
        several = len(self.part.structure.switches) > 1
        return f"{self.part.name} {self.spec.name}" if several else self.part.name

    def closed(self, now_s: float, forced: str) -> bool:
        """Whether it is closed; ``forced`` is the position it is put into from outside, or ""."""
        if self.found or forced:
            return (self.found or forced) == "closed"
        acted = self.mover(now_s) if self.stuck_mover is None else self.stuck_mover
        if self.spec.normal == self.spec.running == "closed":
            return acted
        return (self.spec.running if acted else self.spec.normal) == "closed"


def contact(key: ElementKey, element: Element, mover: Mover) -> Contact:
    """A contact with what the text records of it."""
    part, spec = element.part, cast(SwitchSpec, element.spec)
    stuck = str(part.values.get("stuck", ""))
    stuck_mover = None
    if spec.moved_by == "coil" and stuck:
        stuck_mover = stuck == "closed"
    return Contact(key, part, spec, mover, _found(part, spec, key, stuck), stuck_mover)


def _found(part: Part, spec: SwitchSpec, key: ElementKey, stuck: str) -> str:
    """The position a contact was found in for good."""
    values = part.values
    if "yes" in (values.get("blown"), values.get("tripped")):
        return "open"
    if spec.moved_by == "control":
        return _stuck_control(part, key)
    own = values.get(f"{spec.name}-stuck")
    if own:
        return str(own)
    if spec.moved_by == "motor":
        return {"welded": "closed", "never-makes": "open"}.get(str(values.get("end-switch")), "")
    if spec.moved_by == "coil" or (part.family == "thermostat" and spec.name != "heat"):
        return ""
    return stuck


#: What a stuck contact of a control is called: first the one that feeds the first gas.
_CONTROL_CONTACTS = (("pilot-contact", "valve-contact"), ("main-contact",))


def _stuck_control(part: Part, key: ElementKey) -> str:
    names = _CONTROL_CONTACTS[key.number] if key.number < len(_CONTROL_CONTACTS) else ()
    found = next((str(part.values[name]) for name in names if name in part.values), "")
    return found.removeprefix("stuck-")
