"""A circuit in numbers: nodes, and what lies between them.

Volts and amperes are rms phasors; node 0 is the reference, the unit's earth.  Every element is an
admittance on a few unknowns, each with a weight: a branch on its two nodes, a winding on its two
nodes and the flux of its core.  A source is a branch that drives a current besides.  So the
equations are symmetric, and a bolted short gives a finite current.  (Stamps: Ho, Ruehli and
Brennan, "The modified nodal approach to network analysis", 1975, from memory; with the flux as the
further unknown of a transformer, whose windings have resistance, no other kind of row is needed.)
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import NamedTuple

#: A closed contact, in ohm: small against any load, and finite.
CLOSED_OHM = 1e-3
#: Of a voltmeter (common practice, no source).
METER_OHM = 10e6


class Branch(NamedTuple):
    """An impedance between two nodes, in ohm."""

    a: int
    b: int
    ohms: complex


class Switch(NamedTuple):
    """A contact between two nodes, and its resistance while closed."""

    a: int
    b: int
    ohms: float = CLOSED_OHM


class SourceBranch(NamedTuple):
    """A source of ``volts`` (rms phasor, ``a`` against ``b``) behind ``ohms``."""

    a: int
    b: int
    volts: complex
    ohms: complex


class Winding(NamedTuple):
    """One winding of a transformer: its two nodes (``a`` is the dotted one), turns, impedance.

    ``ohms`` is never 0: two windings without resistance side by side are a contradiction.
    """

    a: int
    b: int
    turns: float
    ohms: complex


class Transformer(NamedTuple):
    """Windings on one core; ``exciting_va`` is what it takes unloaded, at as many volts as turns.

    Without an exciting current, windings that are joined to nothing else would leave the volts
    of their common end open to any value.
    """

    windings: tuple[Winding, ...]
    exciting_va: float


class Circuit(NamedTuple):
    """A numbered circuit.

    Attributes:
        nodes: how many nodes; node 0 is the earth.
        branches: impedances that are always there.
        switches: contacts.
        sources: voltages behind impedances.
        transformers: windings that share a core.
    """

    nodes: int
    branches: tuple[Branch, ...] = ()
    switches: tuple[Switch, ...] = ()
    sources: tuple[SourceBranch, ...] = ()
    transformers: tuple[Transformer, ...] = ()

    @property
    def unknowns(self) -> int:
        """How many: the volts of each node, node 0 included, then the flux of each transformer."""
        return self.nodes + len(self.transformers)

    def windings(self) -> Iterator[tuple[Winding, int]]:
        """All windings in order, each with the unknown that is its core's flux."""
        for number, transformer in enumerate(self.transformers):
            for winding in transformer.windings:
                yield winding, self.nodes + number


class Case(NamedTuple):
    """One state to solve: which contacts are closed, and what differs from the circuit.

    Attributes:
        closed: a flag for each switch.
        added: impedances that this case adds (an earth fault, a meter).
        cut: numbers of branches that this case takes away (an open coil, a broken lead).
        burnt: numbers of windings that this case takes away.
        supply: what the sources give, as a share of their volts (0 with the power off).
    """

    closed: Sequence[bool]
    added: tuple[Branch, ...] = ()
    cut: tuple[int, ...] = ()
    burnt: tuple[int, ...] = ()
    supply: float = 1.0


class Stamp(NamedTuple):
    """An admittance on some unknowns: ``siemens`` times the square of their weighted sum."""

    terms: tuple[tuple[int, float], ...]
    siemens: complex


def branch_stamp(branch: Branch | Switch | SourceBranch) -> Stamp:
    """Of anything between two nodes; nothing where both are one."""
    if branch.a == branch.b:
        return Stamp((), 0.0)
    return Stamp(((branch.a, 1.0), (branch.b, -1.0)), 1 / branch.ohms)


def winding_stamp(winding: Winding, flux: int) -> Stamp:
    """Of a winding whose core's flux is the unknown ``flux``."""
    ends = () if winding.a == winding.b else ((winding.a, 1.0), (winding.b, -1.0))
    return Stamp((*ends, (flux, -winding.turns)), 1 / winding.ohms)


def fixed_stamps(circuit: Circuit) -> Iterator[Stamp]:
    """Of all that is there in every case, before anything is cut."""
    for branch in circuit.branches:
        yield branch_stamp(branch)
    for source in circuit.sources:
        yield branch_stamp(source)
    for winding, flux in circuit.windings():
        yield winding_stamp(winding, flux)
    for number, transformer in enumerate(circuit.transformers):
        yield Stamp(((circuit.nodes + number, 1.0),), transformer.exciting_va)


def drive(circuit: Circuit) -> Iterator[tuple[int, complex]]:
    """Amperes that sources drive into nodes, at their full volts."""
    for source in circuit.sources:
        if source.a != source.b:
            yield source.a, source.volts / source.ohms
            yield source.b, -source.volts / source.ohms
