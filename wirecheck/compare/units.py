"""How many units a diagram has in each circuit: one for each terminal that has to be joined."""

from __future__ import annotations

from collections import Counter

from wirecheck.compare.blocks import blocks_of
from wirecheck.compare.circuits import Circuit, Circuits
from wirecheck.compare.ranks import ranks
from wirecheck.compare.wired import Wired
from wirecheck.model.diagram import EARTH


def units(wired: Wired) -> Counter[Circuit]:
    """Count them: a net of n terminals has n - 1, and one more for earth or metal that it touches.

    They are counted under the circuits under which `wirecheck.compare.words` tells what is lost.
    """
    rank, circuits = ranks(wired), Circuits(wired)
    blocks = blocks_of(wired, rank)
    groups = {block: sorted(pins, key=rank.__getitem__) for block, pins in blocks.groups().items()}
    counted: Counter[Circuit] = Counter()
    for pins in groups.values():
        counted.update(circuits.of(pin) for pin in pins[1:])
    for metal, block in blocks.touches:
        if block in groups:
            counted[circuits.of(groups[block][0] if metal == EARTH else metal)] += 1
    counted.update(circuits.of(max(pair)) for pair in blocks.metal_pairs)
    return counted
