"""Tables for a spreadsheet: comma-separated values (RFC 4180), no cell of which is a formula."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from typing import Final

from wirecheck.report.visible import visible

#: What a spreadsheet takes for the beginning of a formula, the wide forms of the signs included.
_FORMULA: Final = ("=", "+", "-", "@", "\uff1d", "\uff0b", "\uff0d", "\uff20")


def csv_table(header: Sequence[str], rows: Iterable[Mapping[str, str]]) -> str:
    """Return a table with a header; a cell that is not given is empty."""
    import csv
    import io

    written = io.StringIO()
    table = csv.DictWriter(written, header, restval="", lineterminator="\r\n")
    table.writeheader()
    table.writerows({key: plain_cell(text) for key, text in row.items()} for row in rows)
    return written.getvalue()


def plain_cell(text: str) -> str:
    """A text that no spreadsheet runs and no terminal acts on."""
    shown = visible(text)
    return f"'{shown}" if shown.lstrip().startswith(_FORMULA) else shown
