"""The call as a whole: unknown words, colour, lost output, and errors of ours."""

import importlib
import os
import subprocess
import sys
from pathlib import Path

import click
import pytest

from tests.cli.command_line import NO_BURNER_GROUND, CommandLine, process
from wirecheck.cli.main import COMMANDS, STOPPED

if sys.platform != "win32":
    import pty


def test_a_command_that_is_not_there_gets_the_nearest(wirecheck: CommandLine) -> None:
    answer = wirecheck("chekc", "heater.wiring")
    assert answer.code == 2
    assert "there is no command 'chekc'; did you mean check?" in answer.err


@pytest.mark.parametrize("command", COMMANDS)
def test_every_command_explains_itself_and_takes_as_and_debug(
    wirecheck: CommandLine, command: str
) -> None:
    answer = wirecheck(command, "--help")
    assert answer.code == 0
    # An editor's server has the form of its protocol.
    assert ("--as [text|json" in answer.out) == (command != "lsp")
    assert "--debug" in answer.out


def test_help_lists_every_command(wirecheck: CommandLine) -> None:
    answer = wirecheck("--help")
    assert answer.code == 0
    assert all(f"  {command}  " in answer.out for command in COMMANDS)


def test_version_is_that_of_the_package(wirecheck: CommandLine) -> None:
    from importlib.metadata import version

    assert wirecheck("--version").out == f"wirecheck {version('wirecheck')}\n"


def break_the_check(monkeypatch: pytest.MonkeyPatch) -> None:
    def fail(_diagram: object) -> None:
        raise RuntimeError("the \x1b[2J lamp is out")

    monkeypatch.setattr("wirecheck.check", fail)


def test_an_error_of_ours_ends_with_3_and_says_what_to_send(
    wirecheck: CommandLine, monkeypatch: pytest.MonkeyPatch
) -> None:
    wirecheck.file("heater.wiring", NO_BURNER_GROUND)
    break_the_check(monkeypatch)
    answer = wirecheck("check", "heater.wiring")
    assert answer.code == 3
    assert answer.out == ""
    assert "error of ours" in answer.err
    assert "called as: wirecheck check heater.wiring" in answer.err
    assert "RuntimeError: the \\x1b[2J lamp is out" in answer.err
    assert "at cli/check.py:" in answer.err
    assert "Traceback" not in answer.err


@pytest.mark.parametrize(
    "words", [("--debug", "check", "heater.wiring"), ("check", "heater.wiring", "--debug")]
)
def test_debug_prints_where_an_error_of_ours_happened(
    wirecheck: CommandLine, monkeypatch: pytest.MonkeyPatch, words: tuple[str, ...]
) -> None:
    wirecheck.file("heater.wiring", NO_BURNER_GROUND)
    break_the_check(monkeypatch)
    answer = wirecheck(*words)
    assert answer.code == 3
    assert "Traceback (most recent call last)" in answer.err


def test_the_keyboard_stops_it_without_a_traceback(
    wirecheck: CommandLine, monkeypatch: pytest.MonkeyPatch
) -> None:
    def stop(_diagram: object) -> None:
        raise KeyboardInterrupt

    wirecheck.file("heater.wiring", NO_BURNER_GROUND)
    monkeypatch.setattr("wirecheck.check", stop)
    answer = wirecheck("check", "heater.wiring")
    assert answer.code == STOPPED
    assert "Traceback" not in answer.err


def test_a_reader_that_stops_reading_is_no_error(tmp_path: Path) -> None:
    reading, writing = os.pipe()
    os.close(reading)
    done = subprocess.run(
        [sys.executable, "-m", "wirecheck", "kinds", "--as", "json"],
        stdout=writing,
        stderr=subprocess.PIPE,
        cwd=tmp_path,
        check=False,
        timeout=60,
    )
    os.close(writing)
    assert done.stderr == b""
    assert done.returncode == 2


@pytest.mark.skipif(not Path("/dev/full").exists(), reason="a disk that is always full")
def test_a_full_disk_is_said_and_ends_with_2(tmp_path: Path) -> None:
    with Path("/dev/full").open("wb") as full:
        done = subprocess.run(
            [sys.executable, "-m", "wirecheck", "kinds"],
            stdout=full,
            stderr=subprocess.PIPE,
            cwd=tmp_path,
            check=False,
            timeout=60,
        )
    assert done.returncode == 2
    message = b"wirecheck: the output could not be written: no space left on device\n"
    assert done.stderr == message


def test_closed_streams_are_no_error(tmp_path: Path) -> None:
    """As a service without any terminal calls it."""
    (tmp_path / "heater.wiring").write_text(NO_BURNER_GROUND, encoding="utf-8")
    command = f'exec "{sys.executable}" -m wirecheck check heater.wiring <&- >&- 2>&-'
    done = subprocess.run(["sh", "-c", command], cwd=tmp_path, check=False, timeout=60)
    assert done.returncode == 1


def test_a_terminal_that_cannot_show_a_character_gets_its_code(tmp_path: Path) -> None:
    text = NO_BURNER_GROUND.replace("Bench heater", "Kessel für Öl")
    (tmp_path / "heater.wiring").write_text(text, encoding="utf-8")
    environment = {"PYTHONIOENCODING": "ascii"}
    answer = process("check", "heater.wiring", folder=tmp_path, environment=environment)
    assert answer.code == 1
    assert "heater.wiring: Kessel f\\xfcr \\xd6l" in answer.out


def on_a_terminal(folder: Path, environment: dict[str, str]) -> str:
    """What ``check`` prints on a terminal 60 characters wide."""
    (folder / "heater.wiring").write_text(NO_BURNER_GROUND, encoding="utf-8")
    main, side = pty.openpty()
    with subprocess.Popen(
        [sys.executable, "-m", "wirecheck", "check", "heater.wiring"],
        stdin=side,
        stdout=side,
        stderr=side,
        cwd=folder,
        env={**os.environ, "COLUMNS": "60", "TERM": "xterm", **environment},
    ) as process:
        os.close(side)
        said = b""
        while True:
            try:
                piece = os.read(main, 65536)
            except OSError:  # Linux says so when the last writer is gone
                break
            if not piece:
                break
            said += piece
        assert process.wait(60) == 1
    os.close(main)
    return said.decode().replace("\r\n", "\n")


@pytest.mark.skipif(sys.platform == "win32", reason="needs a terminal to be made")
def test_a_terminal_gets_colour_and_lines_that_fit(tmp_path: Path) -> None:
    said = on_a_terminal(tmp_path, {"NO_COLOR": ""})
    assert "\x1b[33m\x1b[1moperation\x1b[0m" in said
    assert max(len(click.unstyle(line)) for line in said.splitlines()) <= 60


@pytest.mark.skipif(sys.platform == "win32", reason="needs a terminal to be made")
@pytest.mark.parametrize("refusal", [{"NO_COLOR": "1"}, {"NO_COLOR": "", "TERM": "dumb"}])
def test_colour_can_be_refused(tmp_path: Path, refusal: dict[str, str]) -> None:
    assert "\x1b" not in on_a_terminal(tmp_path, refusal)


def test_a_pipe_gets_no_colour(tmp_path: Path) -> None:
    (tmp_path / "heater.wiring").write_text(NO_BURNER_GROUND, encoding="utf-8")
    answer = process("check", "heater.wiring", folder=tmp_path, environment={"NO_COLOR": ""})
    assert "\x1b" not in answer.out


def test_the_api_functions_stay_functions_when_their_packages_are_loaded() -> None:
    import wirecheck

    importlib.import_module("wirecheck.check.engine")
    assert callable(wirecheck.check)
