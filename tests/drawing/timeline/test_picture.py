"""The sheet: both formats, the same bytes every time, and odd names."""

from __future__ import annotations

import struct
from xml.etree import ElementTree as ET

import pytest

from tests.sequence.heater import DAMPERED, DIRECT, HEATER, INDUCED, changed, diagram, ran
from wirecheck import draw_timeline, simulate
from wirecheck.drawing.timeline.paint import paint
from wirecheck.sequence.answers import View
from wirecheck.sequence.script import heat_call

STATES = (
    "trial", "proving", "run", "wait", "damper-opening", "lockout", "held", "lighting",
    "unlit gas", "none", "may", "chatters", "opening", "closing", "false", "open", "on",
)  # fmt: skip


@pytest.mark.parametrize("text", [HEATER, DAMPERED, DIRECT, INDUCED])
@pytest.mark.parametrize("view", View)
def test_the_svg_is_a_landscape_sheet(text: str, view: View) -> None:
    root = ET.fromstring(draw_timeline(ran(text, view=view)))  # noqa: S314 - it is our own
    assert root.get("width") == "842pt"
    assert float(str(root.get("height")).removesuffix("pt")) == pytest.approx(595, abs=0.5)


def test_the_png_is_as_large_at_150_dots_an_inch() -> None:
    png = draw_timeline(ran(HEATER), "png")
    assert png.startswith(b"\x89PNG")
    assert struct.unpack(">II", png[16:24]) == (1754, 1239)


@pytest.mark.parametrize("file_format", ["svg", "png"])
def test_the_same_run_gives_the_same_bytes(file_format: str) -> None:
    def drawn() -> bytes:
        run = simulate(diagram(DAMPERED))
        return draw_timeline(run, "svg" if file_format == "svg" else "png")

    assert drawn() == drawn()


def test_no_clock_stands_in_the_svg() -> None:
    assert b"<dc:date>" not in draw_timeline(ran(HEATER))


def test_a_sheet_with_very_many_tracks_grows() -> None:
    many = "".join(f"part k{n} is relay\nwire stat.W to k{n} to xfmr.C\n" for n in range(40))
    text = changed(HEATER, ("is transformer", "is transformer: rating 500 VA")) + many
    root = ET.fromstring(draw_timeline(ran(text)))  # noqa: S314 - it is our own
    assert float(str(root.get("height")).removesuffix("pt")) > 595


@pytest.mark.parametrize(
    "title", ["$x^2$ & <heater>", "Ofen Süd 3 µA", "\u6696\u623f", "x" * 300, "\u202eab\x1b[2J"]
)
def test_any_title_can_be_drawn(title: str) -> None:
    built = diagram(HEATER)
    odd = diagram(f'diagram "{title}"\n{HEATER}') if title.isprintable() else built
    ET.fromstring(draw_timeline(simulate(odd, heat_call(length_s=60))))  # noqa: S314


def test_a_diagram_without_a_control_can_be_drawn() -> None:
    assert draw_timeline(ran("part stat is thermostat\n"))


def test_no_two_states_of_one_track_look_alike_but_for_their_colour() -> None:
    """Hatching, a dashed edge or no filling tells them apart where the name has no room."""
    looks: dict[tuple[str, bool], list[str]] = {}
    for state in STATES:
        look = paint("box", state, moves=False)
        looks.setdefault((look.hatch, look.dashed), []).append(state)
    phases = {"trial", "proving", "run", "wait", "damper-opening", "lockout", "held"}
    for alike in looks.values():
        assert len(phases & set(alike)) <= 1
