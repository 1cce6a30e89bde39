"""The factory link of a fan-and-limit control is out where fan and limit are in different circuits.

The link feeds both contacts from one hot lead.  Where the limit has been moved into the 24 V
circuit and the link is forgotten, it brings the line there.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from wirecheck.language.edit import set_attribute
from wirecheck.model.diagram import Terminal
from wirecheck.model.finding import Breaks, Finding
from wirecheck.rules.facts import Facts
from wirecheck.rules.line_voltage.cautions import LINE_VOLTAGE
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule

#: Its name in the part library.
LINK: Final = "factory link"

_GOOD = """\
part line is mains: 120 V
part xfmr is transformer
part fanlimit is fan-limit-control: link removed
part blower is blower: one-speed
part stat is thermostat
part fan is relay
wire line.L1 to xfmr.L1: black
wire line.N to xfmr.N: white
wire line.G to earth: green
wire line.L1 to fanlimit.FAN-1..FAN-2 to blower.L: black
wire line.N to blower.N: white
wire xfmr.R to fanlimit.LIMIT-1..LIMIT-2 to stat to fan to xfmr.C
wire xfmr.C to earth: green
"""

RULE = Rule(
    name="fan-limit-link-left-in",
    title="The factory link of the fan-and-limit control is out where the limit is in 24 V",
    family="line voltage",
    breaks=Breaks.SAFETY,
    why=(
        "Through the link the line that feeds the fan contact stands on the limit contact: on the "
        "thermostat, the transformer and the control."
    ),
    blind_spots="Whether the link is still in place: it is taken as in unless the text says not.",
    caution=LINE_VOLTAGE,
    sources=(PRACTICE,),
    faults={
        "joins": Fault(
            "the factory link of {part} joins {line}, at line voltage, to {low} in the 24 V "
            "circuit: break it out (then type: link removed)",
            "Line voltage on the 24 V circuit: shock at bare screws; controls and transformer are "
            "destroyed.",
        ),
    },
    bad=(Example(_GOOD.replace("link removed", "link fitted"), (("joins", "link fitted"),)),),
    good=(Example(_GOOD),),
)


def check(facts: Facts) -> Iterator[Finding]:
    """Find links between a contact at line voltage and one in the 24 V circuit."""
    for part in facts.of("fan-limit-control"):
        link = next((link for link in part.structure.links if link.name == LINK), None)
        if link is None:
            continue
        fan, limit = (part.terminal(name) for name in link.between)
        typed = part.given.get("link")
        limit_in_24 = _meets(facts, limit, fan, "24V")
        fan_on_line = typed is not None or _meets(facts, fan, limit, "line")
        if (limit_in_24 and fan_on_line) or (
            _meets(facts, fan, limit, "24V") and _meets(facts, limit, fan, "line")
        ):
            low, line = (limit, fan) if limit_in_24 else (fan, limit)
            yield RULE.finding(
                facts,
                "joins",
                typed.span if typed else part.name_span,
                terminals=(fan, limit),
                edits=(set_attribute(facts.diagram, part.key, "link", "removed"),),
                part=part.name,
                line=facts.show(line),
                low=facts.show(low),
            )


def _meets(facts: Facts, end: Terminal, without: Terminal, circuit: str) -> bool:
    """Whether one end of the link reaches a circuit by another way than the link."""

    def is_of_circuit(terminal: Terminal) -> bool:
        spec = facts.diagram.spec(terminal)
        return spec is not None and spec.circuit == circuit

    return facts.sides.search((end,), is_of_circuit, without=without) is not None
