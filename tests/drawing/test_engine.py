"""Graphviz is found, run without a shell, limited in time, and its failures are told plainly."""

import stat
import sys
import time
from pathlib import Path

import pytest

from tests.drawing.picture import pixels
from wirecheck.drawing import engine
from wirecheck.drawing.canvas import Canvas, Stroke
from wirecheck.drawing.engine import DrawingError
from wirecheck.drawing.geometry import Point


@pytest.fixture
def sheet() -> Canvas:
    canvas = Canvas(144, 72)
    canvas.line([Point(0, 36), Point(144, 36)], Stroke(width_pt=2))
    return canvas


def _program(folder: Path, body: str) -> Path:
    path = folder / "stand in; rm -rf x"
    path.write_text(f"#!{sys.executable}\n{body}\n")
    path.chmod(path.stat().st_mode | stat.S_IEXEC)
    return path


def test_the_embedded_engine_is_found_in_this_environment() -> None:
    assert engine.program("embedded").stem == "graphviz-pure"


def test_a_png_has_the_resolution_asked_for(sheet: Canvas) -> None:
    for dpi in (72, 144, 300):
        picture = pixels(engine.render(sheet, "png", dpi=dpi))
        assert (picture.width, picture.height) == (2 * dpi, dpi)


def test_a_png_is_sharp(sheet: Canvas) -> None:
    """A line two points wide is four pixels at 144 dpi: dark rows with white ones beside them."""
    picture = pixels(engine.render(sheet, "png", dpi=144))
    dark = [row for row in range(picture.height) if picture.is_dark(144, row)]
    assert dark == [70, 71, 72, 73]


def test_pdf_needs_a_system_graphviz(sheet: Canvas) -> None:
    with pytest.raises(DrawingError, match="embedded engine draws SVG and PNG, not PDF"):
        engine.render(sheet, "pdf")


def test_an_unknown_format_is_refused(sheet: Canvas) -> None:
    with pytest.raises(DrawingError, match="no drawing format 'gif'"):
        engine.render(sheet, "gif")  # type: ignore[arg-type]


def test_a_missing_system_graphviz_is_told(
    sheet: Canvas, monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    monkeypatch.setenv("PATH", str(tmp_path))
    with pytest.raises(DrawingError, match="no Graphviz is installed on this machine"):
        engine.render(sheet, "svg", engine="system")


def test_a_system_graphviz_is_used_and_gives_pdf(
    sheet: Canvas, monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    told = tmp_path / "told"
    stand_in = _program(
        tmp_path,
        f"import sys; open({str(told)!r}, 'w').write(' '.join(sys.argv[1:]));"
        "sys.stdin.read(); print('%PDF', end='')",
    )
    stand_in.rename(tmp_path / "dot")
    monkeypatch.setenv("PATH", str(tmp_path))
    assert engine.render(sheet, "pdf", engine="system") == b"%PDF"
    assert told.read_text() == "-Kneato -n2 -Tpdf"


def test_a_missing_embedded_engine_is_told(
    sheet: Canvas, monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    monkeypatch.setattr(engine, "EMBEDDED_PROGRAM", "graphviz-that-is-not-there")
    monkeypatch.setenv("PATH", str(tmp_path))
    engine.embedded_program.cache_clear()
    try:
        with pytest.raises(DrawingError, match="install it with: python -m pip install"):
            engine.render(sheet, "svg")
    finally:
        engine.embedded_program.cache_clear()


@pytest.mark.parametrize(
    ("body", "told"),
    [
        (
            "import sys; print('Warning: x\\nError: bad thing', file=sys.stderr); sys.exit(3)",
            "bad thing",
        ),
        ("import sys; sys.exit(1)", "no reason"),
        ("import time; time.sleep(60)", "longer than 0.3 s"),
    ],
)
def test_a_failing_engine_is_told(
    sheet: Canvas, monkeypatch: pytest.MonkeyPatch, tmp_path: Path, body: str, told: str
) -> None:
    stand_in = _program(tmp_path, body)
    monkeypatch.setattr(engine, "embedded_program", lambda: stand_in)
    limit_s = 0.3 if "sleep" in body else 20
    started = time.monotonic()
    with pytest.raises(DrawingError, match=told):
        engine.render(sheet, "svg", time_limit_s=limit_s)
    assert time.monotonic() - started < 15


def test_a_program_that_does_not_run_is_told(
    sheet: Canvas, monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    broken = tmp_path / "engine"
    broken.write_bytes(b"\x7fnot a program")
    monkeypatch.setattr(engine, "embedded_program", lambda: broken)
    with pytest.raises(DrawingError, match="does not run"):
        engine.render(sheet, "svg")
    broken.unlink()
    with pytest.raises(DrawingError, match="is gone"):
        engine.render(sheet, "svg")
