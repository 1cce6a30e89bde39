"""``wirecheck kinds``: the part library, as a list or one kind in full."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import click

from wirecheck.cli.options import debug_option, form_option
from wirecheck.cli.printing import page, print_json, print_lines

if TYPE_CHECKING:
    from wirecheck.drawing.engine import Format
    from wirecheck.model.kind import Kind

#: What a picture's name may end in.
_PICTURES: dict[str, Format] = {".svg": "svg", ".png": "png"}


@click.command("kinds")
@click.argument("name", required=False, metavar="[KIND]")
@click.option(
    "--draw",
    "picture",
    type=click.Path(dir_okay=False, path_type=Path),
    metavar="FILE.svg|FILE.png",
    help="Draw the kind's block into a file.",
)
@form_option
@debug_option
def command(name: str | None, picture: Path | None, form: str) -> None:
    """List the kinds of parts, or show one: its terminals, inside and attributes."""
    import wirecheck
    from wirecheck.report.kinds import kind_text, kinds_json, list_text

    chosen = [_named(name)] if name else [wirecheck.kind(each) for each in wirecheck.kind_names()]
    if picture:
        _draw(chosen[0] if name else None, picture)
    if form == "json":
        print_json(kinds_json(chosen))
    else:
        print_lines(kind_text(chosen[0], page()) if name else list_text(chosen, page()))


def _draw(kind: Kind | None, picture: Path) -> None:
    """Draw the block of a kind; the format is the one the file's name ends in."""
    from wirecheck.drawing.engine import DrawingError
    from wirecheck.report.kind_picture import kind_picture
    from wirecheck.report.whole_file import write_whole

    file_format = _PICTURES.get(picture.suffix.lower())
    if kind is None:
        raise click.UsageError("name the kind that shall be drawn")
    if file_format is None:
        raise click.UsageError(
            f"a kind is drawn as SVG or PNG: end {str(picture)!r} in .svg or .png"
        )
    try:
        write_whole(picture, kind_picture(kind, file_format))
    except DrawingError as error:
        raise click.UsageError(str(error)) from error
    except OSError as error:
        reason = (error.strerror or "it failed").lower()
        raise click.UsageError(f"{picture} cannot be written: {reason}") from error


def _named(name: str) -> Kind:
    """Look a kind up; for one that is not there say which was meant."""
    import wirecheck
    from wirecheck.parts.trade_names import kind_meant

    try:
        return wirecheck.kind(name)
    except KeyError:
        meant = kind_meant(name)
        hint = f"did you mean {meant.words}?" if meant else "wirecheck kinds lists them"
        raise click.UsageError(f"there is no kind {name!r}; {hint}") from None
