"""A command line in a folder of its own."""

from pathlib import Path

import pytest

from tests.cli.command_line import CommandLine


@pytest.fixture
def wirecheck(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> CommandLine:
    """Call commands in an empty folder."""
    monkeypatch.chdir(tmp_path)
    return CommandLine(tmp_path, capsys)
