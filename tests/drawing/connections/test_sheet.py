"""The connection sheet shows every lead where it lands, and nothing lies across anything else."""

from itertools import pairwise
from typing import NamedTuple

import pytest

from tests.drawing.connections.clearances import collisions, leads, parts
from tests.drawing.connections.diagrams import FURNACE, HEATER, at_random, finding, miswired, read
from tests.drawing.picture import svg_tree, texts, titles
from wirecheck.check.engine import Checked
from wirecheck.drawing import engine
from wirecheck.drawing.canvas import Canvas, Lettering, Shape
from wirecheck.drawing.connections import connection_sheet
from wirecheck.drawing.geometry import Box, Point, box_round
from wirecheck.drawing.ink import RIM
from wirecheck.model.diagram import EARTH, OPEN_END, UNKNOWN_END, Terminal


def _lettered(page: Canvas) -> list[str]:
    return [item.text for item in page.in_order() if isinstance(item, Lettering)]


def _faults(checked: Checked) -> list[str]:
    """What is wrong with the sheet of a diagram: collisions, or something left out."""
    page = connection_sheet(checked)
    diagram = checked.diagram
    faults = collisions(page)
    wanted = {f"connections-lead-{number}" for number in range(len(diagram.leads))}
    if leads(page).keys() != wanted:
        faults.append(f"leads missing or too many: {leads(page).keys() ^ wanted}")
    if len(parts(page)) != len(diagram.parts):
        faults.append(f"{len(parts(page))} of {len(diagram.parts)} parts drawn")
    return [*faults, *_misplaced_ends(page, checked)]


def _misplaced_ends(page: Canvas, checked: Checked) -> list[str]:
    """Leads whose ends are not on the pad of their terminal or on the dot of their splice."""
    diagram = checked.diagram
    pads: dict[str, list[Shape]] = {}
    for item in page.in_order():
        if isinstance(item, Shape) and {"terminal", "splice"} & set(item.tag.classes):
            pads.setdefault(item.tag.title.removeprefix("splice "), []).append(item)
    faults = []
    for number, lead in enumerate(diagram.leads):
        (line,) = leads(page)[f"connections-lead-{number}"]
        ends = [line.controls[0], line.controls[-1]]
        for terminal in (lead.a, lead.b):
            if terminal == EARTH or terminal.part in (OPEN_END, UNKNOWN_END):
                continue
            shown = diagram.show(terminal)
            if not any(_on(pad, end) for pad in pads[shown] for end in ends):
                faults.append(f"lead {number} does not reach {shown}")
    return faults


def _on(pad: Shape, end: Point) -> bool:
    room = pad.bounds.grown(0.5)
    return room.left <= end.x <= room.right and room.top <= end.y <= room.bottom


@pytest.mark.parametrize("text", [HEATER, FURNACE])
def test_a_typical_unit_is_drawn_cleanly(text: str) -> None:
    assert not _faults(read(text))


@pytest.mark.parametrize("seed", range(8))
def test_a_miswired_unit_is_drawn_cleanly(seed: int) -> None:
    assert not _faults(miswired(HEATER if seed % 2 else FURNACE, seed))


@pytest.mark.parametrize(
    ("count", "wires", "seed"),
    [(1, 3, 1), (2, 9, 2), (5, 0, 3), (9, 30, 4), (20, 25, 5), (40, 60, 6)],
)
def test_devices_wired_at_random_are_drawn_cleanly(count: int, wires: int, seed: int) -> None:
    assert not _faults(at_random(count, wires, seed))


@pytest.mark.parametrize(
    "text",
    [
        "",
        'note "nothing here"',
        "part stat is thermostat",
        "wire earth to open",
        "wire open to unknown: white",
        "splice alone",
        "splice one\nsplice two\nwire one to two\nwire one to two\nwire two to earth",
        "part a is terminal-strip\njumper a.1 to a.2 to a.3\nwire a.1 to a.3",
        "part a is high-limit\nwire a.1 to a.2\nwire a.2 to a.1",
    ],
)
def test_any_diagram_can_be_drawn(text: str) -> None:
    assert not _faults(read(text))


def test_the_same_diagram_gives_the_same_bytes() -> None:
    first, second = (
        engine.render(connection_sheet(read(FURNACE), "2024-05-01"), "svg") for _ in range(2)
    )
    assert first == second


