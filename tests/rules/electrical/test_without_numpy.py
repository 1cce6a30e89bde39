"""A check solves circuits without waiting for numpy to load."""

from __future__ import annotations

import subprocess
import sys

from wirecheck.rules.electrical import load_volts_low

_PROGRAM = """
import sys
import wirecheck
found = wirecheck.check(wirecheck.load_text(sys.stdin.read(), "unit.wiring").diagram).findings
print([each.rule for each in found], "numpy" in sys.modules)
"""


def test_volts_are_solved_and_numpy_is_not_loaded() -> None:
    done = subprocess.run(
        [sys.executable, "-c", _PROGRAM],
        input=load_volts_low.RULE.bad[0].text,
        capture_output=True,
        text=True,
        check=True,
    )
    assert done.stdout.strip() == "['load-volts-low'] False"
