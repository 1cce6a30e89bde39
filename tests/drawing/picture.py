"""Read back what the engine drew: the elements of an SVG, the pixels of a PNG."""

import struct
import zlib
from typing import NamedTuple
from xml.etree import ElementTree as ET

from wirecheck.drawing import engine
from wirecheck.drawing.canvas import Canvas

SVG = "{http://www.w3.org/2000/svg}"


def svg_tree(canvas: Canvas) -> ET.Element:
    """Render a canvas and parse the SVG."""
    return ET.fromstring(engine.render(canvas, "svg"))  # noqa: S314 - it is our own


def groups(canvas: Canvas) -> list[ET.Element]:
    """Return the drawn items of a canvas from the bottom up, without the paper."""
    sheet = svg_tree(canvas).find(f"{SVG}g")
    assert sheet is not None
    return list(sheet.findall(f"{SVG}g"))[1:]


def texts(canvas: Canvas) -> list[str]:
    """Return everything lettered on a canvas, from the bottom up.

    Graphviz writes the second of two blanks as one that a browser does not drop.
    """
    lettered = svg_tree(canvas).iter(f"{SVG}text")
    return ["".join(text.itertext()).replace("\xa0", " ") for text in lettered]


def titles(canvas: Canvas) -> list[str]:
    """Return the titles of a canvas: its own and those of its items."""
    return [title.text or "" for title in svg_tree(canvas).iter(f"{SVG}title")]


class Pixels(NamedTuple):
    """A picture as rows of RGB bytes."""

    width: int
    height: int
    rows: list[bytes]

    def is_dark(self, x: int, y: int) -> bool:
        """Say whether a pixel is nearer to black than to white."""
        return sum(self.rows[y][3 * x : 3 * x + 3]) < 384


def pixels(png: bytes) -> Pixels:
    """Decode a PNG of eight bits a channel, with or without an alpha channel (which is dropped)."""
    place, data, header = 8, b"", b""
    while place < len(png):
        length, name = struct.unpack(">I4s", png[place : place + 8])
        body = png[place + 8 : place + 8 + length]
        header = body if name == b"IHDR" else header
        data += body if name == b"IDAT" else b""
        place += 12 + length
    width, height, depth, kind = struct.unpack(">IIBB", header[:10])
    channels = {2: 3, 6: 4}[kind]
    assert depth == 8
    raw, size, rows = zlib.decompress(data), width * channels, [bytes(width * channels)]
    for row in range(height):
        start = row * (size + 1)
        rows.append(_unfiltered(raw[start], raw[start + 1 : start + 1 + size], rows[-1], channels))
    return Pixels(width, height, [_without_alpha(row, channels) for row in rows[1:]])


def _without_alpha(row: bytes, channels: int) -> bytes:
    return b"".join(row[place : place + 3] for place in range(0, len(row), channels))


def _unfiltered(kind: int, row: bytes, above: bytes, channels: int) -> bytes:
    """Undo one of the five filters of the PNG specification."""
    out = bytearray(row)
    for place, value in enumerate(row):
        left = out[place - channels] if place >= channels else 0
        corner = above[place - channels] if place >= channels else 0
        up = above[place]
        guess = (0, left, up, (left + up) // 2, _paeth(left, up, corner))[kind]
        out[place] = (value + guess) & 255
    return bytes(out)


def _paeth(left: int, up: int, corner: int) -> int:
    estimate = left + up - corner
    return min((left, up, corner), key=lambda value: abs(estimate - value))
