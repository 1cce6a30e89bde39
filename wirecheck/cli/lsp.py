"""``wirecheck lsp``: the language server that an editor starts."""

from __future__ import annotations

import click

from wirecheck.cli.options import debug_option


@click.command("lsp")
@debug_option
def command() -> None:
    """Serve an editor over standard input and output, by the Language Server Protocol.

    Findings as one types, quick fixes, hover, completion, go to definition, rename, format.
    """
    from wirecheck.serve.language_server import language_server

    language_server().start_io()
