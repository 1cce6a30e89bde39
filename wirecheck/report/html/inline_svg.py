"""A sheet as part of a page: parsed and written anew, its ids apart from those of the others."""

from __future__ import annotations

import re
from typing import Final
from xml.etree import ElementTree as ET

_SVG: Final = "http://www.w3.org/2000/svg"
_XLINK: Final = "http://www.w3.org/1999/xlink"
_REFERENCE: Final = re.compile(r"url\(#([^)]+)\)")
_DECLARATION: Final = re.compile(r"([\w-]+)\s*:\s*([^;}]+)")


def inline_svg(drawn: bytes, prefix: str, label: str) -> str:
    """A finished SVG file as an element to stand in HTML.

    A page may forbid styles, so that everything they say is said by attributes.

    Args:
        drawn: the file, as our own drawing gives it, so that it is well-formed.
        prefix: of its ids.
        label: what a reader hears who cannot see it.
    """
    ET.register_namespace("", _SVG)
    ET.register_namespace("xlink", _XLINK)
    # The text is what our own engine wrote a moment ago: no entity in it but those of XML.
    root = ET.fromstring(drawn.decode("utf-8"))  # noqa: S314
    for element in list(root.iter()):
        for child in element.findall(f"{{{_SVG}}}style"):
            _declare(root, child.text or "")
            element.remove(child)
        _declare(element, element.attrib.pop("style", ""))
        _name_apart(element, prefix)
    for size in ("width", "height"):
        root.attrib.pop(size, None)
    root.set("role", "img")
    root.set("aria-label", label)
    return ET.tostring(root, encoding="unicode")


def _declare(element: ET.Element, style: str) -> None:
    """Say by attributes what a style declares."""
    for name, value in _DECLARATION.findall(style):
        element.set(name, value.strip())


def _name_apart(element: ET.Element, prefix: str) -> None:
    """Put a prefix before an element's id and before the ids it refers to."""
    name = element.attrib.pop("id", "")
    # The drawing as a whole has one too, the same in every file.
    if name and element.get("class") != "graph":
        element.set("id", f"{prefix}-{name}")
    for attribute, value in element.items():
        if attribute in ("href", f"{{{_XLINK}}}href") and value.startswith("#"):
            element.set(attribute, f"#{prefix}-{value[1:]}")
        elif "url(#" in value:
            element.set(attribute, _REFERENCE.sub(rf"url(#{prefix}-\1)", value))
