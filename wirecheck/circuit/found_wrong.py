"""What was found wrong inside a part, as the circuit feels it: something open, or shorted.

The attributes are those of the part library: ``coil open``, ``main-coil shorted``, ``motor dead``,
``winding open``, ``dead``, ``burnt-out``.
"""

from __future__ import annotations

from typing import Literal

from wirecheck.circuit.nets import Element

#: What is left of a shorted coil or winding, in ohm (common practice, no source).
SHORTED_OHM = 0.5

Condition = Literal["well", "open", "shorted"]


def condition(element: Element) -> Condition:
    """Whether a load or a source is well, or was found open or shorted."""
    own = f"{element.name.partition(' ')[0]}-coil"
    if element.type == "source":
        names: tuple[str, ...] = ("winding", "dead")
    elif own in element.part.kind.attributes:
        names = (own,)
    else:
        names = ("coil", "motor", "dead", "burnt-out")
    for name in names:
        found = element.part.values.get(name)
        if found == "shorted":
            return "shorted"
        if found in ("open", "dead", "yes"):
            return "open"
    return "well"
