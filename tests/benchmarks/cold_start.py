"""How long a technician waits for the first answer: a whole process, from start to exit."""

import os
import subprocess
import sys
import tempfile
from pathlib import Path
from statistics import median
from time import perf_counter

from tests.benchmarks.diagrams import statements
from tests.benchmarks.figure import Figure

LEADS = 40
PAIRS = 15
BOUND = 1.5
ONLY_IMPORTS = ("-c", "import lark, networkx, pydantic")


def cold_check() -> list[Figure]:
    """Compare ``wirecheck check`` of a 40-lead file with a process that only imports.

    The two run in turn, so that whatever else the machine does meets both. The first pair,
    which compiles, is not counted: an installed copy is compiled by pip, so both keep what they
    compile even where the environment forbids it.
    """
    with tempfile.TemporaryDirectory() as folder:
        environment = {
            name: value for name, value in os.environ.items() if name != "PYTHONDONTWRITEBYTECODE"
        } | {"PYTHONPYCACHEPREFIX": folder}
        file = Path(folder, "forty-leads.wiring")
        file.write_text("\n".join(statements(LEADS)) + "\n", encoding="utf-8")
        pairs = [
            (
                _seconds(environment, "-m", "wirecheck", "check", str(file)),
                _seconds(environment, *ONLY_IMPORTS),
            )
            for _ in range(PAIRS + 1)
        ][1:]
    check_s, imports_s = median(check for check, _ in pairs), median(only for _, only in pairs)
    return [
        Figure(
            f"cold check of {LEADS} leads / a process that only imports the libraries",
            check_s / imports_s,
            BOUND,
            f"{check_s * 1000:.0f} ms / {imports_s * 1000:.0f} ms",
        )
    ]


def _seconds(environment: dict[str, str], *arguments: str) -> float:
    command = [sys.executable, *arguments]
    started = perf_counter()
    done = subprocess.run(command, check=False, capture_output=True, env=environment)
    seconds = perf_counter() - started
    if done.returncode != 0:
        raise RuntimeError(done.stdout.decode() + done.stderr.decode())
    return seconds
