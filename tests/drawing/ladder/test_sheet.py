"""The ladder sheet of any diagram: complete, legible, literal, the same every time."""

from itertools import combinations

import pytest
from hypothesis import given, settings

from tests.drawing.ladder.networks import HEATER, any_wiring, diagram, unmarked
from tests.drawing.picture import svg_tree
from wirecheck.check.engine import Checked, check
from wirecheck.drawing import dot_source, engine
from wirecheck.drawing.canvas import Canvas, Layer, Lettering, Path, Shape
from wirecheck.drawing.geometry import Box
from wirecheck.drawing.ladder import ladder_sheet
from wirecheck.drawing.ladder.plan import plan

RELAY = """
part t is transformer
part a is high-limit
part b is pressure-switch
part cr is relay
part green is lamp: 24 V
part red is lamp: 24 V
wire t.R to a to b to cr.A
wire cr.B to t.C
wire t.R to cr.COM
wire cr.NO to green to t.C
wire cr.NC to red to t.C
"""


def _letterings(sheet: Canvas) -> list[Lettering]:
    return [item for item in sheet.in_order() if isinstance(item, Lettering)]


def _words(sheet: Canvas) -> list[str]:
    return [item.text for item in _letterings(sheet)]


def _ids(sheet: Canvas) -> set[str]:
    return {item.tag.id for item in sheet.in_order()}


def _overlaps(sheet: Canvas) -> list[tuple[str, str]]:
    """Return lettering that lies on other lettering; marks of findings have a ring of their own."""
    placed = [(i.text, i.bounds.grown(-0.6)) for i in _letterings(sheet) if i.layer is Layer.TEXT]
    return [
        (one, other)
        for (one, here), (other, there) in combinations(placed, 2)
        if here.overlaps(there, slack=0.8)
    ]


@settings(max_examples=40, deadline=None)
@given(any_wiring())
def test_any_diagram_is_drawn_whole_and_legibly(text: str) -> None:
    """No exception, no lead missing, nothing lettered over anything else, all on the paper."""
    checked = unmarked(text)
    sheet = ladder_sheet(checked)
    for number in range(len(checked.diagram.leads)):
        assert f"ladder-lead-{number}" in _ids(sheet)
    assert _overlaps(sheet) == []
    paper = Box(0, 0, sheet.width, sheet.height)
    assert all(paper.holds(item.bounds) for item in sheet.in_order())


@pytest.mark.parametrize("text", ["", 'diagram "only a title"', "part a is relay", HEATER])
def test_few_or_no_parts_give_a_sheet(text: str) -> None:
    assert engine.render(ladder_sheet(unmarked(text)), "svg").startswith(b"<?xml")


def test_every_part_of_the_heater_can_be_found_on_the_sheet() -> None:
    ids = _ids(ladder_sheet(unmarked(HEATER)))
    wanted = {"source-line", "source-xfmr", "part-xfmr-primary", "part-limit", "part-stat-heat"}
    wanted |= {"block-box", "part-box-K1", "part-box-K2", "part-valve-main operator"}
    wanted |= {"block-pilot", "part-pilot-spark", "part-pilot-flame"}
    assert {f"ladder-{name}".replace(" ", "_20_") for name in wanted} <= ids


def test_the_safeties_are_marked() -> None:
    sheet = ladder_sheet(unmarked(HEATER))
    marked = [item for item in sheet.in_order() if "safety" in item.tag.classes]
    assert len(marked) == 1
    assert "black square" in " ".join(_words(sheet))


def test_terminals_of_the_control_stand_on_the_rim_of_its_block() -> None:
    sheet = ladder_sheet(unmarked(HEATER))
    items = sheet.in_order()
    rim = next(item.bounds for item in items if item.tag.id == "ladder-block-box")
    terminals = {
        item.tag.title: item.bounds.centre
        for item in items
        if isinstance(item, Shape) and "terminal" in item.tag.classes
    }
    assert terminals["box.TH"].x == pytest.approx(rim.left, abs=1)
    for name in ("box.COM", "box.PV", "box.MV"):
        assert terminals[name].x == pytest.approx(rim.right, abs=1)


def test_beside_a_coil_stand_the_lines_of_its_contacts_a_break_contact_underlined() -> None:
    """After the book's relay circuits: one rung works the relay, two are worked by it."""
    sheet = ladder_sheet(unmarked(RELAY))
    coil = next(item.bounds for item in sheet.in_order() if item.tag.id == "ladder-part-cr-coil")
    beside = [
        item
        for item in _letterings(sheet)
        if item.at.x > coil.right + 20 and abs(item.at.y - coil.centre.y) < 1
    ]
    assert [item.text for item in beside] == ["2", "3"]
    under = [
        item.bounds
        for item in sheet.in_order()
        if isinstance(item, Path) and item.bounds.centre.y > coil.centre.y
    ]
    make, broken = (item.bounds for item in beside)
    assert any(_is_under(line, broken) for line in under)
    assert not any(_is_under(line, make) for line in under)


def _is_under(line: Box, letters: Box) -> bool:
    near = abs(line.centre.y - letters.bottom) < 2
    return near and abs(line.centre.x - letters.centre.x) < 1 and line.width < letters.width + 3


def test_wire_numbers_are_one_for_a_net_and_typed_ones_are_kept() -> None:
    sheet = ladder_sheet(unmarked(RELAY.replace("to cr.A", "to cr.A: number H7")))
    words = _words(sheet)
    assert "H7" in words
    assert words.count("H7") >= 2
    leads = [text for text in words if text.startswith("t.R to")]
    assert len(leads) == 2


