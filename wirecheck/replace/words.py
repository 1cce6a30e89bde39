"""What every report and sheet of a replacement says: the devices, and what to do afterwards."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from wirecheck.correct.proof import Proof
from wirecheck.model.finding import Breaks
from wirecheck.replace.crossings import Crossing
from wirecheck.replace.plan import Plan
from wirecheck.replace.replacement import Replacement

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


def old_mistakes(done: Replacement) -> str:
    """That the wiring as found has mistakes of its own, and what to do first; "" if it has none."""
    if done.before.holds:
        return ""
    if done.proof.holds:
        return f"The old wiring has {_mistakes(done.before)} of its own; the new one is without it."
    marked = " Rows marked ! carry it over." if any(each.wrong for each in done.crossings) else ""
    return (
        f"The old wiring has {_mistakes(done.before)} of its own: correct it first (wirecheck"
        f" correct), then replace. This replacement lands the leads as they were found.{marked}"
    )


def _mistakes(before: Proof) -> str:
    """What is wrong as found, and the worst that it breaks."""
    if not before.grave:
        return "a mistake that shows when it runs"
    worst = max(finding.breaks for finding in before.grave)
    what = "a safety mistake" if worst is Breaks.SAFETY else "an operating mistake"
    return what if len(before.grave) == 1 else f"{len(before.grave)} mistakes ({what} among them)"


def cross_rows(done: Replacement) -> list[tuple[str, ...]]:
    """The cross-reference: wire, colour, other end, what it comes off, where it goes.

    A lead that is left over stands in one row, and so does one that keeps the names of both ends.
    """
    rows: list[tuple[str, ...]] = []
    shown: set[int] = set()
    for each in done.crossings:
        if each.lead in shown:
            continue
        both = [other for other in done.crossings if other.lead == each.lead]
        if all(other.to in ("", other.off) and not other.wrong for other in both):
            shown.add(each.lead)
        rows.append((each.wire, each.colour, _other_end(each, both, shown), each.off, _goes(each)))
    return rows


def _other_end(each: Crossing, both: list[Crossing], shown: set[int]) -> str:
    """The other end as found; where one row stands for both ends, that it moves too."""
    if each.lead in shown and each.to and len(both) > 1:
        return f"{each.other}, landed again too"
    return each.other


def _goes(each: Crossing) -> str:
    if not each.to:
        return "left over"
    return f"{each.to} ! {each.wrong}" if each.wrong else each.to
