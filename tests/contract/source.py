"""The project's files as the contract tests read them."""

import subprocess
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
#: What running, building and testing leave behind, for a copy that git does not know.
LEFT_BEHIND = ("__pycache__", ".egg-info", "build", "dist", ".venv", "_cache", ".hypothesis")


def project_files() -> list[Path]:
    """List the files that belong to the project, relative to its root.

    Those are the files git keeps and the new ones it would take: what git ignores is not there.
    In a copy without git (an unpacked archive) it is everything but what is left behind.
    """
    names = _known_to_git() if (ROOT / ".git").exists() else _in_a_copy()
    return [Path(name) for name in sorted(names) if (ROOT / name).is_file()]


def _known_to_git() -> set[str]:
    listed = subprocess.run(
        ["git", "ls-files", "--cached", "--others", "--exclude-standard", "-z"],
        cwd=ROOT,
        check=True,
        capture_output=True,
        text=True,
    )
    return set(listed.stdout.split("\0")) - {""}


def _in_a_copy() -> set[str]:
    files = (file.relative_to(ROOT) for file in ROOT.rglob("*"))
    return {
        file.as_posix()
        for file in files
        if not any(part.endswith(LEFT_BEHIND) for part in file.parts)
    }


def modules(folder: str) -> list[Path]:
    """List the project's Python files under a top-level folder."""
    return [file for file in project_files() if file.suffix == ".py" and file.parts[0] == folder]
