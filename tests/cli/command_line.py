"""Calling the command line: inside this process, or as a process of its own."""

import json
import os
import subprocess
import sys
from pathlib import Path
from typing import Any, NamedTuple

import pytest

from wirecheck.cli.main import run

#: Raises burner-ground-missing at the name ``box``.
NO_BURNER_GROUND = """\
diagram "Bench heater"
part box is pilot-ignition-control
part pilot is pilot-burner: two-rod
wire box.SPARK to pilot.SPARK: ignition-cable
wire box.SENSE to pilot.ROD
"""
#: The same put right.
BURNER_GROUND = f"{NO_BURNER_GROUND}wire box.GND to pilot.HOOD: green\n"
#: Line 2 cannot be used.
UNKNOWN_KIND = 'diagram "Odd"\npart box is pilot-ignition-contrl\n'


class Answer(NamedTuple):
    """What a call came to."""

    code: int
    out: str
    err: str

    @property
    def document(self) -> dict[str, Any]:
        """The JSON that was printed."""
        document: dict[str, Any] = json.loads(self.out)
        return document


class CommandLine:
    """Calls commands inside this process, in a folder of its own."""

    def __init__(self, folder: Path, captured: pytest.CaptureFixture[str]) -> None:
        self.folder = folder
        self._captured = captured

    def __call__(self, *words: str | Path) -> Answer:
        code = run([str(word) for word in words])
        return Answer(code, *self._captured.readouterr())

    def file(self, name: str, text: str | bytes) -> Path:
        """Write a file, and the folders above it, and give its name as a call would."""
        path = self.folder / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(text.encode("utf-8") if isinstance(text, str) else text)
        return Path(name)


def process(
    *words: str | Path,
    given: bytes | None = None,
    folder: Path | None = None,
    environment: dict[str, str] | None = None,
) -> Answer:
    """Run a command as a process, with what is given as its standard input."""
    done = subprocess.run(
        [sys.executable, "-m", "wirecheck", *map(str, words)],
        input=given,
        stdin=subprocess.DEVNULL if given is None else None,
        capture_output=True,
        check=False,
        cwd=folder,
        env={**os.environ, **(environment or {})},
        timeout=60,
    )
    return Answer(done.returncode, done.stdout.decode(), done.stderr.decode())
