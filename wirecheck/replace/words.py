"""What every report and sheet of a replacement says: the devices, and what to do afterwards."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from wirecheck.replace.plan import Plan

#: What a replacement asks for besides the usual cautions (common practice, no source).
AFTERWARDS: Final = (
    "Mark every lead before it comes off: the old label tells nothing on the new device.",
    "A lead that is left over is taken out, or capped and tied back.",
    "Turn gas and power on only when every lead is landed; leak-test each joint that was opened.",
    "Prove several full cycles, the safeties one by one, and a lockout with the gas shut.",
    "Local codes, the makers' instructions and licensed people decide what may replace what.",
)


def device_lines(plan: Plan) -> Iterator[str]:
    """What comes out and what goes in, device by device."""
    for swap in plan.request.swaps:
        old, new = swap.old.kind.title, swap.new.part.kind.title
        what = f"{old} out, {new} in" if old != new else f"{old} out, another in"
        yield f"{swap.old.name}: {what} ({swap.new.stated})"
    for device in plan.request.fitted.values():
        yield f"{device.name}: {device.part.kind.title} goes in ({device.stated})"
    for part in plan.out:
        yield f"{part.name}: {part.kind.title} comes out"
