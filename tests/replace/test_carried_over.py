"""A mistake of the old wiring goes with its leads: it is told first, and its rows are marked."""

from __future__ import annotations

import pytest

from tests.replace.units import EXAMPLES, MILLIVOLT, PILOT_SYSTEM, example, replaced
from wirecheck.replace.call_told import call_told
from wirecheck.replace.words import cross_rows, old_mistakes

OTHER = (EXAMPLES / "replacing" / "other-control.parts").read_text(encoding="utf-8")
CASES = {
    "sense-on-spark": {("pilot.ROD", "box.HV"): "wrong as found, belongs on box.FS"},
    "common-exchanged": {
        ("stat.W", "box.C"): "wrong as found, belongs on box.W",
        ("xfmr.C", "box.W"): "wrong as found, belongs on box.C",
    },
    "limit-in-common": {
        ("limit.2", "box.C"): "as found, and part of a mistake: read [safety-in-common]"
    },
    "no-burner-ground": {},
    "furnace-room-heater": {},
}


@pytest.mark.parametrize("name", CASES)
def test_the_rows_that_carry_a_mistake_over_are_marked(name: str) -> None:
    done = replaced(example(name), OTHER)
    marked = {(each.other, each.to): each.wrong for each in done.crossings if each.wrong}
    assert marked == CASES[name]
    shown = [row[-1] for row in cross_rows(done) if "!" in row[-1]]
    assert shown == [f"{to} ! {words}" for (_, to), words in CASES[name].items()]
    assert ("Rows marked ! carry it over" in old_mistakes(done)) == bool(marked)


def test_the_old_mistake_is_told_with_what_it_breaks() -> None:
    safety = replaced(example("sense-on-spark"), OTHER)
    assert old_mistakes(safety).startswith("The old wiring has a safety mistake of its own: corr")
    operation = replaced(example("no-burner-ground"), OTHER)
    assert old_mistakes(operation).startswith("The old wiring has an operating mistake of its own:")
    assert old_mistakes(replaced(example("furnace-room-heater"), OTHER)) == ""


def test_a_call_is_told_with_its_danger() -> None:
    lines = call_told(example("common-exchanged"))
    assert any(line.startswith("box: lights and runs") for line in lines)
    assert any(
        line.startswith("danger, where metal") and "xfmr burns out" in line for line in lines
    )
    assert not any("danger" in line for line in call_told(example("furnace-room-heater")))


def test_a_lead_stands_once_where_one_row_says_all() -> None:
    """Left over, or landed on new devices at terminals of the same names."""
    millivolt = replaced(MILLIVOLT, f"{PILOT_SYSTEM}part xfmr is transformer\n")
    rows = cross_rows(millivolt)
    assert sum(row[-1] == "left over" for row in rows) == len(millivolt.left_over) == 2
    both = replaced(
        example("furnace-room-heater"),
        "part box is direct-ignition-control\npart pilot is direct-burner\n",
    )
    sense = [row for row in cross_rows(both) if "SENSE" in " ".join(row)]
    assert [row[2:] for row in sense] == [
        ("pilot.ROD, landed again too", "box.SENSE", "box.SENSE"),
    ]
    ground = [row for row in cross_rows(both) if "GND" in " ".join(row)]
    assert len(ground) == 2
