"""ngspice as an independent judge of the solver: the same circuit in its own language.

It is Debian's package ``ngspice``; without it the tests that need it skip.  CI installs it and sets
``WIRECHECK_NEEDS_NGSPICE``: there a missing ngspice is a failure.
"""

from __future__ import annotations

import math
import os
import re
import shutil
import subprocess
from collections.abc import Sequence
from pathlib import Path

import pytest

from wirecheck.circuit.numbered import Case, Circuit

FREQUENCY_HZ = 60.0

needs_ngspice = pytest.mark.skipif(
    shutil.which("ngspice") is None and not os.environ.get("WIRECHECK_NEEDS_NGSPICE"),
    reason="ngspice is not installed",
)

_PRINTED = re.compile(r"^(v[ri])\(n(\d+)x(\d+)\) = (\S+)", re.MULTILINE | re.IGNORECASE)


def write_file(
    circuit: Circuit, cases: Sequence[Case], islands: Sequence[Sequence[int]], file: Path
) -> None:
    """Write all cases of a circuit as one file for ngspice: a copy of the circuit for each.

    Args:
        circuit: as the solver takes it.
        cases: its states.
        islands: for each case and node, the lowest node of its island: ngspice needs a reference
            in each.
        file: to be written.
    """
    lines = ["* circuit"]
    prints = []
    for number, (case, island) in enumerate(zip(cases, islands, strict=True)):
        lines += _Copy(number).elements(circuit, case)
        lines += [f"rref{n}x{number} n{n}x{number} 0 1" for n in sorted(set(island)) if n != 0]
        prints += [f"print vr(n{n}x{number}) vi(n{n}x{number})" for n in range(1, circuit.nodes)]
    analysis = f"ac lin 1 {FREQUENCY_HZ} {FREQUENCY_HZ}"
    lines += [".control", "set numdgt=15", analysis, *prints, ".endc", ".end"]
    file.write_text("\n".join(lines) + "\n", encoding="ascii")


def run_file(file: Path) -> str:
    """What ngspice prints of a file, in a process of its own."""
    done = subprocess.run(
        ["ngspice", "-b", str(file)], capture_output=True, text=True, check=False, timeout=120
    )
    return done.stdout + done.stderr


def node_volts(
    circuit: Circuit, cases: Sequence[Case], islands: Sequence[Sequence[int]], folder: Path
) -> list[list[complex]]:
    """Solve cases with ngspice: volts of every node, against the reference of its island.

    Args:
        circuit: as the solver takes it.
        cases: its states.
        islands: for each case and node, the lowest node of its island.
        folder: where the circuit's file may be written.
    """
    file = folder / "circuit.cir"
    write_file(circuit, cases, islands, file)
    printed = run_file(file)
    found = _PRINTED.findall(printed)
    assert len(found) == 2 * len(cases) * (circuit.nodes - 1), printed
    volts = [[0j] * circuit.nodes for _ in cases]
    for component, node, case, value in found:
        volts[int(case)][int(node)] += float(value) * (1 if component.lower() == "vr" else 1j)
    return volts


class _Copy:
    """One copy of a circuit: every name ends in its number."""

    def __init__(self, number: int) -> None:
        self._number = number

    def _node(self, number: int) -> str:
        return f"n{number}x{self._number}" if number else "0"

    def elements(self, circuit: Circuit, case: Case) -> list[str]:
        copy, node = self._number, self._node
        lines = []
        present = [branch for n, branch in enumerate(circuit.branches) if n not in case.cut]
        for number, branch in enumerate((*present, *case.added)):
            lines += _impedance(f"b{number}x{copy}", node(branch.a), node(branch.b), branch.ohms)
        for number, (a, b, ohms) in enumerate(circuit.switches):
            if case.closed[number] and a != b:
                lines.append(f"rs{number}x{copy} {node(a)} {node(b)} {ohms!r}")
        for number, source in enumerate(circuit.sources):
            volts = complex(source.volts * case.supply)
            degrees = math.degrees(math.atan2(volts.imag, volts.real))
            behind = f"s{number}x{copy}"
            lines.append(f"v{behind} {behind} {node(source.b)} dc 0 ac {abs(volts)!r} {degrees!r}")
            lines += _impedance(f"v{behind}", behind, node(source.a), source.ohms)
        return lines + self._transformers(circuit, case)

    def _transformers(self, circuit: Circuit, case: Case) -> list[str]:
        """A core is a node of its own: its volts are those of a winding of one turn."""
        lines = []
        place = 0
        for number, transformer in enumerate(circuit.transformers):
            core = f"core{number}x{self._number}"
            lines.append(f"r{core} {core} 0 {1 / transformer.exciting_va!r}")
            for winding in transformer.windings:
                coil = f"w{place}x{self._number}"
                if place not in case.burnt:
                    a, b = self._node(winding.a), self._node(winding.b)
                    lines += _impedance(coil, a, f"{coil}i", winding.ohms)
                    lines.append(f"e{coil} {coil}f {b} {core} 0 {winding.turns!r}")
                    lines.append(f"v{coil} {coil}i {coil}f 0")
                    lines.append(f"f{coil} 0 {core} v{coil} {winding.turns!r}")
                place += 1
        return lines


def _impedance(name: str, a: str, b: str, ohms: complex) -> list[str]:
    """A resistor and, in series with it, an inductor or capacitor."""
    ohms = complex(ohms)
    omega = 2 * math.pi * FREQUENCY_HZ
    if a == b:
        return []
    if ohms.imag == 0:
        return [f"r{name} {a} {b} {ohms.real!r}"]
    middle = f"m{name}"
    lines = [f"r{name} {a} {middle} {ohms.real!r}"]
    if ohms.imag > 0:
        return [*lines, f"l{name} {middle} {b} {ohms.imag / omega!r}"]
    return [*lines, f"c{name} {middle} {b} {-1 / (ohms.imag * omega)!r}"]
