"""A key: the right drawing of an exercise, made ready to mark many others against it."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable

from wirecheck.check.engine import check
from wirecheck.circuit.nets import Nets
from wirecheck.compare.circuits import Circuit, Circuits
from wirecheck.compare.engine import Ready
from wirecheck.compare.runs import does
from wirecheck.compare.units import units
from wirecheck.model.diagram import Diagram, Terminal
from wirecheck.model.finding import Finding

#: What makes two findings the same, however the parts are called.
_Kind = tuple[str, str]


class Key:
    """One key.

    Attributes:
        name: what it is called in sentences, such as the name of its file.
        ready: its diagram, ready to be compared.
        checked: what a check says of it.
        units: how many units it has in each circuit.
        does: how a call for heat ends, a sentence for each control.
    """

    def __init__(self, diagram: Diagram, name: str) -> None:
        """Check it, count its units and run it once."""
        self.name = name
        self.ready = Ready(diagram)
        self.checked = check(diagram)
        self.units: Counter[Circuit] = units(self.ready.wired)
        self.does = does(diagram)
        self._circuits = Circuits(self.ready.wired)
        self._own = Counter(map(_kind, self.checked.findings))

    @property
    def diagram(self) -> Diagram:
        """Its diagram."""
        return self.ready.diagram

    @property
    def nets(self) -> Nets:
        """Its nets."""
        return self.ready.wired.nets

    def beyond(self, findings: Iterable[Finding]) -> tuple[Finding, ...]:
        """The findings that the key itself does not have."""
        own = self._own.copy()
        new = []
        for finding in findings:
            if own[_kind(finding)] > 0:
                own[_kind(finding)] -= 1
            else:
                new.append(finding)
        return tuple(new)

    def joins(self, a: Terminal, b: Terminal) -> bool:
        """Whether two terminals are one conductor here."""
        net_of = self.nets.net_of
        return a in net_of and net_of[a] == net_of.get(b)

    def circuit_of(self, terminals: Iterable[Terminal]) -> Circuit:
        """The circuit of some terminals, as the key calls them, that has units here."""
        known = [end for end in terminals if end in self.ready.wired.net_of]
        return self.counted(self._circuits.told_under(known) if known else Circuit.CHAIN)

    def counted(self, circuit: Circuit) -> Circuit:
        """A circuit under which something is marked: itself, or else the one with most units."""
        if self.units[circuit]:
            return circuit
        return max(self.units, key=lambda each: self.units[each], default=circuit)


def _kind(finding: Finding) -> _Kind:
    return finding.rule, finding.fault
