"""The data folders that travel with the package: the grammar and the shared data.

In an installed copy they lie inside the package, as ``wirecheck.grammar`` and
``wirecheck.shared``. In a checkout, and so in an editable install, they lie beside it, as
``grammar/`` and ``shared/``. This module alone knows where they are. It looks for the folders
themselves, because the two packages can be imported only once something is installed.

Every text is UTF-8. A file that is missing raises ``FileNotFoundError``: the installation is
broken, which no input can cause.
"""

from functools import cache
from pathlib import Path

_PACKAGE = Path(__file__).parent


@cache
def _folder(name: str) -> Path:
    installed = _PACKAGE / name
    return installed if installed.is_dir() else _PACKAGE.parent / name


def grammar_file(name: str) -> Path:
    """Return the path of a file in the grammar folder, such as ``wiring.lark``."""
    return _folder("grammar") / name


def grammar_text(name: str) -> str:
    """Read a file of the grammar folder."""
    return grammar_file(name).read_text(encoding="utf-8")


def shared_file(name: str) -> Path:
    """Return the path of a file in the shared folder, such as ``parts/thermostat.toml``."""
    return _folder("shared") / name


def shared_text(name: str) -> str:
    """Read a file of the shared folder."""
    return shared_file(name).read_text(encoding="utf-8")


@cache
def part_kind_names() -> tuple[str, ...]:
    """List the kinds of the part library in alphabetical order, one for each of its files."""
    return tuple(sorted(file.stem for file in shared_file("parts").glob("*.toml")))


def part_kind_text(kind: str) -> str:
    """Read the part library's file for one kind.

    Raises:
        KeyError: the library has no such kind. A kind's name can come from a user's file, so
            it is compared with the library's list and never made into a path unseen.
    """
    if kind not in part_kind_names():
        raise KeyError(kind)
    return shared_text(f"parts/{kind}.toml")