def test_a_lead_can_be_found_by_its_number_and_says_its_ends() -> None:
    checked = read(HEATER)
    page = svg_tree(connection_sheet(checked))
    for number, lead in enumerate(checked.diagram.leads):
        (group,) = (g for g in page.iter() if g.get("id") == f"connections-lead-{number}")
        title = next(iter(group)).text
        assert title == checked.diagram.lead_name(lead)


def test_lettering_says_number_colour_gauge_and_what_was_found() -> None:
    words = set(_lettered(connection_sheet(read(FURNACE))))
    assert {"line BK 14", "RD", "WH/RD in run", "GNYE", "YE loose end", "not traced"} <= {
        text.replace(" 18", "") for text in words
    }
    assert "ignition" in words
    assert any("BROKEN" in text for text in words)


def test_one_wire_number_for_each_net() -> None:
    page = connection_sheet(read("part a is relay\nsplice s\nwire a.A to s to a.COM"))
    numbers = [text for text in _lettered(page) if text.isdigit()]
    assert numbers == ["1", "1", "1", "1"]


def test_a_typed_wire_number_is_kept() -> None:
    page = connection_sheet(read("part a is relay\nwire a.A to a.COM: number W7"))
    assert _lettered(page).count("W7") == 2


def test_spare_conductors_of_a_cable_are_counted() -> None:
    assert "Cable run: 18/5, 40 ft; 4 used, 1 spare." in texts(connection_sheet(read(FURNACE)))


def test_a_pale_lead_has_a_rim_and_a_tracer_is_drawn_over_it() -> None:
    page = connection_sheet(read("part a is relay\nwire a.A to a.COM: white/red"))
    (lowest,) = leads(page)["connections-lead-0"]
    over = [i for i in page.in_order() if "lead-0" in i.tag.classes]
    assert lowest.stroke.colour == RIM
    assert len(over) == 3


class _Sign(NamedTuple):
    end: str
    symbol: str


@pytest.mark.parametrize(
    "sign",
    [_Sign("earth", "earth"), _Sign("open", "open-end"), _Sign("unknown", "unknown-end")],
)
def test_an_end_on_no_device_has_its_sign(sign: _Sign) -> None:
    page = connection_sheet(read(f"part a is relay\nwire a.A to {sign.end}"))
    assert any(f"symbol-{sign.symbol}" in item.tag.classes for item in page.in_order())


@pytest.mark.parametrize("end", ["earth", "open", "unknown"])
def test_a_sign_points_away_from_the_device(end: str) -> None:
    """Two leads at two terminals of a relay leave at its two edges."""
    page = connection_sheet(read(f"part a is relay\nwire a.A to {end}\nwire a.B to {end}"))
    box = parts(page)["connections-part-a"]
    signs = [i.bounds for i in page.in_order() if "symbol" in i.tag.classes]
    assert any(sign.right < box.left for sign in signs)
    assert any(sign.left > box.right for sign in signs)
    for line in (line for lines in leads(page).values() for line in lines):
        foot = max(line.controls, key=lambda point: abs(point.x - box.centre.x))
        beyond = [sign for sign in signs if (sign.centre.x < box.left) == (foot.x < box.left)]
        outward = [abs(sign.centre.x - box.centre.x) for sign in beyond]
        assert min(outward) >= abs(foot.x - box.centre.x)


def test_a_plug_and_a_cable_are_drawn_round_their_leads() -> None:
    page = connection_sheet(read(FURNACE))
    held = [item for item in page.in_order() if {"plug", "cable"} & set(item.tag.classes)]
    lines = leads(page)
    assert sum("plug" in item.tag.classes for item in held) == 4
    for item in held:
        crossing = [
            name
            for name, (line, *_) in lines.items()
            if any(
                item.bounds.overlaps(box_round(piece).grown(0.1))
                for piece in pairwise(line.controls[::3])
            )
        ]
        assert crossing


HOSTILE = (
    'diagram "<script>alert(1)</script> & \\\\N"\n'
    'part "a ""b"" <i>& \\\\N" is terminal-strip\n'
    'labels "a ""b"" <i>& \\\\N": 1 as "<b>&amp;"\n'
    'wire "a ""b"" <i>& \\\\N".1 to "a ""b"" <i>& \\\\N".2: number "<u>&\\\\l"'
).replace("\\\\", "\\")


