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
from wirecheck.sheets import (
    draw,
    draw_blank,
    draw_corrected,
    draw_exercise,
    draw_fault_chart,
    draw_lists,
    draw_meter,
    draw_record,
    draw_replacement,
    draw_timeline,
)

if TYPE_CHECKING:
    from collections.abc import Sequence
    from os import PathLike
    from pathlib import Path

    from wirecheck.check.engine import Checked
    from wirecheck.compare.result import Comparison
    from wirecheck.correct.answer import Correction
    from wirecheck.faults.campaign import Campaign
    from wirecheck.grade.marked import Marked
    from wirecheck.grade.rubric import Rubric
    from wirecheck.language.build import Built
    from wirecheck.language.variations import Variation
    from wirecheck.lists.lists import Lists
    from wirecheck.meter.reading import MeterSheet
    from wirecheck.model.diagram import Diagram
    from wirecheck.model.finding import Problem
    from wirecheck.model.kind import Kind
    from wirecheck.notes.checked import CheckedDocument
    from wirecheck.practice.exercise import Exercise, Wish
    from wirecheck.properties.property import Property
    from wirecheck.replace.device import Device
    from wirecheck.replace.replacement import Replacement
    from wirecheck.rules.rule import Rule
    from wirecheck.sequence.run import Run
    from wirecheck.sequence.script import Script
    from wirecheck.troubleshoot.conversation import Conversation

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
    "property_called",
    "property_names",
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


def meter(checked: Checked) -> MeterSheet:
    """Make the meter sheet of a checked diagram: where the probes go, and what they show there.

    Every value is computed for the wiring as drawn; `MeterSheet.is_good` tells whether a mistake
    was found in it.
    """
    from wirecheck.meter.sheet import meter_sheet

    return meter_sheet(checked)


def practice(right: Diagram, wish: Wish | None = None) -> list[Exercise]:
    """Make exercises from a right diagram, fewer than wished where there are no more.

    Raises:
        wirecheck.practice.exercise.NotRightError: it has mistakes of safety or operation.
    """
    from wirecheck.practice.exercise import Wish as Wishes
    from wirecheck.practice.exercise import exercises

    return exercises(right, wish or Wishes())


def lists(checked: Checked) -> Lists:
    """List wires, parts and terminals of a checked diagram, with the wire numbers of the sheets."""
    from wirecheck.lists.lists import lists_of

    return lists_of(checked)


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


def property_names() -> tuple[str, ...]:
    """List what must hold in every position of the switches, under the names of its findings."""
    from wirecheck.properties.registry import PROPERTIES

    return tuple(PROPERTIES)


def property_called(name: str) -> Property:
    """Look up a property by its name.

    Raises:
        KeyError: there is no such property.
    """
    from wirecheck.properties.registry import PROPERTIES

    return PROPERTIES[name]


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
