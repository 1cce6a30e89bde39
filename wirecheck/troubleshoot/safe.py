"""What may be read at all: no power where that is deadly, no gas where it would be loose."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final, NamedTuple

from wirecheck.model.claim import Claim
from wirecheck.model.finding import Breaks, Finding
from wirecheck.sequence.no_go import NoGo
from wirecheck.troubleshoot.reading import Observation, Reading, Stage
from wirecheck.troubleshoot.symptoms import MAIN_NO_CALL, NO_CALL, UNCALLED

_GAS_STAGES: Final = (Stage.RUN, Stage.WARM)
#: What is seen of gas that nobody called for: the symptom, and the choice that says so.
_UNCALLED: Final = {"pilot": NO_CALL, "main": MAIN_NO_CALL, "ending": UNCALLED}
_VALVE_ITSELF: Final = (
    " If no volts reach its operators then, the gas valve itself does not shut: that is beyond this"
    " list, the cock stays shut and the valve is renewed."
)
_LOOSE_GAS: Final = (
    "Gas flows with no call: shut the gas cock now and keep it shut; all that follows is read with "
    f"it shut.{_VALVE_ITSELF}"
)
_PAST_SAFETY: Final = (
    "Gas passes what should stop it: shut the gas cock now and keep it shut until that is found; "
    f"all that follows is read with it shut.{_VALVE_ITSELF}"
)
_GAS: Final = ("main-flame", "main-valve", "pilot-flame", "pilot-valve")
_UNSAFE_DRAWING: Final = (
    "A safety finding stands in the drawing itself: the gas stays shut until it is mended; all "
    "that follows is read with it shut."
)


class Allowed(NamedTuple):
    """What may be done at the unit.

    Attributes:
        power, gas: whether it may be put under power, and run with the gas open.
        remarks: why not, in sentences.
    """

    power: bool = True
    gas: bool = True
    remarks: tuple[str, ...] = ()

    def allows(self, reading: Reading) -> bool:
        """Whether a reading may be made."""
        if reading.stage is Stage.OFF:
            return True
        return self.power and (self.gas or reading.stage not in _GAS_STAGES)

    def and_seen(self, observations: Sequence[Observation]) -> Allowed:
        """The same once it was seen that gas flows with no call."""
        for each in observations:
            if each.reading.claim is not None and _runs_past(each.reading.claim):
                return self._replace(gas=False, remarks=(*self.remarks, _PAST_SAFETY))
            loose = _UNCALLED.get(each.reading.about) if each.reading.kind == "watch" else None
            if loose is not None and each.low == loose:
                return self._replace(gas=False, remarks=(*self.remarks, _LOOSE_GAS))
        return self


def _runs_past(claim: Claim) -> bool:
    """Whether gas or flame was seen with a contact open, or with no call."""
    state = claim.state
    if state is None or not state.on or state.subject.signal not in _GAS:
        return False
    return any(not each.on and each.subject.signal in ("contact", "call") for each in claim.when)


def allowed(mistakes: Sequence[Finding], no_go: NoGo) -> Allowed:
    """What may be done at a unit wired as drawn, with these mistakes."""
    if no_go.keeps_power_off:
        return Allowed(power=False, gas=False, remarks=(no_go.keeps_power_off,))
    if any(finding.breaks is Breaks.SAFETY for finding in mistakes):
        return Allowed(gas=False, remarks=(_UNSAFE_DRAWING,))
    return Allowed()
