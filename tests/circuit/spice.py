"""ngspice as an independent judge of the solver: the same circuit in its own language.

It is Debian's package ``ngspice``; without it the tests that need it skip, and CI installs it.
"""

from __future__ import annotations

import math
import re
import shutil
import subprocess
from pathlib import Path

import pytest

from wirecheck.circuit.numbered import Case, Circuit

FREQUENCY_HZ = 60.0

needs_ngspice = pytest.mark.skipif(
    shutil.which("ngspice") is None, reason="ngspice is not installed"
)

_PRINTED = re.compile(r"^(v[ri])\(n(\d+)\) = (\S+)", re.MULTILINE | re.IGNORECASE)


def node_volts(circuit: Circuit, case: Case, islands: list[int], folder: Path) -> list[complex]:
    """Solve one case with ngspice.

    Args:
        circuit: as the solver takes it.
        case: one state of it.
        islands: for each node, the lowest node of its island: ngspice needs a reference in each.
        folder: where the circuit's file may be written.

    Returns:
        Volts of every node, against the reference of its island.
    """
    lines = ["* circuit", *_elements(circuit, case)]
    lines += [f"rref{node} n{node} 0 1" for node in sorted(set(islands)) if node != 0]
    prints = [f"print vr(n{node}) vi(n{node})" for node in range(1, circuit.nodes)]
    lines += [
        ".control",
        "set numdgt=15",
        f"ac lin 1 {FREQUENCY_HZ} {FREQUENCY_HZ}",
        *prints,
        ".endc",
        ".end",
    ]
    file = folder / "circuit.cir"
    file.write_text("\n".join(lines) + "\n", encoding="ascii")
    done = subprocess.run(
        ["ngspice", "-b", str(file)], capture_output=True, text=True, check=False, timeout=60
    )
    volts = [0j] * circuit.nodes
    found = _PRINTED.findall(done.stdout)
    assert len(found) == 2 * (circuit.nodes - 1), done.stdout + done.stderr
    for component, number, value in found:
        volts[int(number)] += float(value) * (1 if component.lower() == "vr" else 1j)
    return volts


def _elements(circuit: Circuit, case: Case) -> list[str]:
    lines = []
    present = [branch for n, branch in enumerate(circuit.branches) if n not in case.cut]
    for number, branch in enumerate((*present, *case.added)):
        lines += _impedance(f"b{number}", _node(branch.a), _node(branch.b), branch.ohms)
    for number, (a, b, ohms) in enumerate(circuit.switches):
        if case.closed[number] and a != b:
            lines.append(f"rs{number} {_node(a)} {_node(b)} {ohms!r}")
    for number, source in enumerate(circuit.sources):
        volts = source.volts * case.supply
        degrees = math.degrees(math.atan2(volts.imag, volts.real))
        behind = f"s{number}x"
        lines.append(f"v{number} {behind} {_node(source.b)} dc 0 ac {abs(volts)!r} {degrees!r}")
        lines += _impedance(f"v{number}", behind, _node(source.a), source.ohms)
    place = 0
    for number, transformer in enumerate(circuit.transformers):
        # The core as a node of its own: its volts are those of a winding of one turn.
        core = f"core{number}"
        lines.append(f"rx{number} {core} 0 {1 / transformer.exciting_va!r}")
        for winding in transformer.windings:
            coil = f"w{place}"
            if place not in case.burnt:
                inner, far = f"{coil}i", f"{coil}f"
                lines += _impedance(coil, _node(winding.a), inner, winding.ohms)
                lines.append(f"e{coil} {far} {_node(winding.b)} {core} 0 {winding.turns!r}")
                lines.append(f"v{coil} {inner} {far} 0")
                lines.append(f"f{coil} 0 {core} v{coil} {winding.turns!r}")
            place += 1
    return lines


def _node(number: int) -> str:
    return f"n{number}" if number else "0"


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
