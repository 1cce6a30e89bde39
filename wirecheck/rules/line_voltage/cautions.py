"""The usual caution of this chapter."""

from __future__ import annotations

from typing import Final

#: Where line voltage is, or has got to.
LINE_VOLTAGE: Final = (
    "Line voltage kills: switch it off at the disconnect, lock it, and measure that it is off "
    "before touching a lead."
)
