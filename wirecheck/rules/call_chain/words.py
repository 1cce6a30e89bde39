"""Words that several rules of this chapter say alike."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Final

from wirecheck.circuit.nets import Element
from wirecheck.model.nearest import both
from wirecheck.rules.call_chain.chain import Chain
from wirecheck.rules.call_chain.contacts import switch
from wirecheck.rules.facts import Facts

#: For a safety that does not act.
SAFETY_CAUTION: Final = (
    "Shut off power and gas before moving leads. Never bypass a safety beyond a momentary test; "
    "prove afterwards that its opening stops the burner."
)

#: For a burner that fires when nothing calls.
UNCALLED_CAUTION: Final = (
    "Shut off power and gas before moving leads; the burner may light the moment they are on."
)

#: What the burner runs on through while a safety does not act, by what moves it.
_DANGERS: Final = {
    "temperature": "overheating",
    "pressure": "missing pressure",
    "air": "missing air",
    "flow": "missing flow",
    "level": "low water",
    "door": "an open door",
    "hand": "a pulled emergency stop",
}


def called(facts: Facts, chain: Chain) -> str:
    """What a chain calls, as people read it: a control's call terminal, or else the part."""
    if chain.part.family == "ignition-control":
        return facts.show(chain.call)
    return chain.part.name


def dangers(contacts: Iterable[Element]) -> str:
    """What does not stop the burner while these safeties do not act."""
    words = [_DANGERS.get(switch(contact).moved_by, "danger") for contact in contacts]
    return both(list(dict.fromkeys(words)))
