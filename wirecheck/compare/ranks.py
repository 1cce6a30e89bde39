"""How near each terminal lies to the supply: from there a net is told."""

from __future__ import annotations

from collections import deque

from wirecheck.compare.wired import Wired
from wirecheck.model.diagram import Terminal


def ranks(wired: Wired) -> dict[Terminal, int]:
    """A number for each terminal of a device, by the one that stands for its port.

    Terminals of a source have the lowest, then those that its nets join to it, and so on through
    whatever stands between; of those equally near, in the order of the text.
    """
    ports = [port for net in range(len(wired.pins)) for port in wired.ports_on(net)]
    near = _distances(wired)
    order = {part.key: number for number, part in enumerate(wired.parts())}
    far = len(ports) + 1
    by_nearness = sorted(
        dict.fromkeys(ports),
        key=lambda port: (
            near.get(port, far),
            order[port.part],
            list(wired.diagram.parts[port.part].structure.terminals).index(port.name),
        ),
    )
    return {port: number for number, port in enumerate(by_nearness)}


def _distances(wired: Wired) -> dict[Terminal, int]:
    """How many elements and leads lie between each port and the next source."""
    sources = [element for element in wired.elements() if element.type == "source"]
    starts = [wired.lead(end) for source in sources for end in (source.a, source.b)]
    near = dict.fromkeys(starts, 0)
    waiting = deque(starts)
    while waiting:
        port = waiting.popleft()
        beside = [other for other in wired.ports_on(wired.net_of[port]) if other != port]
        for element in wired.elements_at.get(port, ()):
            if element.type in ("switch", "load"):
                ends = (wired.lead(element.a), wired.lead(element.b))
                beside += [end for end in ends if end != port and end in wired.net_of]
        for other in beside:
            if other not in near:
                near[other] = near[port] + 1
                waiting.append(other)
    return near
