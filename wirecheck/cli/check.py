"""``wirecheck check``: what is wrong in the wiring, at its line."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import TYPE_CHECKING

import click

from wirecheck.cli.inputs import STANDARD_INPUT, Input, find_inputs, problem_of, read_input
from wirecheck.cli.options import baseline_options, debug_option, fail_on_option, files_argument
from wirecheck.cli.printing import page, print_json, print_lines, print_text
from wirecheck.cli.progress import told
from wirecheck.model.finding import Breaks
from wirecheck.report.checks import CheckedFile, tally

if TYPE_CHECKING:
    from wirecheck.language.build import Built

#: Some editors put it in front of a text; a file that had it keeps it.
BYTE_ORDER_MARK = b"\xef\xbb\xbf"


@click.command("check")
@files_argument
@click.option(
    "--fix",
    is_flag=True,
    help="Make the edits that are certain, one by one, then check what stands there.",
)
@click.option(
    "--faults",
    is_flag=True,
    help="Instead, try every single fault of leads and contacts: what the unit then does.",
)
@click.option(
    "--assumed",
    is_flag=True,
    help="List in the text every value that was taken as given because the file does not say it.",
)
@click.option(
    "--all-combinations",
    "combined",
    is_flag=True,
    help="Besides each variant check all of them together that touch nothing in common.",
)
@fail_on_option
@baseline_options
@click.option(
    "--as",
    "form",
    type=click.Choice(["text", "json", "sarif", "junit", "csv"]),
    default="text",
    show_default=True,
    help="Text for people, JSON, SARIF 2.1.0 or JUnit XML for programs; faults also as CSV.",
)
@debug_option
@click.pass_context
def command(  # noqa: PLR0913  # one for each option
    ctx: click.Context,
    files: tuple[str, ...],
    *,
    fix: bool,
    faults: bool,
    assumed: bool,
    combined: bool,
    fail_on: str,
    baseline: Path | None,
    write_baseline: bool,
    form: str,
) -> None:
    """Name every wiring mistake at its line, and prove or refute every claim.

    Takes .wiring files, folders (every .wiring file below them) or - for standard input. Each
    variant of a file is checked as a diagram of its own. A comment “# accept RULE: reason” accepts
    a finding in its line or in the statement below.
    """
    import wirecheck

    if faults:
        _refuse_beside_faults(fix=fix, baseline=baseline, form=form)
        ctx.exit(_tell_faults(find_inputs(files), form))
    if form == "csv":
        raise click.UsageError("only the table of --faults can be had as CSV")
    if write_baseline and baseline is None:
        raise click.UsageError("--write-baseline needs --baseline FILE, where it is written")
    inputs = find_inputs(files)
    if fix and any(each.name == STANDARD_INPUT for each in inputs):
        raise click.UsageError("standard input cannot be changed in place; leave --fix out")
    looked = told(inputs, len(inputs), "checking")
    checked = [one for each in looked for one in check_all(each, fix=fix, combined=combined)]
    if baseline is not None:
        checked = _held_against(checked, baseline, write=write_baseline)
    count = len(wirecheck.rule_names())
    print_checked(checked, count, form, assumed=assumed)
    ctx.exit(tally(checked, count).exit_code(Breaks[fail_on.upper()]))


def _held_against(checked: list[CheckedFile], path: Path, *, write: bool) -> list[CheckedFile]:
    """Set aside what is known; write it first if asked to."""
    from wirecheck.cli.known import read_known, say_gone, write_known
    from wirecheck.report.baseline import hold_against, marks_of

    if write:
        write_known(path, marks_of(checked, path.parent))
    held = hold_against(checked, read_known(path), path.parent)
    say_gone(held.gone)
    return held.files


def print_checked(
    checked: list[CheckedFile], rules: int, form: str, *, assumed: bool = False
) -> None:
    """Print what was found, in one of the forms of a check."""
    if form == "json":
        from wirecheck.report.check_json import check_json

        print_json(check_json(checked, rules))
    elif form == "sarif":
        from wirecheck.report.check_sarif import check_sarif

        print_json(check_sarif(checked))
    elif form == "junit":
        from wirecheck.report.check_junit import check_junit

        print_text(check_junit(checked))
    else:
        from wirecheck.report.check_text import check_text

        print_lines(check_text(checked, rules, page(), assumed=assumed))


def _refuse_beside_faults(*, fix: bool, baseline: Path | None, form: str) -> None:
    if fix:
        raise click.UsageError("--faults changes nothing; leave --fix out")
    if baseline is not None:
        raise click.UsageError("a baseline holds findings; leave it out beside --faults")
    if form in ("sarif", "junit"):
        raise click.UsageError(f"a table of faults cannot be had as {form}; take json or csv")


def _tell_faults(inputs: list[Input], form: str) -> int:
    """Try every single fault of the inputs and print what comes of them; the exit code."""
    import wirecheck
    from wirecheck.report.faults_files import FaultsFile, exit_code

    files = []
    for each in told(inputs, len(inputs), "trying faults"):
        read = read_input(each)
        tried = wirecheck.try_faults(read.built.diagram) if read.built else None
        files.append(FaultsFile(each.name, read.problems, tried))
    if form == "text":
        from wirecheck.report.faults_text import faults_text

        print_lines(faults_text(files, page()))
    elif form == "json":
        from wirecheck.report.faults_json import faults_json

        print_json(faults_json(files))
    else:
        from wirecheck.report.faults_json import faults_csv

        print_text(faults_csv(files))
    return exit_code(files)


def check_input(given: Input) -> CheckedFile:
    """Read and check one input; one that cannot be read has a problem and no result."""
    import wirecheck

    read = read_input(given)
    checked = wirecheck.check(read.built.diagram) if read.built else None
    return CheckedFile(given.name, read.problems, checked)


def check_all(given: Input, *, fix: bool = False, combined: bool = False) -> list[CheckedFile]:
    """Check one input and each variant in it, what comments accept sorted out.

    Args:
        given: the input.
        fix: make the certain edits first.
        combined: check variants together too.
    """
    import wirecheck

    read = read_input(given)
    if read.built is None:
        return [CheckedFile(given.name, read.problems, None)]
    built = read.built
    base = CheckedFile(given.name, read.problems, wirecheck.check(built.diagram))
    if fix:
        base = _fixed(base)
        again = read_input(given).built if base.fixed else None
        if again is not None:
            built, base = again, base._replace(checked=wirecheck.check(again.diagram))
    files = [base, *_of_variants(given.name, built, combined=combined)]
    if any("accept" in source.text.lower() for source in built.diagram.sources):
        return _accepted(files)
    return files


def _of_variants(name: str, built: Built, *, combined: bool) -> Iterator[CheckedFile]:
    """The checks of a file's variants, alone and together."""
    import wirecheck

    for each in wirecheck.variants(built):
        yield CheckedFile(name, each.problems, wirecheck.check(each.diagram), each.name)
    if combined and built.nested.variants:
        from wirecheck.language.variations import all_combinations
        from wirecheck.model.finding import NotChecked

        together = all_combinations(built)
        for each in together.built:
            checked = wirecheck.check(each.diagram)
            if together.left_out and each is together.built[-1]:
                reason = f"{together.left_out} or more besides these were not built"
                left = NotChecked("combinations of variants", reason)
                checked = checked._replace(not_checked=(*checked.not_checked, left))
            yield CheckedFile(name, each.problems, checked, each.name)


def _accepted(files: list[CheckedFile]) -> list[CheckedFile]:
    """The checks of one file without the findings that its comments accept."""
    from wirecheck.check.accepts import sort_out

    checks = [file.checked for file in files if file.checked]
    return [
        file._replace(
            checked=each.checked,
            accepted=each.accepted,
            problems=(*file.problems, *each.problems),
        )
        for file, each in zip(files, sort_out(checks), strict=True)
    ]


def _fixed(file: CheckedFile) -> CheckedFile:
    """Make the certain edits in one file, unless something of it was not understood."""
    from wirecheck.correct.certain import fixed
    from wirecheck.report.whole_file import write_whole

    if file.problems or file.checked is None:
        return file
    done = fixed(file.checked.diagram)
    if not done.steps:
        return file
    path = Path(file.file)
    try:
        mark = BYTE_ORDER_MARK if path.read_bytes().startswith(BYTE_ORDER_MARK) else b""
        write_whole(path, mark + done.text.encode("utf-8"))
    except OSError as error:
        reason = f"cannot be written: {(error.strerror or 'it failed').lower()}"
        return file._replace(problems=(problem_of(file.file, reason),))
    return file._replace(checked=done.checked, fixed=done.steps)
