"""A millivolt valve works on its thermopile alone.

Its coil is made for half a volt.  On 24 V it burns out, or welds open for good; a conversion to an
ignition control takes a valve made for it.
"""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.language.edit import move_end
from wirecheck.model.diagram import Part, Terminal
from wirecheck.model.finding import Breaks, Edit, Finding
from wirecheck.rules.cautions import UNLIT_GAS
from wirecheck.rules.facts import Facts
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule
from wirecheck.rules.valve.feeds import Feeds

_UNIT = """\
part box is pilot-ignition-control
part valve is {kind}
part pilot is pilot-burner: one-rod
wire box.SPARK to pilot.SPARK: ignition-cable
wire box.GND to pilot.HOOD: green
"""
_GOOD = _UNIT.format(kind="gas-valve-3-wire") + "plug box to valve: PV, MV, VC to C\n"
_BAD = _UNIT.format(kind="millivolt-gas-valve") + "plug box to valve: MV to CALL, VC to C\n"
_STANDING = """\
part xfmr is transformer
part stat is thermostat
part valve is standing-pilot-gas-valve
wire xfmr.R to stat to valve.1
wire valve.C to xfmr.C
"""

RULE = Rule(
    name="millivolt-valve-on-control-circuit",
    title="No 24 V reaches a millivolt gas valve",
    family="valve",
    breaks=Breaks.SAFETY,
    why=(
        "24 V is some fifty times what the coil is made for. It burns out or sticks, and a valve "
        "that sticks open lets gas through with no flame."
    ),
    blind_spots="A valve whose rating was typed wrong.",
    caution=UNLIT_GAS,
    sources=(PRACTICE,),
    faults={
        "on-24-volts": Fault(
            "{terminal} is on the 24 V circuit, and {valve} is a millivolt valve: never reuse one, "
            "fit a valve made for 24 V",
            "Its coil burns out or sticks; gas may pass with no flame.",
        ),
        "on-thermocouple": Fault(
            "24 V is on {terminal}, which is for the thermocouple of {valve}: land it on {right}",
            "The magnet that the thermocouple is to hold burns out or sticks, and then lets gas "
            "pass with no pilot; the operator stays shut.",
        ),
    },
    bad=(
        Example(_BAD, (("on-24-volts", "CALL"),)),
        Example(_STANDING.replace("valve.1", "valve.TC"), (("on-thermocouple", "valve.TC"),)),
    ),
    good=(Example(_GOOD), Example(_STANDING)),
)


def check(facts: Facts) -> Iterator[Finding]:
    """Find millivolt operators that a supply, a call or an output of a control reaches."""
    for valve in facts.of("gas-valve"):
        for end in valve.with_role("operator", "generator-hot", "pilot-operator", "main-operator"):
            spec = facts.diagram.spec(end)
            if spec is None or spec.circuit != "millivolt":
                continue
            feeds = facts.as_wired.once(Feeds)
            if feeds.is_live(end) or feeds.reaching(end):
                right = _operator_of_24_v(facts, valve)
                yield RULE.finding(
                    facts,
                    "on-thermocouple" if right else "on-24-volts",
                    facts.place(end),
                    leads=facts.nets.leads_at(end),
                    terminals=[valve.terminal(name) for name in valve.structure.terminals],
                    edits=_moves(facts, valve, end, right) if right else (),
                    terminal=facts.show(end),
                    valve=valve.name,
                    right=facts.show(right) if right else "",
                )
                break


def _operator_of_24_v(facts: Facts, valve: Part) -> Terminal | None:
    """The terminal that 24 V is for, of a valve whose thermocouple only holds a magnet."""
    for end in valve.with_role("operator"):
        spec = facts.diagram.spec(end)
        if spec is not None and spec.circuit != "millivolt":
            return end
    return None


def _moves(facts: Facts, valve: Part, end: Terminal, right: Terminal) -> list[Edit]:
    """Both leads to the operator, where it is empty and each is the only one of its terminal."""
    pairs = [(end, right)]
    commons = zip(
        valve.with_role("generator-common"), valve.with_role("operator-common"), strict=False
    )
    pairs += [(a, b) for a, b in commons if facts.is_wired(a) and a != b]
    edits = []
    for old, new in pairs:
        leads = facts.nets.leads_at(old)
        if len(leads) != 1 or facts.is_wired(new):
            return []
        edit = move_end(facts.diagram, leads[0], old, new)
        edits += [edit] if edit else []
    return edits
