"""README.md and DEVELOPERS.md are true: what they run runs, what they show is shown."""

import importlib.util
import re
import shlex
import shutil
import tomllib
from pathlib import Path

import pytest

from tests.cli.command_line import CommandLine
from tests.contract.source import ROOT
from wirecheck.cli.main import COMMANDS

README, DEVELOPERS = (
    (ROOT / name).read_text(encoding="utf-8") for name in ("README.md", "DEVELOPERS.md")
)
LONGEST_DEVELOPERS = 200
DOTS = re.escape("...")


def blocks(document: str, language: str) -> list[str]:
    """The fenced blocks of one language."""
    return re.findall(rf"^```{language}\n(.*?)^```$", document, re.MULTILINE | re.DOTALL)


def inline(document: str) -> list[str]:
    """What stands in single backquotes, outside the fenced blocks."""
    prose = re.sub(r"^```.*?^```$", "", document, flags=re.MULTILINE | re.DOTALL)
    return re.findall(r"`([^`\n]+)`", prose)


def calls(document: str) -> list[str]:
    """Every command that a document names, in a block or in a line."""
    lines = [line for block in blocks(document, "sh") for line in re.split(r"\n|&&|;", block)]
    shown = [line[2:] for block in blocks(document, "console") for line in block.splitlines()
             if line.startswith("$ ")]  # fmt: skip
    return [line.strip(" {}()") for line in [*lines, *shown, *inline(document)]]


def examples_shown() -> list[tuple[str, list[str]]]:
    """Each call of the README with the lines it is said to print."""
    shown = []
    for block in blocks(README, "console"):
        for piece in re.split(r"^\$ ", block, flags=re.MULTILINE)[1:]:
            call, *lines = piece.splitlines()
            shown.append((call, lines))
    return shown


@pytest.fixture
def checkout(wirecheck: CommandLine) -> CommandLine:
    """Lay the examples where a reader of the README has them."""
    shutil.copytree(ROOT / "examples", wirecheck.folder / "examples")
    return wirecheck


@pytest.mark.parametrize(
    ("call", "lines"), examples_shown(), ids=[call for call, _lines in examples_shown()]
)
def test_the_readme_shows_what_a_call_prints(
    checkout: CommandLine, call: str, lines: list[str]
) -> None:
    """Three dots on a line of their own stand for any lines, within a line for any words."""
    words = shlex.split(call)
    assert words[0] == "wirecheck"
    answer = checkout(*words[1:])
    shown = (
        r"(.*\n)*?" if line == "..." else f"{re.escape(line).replace(DOTS, '.*')}\n"
        for line in lines
    )
    assert re.fullmatch("".join(shown), answer.out + answer.err), answer.out + answer.err


def test_the_readme_shows_every_command() -> None:
    shown = {shlex.split(call)[1] for call, _lines in examples_shown()}
    assert set(COMMANDS) <= shown


def test_the_readme_shows_the_exit_code_of_the_main_job(checkout: CommandLine) -> None:
    example = "examples/no-burner-ground.wiring"
    assert checkout("check", example).code == 1
    assert checkout("draw", "--out", "build/drawings", example).code == 0
    assert len(list((checkout.folder / "build" / "drawings").iterdir())) == 2


@pytest.mark.parametrize("document", [README, DEVELOPERS], ids=["README", "DEVELOPERS"])
def test_every_path_that_is_named_is_there(document: str) -> None:
    paths = [
        word for word in inline(document) if re.fullmatch(r"\.?[\w-]+(/[\w.-]+)*(/|\.\w+)", word)
    ]
    files = [path for path in paths if "NAME" not in path and ("/" in path or path.endswith(".md"))]
    assert files
    assert not [path for path in files if not (ROOT / path).exists()]


@pytest.mark.parametrize("document", [README, DEVELOPERS], ids=["README", "DEVELOPERS"])
def test_every_call_that_is_named_can_be_made(document: str) -> None:
    made = calls(document)
    ours = [words for call in made if (words := call.split())[:1] == ["wirecheck"] and words[1:]]
    assert ours
    for words in ours:
        assert words[1] in {*COMMANDS, "--version", "--help"}, words
    modules = re.findall(r"python3? (?:-X \w+ )?-m ([\w.]+)", "\n".join(made))
    assert modules
    for module in modules:
        assert importlib.util.find_spec(module), module
    for extra in re.findall(r"\.\[(\w+)\]", "\n".join(made)):
        settings = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))
        assert extra in settings["project"]["optional-dependencies"]
    named = re.findall(r"(?<![\w/])(?:tests|examples)/[\w./-]+", "\n".join(made))
    assert not [path for path in named if not (ROOT / path).exists()]


def test_the_guide_for_developers_stays_short() -> None:
    assert len(DEVELOPERS.splitlines()) <= LONGEST_DEVELOPERS


def test_the_guide_has_the_floors_of_the_contract() -> None:
    rows = re.findall(r"^\| \d+ \| (.*?) \|", DEVELOPERS, re.MULTILINE)
    named = [Path(path) for row in rows for path in re.findall(r"`([^`]+)`", row)]
    folders = {path.name for path in named if path.suffix != ".py"}
    there = {file.parent.name for file in (ROOT / "wirecheck").glob("*/__init__.py")}
    assert folders == there
