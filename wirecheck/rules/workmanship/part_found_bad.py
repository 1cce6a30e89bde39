"""Parts do what they are for.

What was found stuck, burnt out or dirty is a finding by itself; where it lets gas through, it is
the first one to mend.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from wirecheck.model.diagram import Attribute, Part, Terminal
from wirecheck.model.finding import Breaks, Finding
from wirecheck.model.kind import FLAG_SET, LoadSpec, SourceSpec, SwitchSpec
from wirecheck.rules.cautions import UNLIT_GAS
from wirecheck.rules.facts import Facts
from wirecheck.rules.ignition_leads.hookup import hookups
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule

#: Attributes and values that have one fault, by value where the attribute is any other.
_FAULTS: Final = {
    ("coil", "open"): "winding-open",
    ("pilot-coil", "open"): "winding-open",
    ("main-coil", "open"): "winding-open",
    ("winding", "open"): "winding-open",
    ("coil", "shorted"): "winding-shorted",
    ("pilot-coil", "shorted"): "winding-shorted",
    ("main-coil", "shorted"): "winding-shorted",
    ("winding", "shorted"): "winding-shorted",
    ("blown", "yes"): "blown",
    ("tripped", "yes"): "tripped",
    ("rod", "dirty"): "dirty",
    ("spark-coil", "dead"): "no-spark",
}
_STUCK: Final = {"open", "stuck-open", "never-makes"}
_CLOSED: Final = {"closed", "stuck-closed", "welded"}

_GOOD = """\
part xfmr is transformer
part fuse is fuse
part cb is breaker
part stat is thermostat
part fan is relay
part box is pilot-ignition-control
part pilot is pilot-burner: two-rod
wire xfmr.R to fuse to cb to stat.R
wire stat.G to fan to xfmr.C
wire stat.W to box.TH
wire xfmr.C to box.COM
wire xfmr.C to earth: green
wire box.SPARK to pilot.SPARK: ignition-cable
wire box.SENSE to pilot.ROD
wire box.GND to pilot.HOOD: green
"""


def _with(kind: str, attribute: str) -> str:
    separator = ", " if ":" in kind else ": "
    return _GOOD.replace(f"is {kind}\n", f"is {kind}{separator}{attribute}\n")


RULE = Rule(
    name="part-found-bad",
    title="No part is recorded as stuck, burnt out or dirty",
    family="workmanship",
    breaks=Breaks.OPERATION,
    why="What is found is mended before anything else is judged by how the unit behaves.",
    blind_spots="Only what was typed.",
    caution=UNLIT_GAS,
    sources=(PRACTICE,),
    faults={
        "stuck-open": Fault(
            "{part} is recorded {record}: replace it",
            "What it is to switch on stays off.",
        ),
        "stuck-closed": Fault(
            "{part} is recorded {record}: replace it",
            "What it is to switch off stays on.",
        ),
        "passes-gas": Fault(
            "{part} is recorded {record}: replace it before the gas is turned on",
            "Gas where none should be: the contact that is to stop it does not open.",
            Breaks.SAFETY,
        ),
        "winding-open": Fault(
            "{part} is recorded {record}: replace it",
            "It takes no current and does nothing.",
        ),
        "winding-shorted": Fault(
            "{part} is recorded {record}: replace it, and find what became of the fuse",
            "The fuse blows or the transformer burns out as soon as it is energised.",
        ),
        "blown": Fault(
            "{part} is recorded as blown: find the short that blew it, then replace it by one of "
            "the same rating",
            "Dead.",
        ),
        "tripped": Fault(
            "{part} is recorded as tripped: find the cause before it is reset",
            "Dead.",
        ),
        "dirty": Fault(
            "{part} is recorded {record}: clean it gently with fine steel wool or a soft "
            "scouring cloth, no sandpaper, whose grit insulates",
            "The flame signal is weak: the pilot lights and is not proved, or drops out.",
        ),
        "dead": Fault(
            "{part} is recorded {record}: replace it",
            "It does nothing.",
        ),
        "no-spark": Fault(
            "{part} is recorded {record}: replace it",
            "It opens the gas with no spark: unlit {gas} until the trial ends.",
            Breaks.SAFETY,
        ),
    },
    bad=(
        Example(_with("relay", "stuck open"), (("stuck-open", "stuck open"),)),
        Example(_with("relay", "stuck closed"), (("stuck-closed", "stuck closed"),)),
        Example(
            _with("pilot-ignition-control", "main-contact stuck-closed"),
            (("passes-gas", "main-contact stuck-closed"),),
        ),
        Example(_with("relay", "coil open"), (("winding-open", "coil open"),)),
        Example(_with("relay", "coil shorted"), (("winding-shorted", "coil shorted"),)),
        Example(_with("fuse", "blown"), (("blown", "blown"),)),
        Example(_with("breaker", "tripped"), (("tripped", "tripped"),)),
        Example(_with("pilot-burner: two-rod", "dirty"), (("dirty", "dirty"),)),
        Example(
            _with("pilot-ignition-control", "spark-coil dead"), (("no-spark", "spark-coil dead"),)
        ),
        Example(
            _GOOD.replace("fan is relay", "fan is zone-valve: motor dead"),
            (("dead", "motor dead"),),
        ),
    ),
    good=(Example(_GOOD),),
    stands_back_for=("safety-stuck-closed", "damper-found-bad"),
)


def check(facts: Facts) -> Iterator[Finding]:
    """Find what was recorded about parts, one finding for each record."""
    for part in facts.diagram.parts.values():
        for record in part.found_wrong():
            yield RULE.finding(
                facts,
                _fault(part, record),
                record.span,
                terminals=_terminals(part, record),
                part=part.name,
                breaks=_sparkless(facts, part) if record.name == "spark-coil" else None,
                record=_words(record),
                gas="main gas" if part.with_role("valve-feed") else "pilot gas",
            )


def _fault(part: Part, record: Attribute) -> str:
    value = str(record.value)
    known = _FAULTS.get((record.name, value))
    if known is not None:
        return known
    if value in _CLOSED:
        return "passes-gas" if _lets_gas_pass(part, record.name) else "stuck-closed"
    return "stuck-open" if value in _STUCK else "dead"


def _sparkless(facts: Facts, control: Part) -> Breaks | None:
    """What no spark breaks at the burner of a control, where that is drawn."""
    of_all = facts.as_wired.once(hookups)
    return next((each.sparkless for each in of_all if each.control.key == control.key), None)


def _words(record: Attribute) -> str:
    """A record as people say it: with its coil open, with its limit contact stuck closed."""
    name, value = record.name, str(record.value).replace("-", " ")
    if value == FLAG_SET:
        return f"as {name.replace('-', ' ')}"
    if name == "stuck":
        return f"as stuck {value}"
    if name.endswith("-stuck"):
        return f"with its {name.removesuffix('-stuck')} contact stuck {value}"
    return f"with its {name.replace('-', ' ')} {value}"


def _lets_gas_pass(part: Part, attribute: str) -> bool:
    """Whether a contact that does not open is one that is to stop the gas."""
    if part.family == "ignition-control":
        return True
    if attribute == "fan-stuck":
        return False
    return any(switch.safety for switch in part.structure.switches)


def _terminals(part: Part, record: Attribute) -> tuple[Terminal, ...]:
    """The terminals of the contacts, loads or windings that the record is about."""
    structure = part.structure
    elements: tuple[SwitchSpec | LoadSpec | SourceSpec, ...] = structure.switches
    if record.name == "winding":
        elements = structure.sources
    elif not elements or "coil" in record.name or record.value == "dead":
        elements = structure.loads
    names = (name for element in elements for name in element.between)
    return tuple(dict.fromkeys(part.terminal(name) for name in names))
