"""At every device the hot lead of the line is on the hot terminal, the neutral on the neutral one.

A transformer does not care.  But where the reversal lies before a switch or a fuse, that one now
breaks the neutral, and what it is to make dead stays hot.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final, NamedTuple

from wirecheck.circuit.nets import Element
from wirecheck.language.edit import swap_ends
from wirecheck.model.diagram import Terminal
from wirecheck.model.finding import Breaks, Edit, Finding
from wirecheck.model.nearest import both
from wirecheck.rules.facts import Facts
from wirecheck.rules.legs import Legs
from wirecheck.rules.line_voltage.cautions import LINE_VOLTAGE
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule

_ROLES: Final = (("line-hot", "line-neutral"), ("load-hot", "load-neutral"))

#: Of so many devices on the same two leads the ways are looked at.
_MOST = 20

_GOOD = """\
part line is mains: 120 V
part disc is service-switch
part xfmr is transformer
part stat is thermostat
part fan is relay
wire line.L1 to disc to xfmr.L1: black
wire line.N to xfmr.N: white
wire line.G to earth: green
wire xfmr.R to stat to fan to xfmr.C
wire xfmr.C to earth: green
"""
_AT_DEVICE = _GOOD.replace("disc to xfmr.L1", "disc to xfmr.N").replace(
    "line.N to xfmr.N", "line.N to xfmr.L1"
)
_AT_LINE = _GOOD.replace("line.L1 to disc", "line.N to disc").replace(
    "line.N to xfmr.N", "line.L1 to xfmr.N"
)

#: Hot and neutral terminal of a device.
_Ends = tuple[Terminal, Terminal]

RULE = Rule(
    name="line-and-neutral-reversed",
    title="The hot lead of the line is on the hot terminal, the neutral on the neutral one",
    family="line voltage",
    breaks=Breaks.SAFETY,
    why=(
        "A switch or fuse in the neutral stops the device and leaves it hot: whoever opens it "
        "trusts a switch that isolates nothing."
    ),
    blind_spots="Legs reversed upstream of what is drawn; a meter from each leg to earth tells.",
    caution=LINE_VOLTAGE,
    sources=(PRACTICE,),
    faults={
        "plain": Fault(
            "line and neutral are reversed at {devices}: {hot} has {neutral_leg}, {neutral} has "
            "{hot_leg}; exchange the two leads",
            "It works; the next one to add a switch in the hot lead will put it in the neutral.",
            Breaks.WORKMANSHIP,
        ),
        "breaks-neutral": Fault(
            "line and neutral are reversed before {devices}: {hot} has {neutral_leg}, so that "
            "{contacts} the neutral; exchange the leads at the supply",
            "Switched off or blown, {devices} stops and stays hot.",
        ),
    },
    bad=(
        Example(_AT_DEVICE, (("plain", "xfmr.L1"),)),
        Example(_AT_LINE, (("breaks-neutral", "xfmr.L1"),)),
    ),
    good=(Example(_GOOD),),
    stands_back_for=("line-and-24-volts-joined", "line-shorted"),
)


class Reversed(NamedTuple):
    """Devices with the neutral on their hot terminal, all on the same two conductors.

    Attributes:
        devices: hot and neutral terminal of each.
        contacts: contacts between the neutral of the supply and the hot terminals.
        leads: leads on the ways from the supply.
        alone: no device on these conductors is landed right.
    """

    devices: tuple[_Ends, ...]
    contacts: tuple[Element, ...]
    leads: tuple[int, ...]
    alone: bool


def reversals(facts: Facts) -> tuple[Reversed, ...]:
    """Every reversal of the diagram; use it as ``facts.once(reversals)``."""
    legs = facts.once(Legs)
    groups: dict[tuple[int, int], list[_Ends]] = {}
    right: set[tuple[int, int]] = set()
    for ends in _devices(facts):
        hot, neutral = (facts.sides.area(end) for end in ends)
        if legs.is_neutral(ends[0]) and legs.is_hot(ends[1]):
            groups.setdefault((hot, neutral), []).append(ends)
        else:
            right.add((neutral, hot))
    return tuple(
        _reversed(facts, legs, devices, alone=areas not in right)
        for areas, devices in groups.items()
    )


def _devices(facts: Facts) -> Iterator[_Ends]:
    """Hot and neutral terminals of everything the line feeds."""
    for part in facts.diagram.parts.values():
        for hot_role, neutral_role in _ROLES if part.family != "mains" else ():
            for hot in part.with_role(hot_role):
                for neutral in part.with_role(neutral_role):
                    if facts.is_wired(hot) and facts.is_wired(neutral):
                        yield hot, neutral


def _reversed(facts: Facts, legs: Legs, devices: list[_Ends], *, alone: bool) -> Reversed:
    _hot, neutral = devices[0]
    backs = [
        facts.sides.trace(legs.at(each)[0].terminal, each) for each, _neutral in devices[:_MOST]
    ]
    out = facts.sides.trace(legs.at(neutral)[0].terminal, neutral)
    leads = {n for trace in (*backs, out) if trace for n in trace.leads}
    contacts = {(c.a, c.b): c for back in backs if back for c in back.contacts}
    return Reversed(tuple(devices), tuple(contacts.values()), tuple(sorted(leads)), alone)


def check(facts: Facts) -> Iterator[Finding]:
    """Find devices with line and neutral reversed, one finding for all on the same two leads."""
    legs = facts.once(Legs)
    for found in facts.once(reversals):
        hot, neutral = found.devices[0]
        devices = [facts.diagram.parts[ends[0].part].name for ends in found.devices]
        contacts = list(dict.fromkeys(contact.part.name for contact in found.contacts))
        yield RULE.finding(
            facts,
            "breaks-neutral" if contacts else "plain",
            facts.place(hot),
            leads=found.leads,
            terminals=[end for ends in found.devices for end in ends],
            edits=_exchanged(facts, found),
            devices=both(list(dict.fromkeys(devices))),
            hot=facts.show(hot),
            neutral=facts.show(neutral),
            hot_leg=facts.show(legs.at(neutral)[0].terminal),
            neutral_leg=facts.show(legs.at(hot)[0].terminal),
            contacts=f"{both(contacts)} {'break' if len(contacts) > 1 else 'breaks'}",
        )


def _exchanged(facts: Facts, found: Reversed) -> tuple[Edit, ...]:
    """Exchange the leads at the device, or at the supply where a contact lies between."""
    legs = facts.once(Legs)
    hot, neutral = ends = found.devices[0]
    if found.contacts or len(found.devices) > 1:
        if not found.alone:
            return ()
        ends = (legs.at(hot)[0].terminal, legs.at(neutral)[0].terminal)
    one, other = (facts.nets.leads_at(end) for end in ends)
    if len(one) != 1 or len(other) != 1:
        return ()
    return swap_ends(facts.diagram, one[0], ends[0], other[0], ends[1])
