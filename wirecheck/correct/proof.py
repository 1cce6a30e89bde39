"""What is still wrong with a diagram: by every rule, and by the simulation.

By the simulation, a unit that is drawn whole must run on a call with its spark off, go back to
standby after it, pass no gas before and after, and none with any of its safeties open.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from wirecheck.check.engine import Checked, check
from wirecheck.circuit.nets import Element, Nets
from wirecheck.correct.screen import is_grave
from wirecheck.model.diagram import Diagram, Part, Terminal
from wirecheck.model.finding import Finding
from wirecheck.model.kind import SwitchSpec
from wirecheck.sequence.answers import View
from wirecheck.sequence.callers import callers
from wirecheck.sequence.chain import chain
from wirecheck.sequence.run import run
from wirecheck.sequence.script import Opening, heat_call

#: A call in which everything happens that will happen, and the time in which it must have ended.
_CALL_S, _WATCH_S = 300.0, 60.0
_RUNS = "runs"
#: Families without which a call need not bring heat: the sketch is of a part of the unit.
_NEEDED = ("gas-valve", "burner", "transformer")


class Proof(NamedTuple):
    """What is left in a diagram.

    Attributes:
        checked: what every rule says.
        grave: its findings of safety and operation.
        trouble: what the simulation shows besides, in sentences; empty where the rules object, as
            it is then not run.
    """

    checked: Checked
    grave: tuple[Finding, ...]
    trouble: tuple[str, ...]

    @property
    def holds(self) -> bool:
        """Whether nothing of safety or operation is left."""
        return not self.grave and not self.trouble


def proof(diagram: Diagram) -> Proof:
    """Check and, where no rule objects, run a diagram."""
    checked = check(diagram)
    grave = tuple(filter(is_grave, checked.findings))
    trouble = () if grave else tuple(dict.fromkeys(_trouble(checked.nets)))
    return Proof(checked, grave, trouble)


def is_whole(nets: Nets) -> bool:
    """Whether so much is drawn that a call must bring heat: control, supply, valve, burner."""
    families = {part.family for part in nets.diagram.parts.values()}
    whole = "ignition-control" in families and families.issuperset(_NEEDED)
    return whole and bool(callers(nets))


def _trouble(nets: Nets) -> Iterator[str]:
    diagram = nets.diagram
    if not is_whole(nets):
        return
    call = heat_call(length_s=_CALL_S, watch_s=_WATCH_S)
    for told in run(diagram, call).told:
        if told.outcome.word != _RUNS:
            yield f"{told.control}: {told.outcome.sentence}"
    yield from (danger.sentence for danger in run(diagram, call, View.DANGER).dangers)
    for contact in acting_safeties(nets):
        opening = Opening(contact.part.key, contact.name)
        script = heat_call(length_s=_CALL_S, opened=(opening,), watch_s=_WATCH_S)
        for danger in run(diagram, script, View.DANGER).dangers:
            if danger.word == "safety-open":
                yield danger.sentence


def safeties(nets: Nets) -> Iterator[Element]:
    """Every contact that is there to stop the gas."""
    for elements in nets.elements_of.values():
        for element in elements:
            if isinstance(element.spec, SwitchSpec) and element.spec.safety:
                yield element


def _guards(nets: Nets) -> Iterator[Element]:
    """Safeties, hand switches and fuses: none may drop out of the circuit."""
    for elements in nets.elements_of.values():
        for element in elements:
            is_safety = isinstance(element.spec, SwitchSpec) and element.spec.safety
            if is_safety or element.part.family in ("hand-switch", "overcurrent"):
                yield element


def acting_safeties(nets: Nets) -> list[Element]:
    """The safeties that stand between a supply and a control, or between it and its gas."""
    controls = (p for p in nets.diagram.parts.values() if p.family == "ignition-control")
    chains = [chain(nets, control) | _damper_nets(nets, control) for control in controls]
    return [
        contact
        for contact in safeties(nets)
        if contact.net_a != contact.net_b
        and any({contact.net_a, contact.net_b} <= nets_of for nets_of in chains)
    ]


def _damper_nets(nets: Nets, control: Part) -> set[int]:
    """The nets between which a control waits for its damper."""
    return {nets.net(end) for end in control.with_role("damper-call", "damper-proved")}


def lost_safeties(before: Nets, after: Nets) -> list[str]:
    """Safeties, hand switches and fuses rewired so that a side has no lead, or they act no more.

    What becomes of one whose own leads stay where they are is for the rules and the run to say.
    """
    acting = {(each.part.key, each.name) for each in acting_safeties(after)}
    acted = {(each.part.key, each.name) for each in acting_safeties(before)}
    return [
        each.part.name
        for each in _guards(before)
        if _landed(before, each) != _landed(after, each)
        and (
            ((each.part.key, each.name) in acted - acting)
            or (_is_wired(before, each) and not _is_wired(after, each))
        )
    ]


def _landed(nets: Nets, contact: Element) -> frozenset[tuple[Terminal, Terminal]]:
    """Where the leads at a contact run."""
    leads = nets.diagram.leads
    return frozenset(
        (end, leads[number].b if leads[number].a == end else leads[number].a)
        for end in (contact.a, contact.b)
        for number in nets.leads_at(end)
    )


def _is_wired(nets: Nets, contact: Element) -> bool:
    return nets.is_wired(contact.a) and nets.is_wired(contact.b)
