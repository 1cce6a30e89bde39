"""What a meter sheet says beside its readings: how the unit is set up, and what is left alone."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from wirecheck.meter.bench import Bench
from wirecheck.meter.reading import Stage
from wirecheck.model.diagram import Part
from wirecheck.model.quantity import Quantity
from wirecheck.sequence.control import Phase
from wirecheck.sequence.flame import flame_path, terminal_of

#: For whoever holds the meter (common practice, no source).
CAUTIONS: Final = (
    "Gas off and power off before you move a lead or put a meter in series.",
    "Line voltage and gas can kill: these readings are for people licensed and equipped for them.",
    "At line voltage: insulated probes, one hand, dry footing, nobody near the disconnect.",
    "No meter on the spark terminal, its lead or the electrode, ever: some 20 kV.",
    "Never bypass a safety beyond a momentary test; no lead in the place of an open one.",
    "Wait about five minutes and smell for gas, low down for LP, before another trial.",
    "Afterwards put every lead back, leak-test, prove several full cycles, safeties, a lockout.",
    "Local codes, the appliance maker's instructions and licensed people decide.",
)

TITLES: Final = {
    Stage.POWER_OFF: "Power off",
    Stage.IDLE: "Power on, no call",
    Stage.CALL: "The call comes",
    Stage.DAMPER_OPENING: "The damper opens",
    Stage.TRIAL: "Trial for ignition",
    Stage.STOPPED: "After a trial without flame",
    Stage.RUN: "Running",
}

#: Where a single rod sparks and senses.
_ONE_ROD: Final = (
    "The flame signal runs in the high-voltage lead: no meter goes into that lead. Read it only "
    "the way the maker of the control tells, at a test point or in the burner ground"
)


def set_up(bench: Bench, stage: Stage) -> Iterator[str]:
    """How the unit is brought into a stage."""
    yield _SET_UP[stage].replace("CALLER", _callers(bench))
    if stage is Stage.CALL and bench.controls:
        ends = ", ".join(_hot_ends(bench))
        yield f"From here on it may spark: hands and probes away from {ends} and the lead between."


_SET_UP: Final = {
    Stage.POWER_OFF: (
        "Gas cock shut; power off at the disconnect, and kept off. Try the meter on a live source, "
        "read, try it again. CALLER must not call. Take off only the leads told, mark them, put "
        "each back after its reading."
    ),
    Stage.IDLE: "Gas cock still shut. Power on, no call from CALLER.",
    Stage.CALL: "Gas cock still shut. Have CALLER call.",
    Stage.DAMPER_OPENING: "Gas cock still shut. End the call, probes on, have CALLER call again.",
    Stage.TRIAL: "Gas cock still shut: it sparks and lights nothing. Probes on before the call.",
    Stage.STOPPED: "Gas cock still shut, the call still on: it has tried and lit nothing.",
    Stage.RUN: (
        "End the call, power off; put in what goes in series. Gas cock open, wait, smell. Power "
        "on, have CALLER call; stand aside while it lights, read when it has run some minutes."
    ),
}


def _callers(bench: Bench) -> str:
    """What calls for heat, by name."""
    names = [part.name for part in bench.diagram.parts.values() if part.key in bench.callers]
    return ", ".join(names) or "thermostat"


def _hot_ends(bench: Bench) -> list[str]:
    """Where high voltage is while it sparks."""
    ends = []
    for control in bench.controls:
        ends += [bench.show(end) for end in control.with_role("spark")]
        burner = bench.companions.of(control, "burner")
        if burner:
            ends += [bench.show(end) for end in burner.with_role("electrode")]
    return list(dict.fromkeys(ends))


def as_drawn(bench: Bench) -> Iterator[str]:
    """How a call ends with this wiring."""
    for control in bench.controls:
        yield f"{control.name}: {bench.runs.sentence(control)}"
    if not bench.controls:
        yield "No ignition control is drawn: this sheet covers the supply, contacts and loads."


def remarks(bench: Bench) -> Iterator[str]:
    """What goes for all readings, and what is not measured; called when all of them are made."""
    yield (
        "Volts are for the line volts drawn and a meter of 10 Mohm; they rise and fall with the "
        "line. Within a tenth is good. The red probe is named first."
    )
    if not any(part.family == "mains" for part in bench.diagram.parts.values()):
        if bench.supplies():
            yield "The line is not drawn: the transformer is taken to have its rated volts."
        else:
            yield "No supply that the line feeds is drawn: there are no volts to compute."
    for part in bench.diagram.parts.values():
        if part.family == "pilot-generator":
            yield f"{part.name} has volts only while the pilot burns: read as its maker tells."
    unearthed = [
        source.part.name
        for source in bench.supplies()
        if source.part.family == "transformer" and not bench.is_earthed(source)
    ]
    if unearthed:
        names = ", ".join(dict.fromkeys(unearthed))
        yield f"No side of {names} is earthed: read against its common, never against the metal."
    if bench.left_out:
        names = ", ".join(bench.show(end) for end in bench.left_out)
        yield f"Not read, for spark or flame signal are joined there: {names}."
    for name in dict.fromkeys((*bench.runs.dry.works.chatters, *bench.runs.wet.works.chatters)):
        yield f"{name} chatters as drawn: readings on its circuit swing."


# ---- notes at a control ----------------------------------------------------------------------


def why_not(bench: Bench, control: Part) -> str:
    """Why a stage has no readings."""
    breaks = bench.runs.dry.breaks or bench.runs.wet.breaks
    if breaks:
        return f"Nothing is read here as drawn: {breaks}. Mend that before the power goes on again."
    return f"As drawn {control.name} does not get here: {bench.runs.sentence(control)}."


def why_no_waiting(bench: Bench, control: Part, damper: Part) -> str:
    """Why a control is never seen to wait for its damper."""
    if bench.runs.in_phase(control, Phase.TRIAL):
        return (
            f"As drawn {control.name} does not wait for {damper.name}: it tries to light at once."
        )
    return why_not(bench, control)


def why_never_stopped(bench: Bench, control: Part) -> str:
    """Why a control never waits and never locks out."""
    if control.values.get("retry") == "none" and bench.runs.in_phase(control, Phase.TRIAL):
        return f"{control.name} never ends its trial: it sparks as long as the call lasts."
    return why_not(bench, control)


def call_note(bench: Bench, control: Part) -> str:
    """What spares the rest of a step."""
    hot = bench.show(control.with_role("call")[0])
    return f"Volts right at {hot}: the way of the call is whole, go on to the next step."


def damper_note(damper: Part) -> str:
    """How long there is to read."""
    return f"{damper.name} takes {_time(damper, 'opening')} to open."


def trial_note(bench: Bench, control: Part) -> str:
    """How long there is to read, and what is left alone."""
    sense = terminal_of(control, "sense")
    apart = f" No volts are read at {bench.show(sense)} or at the rod." if sense else ""
    if control.values.get("retry") == "none":
        return f"The trial lasts as long as the call.{apart}"
    return f"The trial lasts {_time(control, 'trial')}.{apart}"


def stop_note(control: Part, phase: Phase) -> str:
    """What it waits for."""
    if phase is Phase.LOCKOUT:
        return f"{control.name} is locked out; it clears when the call is broken for some seconds."
    name = "wait" if "wait" in control.values else "purge"
    return f"{control.name} waits {_time(control, name)} before it tries again."


def flame_note(bench: Bench, control: Part) -> str:
    """How the flame signal is read where no meter goes into its lead."""
    microamps = flame_path(bench.nets, control).microamps
    shown = f" ({microamps:.1f} uA belong there)" if microamps else ""
    return f"{_ONE_ROD}{shown}."


def _time(part: Part, name: str) -> str:
    value = part.values.get(name)
    return f"{value.high_base:g} s" if isinstance(value, Quantity) else "some time"
