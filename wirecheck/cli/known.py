"""The file of known findings that a call names: read, written, and what is gone from it."""

from __future__ import annotations

from collections import Counter
from pathlib import Path

import click

from wirecheck.report.baseline import (
    Baseline,
    BaselineError,
    Mark,
    known_text,
    read_baseline,
)
from wirecheck.report.whole_file import write_whole


def read_known(path: Path) -> Baseline:
    """Read a baseline.

    Raises:
        click.UsageError: it cannot be read, or is none.
    """
    try:
        return read_baseline(path.read_text(encoding="utf-8"))
    except OSError as error:
        raise _unusable(path, error) from None
    except (BaselineError, UnicodeDecodeError) as error:
        raise click.UsageError(f"baseline {path}: {error}") from None


def write_known(path: Path, known: Counter[Mark]) -> None:
    """Write a baseline; raises as `read_known` does."""
    try:
        write_whole(path, known_text(known).encode("utf-8"))
    except OSError as error:
        raise _unusable(path, error) from None


def say_gone(count: int) -> None:
    """Tell on standard error how many of its findings are not found any more."""
    if count:
        many = "findings of the baseline are" if count > 1 else "finding of the baseline is"
        click.echo(
            f"{count} {many} not found any more; write it anew with --write-baseline", err=True
        )


def _unusable(path: Path, error: OSError) -> click.UsageError:
    return click.UsageError(f"baseline {path}: {(error.strerror or 'it failed').lower()}")
