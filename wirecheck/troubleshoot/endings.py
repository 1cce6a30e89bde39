"""What is said at the end: the repair, the proof that it holds, and the cautions before both."""

from __future__ import annotations

from typing import Final

from wirecheck.troubleshoot.diagnosis import Ending, Group
from wirecheck.troubleshoot.dictionary import Dictionary

#: For whoever works at the unit (common practice, no source).
CAUTIONS: Final = (
    "Gas off and power off before you move a lead or put a meter in series.",
    "Line voltage and gas can kill: this is work for people licensed and equipped for it.",
    "No meter on the spark terminal, its lead or the electrode, ever: some 20 kV.",
    "Never bypass a safety beyond a momentary test; a jumper never takes the place of a lead.",
    "No flame to look for gas or to light a burner by hand.",
    "Wait about five minutes and smell for gas, low down for LP, before another trial.",
    "Local codes, the appliance maker's instructions and licensed people decide.",
)

#: How a mended unit is proved (common practice, no source).
PROOF: Final = (
    "Put back every lead that was taken off, take out every jumper, and compare with the drawing.",
    "Leak-test whatever was opened.",
    "Run several full cycles from the thermostat and watch spark, pilot and main through each.",
    "Open each safety once while it runs: the gas must stop.",
    "Shut the gas cock and call: it must try, stop, and keep the gas shut; then open it again.",
    "If it fails again, begin anew with what is seen then: there may be a second fault.",
)
_NOT_EXPLAINED: Final = (
    "Take the readings again that do not go together; then compare every lead with the drawing, "
    "and have somebody look who knows this unit. Renew nothing on a guess"
)
_SIGNAL: Final = (
    "Read the flame current with the burner hot: steady, and well above what the control needs."
)
_SIGNAL_MODES = ("ground", "sense", "rod", "flame", "gap")


def ending(groups: tuple[Group, ...], *, is_sure: bool) -> Ending:
    """Repair and proof for what the readings leave.

    Args:
        groups: the likeliest first; none, where nothing explains what was observed.
        is_sure: whether hardly anything else is left.
    """
    if not groups:
        return Ending(is_sure, (_NOT_EXPLAINED,), PROOF, CAUTIONS)
    faults = [fault for suspect in groups[0].suspects for fault in suspect.faults]
    proof = list(PROOF)
    if any(fault.mode.startswith(_SIGNAL_MODES) for fault in faults):
        proof.insert(3, _SIGNAL)
    return Ending(is_sure, groups[0].repair, tuple(proof), CAUTIONS)


def repairs(dictionary: Dictionary, candidates: list[tuple[int, ...]]) -> tuple[str, ...]:
    """What mends some candidates, the likeliest first, each once, and what they took with them."""
    found: dict[str, None] = {}
    for candidate in candidates:
        for number in candidate:
            found.setdefault(dictionary.faults[number].repair)
    took: dict[str, None] = {}
    for candidate in candidates:
        own = {
            key
            for fault in map(dictionary.faults.__getitem__, candidate)
            for key, _name, _value in fault.alters.values
        }
        for key, name in dictionary.patient(candidate).unit.took.items():
            if key not in own:
                took.setdefault(name)
    if took:
        names = ", ".join(took)
        found.setdefault(f"Then renew or reset what it took with it: {names}")
    return tuple(found)
