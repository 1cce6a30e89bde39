"""The hooks that other repositories name call commands that are there, on files that these read."""

from __future__ import annotations

import re

import pytest

from tests.contract.source import ROOT
from wirecheck.cli.main import COMMANDS

TEXT = (ROOT / ".pre-commit-hooks.yaml").read_text(encoding="utf-8")
HOOKS = [
    dict(re.findall(r"^(?:- |  )(\w+): (.*)$", hook, re.MULTILINE))
    for hook in re.split(r"^(?=- id:)", TEXT, flags=re.MULTILINE)[1:]
]


def test_each_hook_is_whole() -> None:
    assert [hook["id"] for hook in HOOKS] == ["wirecheck", "wirecheck-notes", "wirecheck-format"]
    for hook in HOOKS:
        assert {*hook} == {"id", "name", "description", "entry", "language", "files"}
        assert hook["language"] == "python"


@pytest.mark.parametrize("hook", HOOKS, ids=lambda hook: hook["id"])
def test_a_hook_calls_a_command_on_files_of_its_kind(hook: dict[str, str]) -> None:
    program, command, *_options = hook["entry"].split()
    assert program == "wirecheck"
    assert command in COMMANDS
    meant = "binder/01-two-rod-heater.md" if command == "notes" else "no-burner-ground.wiring"
    assert (ROOT / "examples" / meant).exists()
    assert re.search(hook["files"], f"examples/{meant}")
    assert not re.search(hook["files"], "examples/wiring.py")
