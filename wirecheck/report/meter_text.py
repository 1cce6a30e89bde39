"""A meter sheet as a technician reads it at the unit: on a phone, one hand on the probes.

One line a reading: its number, what the meter is set to, red probe, black probe, what it shows;
below it what to do first and what other readings mean.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence

from wirecheck.meter.reading import Group, Meter, MeterSheet, Reading, Section
from wirecheck.report.check_text import problem_text
from wirecheck.report.checks import counted, found_words, worst_first
from wirecheck.report.meter_files import MeterFile, summary
from wirecheck.report.page import Page
from wirecheck.report.visible import cells, folded, visible

#: What the meter is set to, in few letters.
RANGES: dict[Meter, str] = {
    "volts AC": "V~",
    "ohms": "ohm",
    "amps AC": "A~",
    "microamps DC": "uA",
}
LINE_VOLTAGE = "line voltage: insulated probes, one hand, licensed people"
#: Fewer dots than this do not lead the eye.
_FEWEST_DOTS = 3


def meters_text(files: Sequence[MeterFile], page: Page) -> Iterator[str]:
    """Write the sheets, line by line."""
    for file in files:
        title = visible(file.sheet.checked.diagram.title) if file.sheet else "not measured"
        yield from page.plain_headline(f"{visible(file.file)}: {title}")
        if file.sheet:
            yield from _alarms(file.sheet.cautions, page)
            yield ""
        for problem in file.problems:
            yield from problem_text(problem, page)
        if file.sheet:
            yield from _head(file.sheet, page)
            for section in file.sheet.sections:
                yield ""
                yield from _section(section, page)
        for picture in file.pictures:
            yield from page.item(f"drawn: {visible(picture)}")
        yield ""
    yield from page.plain_headline(summary(files))


def not_good(sheet: MeterSheet) -> str:
    """That the values are not those of a good unit; "" if they are."""
    if sheet.is_good:
        return ""
    counts = Counter(finding.breaks for finding in sheet.mistakes)
    found = [found_words({breaks: counts[breaks] for breaks in worst_first()})]
    if sheet.dangers:
        found.append(counted(len(sheet.dangers), "danger"))
    what = ", ".join(filter(None, found))
    return f"{what}: all values are those of the unit as drawn, not of a good one. Mend first."


def _head(sheet: MeterSheet, page: Page) -> Iterator[str]:
    """What is wrong, how a call ends, how to read the sheet."""
    if not sheet.is_good:
        yield from _alarms([not_good(sheet)], page)
        for finding in sheet.mistakes:
            words = f"{visible(finding.message)} [{finding.rule}]"
            yield from page.headline(visible(str(finding.span)), str(finding.breaks), words)
        for danger in sheet.dangers:
            yield from page.item(f"danger: {visible(danger)}")
        yield ""
    for sentence in sheet.as_drawn:
        yield from page.item(visible(sentence), "")
    for remark in sheet.remarks:
        yield from page.item(visible(remark), "")


def _alarms(texts: Sequence[str], page: Page, indent: str = "") -> Iterator[str]:
    for text in texts:
        yield from map(page.alarm, page.item(f"! {text}", indent))


def _section(section: Section, page: Page) -> Iterator[str]:
    yield from page.heading(section.title.upper())
    for line in section.set_up:
        yield from page.item(visible(line))
    for group in section.groups:
        yield from _group(group, page)


def _group(group: Group, page: Page) -> Iterator[str]:
    if group.name:
        yield ""
        yield from map(page.strong, page.item(f"at {visible(group.name)}:"))
    for note in group.notes:
        yield from page.item(visible(note))
    for reading in group.readings:
        yield from _reading(reading, page)


def _reading(reading: Reading, page: Page) -> Iterator[str]:
    """A reading: its line, then what goes with it."""
    head = f"{reading.step:>3}  {RANGES[reading.meter]:<3}  "
    places = visible(probes(reading))
    good = visible(reading.good)
    dots = page.width - cells(head) - cells(places) - cells(good) - 2
    if dots >= _FEWEST_DOTS:
        yield f"{head}{places} {'.' * dots} {page.strong(good)}"
    else:
        yield from folded(places, page.width, head, " " * cells(head))
        yield from map(page.strong, _below(f"shows {good}", page))
    if reading.line_voltage:
        yield from map(page.alarm, _below(f"! {LINE_VOLTAGE}", page))
    if reading.how:
        yield from _below(f"first: {visible(reading.how)}", page)
    for wrong in reading.wrong:
        yield from _below(f"if {visible(wrong.reading)}: {visible(wrong.means)}", page)


def probes(reading: Reading) -> str:
    """Where the probes go: red first."""
    if reading.black is None:
        return reading.red.shown
    between = "in series, " if reading.in_series else ""
    return f"{between}{reading.red.shown} to {reading.black.shown}"


def _below(text: str, page: Page) -> list[str]:
    return folded(text, page.width, " " * 5, " " * 7)
