"""What a start loads, and the functions that a program calls instead of the commands."""

import subprocess
import sys
from pathlib import Path
from typing import Literal

import pytest

import wirecheck
from tests.cli.command_line import BURNER_GROUND, NO_BURNER_GROUND

HEAVY = {"graphviz", "hypothesis", "jinja2", "numpy", "pydantic", "rich", "scipy"}
LIBRARIES = {"click", "lark", "networkx"}


def loaded(code: str, folder: Path) -> set[str]:
    """The top-level packages a new process has loaded after running some code."""
    script = f"import sys\n{code}\nprint(*{{name.split('.')[0] for name in sys.modules}})"
    done = subprocess.run(
        [sys.executable, "-c", script],
        check=True,
        capture_output=True,
        text=True,
        cwd=folder,
        timeout=60,
    )
    return set(done.stdout.splitlines()[-1].split())


def test_importing_the_package_loads_none_of_its_libraries(tmp_path: Path) -> None:
    assert not loaded("import wirecheck", tmp_path) & (HEAVY | LIBRARIES)


def test_a_check_loads_nothing_it_does_not_need(tmp_path: Path) -> None:
    (tmp_path / "heater.wiring").write_text(NO_BURNER_GROUND, encoding="utf-8")
    code = "from wirecheck.cli.main import run\nrun(['check', 'heater.wiring'])"
    packages = loaded(code, tmp_path)
    assert packages >= LIBRARIES
    assert not packages & HEAVY


def test_a_check_without_claims_and_options_loads_nothing_for_them(tmp_path: Path) -> None:
    (tmp_path / "heater.wiring").write_text(NO_BURNER_GROUND, encoding="utf-8")
    script = (
        "import sys\nfrom wirecheck.cli.main import run\nrun(['check', 'heater.wiring'])\n"
        "print(*sys.modules)"
    )
    done = subprocess.run(
        [sys.executable, "-c", script],
        check=True,
        capture_output=True,
        text=True,
        cwd=tmp_path,
        timeout=60,
    )
    loaded_here = {*done.stdout.splitlines()[-1].split()}
    assert "wirecheck.check.engine" in loaded_here
    assert not loaded_here & {
        "wirecheck.check.accepts",
        "wirecheck.check.claims",
        "wirecheck.language.accepts",
        "wirecheck.language.claims",
        "wirecheck.language.variations",
        "wirecheck.model.claim",
        "wirecheck.report.baseline",
        "wirecheck.sequence.calls",
    }


def test_the_functions_do_what_the_commands_do(tmp_path: Path) -> None:
    file = tmp_path / "heater.wiring"
    file.write_text(NO_BURNER_GROUND, encoding="utf-8")
    built = wirecheck.load(file)
    assert built.problems == ()
    (finding,) = wirecheck.check(built.diagram).findings
    assert (finding.rule, finding.span.text) == ("burner-ground-missing", "box")
    for again in (
        wirecheck.load_text(NO_BURNER_GROUND, "a"),
        wirecheck.load_bytes(NO_BURNER_GROUND.encode("utf-8"), "a"),
    ):
        (same,) = wirecheck.check(again.diagram).findings
        assert same.message == finding.message


@pytest.mark.parametrize("sheet", ["ladder", "connections"])
def test_a_checked_diagram_is_drawn(sheet: Literal["ladder", "connections"]) -> None:
    checked = wirecheck.check(wirecheck.load_text(BURNER_GROUND).diagram)
    picture = wirecheck.draw(checked, sheet, date="1 March 2026")
    assert b"</svg>" in picture
    assert b"1 March 2026" in picture
    assert wirecheck.draw(checked, sheet, date="1 March 2026") == picture


def test_every_function_that_is_offered_is_there() -> None:
    assert all(callable(getattr(wirecheck, name)) for name in wirecheck.__all__)


def test_kinds_and_rules_are_looked_up_by_name() -> None:
    assert all(wirecheck.kind(name).name == name for name in wirecheck.kind_names())
    assert all(wirecheck.rule(name).name == name for name in wirecheck.rule_names())
    with pytest.raises(KeyError):
        wirecheck.kind("no-such-kind")
    with pytest.raises(KeyError):
        wirecheck.rule("no-such-rule")
