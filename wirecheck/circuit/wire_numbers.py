"""Wire numbers: one for each net on which a lead lands, the same on every sheet.

A number holds for the whole net, through terminals and splices too, as is usual on ladders. One
that is typed for a lead of the net is kept; the other nets are counted up in the order in which
the text first names them, past the numbers that are taken.
"""

from __future__ import annotations

from collections.abc import Mapping
from itertools import count

from wirecheck.circuit.nets import Nets


def wire_numbers(nets: Nets) -> Mapping[int, str]:
    """Return the wire number of each net that has one, by the net's number."""
    typed: dict[int, str] = {}
    landed: dict[int, None] = {}
    for lead in nets.diagram.leads:
        for net in (nets.net_of[lead.a], nets.net_of[lead.b]):
            landed.setdefault(net)
            if lead.conducts and "number" in lead.given:
                typed.setdefault(net, str(lead.given["number"].value))
    taken = set(typed.values())
    free = (str(number) for number in count(1) if str(number) not in taken)
    return {net: typed.get(net) or next(free) for net in landed}
