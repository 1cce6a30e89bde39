"""What a check says, as a technician reads it at the unit: on a phone, standing up.

Each finding opens with ``file:line:column:``, the GNU convention, so that an editor jumps there;
below it the line itself, what the unit does, what to mind and what to move. What was taken as given
(in short, unless asked for) and what was not checked come behind the findings. No report calls a
unit safe.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING, Final

from wirecheck.model.finding import Assumed, Finding, NotChecked, Problem
from wirecheck.model.text import Span
from wirecheck.report.checks import (
    CheckedFile,
    Tally,
    counted,
    finding_key,
    found_words,
    tally,
    unique,
)
from wirecheck.report.excerpt import excerpt
from wirecheck.report.page import Page
from wirecheck.report.visible import visible

if TYPE_CHECKING:
    from wirecheck.check.claims import Answer

#: The usual cautions in short (common practice, no source).
CAUTIONS: Final = (
    "Gas off and power off before you move a lead.",
    "Wait about five minutes and smell for gas, low down for LP, before another trial.",
    "The ignition lead carries some 20 kV while it sparks.",
    "Never bypass a safety beyond a momentary test.",
    "Afterwards leak-test what was opened; prove several full cycles, the safeties, a lockout.",
    "Local codes, the appliance maker's instructions and licensed people decide.",
)

#: Of a long list the first so many lines are printed; the JSON form has all of them.
MOST_LISTED: Final = 40


def check_text(
    files: Sequence[CheckedFile], rules: int, page: Page, *, assumed: bool = False
) -> Iterator[str]:
    """Write the report of a run, line by line.

    Args:
        files: what was checked, in the order given.
        rules: how many rules looked at each diagram.
        page: what it is written for.
        assumed: whether to list everything that was taken as given.
    """
    cautioned = False
    bases = {file.file: file for file in files if file.variant is None}
    for file in files:
        base = bases.get(file.file) if file.variant is not None else None
        yield from page.plain_headline(f"{visible(file.file)}: {_title(file)}")
        told = file.fixed or file.findings or file.accepted or file.known
        if not cautioned and told:
            yield from cautions_text(page)
            cautioned = True
        yield ""
        for step in file.fixed:
            for words in step.words:
                yield from page.item(visible(f"mended: {words} [{step.finding.rule}]"), "")
        alone = len(files) == 1
        claimed = base.checked.claims if base and base.checked else ()
        yield from _body(_beyond(file, base), page, alone=alone, assumed=assumed, told=claimed)
        yield from _shared(file, base, page)
        if not alone:
            yield from page.plain_headline(f"{_called(file)}: {_verdict(file)}")
            yield ""
    if len(files) > 1:
        yield from _not_checked_anywhere(files, page)
    yield from page.plain_headline(tally(files, rules).sentence())


def _called(file: CheckedFile) -> str:
    """The file, and the variant of it."""
    return visible(file.file + (f", variant {file.variant}" if file.variant else ""))


def _beyond(file: CheckedFile, base: CheckedFile | None) -> CheckedFile:
    """A variant without what is said of its base already."""
    if base is None or base.checked is None or file.checked is None:
        return file
    told = {finding_key(finding) for finding in base.findings}
    known = {finding_key(finding) for finding in base.known}
    accepted = {finding_key(each.finding) for each in base.accepted}
    given, unchecked = {*base.checked.assumed}, {*base.checked.not_checked}
    checked = file.checked._replace(
        findings=tuple(each for each in file.findings if finding_key(each) not in told),
        assumed=tuple(each for each in file.checked.assumed if each not in given),
        not_checked=tuple(each for each in file.checked.not_checked if each not in unchecked),
    )
    return file._replace(
        checked=checked,
        accepted=tuple(each for each in file.accepted if finding_key(each.finding) not in accepted),
        known=tuple(each for each in file.known if finding_key(each) not in known),
    )


def _shared(file: CheckedFile, base: CheckedFile | None, page: Page) -> Iterator[str]:
    """Say how many findings of the base diagram a variant has too."""
    if base is not None:
        told = {finding_key(finding) for finding in base.findings}
        count = sum(finding_key(each) in told for each in file.findings)
        if count:
            words = f"{counted(count, 'finding')} of the base diagram, told above, is here too"
            yield from page.item(words.replace("is here", "is here" if count == 1 else "are here"))
            yield ""


def _title(file: CheckedFile) -> str:
    if file.checked is None:
        return "not checked"
    variant = f", variant {file.variant}" if file.variant else ""
    return visible(f"{file.checked.diagram.title}{variant}")


def _verdict(file: CheckedFile) -> str:
    each: Tally = tally([file], 0)
    problems = counted(each.problems, "problem") if each.problems else ""
    words = ", ".join(filter(None, [found_words(each.findings), problems]))
    return f"{counted(file.leads, 'lead')}: {words or 'nothing found'}"


def cautions_text(page: Page) -> Iterator[str]:
    """Write the usual cautions, which open whatever tells somebody what to move."""
    for caution in CAUTIONS:
        first, *rest = page.item(f"! {caution}", "")
        yield page.alarm(first)
        yield from map(page.alarm, rest)


def _body(
    file: CheckedFile, page: Page, *, alone: bool, assumed: bool, told: Sequence[Answer] = ()
) -> Iterator[str]:
    checked = file.checked
    if checked:
        for finding in checked.findings:
            yield from finding_text(finding, page)
            yield ""
    for problem in file.problems:
        yield from problem_text(problem, page)
        yield ""
    yield from set_aside(file, page)
    if checked and checked.claims:
        yield from claims_text(checked.claims, page, told)
        yield ""
    if checked and checked.assumed:
        yield from _assumed(checked.assumed, page, in_full=assumed)
        yield ""
    here = [item for item in checked.not_checked if item.span or alone] if checked else []
    if here:
        yield from page.heading("not checked:")
        yield from _first_of(
            [line for item in here for line in page.item(_not_checked(item))], page
        )
        yield ""


def claims_text(
    answers: Sequence[Answer], page: Page, told: Sequence[Answer] = ()
) -> Iterator[str]:
    """Write what holds of what is claimed; what does not is told among the findings.

    Args:
        answers: what became of the claims.
        page: what it is written for.
        told: what was written of the base diagram, which is not repeated.
    """
    proved = [answer for answer in answers if answer.verdict == "proved"]
    said = {_proved(each) for each in told if each.verdict == "proved"}
    lines = [line for line in map(_proved, proved) if line not in said]
    yield from page.heading(f"claims proved: {len(proved)} of {len(answers)}{':' if lines else ''}")
    yield from _first_of([row for each in lines for row in page.item(each)], page)


def _proved(answer: Answer) -> str:
    return visible(f"{answer.claim.span}: {answer.claim.text}: {answer.computed}")


def set_aside(file: CheckedFile, page: Page) -> Iterator[str]:
    """Write what is accepted, each with its reason, and what was known."""
    if file.accepted:
        yield from page.heading("accepted:")
        for each in file.accepted:
            reason = each.accept.reason or "no reason given"
            yield from page.item(visible(f"{_in_a_line(each.finding)}; accepted: {reason}"))
        yield ""
    if file.known:
        yield from page.heading("known, by the baseline:")
        for finding in file.known:
            yield from page.item(visible(_in_a_line(finding)))
        yield ""


def _in_a_line(finding: Finding) -> str:
    return f"{finding.span}: {finding.breaks}: {finding.message} [{finding.rule}]"


def finding_text(finding: Finding, page: Page) -> Iterator[str]:
    """Write one finding: what is wrong and where, then what a technician does with that."""
    message = f"{visible(finding.message)} [{finding.rule}]"
    yield from page.headline(visible(str(finding.span)), str(finding.breaks), message)
    yield from _excerpt(finding.span, page)
    if finding.seen_at_unit:
        yield from page.named("seen at the unit", visible(finding.seen_at_unit))
    if finding.also_breaks:
        yield from page.named("also breaks", ", ".join(map(str, finding.also_breaks)))
    if finding.caution:
        yield from page.named("caution", visible(finding.caution))
    for edit in finding.edits:
        yield from page.named("to mend", visible(edit.words))
    for related in finding.related:
        yield from page.named("see", visible(f"{related.span}: {related.label}"))
    yield from page.named("source", visible(finding.source))


def problem_text(problem: Problem, page: Page) -> Iterator[str]:
    """Write what could not be used of a text, and where."""
    message = visible(problem.message)
    near = problem.nearest or ""
    if near[:1].isalnum() and near not in problem.message:  # of a lone sign the message tells all
        message += f"; did you mean {visible(near)}?"
    yield from page.headline(visible(str(problem.span)), "problem", message)
    yield from _excerpt(problem.span, page)


def _excerpt(span: Span, page: Page) -> Iterator[str]:
    line = excerpt(span, page.width)
    if line:
        yield page.faint(line.shown())
        yield page.faint(line.underline())


def _assumed(assumed: Sequence[Assumed], page: Page, *, in_full: bool) -> Iterator[str]:
    """List what was taken as given under where it comes from, or say of how many parts it is."""
    by_source: dict[str, list[str]] = {}
    for item in assumed:
        by_source.setdefault(item.source, []).append(item.what)
    for source, whats in by_source.items():
        heading = f"taken as given ({visible(source)}):"
        if in_full or len(whats) == 1:
            yield from page.heading(heading)
            yield from _first_of([row for what in whats for row in page.item(visible(what))], page)
        else:
            yield from page.heading(f"{heading} values of {len(whats)} parts; --assumed lists them")


def _first_of(lines: Sequence[str], page: Page) -> Iterator[str]:
    yield from lines[:MOST_LISTED]
    if len(lines) > MOST_LISTED:
        left = len(lines) - MOST_LISTED
        yield from page.item(f"and {counted(left, 'line')} more; --as json has all of them")


def _not_checked(item: NotChecked) -> str:
    place = f"{item.span}: " if item.span else ""
    return visible(f"{place}{item.what}: {item.reason}")


def _not_checked_anywhere(files: Sequence[CheckedFile], page: Page) -> Iterator[str]:
    """Say once what no diagram of the run was checked for."""
    said = unique(
        _not_checked(item)
        for file in files
        if file.checked
        for item in file.checked.not_checked
        if item.span is None
    )
    if said:
        yield from page.heading("not checked in any of them:")
        yield from (line for words in said for line in page.item(words))
        yield ""
