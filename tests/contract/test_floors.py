"""Imports run down only: each part of the package imports what stands below it, never beside."""

import ast
from collections.abc import Iterator
from pathlib import Path

import pytest

from tests.contract.source import ROOT, modules

API = "wirecheck itself"

FLOORS: tuple[tuple[str, ...], ...] = (
    ("model", "resources", "processes", "grammar", "shared"),
    ("parts",),
    ("language",),
    ("circuit",),
    ("sequence",),
    ("rules", "properties"),
    ("faults",),
    ("check",),
    ("correct", "compare", "lists", "troubleshoot", "meter"),
    ("grade", "practice", "notes", "replace"),
    ("drawing",),
    ("report",),
    ("sheets",),
    (API,),
    ("serve",),
    ("cli",),
    ("__main__",),
)
"""The parts from the lowest floor up; those that share a floor do not import each other."""

FLOOR = {part: number for number, parts in enumerate(FLOORS) for part in parts}


def part_of(module: str) -> str:
    """Name the part a module belongs to: ``rules`` for ``wirecheck.rules.supply``."""
    return module.split(".")[1] if "." in module else API


def dotted(file: Path) -> str:
    """Give a file's module name."""
    return ".".join(file.with_suffix("").parts).removesuffix(".__init__")


def imported_modules(tree: ast.AST, package: str) -> Iterator[tuple[int, str]]:
    """Find every import of the project's own modules, as line and dotted name.

    ``from wirecheck import X`` is an import of X where X is a part, and of the API otherwise.
    An ``import_module`` counts where its argument is written out, whole or as the beginning of
    a formatted string.
    """
    for node in ast.walk(tree):
        if isinstance(node, ast.Import):
            yield from ((node.lineno, name.name) for name in node.names)
        elif isinstance(node, ast.ImportFrom):
            above = package.split(".")[: len(package.split(".")) - node.level + 1]
            origin = ".".join([*(above if node.level else []), *filter(None, [node.module])])
            for name in node.names:
                is_part = origin == "wirecheck" and name.name in FLOOR
                yield node.lineno, f"{origin}.{name.name}" if is_part else origin
        elif isinstance(node, ast.Call) and node.args:
            called = getattr(node.func, "attr", getattr(node.func, "id", ""))
            if called in {"import_module", "__import__"}:
                yield node.lineno, _written_out(node.args[0], package)


def _written_out(argument: ast.expr, package: str) -> str:
    first = argument.values[0] if isinstance(argument, ast.JoinedStr) else argument
    text = str(first.value) if isinstance(first, ast.Constant) else ""
    return f"{package}{text}" if text.startswith(".") else text.rstrip(".")


def upward_imports(source: str, file: Path) -> list[str]:
    """Say which imports of a module do not run down, each with its line."""
    module = dotted(file)
    package = module if file.name == "__init__.py" else module.rpartition(".")[0]
    home = part_of(module)
    return [
        f"{file}:{line}: {home} must not import {part_of(name)}"
        for line, name in imported_modules(ast.parse(source), package)
        if name.split(".")[0] == "wirecheck"
        and part_of(name) != home
        and FLOOR.get(part_of(name), len(FLOORS)) >= FLOOR[home]
    ]


def test_every_part_has_its_floor() -> None:
    homeless = {part_of(dotted(file)) for file in modules("wirecheck")} - set(FLOOR)
    assert not homeless, f"give these a floor in the table: {sorted(homeless)}"


def test_imports_run_down_only() -> None:
    upward = [
        finding
        for file in modules("wirecheck")
        for finding in upward_imports((ROOT / file).read_text(encoding="utf-8"), file)
    ]
    assert not upward, "\n".join(upward)


@pytest.mark.parametrize(
    "statement",
    [
        "import wirecheck",
        "import wirecheck.check.result",
        "from wirecheck import load",
        "from wirecheck import check",
        "from wirecheck.faults import campaign",
        "from ...check import run",
        "from ... import check",
        "def late():\n    from wirecheck.report import text",
        "import_module('wirecheck.check')",
        "importlib.import_module(f'wirecheck.drawing.{sheet}')",
        "import wirecheck.a_part_without_a_floor",
    ],
)
def test_an_import_that_runs_up_or_sideways_is_caught(statement: str) -> None:
    assert upward_imports(statement, Path("wirecheck/rules/supply/no_source.py"))


@pytest.mark.parametrize(
    "statement",
    [
        "import wirecheck.model.diagram",
        "from wirecheck.grammar import tables",
        "from wirecheck import model, circuit",
        "from wirecheck.rules.rule import Rule",
        "from ..rule import Rule",
        "from . import supply",
        "import networkx",
        "import_module(name)",
    ],
)
def test_an_import_that_runs_down_is_let_pass(statement: str) -> None:
    assert not upward_imports(statement, Path("wirecheck/rules/supply/no_source.py"))
