"""The usual cautions of the trade, as the rules print them where somebody can be hurt."""

from __future__ import annotations

from typing import Final

#: Whatever is moved.
MOVING_LEADS: Final = "Shut off power and gas before moving leads."

#: Where gas may have flowed unlit.
UNLIT_GAS: Final = (
    "Shut off power and gas before moving leads; wait about five minutes and smell for gas, low "
    "down for LP, before another trial."
)

#: Where the ignition voltage is, or has got to.
IGNITION_VOLTAGE: Final = (
    "Shut off power and gas before moving leads; while it sparks the ignition lead is at high "
    "voltage: keep hands and meter away from it."
)
