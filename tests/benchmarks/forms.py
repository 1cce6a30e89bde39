"""Every command on every example: what it prints as JSON has its published form.

The tests ask every command once and the quick ones about every example; this asks all of them about
all, in about a minute: ``python -m tests.benchmarks.forms``.
"""

from __future__ import annotations

import io
import json
import sys
from collections.abc import Iterator
from contextlib import redirect_stderr, redirect_stdout
from tempfile import TemporaryDirectory

from jsonschema import Draft202012Validator

from tests.contract.source import ROOT
from wirecheck.cli.main import run
from wirecheck.report.published import published

EXAMPLES = sorted((ROOT / "examples").glob("*.wiring"))
OTHER = str(ROOT / "examples" / "furnace-room-heater.wiring")
CONTROL = str(ROOT / "examples" / "replacing" / "other-control.parts")


def calls(example: str, folder: str) -> Iterator[tuple[str, list[str]]]:
    """Each command's call on one example, with the name of the form that it has."""
    yield "check", ["check", example]
    yield "faults", ["check", "--faults", example]
    yield "compare", ["compare", example, OTHER]
    yield "correct", ["correct", example]
    yield "draw", ["draw", "--out", folder, example]
    yield "format", ["format", example]
    yield "grade", ["grade", "--key", OTHER, "--out", folder, example]
    yield "lists", ["lists", example]
    yield "meter", ["meter", example]
    yield "practice", ["practice", "--exercises", "1", "--out", folder, example]
    yield "replace", ["replace", example, "--with", CONTROL]
    yield "report", ["report", "--out", folder, example]
    yield "sequence", ["sequence", example]
    yield "troubleshoot", ["troubleshoot", example, "--seen", "no spark"]


def wrong(name: str, words: list[str]) -> str:
    """What is wrong with the answer to one call; "" if nothing is."""
    out, err = io.StringIO(), io.StringIO()
    with redirect_stdout(out), redirect_stderr(err):
        code = run([*words, "--as", "json"])
    if code not in (0, 1, 2):
        return f"ended with {code}: {err.getvalue().strip()[:200]}"
    if not out.getvalue():
        return "" if code == 2 else "printed nothing"
    found = Draft202012Validator(published(name)).iter_errors(json.loads(out.getvalue()))
    first = next(found, None)
    return f"{first.json_path}: {first.message[:200]}" if first else ""


def main() -> int:
    """Ask everything, print what has not its form, and return 1 if something has not."""
    asked = failed = 0
    with TemporaryDirectory() as folder:
        for example in EXAMPLES:
            for name, words in calls(str(example), folder):
                asked += 1
                said = wrong(name, words)
                if said:
                    failed += 1
                    print(f"{example.stem}: {name}: {said}", flush=True)
    print(f"{asked} answers held to their schemas, {failed} without their form")
    return 1 if failed else 0


if __name__ == "__main__":
    sys.exit(main())
