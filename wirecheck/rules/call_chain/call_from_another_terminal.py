"""The call for heat comes from the heating terminal of the thermostat.

From its cooling or fan terminal the burner lights when cold air is wanted, and never for heat.
"""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.circuit.nets import Element
from wirecheck.language.edit import move_end
from wirecheck.model.diagram import Terminal
from wirecheck.model.finding import Breaks, Edit, Finding
from wirecheck.rules.call_chain.burners import Burners
from wirecheck.rules.call_chain.chain import Chain
from wirecheck.rules.call_chain.contacts import ContactKey, is_thermostat
from wirecheck.rules.call_chain.words import called
from wirecheck.rules.facts import Facts
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule

_GOOD = """\
part xfmr is transformer
part limit is high-limit
part stat is thermostat
part box is pilot-ignition-control
part pilot is pilot-burner
wire xfmr.R to limit to stat to box.TH
wire xfmr.C to box.COM
wire box.GND to pilot.HOOD: green
wire box.SENSE to pilot.ROD
wire box.SPARK to pilot.SPARK: ignition-cable
"""

RULE = Rule(
    name="call-from-another-terminal",
    title="The burner is called from the heating terminal of its thermostat",
    family="call and safety chain",
    breaks=Breaks.OPERATION,
    why="Each terminal of a thermostat has its own contact; only the heating one calls for heat.",
    blind_spots="A thermostat used for something else than its terminals say.",
    caution="",
    sources=(PRACTICE,),
    faults={
        "not-heat": Fault(
            "{call} is fed from {wrong}, which is not the call for heat: land that lead on {heat}",
            "The burner does not light when heat is called for; it lights on a call for {wrong}.",
        ),
        "also": Fault(
            "{call} is called from {wrong} too, which is no call for heat: part {wrong} from the "
            "lead at {heat}",
            "The burner lights on a call for {wrong} as well.",
        ),
    },
    bad=(
        Example(
            _GOOD.replace("limit to stat to", "limit to stat.R..Y to"),
            (("not-heat", "stat.R..Y"),),
        ),
        Example(_GOOD + "jumper stat.W to stat.Y\n", (("also", "stat.Y"),)),
    ),
    good=(Example(_GOOD),),
)


def check(facts: Facts) -> Iterator[Finding]:
    """Find burners that hang on the cooling or fan contact of a thermostat, or on it too."""
    for chain in facts.once(Burners).chains:
        heats = {key for key, contact in chain.contacts.items() if is_thermostat(contact)}
        for key, contact in chain.contacts.items():
            alone = facts.is_wired(contact.a) and _is_wrong(chain, contact)
            if alone or (heats and _calls_too(chain, contact, key, heats)):
                wrong, heat = contact.b, _heat(contact)
                yield RULE.finding(
                    facts,
                    "not-heat" if alone else "also",
                    facts.place(wrong),
                    leads=facts.nets.leads_at(wrong),
                    terminals=(wrong, heat),
                    edits=_move(facts, wrong, heat) if alone else (),
                    call=called(facts, chain),
                    wrong=facts.show(wrong),
                    heat=facts.show(heat),
                )


def _calls_too(chain: Chain, contact: Element, key: ContactKey, heats: set[ContactKey]) -> bool:
    """Whether a thermostat's contact calls the burner though no contact for heat is closed."""
    if contact.part.family != "thermostat" or key in heats:
        return False
    return chain.runs(heats) and not chain.runs({*heats, key})


def _is_wrong(chain: Chain, contact: Element) -> bool:
    return (
        contact.part.family == "thermostat"
        and not is_thermostat(contact)
        and chain.is_direct(contact)
        and chain.is_stopped_by(contact)
    )


def _heat(contact: Element) -> Terminal:
    (heat,) = contact.part.with_role("thermostat-heat")
    return heat


def _move(facts: Facts, wrong: Terminal, heat: Terminal) -> tuple[Edit, ...]:
    """Move the lead, where it is the only one there and the heating terminal is free."""
    leads = facts.nets.leads_at(wrong)
    if len(leads) != 1 or facts.is_wired(heat):
        return ()
    edit = move_end(facts.diagram, leads[0], wrong, heat)
    return (edit,) if edit else ()
