"""Three answers: a coil at low volts is shut, may open, or opens; and which of them counts.

Whoever looks for danger counts *may* as yes, whoever asks whether a unit works counts it as no.
"""

from __future__ import annotations

from enum import Enum

from wirecheck.model.diagram import Part
from wirecheck.model.quantity import Quantity

#: Shares of the rated volts (common practice, no source): shut below the first, opens from the
#: second up; an open one is sure to stay above the third, sure to drop out below the fourth.
MAY_OPEN, OPENS = 0.40, 0.85
STAYS, DROPS_OUT = 0.50, 0.25


class View(Enum):
    """Which answer counts: OPERATION takes *may* for no, DANGER for yes."""

    OPERATION = "operation"
    DANGER = "danger"


class Answer(Enum):
    """Whether something happens."""

    NO = "no"
    MAY = "may"
    YES = "yes"

    def counts(self, view: View) -> bool:
        """Whether it is taken to happen."""
        return self is Answer.YES or (self is Answer.MAY and view is View.DANGER)


def coil_answer(part: Part, volts: float, rated: float, *, is_open: bool) -> Answer:
    """Whether a coil, operator or motor of ``rated`` volts acts at ``volts``.

    Args:
        part: whose ``opens`` and ``drops-out`` attributes hold, in percent, where it has them.
        volts: across the coil, rms.
        rated: its rated volts.
        is_open: it has acted already, so the volts at which it lets go count.
    """
    if is_open:
        low, high = _band(part, "drops-out", DROPS_OUT, STAYS)
    else:
        low, high = _band(part, "opens", MAY_OPEN, OPENS)
    share = volts / rated if rated else 0.0
    if share >= high:
        return Answer.YES
    return Answer.MAY if share >= low else Answer.NO


def _band(part: Part, name: str, low: float, high: float) -> tuple[float, float]:
    value = part.values.get(name)
    if isinstance(value, Quantity):
        return value.low_base / 100, value.high_base / 100
    return low, high
