"""``wirecheck kinds``: the part library, as a list or one kind in full."""

from __future__ import annotations

from typing import TYPE_CHECKING

import click

from wirecheck.cli.options import debug_option, form_option
from wirecheck.cli.printing import page, print_json, print_lines

if TYPE_CHECKING:
    from wirecheck.model.kind import Kind


@click.command("kinds")
@click.argument("name", required=False, metavar="[KIND]")
@form_option
@debug_option
def command(name: str | None, form: str) -> None:
    """List the kinds of parts, or show one: its terminals, inside and attributes."""
    import wirecheck
    from wirecheck.report.kinds import kind_text, kinds_json, list_text

    chosen = [_named(name)] if name else [wirecheck.kind(each) for each in wirecheck.kind_names()]
    if form == "json":
        print_json(kinds_json(chosen))
    else:
        print_lines(kind_text(chosen[0], page()) if name else list_text(chosen, page()))


def _named(name: str) -> Kind:
    """Look a kind up; for one that is not there say which was meant."""
    import wirecheck
    from wirecheck.model.nearest import nearest

    try:
        return wirecheck.kind(name)
    except KeyError:
        near = nearest(name, wirecheck.kind_names())
        hint = f"did you mean {near}?" if near else "wirecheck kinds lists them"
        raise click.UsageError(f"there is no kind {name!r}; {hint}") from None
