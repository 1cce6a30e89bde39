"""An installed copy does the main job far from the checkout, as a wheel and in editable form.

The environment is fresh and gets its libraries from the package registry, as a user's does, so
a library that the package needs and does not name is missed here.
"""

import os
import shutil
import subprocess
import sys
import venv
import zipfile
from pathlib import Path

import pytest

from tests.contract.source import ROOT, project_files

PACKED_FOLDERS = {
    "wirecheck": "wirecheck",
    "grammar": "wirecheck/grammar",
    "shared": "wirecheck/shared",
}
NOT_INSTALLED = {"DEVELOPERS.md", ".gitignore"}
EXAMPLE = Path("examples/no-burner-ground.wiring")
SECONDS = 120


@pytest.fixture(scope="module")
def source(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Copy what a build reads, so that the checkout is left as it is."""
    copy = tmp_path_factory.mktemp("source")
    for file in project_files():
        if file.parts[0] in {*PACKED_FOLDERS, "pyproject.toml", "README.md", "LICENSE"}:
            (copy / file).parent.mkdir(parents=True, exist_ok=True)
            shutil.copy(ROOT / file, copy / file)
    return copy


@pytest.fixture(scope="module")
def wheel(source: Path, tmp_path_factory: pytest.TempPathFactory) -> Path:
    built = tmp_path_factory.mktemp("built")
    run(sys.executable, "-m", "build", "--wheel", "--no-isolation", "--outdir", built, source)
    (file,) = built.glob("*.whl")
    return file


@pytest.fixture(scope="module")
def environment(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Make a fresh environment and name its folder of commands."""
    folder = tmp_path_factory.mktemp("environment")
    venv.create(folder, with_pip=True)
    return folder / ("Scripts" if os.name == "nt" else "bin")


@pytest.fixture
def workplace(tmp_path: Path) -> Path:
    """Copy an example to a folder of its own, outside the checkout."""
    shutil.copy(ROOT / EXAMPLE, tmp_path)
    return tmp_path


def run(*command: object, cwd: Path | None = None, expect: int = 0) -> str:
    """Run a command and give what it printed; it must exit as expected and print no traceback."""
    done = subprocess.run(
        [str(word) for word in command],
        cwd=cwd,
        check=False,
        capture_output=True,
        text=True,
        timeout=SECONDS,
        env={name: value for name, value in os.environ.items() if name != "PYTHONPATH"},
    )
    assert done.returncode == expect, done.stdout + done.stderr
    assert "Traceback" not in done.stderr
    return done.stdout


def pip(environment: Path, *words: object) -> None:
    run(environment / "python", "-m", "pip", "--disable-pip-version-check", *words)


def do_the_main_job(environment: Path, workplace: Path) -> None:
    """Check the example, draw both its sheets, and look at what came out."""
    said = run(environment / "wirecheck", "check", EXAMPLE.name, cwd=workplace, expect=1)
    assert said.startswith(f"{EXAMPLE.name}:")
    assert "box.GND" in said
    run(environment / "wirecheck", "draw", EXAMPLE.name, cwd=workplace)
    drawings = sorted(workplace.glob("*.svg"))
    assert len(drawings) == 2
    assert all(b"</svg>" in file.read_bytes() for file in drawings)


def test_the_wheel_holds_every_file_of_the_package(wheel: Path) -> None:
    expected = {
        "/".join([PACKED_FOLDERS[file.parts[0]], *file.parts[1:]])
        for file in project_files()
        if file.parts[0] in PACKED_FOLDERS and file.name not in NOT_INSTALLED
    }
    held = {name for name in zipfile.ZipFile(wheel).namelist() if ".dist-info/" not in name}
    assert held == expected


def test_an_installed_copy_does_the_main_job(
    source: Path, wheel: Path, environment: Path, workplace: Path
) -> None:
    pip(environment, "install", wheel)
    do_the_main_job(environment, workplace)
    pip(environment, "uninstall", "--yes", "wirecheck")
    for drawing in workplace.glob("*.svg"):
        drawing.unlink()
    pip(environment, "install", "--no-deps", "--editable", source)
    do_the_main_job(environment, workplace)
