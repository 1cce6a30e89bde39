"""Every single fault of a diagram tried, the worst first.

A fault is tried on the units it can reach: the leads and parts of each are cut out of the diagram
and looked at by themselves, with the fault and without.  Faults that join or part the same nets
come to the same and are looked at once.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from functools import cached_property
from typing import NamedTuple

from wirecheck.circuit.conduction import Conduction
from wirecheck.circuit.nets import Nets
from wirecheck.faults.effect import NOTHING, Behaviour, Class, Effect, dangerous_effect, effect
from wirecheck.faults.fault import Fault, faults
from wirecheck.model.collector import collector_paused
from wirecheck.model.diagram import EARTH, Diagram, Terminal
from wirecheck.model.kind import SourceSpec
from wirecheck.properties.unit import Whole
from wirecheck.properties.volts import part_of, with_strips


class Tried(NamedTuple):
    """One fault and what comes of it."""

    fault: Fault
    effect: Effect


class Campaign(NamedTuple):
    """Every fault of a diagram.

    Attributes:
        diagram: as drawn.
        tried: the worst first, in the order of the text within a class.
        already: what is wrong without any fault, so that no fault can bring it about.
    """

    diagram: Diagram
    tried: tuple[Tried, ...]
    already: tuple[str, ...]

    @property
    def counted(self) -> dict[Class, int]:
        """How many faults each class has, the worst first."""
        counts = Counter(each.effect.severity for each in self.tried)
        return {each: counts[each] for each in sorted(Class, reverse=True)}


@collector_paused()
def campaign(diagram: Diagram) -> Campaign:
    """Try every single fault of a diagram."""
    nets = Nets(diagram)
    whole = Whole(nets)
    cuts = [_Cut(diagram, with_strips(diagram, unit.parts)) for unit in whole.units()]
    tried = [Tried(fault, _worst(nets, whole, cuts, fault)) for fault in faults(nets)]
    order = sorted(enumerate(tried), key=lambda each: (-each[1].effect.severity, each[0]))
    already = dict.fromkeys(words for cut in cuts for words in cut.before.wrong())
    return Campaign(diagram, tuple(each for _number, each in order), tuple(already))


def _worst(nets: Nets, whole: Whole, cuts: list[_Cut], fault: Fault) -> Effect:
    found = [each for cut in cuts if (each := cut.effect(fault)) is not None]
    if not found:
        return _outside(nets, whole.conduction, fault)
    return max(found, key=lambda each: each.severity)


class _Cut:
    """One unit cut out of its diagram."""

    def __init__(self, diagram: Diagram, parts: frozenset[str]) -> None:
        self.diagram, numbers = part_of(diagram, parts)
        self._number_of = {number: place for place, number in enumerate(numbers)}
        self._known: dict[object, Effect] = {}
        self._hazards: dict[object, bool] = {None: False}

    @cached_property
    def before(self) -> Behaviour:
        """Without a fault."""
        return Behaviour(self.diagram, {})

    def effect(self, fault: Fault) -> Effect | None:
        """What a fault comes to here; None if it is none of this unit's."""
        here = self._here(fault)
        if here is None:
            return None
        key = self._alike(here)
        if key is None:
            return NOTHING._replace(reason="what touches is one conductor already")
        if key not in self._known:
            self._known[key] = self._try(here)
        return self._known[key]

    def _here(self, fault: Fault) -> Fault | None:
        if fault.contact is not None:
            return fault if fault.contact.part in self.diagram.parts else None
        lead = self._number_of.get(fault.lead if fault.lead is not None else -1)
        return fault._replace(lead=lead) if lead is not None else None

    def _alike(self, fault: Fault) -> object:
        """What faults that come to the same share; None if it changes nothing."""
        nets = self.before.nets
        if fault.contact is not None:
            return fault.contact, fault.kind
        if fault.kind == "open":
            return fault.lead
        lead = self.diagram.leads[fault.lead or 0]
        ends = fault.touched or (lead.a, EARTH)
        pair = frozenset(nets.net(end) for end in ends)
        return pair if len(pair) == 2 else None

    def _try(self, fault: Fault) -> Effect:
        after = self._after(fault)
        part = self.diagram.parts[fault.contact.part] if fault.contact else None
        found = effect(self.before, after, part)
        if found.severity is Class.NO_EFFECT and self._concerns_earth(fault):
            return self._one_more(fault, after) or found
        return found

    def _after(self, fault: Fault) -> Behaviour:
        return Behaviour(fault.on(self.diagram), fault.stuck, self.before)

    def _concerns_earth(self, fault: Fault) -> bool:
        if fault.contact is not None:
            return False
        lead = self.diagram.leads[fault.lead or 0]
        nets = self.before.nets
        return fault.kind == "earthed" or nets.net(EARTH) in (nets.net(lead.a), nets.net(lead.b))

    def _one_more(self, fault: Fault, after: Behaviour) -> Effect | None:
        """A hazard that one further earth fault makes only because of this one."""
        faulty = fault.on(self.diagram)
        seen: set[int] = {after.nets.net(EARTH)}
        for number, lead in enumerate(self.diagram.leads):
            net = after.nets.net(lead.a)
            if net in seen or not lead.conducts:
                continue
            seen.add(net)
            name = self.diagram.lead_name(lead)
            more = Fault("earthed", number, None, None, name, lead.span)
            if self._is_hazard(more):
                continue
            both = dangerous_effect(after, Behaviour(more.on(faulty), {}, self.before), None)
            if both is not None and both.severity is Class.HAZARD:
                reason = f"nobody notices; with {name} earthed as well, {both.reason}"
                return Effect(Class.LATENT, "not noticed", reason)
        return None

    def _is_hazard(self, fault: Fault) -> bool:
        """Whether an earth fault of this unit is a hazard by itself."""
        key = self._alike(fault)
        if key not in self._hazards:
            found = dangerous_effect(self.before, self._after(fault), None)
            self._hazards[key] = found is not None and found.severity is Class.HAZARD
        return self._hazards[key]


def _outside(nets: Nets, conduction: Conduction, fault: Fault) -> Effect:
    """A fault on what no burner depends on: it may still short a supply."""
    if fault.kind in ("earthed", "touching"):
        lead = nets.diagram.leads[fault.lead or 0]
        one, other = fault.touched or (lead.a, EARTH)
        for source, a, b in _sources(nets):
            if _reaches(conduction, nets, (a, b), (one, other)):
                return Effect(Class.DAMAGE, "at once", f"{source} is shorted when switched on")
    return NOTHING._replace(reason="no burner depends on it")


def _sources(nets: Nets) -> Iterator[tuple[str, int, int]]:
    for elements in nets.elements_of.values():
        for element in elements:
            if isinstance(element.spec, SourceSpec):
                yield element.part.name, element.net_a, element.net_b


def _reaches(
    conduction: Conduction, nets: Nets, ends: tuple[int, int], joined: tuple[Terminal, Terminal]
) -> bool:
    one, other = (nets.net(each) for each in joined)
    a, b = ends
    return (conduction.may_join(a, one) and conduction.may_join(b, other)) or (
        conduction.may_join(a, other) and conduction.may_join(b, one)
    )