def test_hostile_lettering_stays_lettering() -> None:
    page = connection_sheet(read(HOSTILE))
    assert 'a "b" <i>& \\N' in texts(page)
    assert "<b>&amp;" in texts(page)
    assert "<u>&\\l" in texts(page)
    assert any("<script>" in title for title in titles(page))
    assert b"<script" not in engine.render(page, "svg")


def test_findings_are_marked_beside_their_terminals_and_listed() -> None:
    bare = read(HEATER)
    spoken_of = (
        finding(bare, at=("box.24V",)),
        finding(bare, leads=(4,), at=("limit.2",)),
        finding(bare, at=("pilot.HOOD",)),
        finding(bare),
    )
    page = connection_sheet(bare._replace(findings=spoken_of))
    assert not collisions(page)
    near = {1: "box.24V", 2: "limit.2", 3: "pilot.HOOD"}
    for number, shown in near.items():
        mark, pad = _item(page, f"connections-finding-{number}"), _pad(page, shown)
        assert abs(mark.centre.y - pad.centre.y) <= pad.height / 2
        assert abs(mark.centre.x - pad.centre.x) < 40
    assert parts(page)["connections-part-box"].overlaps(_item(page, "connections-finding-4"))
    listed = " ".join(texts(page))
    assert all(each.message in listed for each in spoken_of)


def _item(page: Canvas, name: str) -> Box:
    return next(item.bounds for item in page.in_order() if item.tag.id == name)


def _pad(page: Canvas, shown: str) -> Box:
    return next(
        item.bounds
        for item in page.in_order()
        if "terminal" in item.tag.classes and item.tag.title == shown
    )


@pytest.mark.parametrize("seed", range(3))
def test_many_findings_cover_nothing(seed: int) -> None:
    checked = miswired(FURNACE, seed)
    count = len(checked.diagram.leads)
    told = [finding(checked, leads=(number,)) for number in range(0, count, 2)]
    told += [finding(checked, at=("box.GND", "box.SENSE", "box.SPARK")), finding(checked)]
    assert not _faults(checked._replace(findings=tuple(told)))


def test_terminals_of_no_structure_are_left_out() -> None:
    """A point inside a device is no terminal: nothing can land on it."""
    checked = read("part box is pilot-ignition-control")
    inner = {
        name
        for name, spec in checked.diagram.parts["box"].structure.terminals.items()
        if spec.inner
    }
    shown = set(_lettered(connection_sheet(checked)))
    assert inner
    assert not inner & shown
    assert Terminal("box", "TH").name in shown


def test_a_kind_of_ones_own_says_what_it_is_made_from_and_a_choice_what_it_is_about() -> None:
    words = _lettered(
        connection_sheet(
            read("kind ctl is pilot-ignition-control: trial 90 s\npart c is ctl\n"
                 "part f is fan-limit-control: removed\nwire c.COM to earth")
        )
    )  # fmt: skip
    assert "pilot ignition control (ctl)" in " ".join(words)
    assert "link removed" in words
    assert any(word.startswith("trial 90 s") for word in words)


def test_a_lead_at_line_voltage_is_heavier_and_says_so() -> None:
    checked = read(
        "part l is mains\npart x is transformer\npart f is fuse\npart r is relay\n"
        "part b is blower\nwire l.L1 to f to x.L1\nwire l.N to x.N\nwire l.G to earth\n"
        "wire x.C to earth\nwire x.R to r to x.C\nwire l.L1 to r.COM..NO to b to l.N"
    )
    page = connection_sheet(checked)
    drawn = leads(page)
    widths = {
        checked.diagram.lead_name(lead): drawn[f"connections-lead-{number}"][0].stroke.width_pt
        for number, lead in enumerate(checked.diagram.leads)
    }
    low = {"x.C to earth", "x.R to r.A", "r.B to x.C", "l.G to earth"}
    assert {name for name, width in widths.items() if width == min(widths.values())} == low
    tagged = [text for text in _lettered(page) if text.split()[:1] == ["line"]]
    heading = 1  # “line supply”
    assert len(tagged) == 2 * (len(widths) - len(low)) + heading
