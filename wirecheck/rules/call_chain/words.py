"""Words that several rules of this chapter say alike."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Final

from wirecheck.circuit.nets import Element
from wirecheck.model.nearest import both
from wirecheck.parts.library import kind
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

#: The same of heat-moved safeties that watch for something else than overheating.
_DANGERS_OF_KINDS: Final = {
    "rollout-switch": "flame rollout",
    "spill-switch": "spilling flue gas",
}


def called(facts: Facts, chain: Chain) -> str:
    """What a chain calls, as people read it: a control's call terminal, or else the part."""
    if chain.part.family == "ignition-control":
        return facts.show(chain.call)
    return chain.part.name


def dangers(contacts: Iterable[Element]) -> str:
    """What does not stop the burner while these safeties do not act."""
    return both(list(dict.fromkeys(map(_danger, contacts))))


def _danger(contact: Element) -> str:
    for name, words in _DANGERS_OF_KINDS.items():
        if contact.part.kind.switches is kind(name).switches:  # a user's own kind keeps its inside
            return words
    spec = switch(contact)
    if spec.moved_by == "pressure" and spec.normal == "closed":
        return "too much pressure"
    return _DANGERS.get(spec.moved_by, "danger")
