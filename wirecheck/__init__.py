"""wirecheck: a wiring-diagram checker for 24 V gas-burner controls.

The Python API is plain functions over plain data; the commands use nothing else::

    import wirecheck

    built = wirecheck.load("heater.wiring")
    for finding in wirecheck.check(built.diagram).findings:
        print(finding.span, finding.message)

Importing it loads next to nothing: each function imports what it needs.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Literal

# Some functions are called as the package they run. Python puts a package under its name here
# when it first loads it, and would put it over the function; loaded first, it does not.
import wirecheck.check
import wirecheck.compare
import wirecheck.correct
import wirecheck.grade
import wirecheck.lists
import wirecheck.meter
import wirecheck.practice
import wirecheck.replace
import wirecheck.troubleshoot  # noqa: F401

if TYPE_CHECKING:
    from collections.abc import Sequence
    from os import PathLike
    from pathlib import Path

    from wirecheck.check.engine import Checked
    from wirecheck.compare.result import Comparison
    from wirecheck.correct.answer import Answer, Correction
    from wirecheck.drawing.engine import Engine, Format
    from wirecheck.faults.campaign import Campaign
    from wirecheck.grade.marked import Marked
    from wirecheck.grade.rubric import Rubric
    from wirecheck.language.build import Built
    from wirecheck.language.variations import Variation
    from wirecheck.lists.lists import Lists
    from wirecheck.lists.tables import What
    from wirecheck.meter.reading import MeterSheet
    from wirecheck.model.diagram import Diagram
    from wirecheck.model.finding import Problem
    from wirecheck.model.kind import Kind
    from wirecheck.notes.checked import CheckedDocument
    from wirecheck.practice.exercise import Exercise, Wish
    from wirecheck.replace.device import Device
    from wirecheck.replace.replacement import Replacement
    from wirecheck.rules.rule import Rule
    from wirecheck.sequence.run import Run
    from wirecheck.sequence.script import Script
    from wirecheck.troubleshoot.chart import Step
    from wirecheck.troubleshoot.conversation import Conversation

    Sheet = Literal["ladder", "connections"]

__all__ = [
    "check",
    "check_note",
    "check_note_bytes",
    "compare",
    "correct",
    "draw",
    "draw_blank",
    "draw_corrected",
    "draw_exercise",
    "draw_fault_chart",
    "draw_lists",
    "draw_meter",
    "draw_record",
    "draw_replacement",
    "draw_timeline",
    "format_text",
    "grade",
    "kind",
    "kind_names",
    "lists",
    "load",
    "load_bytes",
    "load_text",
    "meter",
    "practice",
    "replace",
    "report_page",
    "rule",
    "rule_names",
    "simulate",
    "troubleshoot",
    "try_faults",
    "variants",
]


def load(path: str | PathLike[str]) -> Built:
    """Read a ``.wiring`` file and what it includes: its diagram and the problems of its text.

    Raises:
        OSError: the file cannot be read.
    """
    from pathlib import Path

    from wirecheck.language.load import load_path

    return load_path(Path(path))


def load_bytes(data: bytes, name: str = "text") -> Built:
    """Read the bytes of a file that lies nowhere, such as standard input; else as `load_text`."""
    from wirecheck.language.load import load_bytes as load_named_bytes

    return load_named_bytes(data, name)


def load_text(text: str, name: str = "text") -> Built:
    """Read a text as `load` reads a file; ``name`` stands in front of its messages."""
    from wirecheck.language.load import load_text as load_named_text

    return load_named_text(text, name)


def check(diagram: Diagram) -> Checked:
    """Check a diagram by every rule, and try every claim that its text makes."""
    from wirecheck.check.engine import check as run

    checked = run(diagram)
    if not diagram.claims:
        return checked
    from wirecheck.check.claim_findings import with_claims

    return with_claims(checked)


def check_note(path: str | PathLike[str], *, combined: bool = False) -> CheckedDocument:
    """Check every diagram in a document of installation notes, Markdown or plain text.

    Args:
        path: of the document.
        combined: check variants together too, where they touch nothing in common.

    Raises:
        OSError: the document cannot be read.
    """
    from pathlib import Path

    from wirecheck.notes.checked import check_document
    from wirecheck.notes.document import read_document

    return check_document(read_document(Path(path), Path(path).as_posix()), combined=combined)


def check_note_bytes(
    data: bytes, name: str, path: Path | None = None, *, combined: bool = False
) -> CheckedDocument:
    """Check the bytes of a document as `check_note` checks a file.

    Args:
        data: in UTF-8.
        name: stands in front of its messages; its suffix says whether it is plain text.
        path: where it lies, for what it includes; None for nowhere.
        combined: as there.

    Raises:
        OSError: it is larger than any document.
    """
    from wirecheck.notes.checked import check_document
    from wirecheck.notes.document import read_data

    return check_document(read_data(data, name, path), combined=combined)


def compare(
    first: Diagram, second: Diagram, *, names: tuple[str, str] = ("the first", "the second")
) -> Comparison:
    """Say whether two diagrams do the same: by structure, by function, and what differs.

    Splices, names, the order of leads and of switches in a row do not count.

    Args:
        first: the one that is the measure.
        second: the one that is looked at.
        names: what the two are called in sentences.
    """
    from wirecheck.compare.engine import compare as set_off
    from wirecheck.compare.result import Voice

    return set_off(first, second, Voice(*names))


def correct(diagram: Diagram, *, edits: int = 3, seconds: float = 20.0) -> Correction:
    """Find the fewest changes of leads after which nothing of safety or operation is left.

    Args:
        diagram: as found.
        edits: look no further than so many.
        seconds: look no longer than this.
    """
    from wirecheck.correct.answer import Bound
    from wirecheck.correct.search import correct as search

    return search(diagram, Bound(edits, seconds))


def grade(diagram: Diagram, *keys: Diagram, rubric: Rubric | None = None) -> Marked:
    """Mark a drawing against one or several keys; without a rubric by the one that comes along."""
    from wirecheck.grade.key import Key
    from wirecheck.grade.marking import marked
    from wirecheck.grade.rubric import default_rubric

    every = [Key(key, key.title) for key in keys]
    return marked(every, diagram, rubric or default_rubric())


def draw(
    checked: Checked,
    sheet: Sheet = "ladder",
    file_format: Format = "svg",
    *,
    engine: Engine = "embedded",
    date: str = "",
) -> bytes:
    """Draw a checked diagram, its findings marked, and return the finished file.

    Args:
        checked: what `check` gave.
        sheet: ``ladder``, how it works, or ``connections``, what runs where.
        file_format: ``svg``, ``png``, or ``pdf``, which needs the system engine.
        engine: ``embedded``, or ``system`` for a Graphviz installed on the machine.
        date: for the title block, as it shall be printed; the drawing knows no clock, so that the
            same diagram gives the same bytes.

    Raises:
        wirecheck.drawing.engine.DrawingError: the engine is missing, cannot give the format or
            fails.
    """
    from wirecheck.drawing.engine import render

    if sheet == "ladder":
        from wirecheck.drawing.ladder import ladder_sheet as lay_out
    else:
        from wirecheck.drawing.connections import connection_sheet as lay_out
    return render(lay_out(checked, date=date), file_format, engine=engine)


def draw_corrected(
    answer: Answer,
    sheet: Sheet = "ladder",
    file_format: Literal["svg", "png"] = "svg",
    *,
    date: str = "",
) -> bytes:
    """Draw a diagram as an answer of `correct` mends it, and return the finished file.

    What is to be taken away and what is to go in is marked so that it reads in black and white.
    """
    from wirecheck.drawing.corrected import corrected_connections, corrected_ladder
    from wirecheck.drawing.engine import render

    lay_out = corrected_ladder if sheet == "ladder" else corrected_connections
    return render(lay_out(answer.state, date=date), file_format)


def simulate(
    diagram: Diagram,
    script: Script | None = None,
    *,
    view: Literal["operation", "danger"] = "operation",
) -> Run:
    """Run the ignition sequence of a diagram.

    Args:
        diagram: what runs.
        script: what happens to it (`wirecheck.sequence.script.heat_call` writes one); without it
            one call for heat of ten minutes.
        view: whether what may or may not happen (a coil at low volts, a current through rusty
            metal) is taken not to, as who asks whether it works must, or to, as who looks for
            danger must.
    """
    from wirecheck.sequence.answers import View
    from wirecheck.sequence.run import run
    from wirecheck.sequence.script import heat_call

    return run(diagram, script or heat_call(), View(view))


def draw_timeline(run: Run, file_format: Literal["svg", "png"] = "svg") -> bytes:
    """Draw what `simulate` gave as bars over time, and return the finished file."""
    from wirecheck.drawing.timeline import draw

    return draw(run, file_format)


def meter(checked: Checked) -> MeterSheet:
    """Make the meter sheet of a checked diagram: where the probes go, and what they show there.

    Every value is computed for the wiring as drawn; `MeterSheet.is_good` tells whether a mistake
    was found in it.
    """
    from wirecheck.meter.sheet import meter_sheet

    return meter_sheet(checked)


def draw_meter(
    sheet: MeterSheet,
    file_format: Format = "svg",
    *,
    engine: Engine = "embedded",
) -> tuple[bytes, ...]:
    """Draw what `meter` gave on pages of A4 to write on, and return the finished files.

    Raises:
        wirecheck.drawing.engine.DrawingError: the engine is missing, cannot give the format or
            fails.
    """
    from wirecheck.drawing.engine import render
    from wirecheck.drawing.meter_sheet import meter_pages

    return tuple(render(page, file_format, engine=engine) for page in meter_pages(sheet))


def practice(right: Diagram, wish: Wish | None = None) -> list[Exercise]:
    """Make exercises from a right diagram, fewer than wished where there are no more.

    Raises:
        wirecheck.practice.exercise.NotRightError: it has mistakes of safety or operation.
    """
    from wirecheck.practice.exercise import Wish as Wishes
    from wirecheck.practice.exercise import exercises

    return exercises(right, wish or Wishes())


def draw_exercise(
    exercise: Exercise,
    sheet: Literal["exercise", "answers"] = "exercise",
    file_format: Literal["svg", "png"] = "svg",
    *,
    date: str = "",
) -> bytes:
    """Draw the wiring of an exercise with nothing marked, or the page for the answers."""
    from wirecheck.drawing.engine import render
    from wirecheck.drawing.exercise import answer_sheet, exercise_sheet

    lay_out = exercise_sheet if sheet == "exercise" else answer_sheet
    return render(lay_out(exercise, date=date), file_format)


def draw_blank(
    right: Diagram, file_format: Literal["svg", "png"] = "svg", *, date: str = ""
) -> bytes:
    """Draw the devices of a diagram and none of its leads, as a sheet to be wired."""
    from wirecheck.drawing.engine import render
    from wirecheck.drawing.exercise import blank_sheet

    return render(blank_sheet(right, date=date), file_format)


def lists(checked: Checked) -> Lists:
    """List wires, parts and terminals of a checked diagram, with the wire numbers of the sheets."""
    from wirecheck.lists.lists import lists_of

    return lists_of(checked)


def draw_lists(
    lists: Lists,
    what: Sequence[What] = ("wires", "parts", "terminals"),
    file_format: Format = "svg",
    *,
    engine: Engine = "embedded",
    date: str = "",
) -> tuple[bytes, ...]:
    """Draw what `lists` gave, or some of it, on pages of A4, and return the finished files.

    Raises:
        wirecheck.drawing.engine.DrawingError: the engine is missing, cannot give the format or
            fails.
    """
    from wirecheck.drawing.engine import render
    from wirecheck.drawing.lists_sheet import lists_pages

    pages = lists_pages(lists, what, date)
    return tuple(render(page, file_format, engine=engine) for page in pages)


def replace(
    diagram: Diagram, new: Diagram | Sequence[Device], *, part: str | None = None
) -> Replacement:
    """Put new devices in the place of old ones: where each lead goes, and the diagram then.

    Args:
        diagram: as found.
        new: the new devices, as the parts of a diagram or one by one.
        part: name of the part that a single new device replaces, where that is not clear.

    Raises:
        wirecheck.replace.request.CannotReplaceError: the request cannot be met; it says why.
    """
    from wirecheck.model.diagram import Diagram as Stated
    from wirecheck.replace.offered import devices_of
    from wirecheck.replace.replacement import replace as put_in

    offered = devices_of(new) if isinstance(new, Stated) else new
    return put_in(diagram, offered, part)


def draw_replacement(
    done: Replacement, file_format: Literal["svg", "png"] = "svg", *, date: str = ""
) -> dict[str, bytes]:
    """Draw what `replace` gave: each finished file by its name.

    ``found-connections`` is there if a lead is left over, ``replaced-connections`` and
    ``replaced-ladder`` always, then the pages of the cross-reference: ``cross-reference-1`` and so
    on.
    """
    from wirecheck.drawing.engine import render
    from wirecheck.drawing.replaced import sheets

    return {name: render(sheet, file_format) for name, sheet in sheets(done, date).items()}


def report_page(
    checked: Checked,
    file: str,
    *,
    problems: Sequence[Problem] = (),
    seconds: float = 20.0,
    date: str = "",
) -> str:
    """Write the report of a checked diagram as one HTML page that needs nothing beside it.

    Args:
        checked: what `check` gave.
        file: name of the file, as it shall stand there.
        problems: of its text.
        seconds: look no longer than this for a correction.
        date: as it shall be printed.
    """
    from wirecheck.report.html.gathered import gathered
    from wirecheck.report.html.page import report_page as page

    return page(gathered(checked, file, tuple(problems), seconds, date))


def draw_fault_chart(
    talk: Conversation,
    top: Step,
    file_format: Literal["svg", "png"] = "svg",
    *,
    date: str = "",
) -> tuple[bytes, ...]:
    """Draw the chart ``top`` of a conversation: the picture first, then the pages with its steps.

    ``top`` is what `wirecheck.troubleshoot.chart.chart` made of the conversation.
    """
    from wirecheck.drawing.engine import render
    from wirecheck.drawing.faults.picture import chart_picture
    from wirecheck.drawing.faults.steps import chart_pages

    diagram = talk.dictionary.diagram
    seen = "; ".join(observation.words for observation in talk.observations)
    sheets = (chart_picture(diagram, top, seen, date), *chart_pages(diagram, top, seen, date))
    return tuple(render(sheet, file_format) for sheet in sheets)


def draw_record(
    talk: Conversation, file_format: Literal["svg", "png"] = "svg", *, date: str = ""
) -> tuple[bytes, ...]:
    """Draw the record of a conversation on pages of A4: readings, repair, proof, room to sign."""
    from wirecheck.drawing.engine import render
    from wirecheck.drawing.faults.record import record_pages

    return tuple(render(page, file_format) for page in record_pages(talk, date))


def format_text(text: str) -> str:
    """Return the same diagram in the canonical form, comments kept."""
    from wirecheck.language.format import format_text as in_canonical_form

    return in_canonical_form(text)


def kind_names() -> tuple[str, ...]:
    """List the kinds of the part library in alphabetical order."""
    from wirecheck.parts.library import kind_names as names

    return names()


def kind(name: str) -> Kind:
    """Look up a kind of the part library by its name.

    Raises:
        KeyError: the library has no such kind.
    """
    from wirecheck.parts.library import kind as look_up

    return look_up(name)


def rule_names() -> tuple[str, ...]:
    """List the rules in the order of the reference."""
    from wirecheck.rules.registry import RULES

    return tuple(RULES)


def rule(name: str) -> Rule:
    """Look up a rule by its name.

    Raises:
        KeyError: there is no such rule.
    """
    from wirecheck.rules.registry import RULES

    return RULES[name].rule


def try_faults(diagram: Diagram) -> Campaign:
    """Try every single fault of a diagram's leads and contacts; the worst stand first."""
    from wirecheck.faults.campaign import campaign

    return campaign(diagram)


def variants(built: Built) -> tuple[Variation, ...]:
    """Build every variant of a text, each as a diagram of its own, in the order of the text."""
    if not built.nested.variants:
        return ()
    from wirecheck.language.variations import variations

    return variations(built)


def troubleshoot(
    diagram: Diagram, *, seen: Sequence[str] = (), calling: Sequence[str] = ()
) -> Conversation:
    """Begin to look for what is broken in a unit that is wired as drawn.

    What its ``observe`` statements say counts.  `Conversation.diagnosis` tells what explains it and
    which reading to take next, `Conversation.answer` takes what it came to.

    Args:
        diagram: as drawn.
        seen: what was seen besides, each in the words of ``observe`` or in plain ones: "pilot
            lights, main never does".
        calling: names of the parts that call; none: all that can.

    Raises:
        wirecheck.troubleshoot.seen.NotUnderstoodError: something seen cannot be read.
        wirecheck.sequence.named.NotThereError: nothing of such a name calls.
    """
    from wirecheck.troubleshoot.begin import begin

    return begin(diagram, seen, calling)
