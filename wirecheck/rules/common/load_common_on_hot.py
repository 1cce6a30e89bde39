"""Every 24 V load goes straight to the common; what switches it stands on its hot side.

A coil on R with its thermostat in the common lead works until that lead touches earth: then it
pulls in with no call.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from wirecheck.circuit.nets import Element
from wirecheck.model.diagram import Terminal
from wirecheck.model.finding import Breaks, Finding
from wirecheck.model.kind import LoadSpec, SwitchSpec
from wirecheck.model.nearest import both
from wirecheck.rules.cautions import MOVING_LEADS
from wirecheck.rules.facts import Facts, Supply
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule, Source
from wirecheck.rules.sides import Trace

#: Loads without a polarity of their own, of parts whose chapter is not another one.
_TYPES = frozenset({"coil", "motor", "lamp", "appliance"})
_ELSEWHERE = frozenset({"ignition-control", "gas-valve", "vent-damper"})
_COMMON = frozenset({"thermostat-common", "probe-common"})
#: The terminal of a zone valve that its motor and its end switch share.
_SHARED_BY_MOTOR = "motor-end-switch"

_GOOD = """\
part xfmr is transformer
part stat is thermostat
part fan is relay
wire xfmr.R to stat to fan.A
wire fan.B to xfmr.C
wire xfmr.C to earth: green
"""
_BAD = _GOOD.replace("xfmr.R to stat to fan.A", "xfmr.R to fan.A").replace(
    "fan.B to xfmr.C", "fan.B to stat to xfmr.C"
)
_POWERED = _GOOD.replace("is thermostat", "is thermostat: power common")

RULE = Rule(
    name="load-common-on-hot",
    title="Every 24 V load goes straight to the common",
    family="common",
    breaks=Breaks.WORKMANSHIP,
    why=(
        "With the common earthed, a chafed lead between the load and its switch is a switch that "
        "is always on; and who measures from the common finds 24 V where none should be."
    ),
    blind_spots=(
        "Loads inside devices whose wiring is not drawn. A load behind the end switch of a zone "
        "valve of three terminals, which cannot stand on the hot side."
    ),
    caution=MOVING_LEADS,
    sources=(PRACTICE, Source("NFPA 79", "standard", "9.1.4")),
    faults={
        "switched-common": Fault(
            "{load} is on the hot side at {terminal}, and {contacts} switches its common: put "
            "{contacts} between {hot} and {load}, and run {other} straight to {common}",
            "It works; an earth fault between {load} and {contacts} keeps it on with no call.",
        ),
        "safety-in-common": Fault(
            "{load} is on the hot side at {terminal}, and {safety}, a safety, is in its "
            "common: put {contacts} between {hot} and {load}, and run {other} straight to {common}",
            "It works; an earth fault between {load} and {contacts} keeps it on, whatever {safety} "
            "says.",
            Breaks.SAFETY,
        ),
        "common-on-hot": Fault(
            "the common {terminal} of {load} is on the hot side: move it to {common}",
            "{load} has the hot side on both ends and no power.",
            Breaks.OPERATION,
        ),
        "common-on-switched": Fault(
            "the common {terminal} of {load} is on what {contacts} makes hot: move it to {common}",
            "{load} has no power while {contacts} is closed.",
            Breaks.OPERATION,
        ),
        "no-common": Fault(
            "the common {terminal} of {load} has a lead and reaches no common: move it to {common}",
            "{load} has no power.",
            Breaks.OPERATION,
        ),
    },
    bad=(
        Example(_BAD, (("switched-common", "fan.A"),)),
        Example(
            _BAD.replace("part fan", "part limit is high-limit\npart fan").replace(
                "fan.B to stat", "fan.B to limit to stat"
            ),
            (("safety-in-common", "fan.A"),),
        ),
        Example(_POWERED + "wire xfmr.R to stat.C\n", (("common-on-hot", "stat.C"),)),
        Example(_POWERED + "wire fan.A to stat.C\n", (("common-on-switched", "stat.C"),)),
        Example(
            _POWERED + "part box is pilot-ignition-control\nwire box.24V to stat.C\n",
            (("no-common", "stat.C"),),
        ),
    ),
    good=(Example(_GOOD), Example(_POWERED + "wire xfmr.C to stat.C\n")),
    stands_back_for=("secondary-shorted", "call-fed-from-common", "line-and-24-volts-joined"),
)


class _Landing(NamedTuple):
    """A load with one end on the hot side of a supply."""

    load: Element
    on: Terminal
    off: Terminal
    supply: Supply


def check(facts: Facts) -> Iterator[Finding]:
    """Find loads on R whose way back has contacts, and commons of devices landed on R."""
    yield from _on_switched(facts)
    told: set[int] = set()
    for landing in _landings(facts):
        sides, supply, off = facts.sides, landing.supply, landing.off
        spec = landing.load.spec
        if facts.role(landing.on) in _COMMON:
            yield _finding(facts, "common-on-hot", landing)
        elif sides.may_join(supply.common, off) and not sides.same(supply.common, off):
            trace = sides.trace(off, supply.common)
            conductor = sides.conductor(off)
            is_plain = isinstance(spec, LoadSpec) and spec.type in _TYPES
            contacts = _movable(facts, supply, trace) if trace is not None else ()
            if is_plain and contacts and conductor not in told:
                told.add(conductor)
                is_safety = any(_is_safety(contact) for contact in contacts)
                fault = "safety-in-common" if is_safety else "switched-common"
                # A thermostat beside the safety goes along with it, and is not called one.
                safeties = tuple(filter(_is_safety, contacts))
                yield _finding(facts, fault, landing, contacts, safeties)


def _on_switched(facts: Facts) -> Iterator[Finding]:
    """Commons of devices on a lead that contacts make hot, or that is on nothing."""
    sides = facts.sides
    for part in facts.of("thermostat", "low-water-probe"):
        needing = {end for load in part.structure.loads for end in load.between}
        for end in part.with_role(*_COMMON):
            if end.name not in needing:
                continue
            if sides.hot_on(end) or sides.common_beyond(end) or facts.is_grounded(end):
                continue
            feeds = part.with_role("thermostat-feed", "probe-hot")
            supplies = sides.hot_beyond(end) or [s for f in feeds for s in sides.hot_beyond(f)]
            if not supplies or not facts.is_wired(end) or not facts.is_traced(end):
                continue
            trace = sides.trace(end, supplies[0].hot)
            contacts = [contact.part.name for contact in trace.contacts] if trace else []
            yield RULE.finding(
                facts,
                "common-on-switched" if trace else "no-common",
                facts.place(end),
                leads=facts.nets.leads_at(end),
                terminals=(end, supplies[0].hot, supplies[0].common),
                load=part.name,
                terminal=facts.show(end),
                contacts=both(list(dict.fromkeys(contacts))),
                common=facts.show(supplies[0].common),
            )


def _landings(facts: Facts) -> Iterator[_Landing]:
    for elements in facts.nets.elements_of.values():
        for load in elements:
            if load.type == "load" and load.part.family not in _ELSEWHERE:
                for on, off in ((load.a, load.b), (load.b, load.a)):
                    for supply in facts.sides.hot_on(on)[:1]:
                        if not facts.sides.same(supply.common, on):
                            yield _Landing(load, on, off, supply)


def _movable(facts: Facts, supply: Supply, trace: Trace) -> tuple[Element, ...]:
    """Contacts of a way that could stand on the hot side.

    A zone valve of three terminals cannot: its end switch shares one with its motor, which goes
    to the common.
    """
    return tuple(
        contact
        for contact in trace.contacts
        if not any(
            facts.role(end) == _SHARED_BY_MOTOR and facts.sides.same(end, supply.common)
            for end in (contact.a, contact.b)
        )
    )


def _is_safety(contact: Element) -> bool:
    return isinstance(contact.spec, SwitchSpec) and contact.spec.safety


def _finding(
    facts: Facts,
    fault: str,
    landing: _Landing,
    contacts: tuple[Element, ...] = (),
    safeties: tuple[Element, ...] = (),
) -> Finding:
    on, off, supply = landing.on, landing.off, landing.supply
    return RULE.finding(
        facts,
        fault,
        facts.place(on),
        leads=facts.nets.leads_at(on)[:1],
        terminals=(on, off, supply.hot, supply.common),
        load=landing.load.part.name,
        terminal=facts.show(on),
        other=facts.show(off),
        hot=facts.show(supply.hot),
        common=facts.show(supply.common),
        contacts=both(list(dict.fromkeys(contact.part.name for contact in contacts))),
        safety=both(list(dict.fromkeys(contact.part.name for contact in safeties))),
    )
