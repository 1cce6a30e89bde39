"""The project's files as the contract tests read them."""

import subprocess
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]


def project_files() -> list[Path]:
    """List the files that belong to the project, relative to its root.

    Those are the files git keeps and the new ones it would take: what git ignores is not there.
    """
    listed = subprocess.run(
        ["git", "ls-files", "--cached", "--others", "--exclude-standard", "-z"],
        cwd=ROOT,
        check=True,
        capture_output=True,
        text=True,
    )
    names = sorted(set(listed.stdout.split("\0")) - {""})
    return [Path(name) for name in names if (ROOT / name).is_file()]


def modules(folder: str) -> list[Path]:
    """List the project's Python files under a top-level folder."""
    return [file for file in project_files() if file.suffix == ".py" and file.parts[0] == folder]
