"""``wirecheck schema``: the form of what the commands print as JSON."""

from __future__ import annotations

import click

from wirecheck.cli.options import debug_option, form_option
from wirecheck.cli.printing import page, print_json, print_lines


@click.command("schema")
@click.argument("name", required=False, metavar="[NAME]")
@click.option("--all", "every", is_flag=True, help="Print all of them, by name.")
@form_option
@debug_option
def command(name: str | None, every: bool, form: str) -> None:  # noqa: FBT001
    """Print the JSON Schema of what a command prints as JSON, or list what there are schemas of.

    A schema is JSON itself (draft 2020-12), whatever form is asked for.
    """
    from wirecheck.report.published import (
        all_schemas,
        published,
        schemas_json,
        schemas_text,
    )

    if every and name:
        raise click.UsageError("name a schema, or ask for all of them with --all, not both")
    if every:
        print_json(all_schemas())
    elif name:
        print_json(published(_known(name)))
    elif form == "json":
        print_json(schemas_json())
    else:
        print_lines(schemas_text(page()))


def _known(name: str) -> str:
    """The name as published; for one that is not there say which was meant."""
    from wirecheck.model.nearest import either, nearest
    from wirecheck.report.published import published_names

    if name.lower() in published_names():
        return name.lower()
    near = nearest(name, published_names())
    hint = f"did you mean {near}?" if near else f"there are {either(published_names())}"
    raise click.UsageError(f"there is no schema {name!r}; {hint}")
