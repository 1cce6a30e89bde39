"""``wirecheck sequence``: what happens when the thermostat calls, with this wiring."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import TYPE_CHECKING, Literal, NamedTuple

import click

from wirecheck.cli.inputs import Input, find_inputs, problem_of, read_input
from wirecheck.cli.options import debug_option, files_argument, form_option
from wirecheck.cli.printing import page, print_json, print_lines
from wirecheck.cli.progress import told

if TYPE_CHECKING:
    from wirecheck.model.diagram import Diagram
    from wirecheck.report.sequences import SequenceFile
    from wirecheck.sequence.run import Run
    from wirecheck.sequence.script import Script

Picture = Literal["svg", "png"]

#: A call of a week and more shows nothing that a day does not.
LONGEST_CALL_S = 86_400.0


def _seconds(_ctx: click.Context, _option: click.Parameter, value: str | None) -> float | None:
    """A time as typed, in seconds."""
    from wirecheck.sequence.named import NotThereError, seconds

    if value is None:
        return None
    try:
        time_s = seconds(value)
    except NotThereError as error:
        raise click.BadParameter(str(error)) from None
    if time_s > LONGEST_CALL_S:
        raise click.BadParameter("a day is the longest that is run")
    return time_s


class Wish(NamedTuple):
    """What is to happen to the unit, and what is to be made of it: the options, by their names."""

    opened: tuple[str, ...]
    calling: tuple[str, ...]
    gas_off: bool
    dirty_rod: bool
    false_flame: bool
    call_s: float
    flame_lost_s: float | None
    power_lost_s: float | None
    power_back_s: float | None
    view: Literal["operation", "danger"]
    picture: Picture | None
    folder: Path

    def script(self, diagram: Diagram) -> Script:
        """What happens, in the names of one diagram.

        Raises:
            wirecheck.sequence.named.NotThereError: the diagram has no part of a name given.
        """
        from wirecheck.sequence.named import caller, opening
        from wirecheck.sequence.script import heat_call

        return heat_call(
            length_s=self.call_s,
            calling=tuple(caller(diagram, name) for name in self.calling),
            opened=tuple(opening(diagram, name) for name in self.opened),
            gas=not self.gas_off,
            dirty_rods=self.dirty_rod,
            false_flame=self.false_flame,
            flame_lost_s=self.flame_lost_s,
            power_lost_s=self.power_lost_s,
            power_back_s=self.power_back_s,
        )


@click.command("sequence")
@files_argument
@click.option(
    "--open",
    "opened",
    multiple=True,
    metavar="SWITCH",
    help="A switch that stands open: limit, fan.limit; or 'limit at 60 s' from the call.",
)
@click.option(
    "--calls",
    "calling",
    multiple=True,
    metavar="THERMOSTAT",
    help="Who calls; without it every thermostat does.",
)
@click.option("--gas-off", is_flag=True, help="The gas is off.")
@click.option("--dirty-rod", is_flag=True, help="Every flame rod is dirty.")
@click.option("--false-flame", is_flag=True, help="A flame signal is there with no flame.")
@click.option(
    "--call",
    "call_s",
    default="10 min",
    show_default=True,
    metavar="TIME",
    callback=_seconds,
    help="How long the call lasts.",
)
@click.option(
    "--flame-lost", "flame_lost_s", metavar="TIME", callback=_seconds, help="The flame goes out."
)
@click.option(
    "--power-lost", "power_lost_s", metavar="TIME", callback=_seconds, help="The power fails."
)
@click.option(
    "--power-back", "power_back_s", metavar="TIME", callback=_seconds, help="It comes back."
)
@click.option(
    "--view",
    type=click.Choice(["operation", "danger"]),
    default="operation",
    show_default=True,
    help="Whether weak coils and rusty metal count as not working, or as working.",
)
@click.option(
    "--picture",
    type=click.Choice(["svg", "png"]),
    help="Draw the timeline too, into NAME-sequence.svg or .png.",
)
@click.option(
    "--out",
    "folder",
    type=click.Path(file_okay=False, path_type=Path),
    default=".",
    help="Folder for the pictures; made if it is not there.  [default: this one]",
)
@form_option
@debug_option
@click.pass_context
def command(ctx: click.Context, /, files: tuple[str, ...], form: str, **_wishes: object) -> None:
    """Run a call for heat: who does what when, why, and how it ends.

    Takes what check takes, and runs each variant too. Times count from the call; write them like
    90 s or 5 min.
    """
    from wirecheck.report.sequences import exit_code

    wish = Wish(**{name: ctx.params[name] for name in Wish._fields})
    inputs = find_inputs(files)
    taken: dict[Path, str] = {}
    looked = told(inputs, len(inputs), "running")
    run = [file for each in looked for file in _run_all(each, wish, taken)]
    if form == "json":
        from wirecheck.report.sequence_json import sequences_json

        print_json(sequences_json(run))
    else:
        from wirecheck.report.sequence_text import sequences_text

        print_lines(sequences_text(run, page(), danger=wish.view == "danger"))
    ctx.exit(exit_code(run))


def _run_all(given: Input, wish: Wish, taken: dict[Path, str]) -> Iterator[SequenceFile]:
    """Run one input and each variant in it; ``taken`` says which file stands for which input."""
    import wirecheck
    from wirecheck.report.sequences import SequenceFile

    read = read_input(given)
    if read.built is None:
        yield SequenceFile(given.name, read.problems, None, None)
        return
    base = SequenceFile(given.name, read.problems, None, None)
    yield _run(base, read.built.diagram, wish, taken, given.stem)
    for number, each in enumerate(wirecheck.variants(read.built), start=1):
        variant = base._replace(problems=each.problems, variant=each.name)
        yield _run(variant, each.diagram, wish, taken, f"{given.stem}-variant-{number}")


def _run(
    file: SequenceFile, diagram: Diagram, wish: Wish, taken: dict[Path, str], stem: str
) -> SequenceFile:
    """Run one diagram; ``stem`` begins the name of its picture."""
    import wirecheck
    from wirecheck.sequence.named import NotThereError

    try:
        script = wish.script(diagram)
    except NotThereError as error:
        return file._replace(problems=(*file.problems, problem_of(file.file, str(error))))
    works = wirecheck.simulate(diagram, script)
    endangers = wirecheck.simulate(diagram, script, view="danger")
    file = file._replace(works=works, endangers=endangers)
    if wish.picture is None:
        return file
    path = wish.folder / f"{stem}-sequence.{wish.picture}"
    shown = endangers if wish.view == "danger" else works
    refused = _draw(shown, path, wish.picture, taken, f"{file.file} {file.variant or ''}".strip())
    if refused:
        return file._replace(problems=(*file.problems, problem_of(file.file, refused)))
    return file._replace(picture=str(path))


def _draw(run: Run, path: Path, picture: Picture, taken: dict[Path, str], name: str) -> str:
    """Write the timeline; why it could not be written, or ""."""
    import wirecheck
    from wirecheck.report.whole_file import write_whole

    if taken.setdefault(path, name) != name:
        return f"{path} is the timeline of {taken[path]} already; draw into another folder"
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        write_whole(path, wirecheck.draw_timeline(run, picture))
    except OSError as error:
        return f"{path} cannot be written: {(error.strerror or 'it failed').lower()}"
    return ""
