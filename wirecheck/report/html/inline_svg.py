"""A sheet as part of a page: parsed and written anew, its ids apart from those of the others."""

from __future__ import annotations

from xml.etree import ElementTree as ET

_SVG = "http://www.w3.org/2000/svg"
_XLINK = "http://www.w3.org/1999/xlink"


def inline_svg(drawn: bytes, prefix: str, label: str) -> str:
    """A finished SVG file as an element to stand in HTML.

    Args:
        drawn: the file, as the drawing engine gives it; it is our own, so it is well-formed.
        prefix: of its ids.
        label: what a reader hears who cannot see it.
    """
    ET.register_namespace("", _SVG)
    ET.register_namespace("xlink", _XLINK)
    # The text is what our own engine wrote a moment ago: no entity in it but those of XML.
    root = ET.fromstring(drawn.decode("utf-8"))  # noqa: S314
    for element in root.iter():
        # A page may forbid styles that stand in elements; attributes say the same.
        for declaration in filter(None, element.attrib.pop("style", "").split(";")):
            named, _colon, value = declaration.partition(":")
            element.set(named.strip(), value.strip())
        name = element.attrib.pop("id", "")
        # The drawing as a whole has one too, the same in every file.
        if name and element.get("class") != "graph":
            element.set("id", f"{prefix}-{name}")
    for size in ("width", "height"):
        root.attrib.pop(size, None)
    root.set("role", "img")
    root.set("aria-label", label)
    return ET.tostring(root, encoding="unicode")