def test_a_finding_is_marked_where_it_is_and_listed_at_the_foot() -> None:
    found = check(diagram(HEATER.replace("wire box.GND to pilot.HOOD", "")))
    names = [finding.rule for finding in found.findings]
    sheet = ladder_sheet(found)
    assert "burner-ground-missing" in names
    number = names.index("burner-ground-missing") + 1
    ids = _ids(sheet)
    assert {f"ladder-mark-{number}", f"ladder-listed-{number}"} <= ids
    terminal = next(
        item.bounds.centre
        for item in sheet.in_order()
        if isinstance(item, Shape) and item.tag.title == "box.GND"
    )
    mark = next(i.bounds.centre for i in sheet.in_order() if i.tag.id == f"ladder-mark-{number}")
    assert abs(mark.x - terminal.x) + abs(mark.y - terminal.y) < 90


def test_a_missing_way_back_is_said() -> None:
    words = _words(ladder_sheet(unmarked(HEATER.replace("wire box.GND to pilot.HOOD", ""))))
    assert "no lead joins box.GND and pilot.HOOD" in words
    words = _words(ladder_sheet(unmarked(HEATER)))
    assert "way back: box.GND to pilot.HOOD" in words


def test_metal_that_carries_the_current_stands_in_its_rung() -> None:
    earthed = HEATER.replace("wire xfmr.C  to box.COM", "").replace(
        "pilot-burner: two-rod", "pilot-burner: two-rod, bond solid"
    )
    sheet = ladder_sheet(unmarked(earthed))
    assert any("symbol-metal-bond" in item.tag.classes for item in sheet.in_order())


def test_a_long_label_takes_two_lines() -> None:
    text = """
    part line is mains
    part bc is boiler-control
    part t is transformer
    part k is relay
    wire line.L1 to bc.L1
    wire line.N to bc.N
    wire t.R to bc.BURNER-1
    wire bc.BURNER-2 to k.A
    wire k.B to t.C
    """
    words = _words(ladder_sheet(unmarked(text)))
    assert words.count("BURNER-") == 2
    assert "BETWEEN" not in words


def test_names_and_labels_are_drawn_literally() -> None:
    nasty = r'a "b" <script> & \N \G'
    quoted = '"' + nasty.replace('"', '""') + '"'
    text = f'part {quoted} is high-limit\nlabels {quoted}: 1 as "<&\\l>"\nwire {quoted} to open'
    sheet = ladder_sheet(unmarked(f"diagram {quoted}\npart t is transformer\n{text}\n"))
    drawn = ["".join(node.itertext()) for node in svg_tree(sheet).iter()]
    assert nasty in drawn


def test_the_same_diagram_gives_the_same_drawing() -> None:
    def source() -> str:
        return dot_source.write(ladder_sheet(_checked(), date="2024-05-01"))

    def _checked() -> Checked:
        return check(diagram(HEATER))

    assert source() == source()


def test_forty_parts_are_drawn_at_full_size_on_paper_that_exists() -> None:
    zones = "\n".join(
        f"part s{n} is thermostat\npart z{n} is zone-valve\n"
        f"wire xfmr.R to s{n} to z{n}.M1\nwire z{n}.M2 to xfmr.C"
        for n in range(18)
    )
    checked = unmarked(HEATER + zones)
    assert len(checked.diagram.parts) > 40
    sheet = ladder_sheet(checked)
    assert (sheet.width, sheet.height) in {(1683.8, 1190.6), (1190.6, 1683.8)}
    assert min(item.style.size_pt for item in _letterings(sheet)) >= 6
    assert sum(len(section.sources) for section in plan(checked.nets).sections) == 2


def test_a_fuse_shows_its_rating_and_a_limit_how_it_is_reset() -> None:
    sheet = ladder_sheet(
        unmarked(
            "part t is transformer\npart f is fuse: 3 A\npart hl is high-limit: manual\n"
            "part k is relay\nwire t.R to f to hl to k to t.C"
        )
    )
    assert {"fuse, 3 A", "high limit, manual reset"} <= set(_words(sheet))


def test_a_long_terminal_keeps_clear_of_the_block_behind_it() -> None:
    sheet = ladder_sheet(
        unmarked(
            "part t is transformer\npart c is pilot-ignition-control\npart d is vent-damper\n"
            "part s is thermostat\nwire t.R to s to c.TH\nwire t.R to c.24V\nwire t.C to c.COM\n"
            "plug c to d: D-HOT to HOT, D-CALL to CALL, D-PROVED to PROVED, D-COM to COM\n"
            "part v is gas-valve-3-wire\nplug c to v: PV, MV, VC to C"
        )
    )
    rim = next(item.bounds for item in sheet.in_order() if item.tag.id == "ladder-block-c")
    (proved,) = (item.bounds for item in _letterings(sheet) if item.text == "PROVED")
    assert proved.right < rim.left


def test_the_letters_of_a_coil_stay_inside_its_circle() -> None:
    sheet = ladder_sheet(
        unmarked("part t is transformer\npart k is contactor\nwire t.R to k to t.C")
    )
    (letters,) = (item.bounds for item in _letterings(sheet) if item.text == "CON")
    assert letters.width < 17


def test_the_bond_of_the_burner_is_lettered_beside_its_sign() -> None:
    sheet = ladder_sheet(unmarked(HEATER.replace("\nwire box.GND", "\n# wire box.GND")))
    words = [item.bounds for item in _letterings(sheet) if item.text.startswith("touches the")]
    signs = [item.bounds for item in sheet.in_order() if "bond" in item.tag.classes]
    assert words
    assert not any(one.overlaps(sign) for one in words for sign in signs)
