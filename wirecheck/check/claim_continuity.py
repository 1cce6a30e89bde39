"""Why there is continuity between two terminals with the power off, or why there is none."""

from __future__ import annotations

from collections import deque
from typing import Final

from wirecheck.circuit.found_wrong import condition
from wirecheck.circuit.netlist import ElementKey
from wirecheck.circuit.nets import Element, Nets
from wirecheck.circuit.ratings import load_ohms
from wirecheck.model.claim import Claim
from wirecheck.model.kind import LoadSpec
from wirecheck.sequence.calls import Run

#: So many parts on a way are named.
_MOST_NAMED: Final = 3


def why_continuity(nets: Nets, claim: Claim, run: Run) -> str:
    """What joins the two ends of a claim, or what keeps them apart."""
    if claim.ends is None:
        return ""
    return _Ways(nets, claim, run).why(*(nets.net(end) for end in claim.ends))


class _Ways:
    """The unit without power, contacts as on the shelf or as the claim's conditions have them."""

    def __init__(self, nets: Nets, claim: Claim, run: Run) -> None:
        self._nets = nets
        self._wants = claim.continuity
        forced = {(each.subject.part, each.subject.name): each.on for each in claim.when}
        self._open: set[int] = set()
        self._named = {each.key: each.name for each in run.simulation.plant.contacts}
        self._keys: dict[int, ElementKey] = {}
        for key, closed in run.off.items():
            element = nets.elements_of[key.part][key.number]
            self._keys[id(element)] = key
            if not forced.get((key.part, element.name), closed):
                self._open.add(id(element))

    def why(self, a: int, b: int) -> str:
        if a == b:
            return "they are one conductor"
        way = self._way(a, b)
        if way is None:
            return "no way joins them"
        if self._wants:
            opened = [self._named[self._keys[id(e)]] for e in way if id(e) in self._open]
            names = list(dict.fromkeys(opened))[:_MOST_NAMED]
            return f"{' and '.join(names)} {'stand' if len(names) > 1 else 'stands'} open"
        names = list(dict.fromkeys(f"{e.part.name} {e.name}".strip() for e in way))
        return f"the way runs through {', '.join(names[:_MOST_NAMED])}"

    def _way(self, start: int, goal: int) -> list[Element] | None:
        """The elements on a way; over open contacts too, where continuity is missing."""
        came: dict[int, tuple[int, Element] | None] = {start: None}
        waiting = deque([start])
        while waiting and goal not in came:
            net = waiting.popleft()
            for _net, there, element in self._nets.elements.edges(net, data="element"):
                if there not in came and self._conducts(element):
                    came[there] = (net, element)
                    waiting.append(there)
        if goal not in came:
            return None
        way: list[Element] = []
        step = came[goal]
        while step is not None:
            way.append(step[1])
            step = came[step[0]]
        return way[::-1]

    def _conducts(self, element: Element) -> bool:
        if element.type == "gap" or (element.type, element.name) == ("bond", "none"):
            return False
        if element.type == "load":
            return _carries(element)
        return self._wants or id(element) not in self._open


def _carries(load: Element) -> bool:
    """Whether an ohmmeter finds a way through a load."""
    ohms = isinstance(load.spec, LoadSpec) and load_ohms(load.spec, load.part.values) is not None
    return ohms and condition(load) != "open"
