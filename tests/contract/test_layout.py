"""The house keeps its shape: what stands at the top, what is packed, how long a module may be."""

import tomllib
from pathlib import Path

import pytest

from tests.contract.source import ROOT, modules, project_files

TOP = {
    "DEVELOPERS.md",
    "LICENSE",
    "README.md",
    "examples",
    "grammar",
    "pyproject.toml",
    "shared",
    "tests",
    "wirecheck",
}
LONGEST_MODULE = 500
NAMES_THAT_SAY_NOTHING = {"base", "common", "helpers", "misc", "util", "utils"}
#: In wiring the common is a conductor: here the word says everything.
FOLDERS_OF_THE_COMMON = (Path("wirecheck/rules/common"), Path("tests/rules/common"))


def setuptools_settings() -> dict[str, object]:
    with (ROOT / "pyproject.toml").open("rb") as file:
        settings: dict[str, object] = tomllib.load(file)["tool"]["setuptools"]
    return settings


def test_only_the_agreed_entries_stand_at_the_top() -> None:
    entries = {file.parts[0] for file in project_files() if not file.parts[0].startswith(".")}
    assert entries == TOP


def test_pyproject_names_the_packages_on_disk() -> None:
    on_disk = {
        ".".join(file.parent.parts)
        for folder in ("wirecheck", "grammar", "shared")
        for file in modules(folder)
        if file.name == "__init__.py"
    }
    data = {"grammar": "wirecheck.grammar", "shared": "wirecheck.shared"}
    named = setuptools_settings()["packages"]
    assert named == sorted({data.get(package, package) for package in on_disk})


def test_every_package_folder_has_its_init() -> None:
    without = {file.parent for file in modules("wirecheck") + modules("tests")}
    assert not [folder for folder in without if not (ROOT / folder / "__init__.py").is_file()]


@pytest.mark.parametrize("folder", ["wirecheck", "tests"])
def test_no_module_is_too_long(folder: str) -> None:
    lengths = {
        str(file): len((ROOT / file).read_text(encoding="utf-8").splitlines())
        for file in modules(folder)
    }
    assert lengths
    assert not {name: length for name, length in lengths.items() if length > LONGEST_MODULE}


def test_no_module_has_a_name_that_says_nothing() -> None:
    assert not [
        file
        for folder in ("wirecheck", "tests")
        for file in modules(folder)
        if file.parent not in FOLDERS_OF_THE_COMMON
        and NAMES_THAT_SAY_NOTHING & {*file.parent.parts, file.stem}
    ]
