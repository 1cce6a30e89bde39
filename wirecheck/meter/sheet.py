"""Puts the meter sheet of a diagram together: the stages in the order of the work."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from wirecheck.check.engine import Checked
from wirecheck.meter.bench import Bench
from wirecheck.meter.pages import control_groups, unit_group
from wirecheck.meter.reading import Group, MeterSheet, Section, Stage
from wirecheck.meter.words import CAUTIONS, TITLES, as_drawn, remarks, set_up


def meter_sheet(checked: Checked) -> MeterSheet:
    """The meter sheet of a checked diagram.

    Every value is computed for this diagram as it is drawn; a sheet of a diagram with findings
    shows what the unit with those mistakes shows.
    """
    bench = Bench(checked)
    said: set[str] = set()
    sections = [section for stage in Stage for section in _section(bench, stage, said)]
    return MeterSheet(
        checked,
        CAUTIONS,
        tuple(as_drawn(bench)),
        bench.dangers,
        tuple(remarks(bench)),
        tuple(_numbered(sections)),
    )


def _section(bench: Bench, stage: Stage, said: set[str]) -> Iterator[Section]:
    """One stage; none where nothing is to be read, or told that ``said`` does not hold."""
    groups = []
    for group in _groups(bench, stage):
        if not group.readings:
            # Why readings are missing need not be told of every stage anew.
            notes = tuple(note for note in group.notes if note not in said)
            said.update(notes)
            groups.append(group._replace(notes=notes))
        else:
            groups.append(group)
    groups = [group for group in groups if group.readings or group.notes]
    if groups:
        # Nobody is told to bring a unit where nothing is to be read.
        steps = set_up(bench, stage) if any(group.readings for group in groups) else ()
        yield Section(stage, TITLES[stage], tuple(steps), tuple(groups))


def _groups(bench: Bench, stage: Stage) -> Iterator[Group]:
    if stage is Stage.RUN:
        yield from control_groups(bench, stage)
        yield unit_group(bench, stage)
    else:
        yield unit_group(bench, stage)
        yield from control_groups(bench, stage)


def _numbered(sections: Iterable[Section]) -> Iterator[Section]:
    """The sections with their readings numbered through."""
    step = 0
    for section in sections:
        groups = []
        for group in section.groups:
            readings = []
            for reading in group.readings:
                step += 1
                readings.append(reading._replace(step=step))
            groups.append(group._replace(readings=tuple(readings)))
        yield section._replace(groups=tuple(groups))
