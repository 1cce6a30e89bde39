"""Words that several rules of this chapter say alike."""

from __future__ import annotations

from typing import Final

#: For a burner that can fire into a shut vent.
SHUT_VENT: Final = (
    "Shut off power and gas before moving leads; a burner that fires with the damper shut fills "
    "the room with combustion products. Prove afterwards that it does not light before the damper "
    "is open."
)

#: For a constant 24 V that does not reach a damper which a spring shuts.
SAME_WITH_SPRING: Final = (
    "It works all the same with a damper of this kind, shut by a spring; the maker's harness has "
    "this lead."
)
