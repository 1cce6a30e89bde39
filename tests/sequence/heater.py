"""The heaters that the tests run, and how they are changed and told."""

from __future__ import annotations

from wirecheck import load_text
from wirecheck.circuit.netlist import ElementKey
from wirecheck.circuit.nets import Nets
from wirecheck.model.diagram import Diagram
from wirecheck.sequence.answers import View
from wirecheck.sequence.cycles import settled
from wirecheck.sequence.run import Run, run
from wirecheck.sequence.script import Script, heat_call

#: Two-rod pilot, everything right.
HEATER = """\
part xfmr is transformer
part limit is high-limit
part stat is thermostat
part box is pilot-ignition-control: two-rod
part valve is gas-valve-3-wire: pilot 120 ohm, main 60 ohm
part pilot is pilot-burner: two-rod
wire xfmr.R to limit to stat to box.TH
wire xfmr.C to box.COM
wire xfmr.C to earth
plug box to valve: PV, MV, VC to C
wire box.SPARK to pilot.SPARK: ignition-cable
wire box.SENSE to pilot.ROD
wire box.GND to pilot.HOOD
"""
#: The three leads of its valve, as one statement.
VALVE_PLUG = "plug box to valve: PV, MV, VC to C"

#: One rod that sparks and senses.
ONE_ROD = HEATER.replace("two-rod", "one-rod").replace("wire box.SENSE to pilot.ROD\n", "")

#: The same heater with a vent damper.
DAMPERED = f"""\
{HEATER}part vent is vent-damper: opening 15 s
plug box to vent: D-HOT to HOT, D-CALL to CALL, D-PROVED to PROVED, D-COM to COM
wire xfmr.R to box.24V
"""

#: Direct ignition, three tries; the adapter ties both operators.
DIRECT = """\
part xfmr is transformer
part limit is high-limit
part stat is thermostat
part box is direct-ignition-control: tries 3, trial 7 s, purge 30 s
part valve is gas-valve-3-wire
part tie is valve-adapter
part bnr is direct-burner
wire xfmr.R to limit to stat to box.TH
wire xfmr.C to box.COM
wire xfmr.C to earth
plug box to tie: V, VC
plug tie to valve: PV, MV, C
wire box.SPARK to bnr.SPARK: ignition-cable
wire box.SENSE to bnr.ROD
wire box.GND to bnr.FRAME
"""

#: An inducer that an air switch proves before the control gets its call.
INDUCED = """\
part line is mains
part xfmr is transformer
part k1 is relay
part inducer is inducer
part air is air-switch
part stat is thermostat
part box is pilot-ignition-control: two-rod
part valve is gas-valve-3-wire
part pilot is pilot-burner: two-rod
wire line.L1 to xfmr.L1
wire line.N to xfmr.N
wire line.G to earth
wire xfmr.R to stat
wire stat.W to k1 to xfmr.C
wire line.L1 to k1.COM..NO to inducer to line.N
wire stat.W to air to box.TH
wire xfmr.C to box.COM
wire xfmr.C to earth
plug box to valve: PV, MV, VC to C
wire box.SPARK to pilot.SPARK: ignition-cable
wire box.SENSE to pilot.ROD
wire box.GND to pilot.HOOD
"""


def changed(text: str, *changes: tuple[str, str]) -> str:
    """Put new words in the place of others, each of which must be there."""
    for old, new in changes:
        assert old in text, old
        text = text.replace(old, new)
    return text


def without(text: str, *lines: str) -> str:
    """Take whole lines out."""
    return changed(text, *((f"{line}\n", "") for line in lines))


def diagram(text: str) -> Diagram:
    """Build a text that has no problem."""
    built = load_text(text)
    assert not built.problems
    return built.diagram


def ran(text: str, script: Script | None = None, view: View = View.OPERATION) -> Run:
    """Run a text through a script, or through one call of ten minutes."""
    return run(diagram(text), script or heat_call(), view)


def log(ran_: Run) -> str:
    """What happens in a run after the start, a line a change: the time, the track, its state."""
    return "".join(
        f"{change.time_s:g} {change.track}: {change.state}\n"
        for change in settled(ran_.trace)
        if change.time_s > ran_.trace.from_s
    )


def phases(ran_: Run, control: str = "box") -> list[tuple[float, str]]:
    """When a control came into which phase."""
    return [(span.start_s, span.state) for span in ran_.trace.spans(control)]


def outcome(ran_: Run) -> str:
    """The word for how a run of one control ends."""
    (told,) = ran_.told
    return told.outcome.word


def sentence(ran_: Run) -> str:
    """The sentence for how a run of one control ends."""
    (told,) = ran_.told
    return told.outcome.sentence


def danger_words(ran_: Run) -> set[str]:
    """The words for everything dangerous in a run."""
    return {danger.word for danger in ran_.dangers}


def volts(ran_: Run, part: str, load: str, phase: str) -> float:
    """Volts across a load in the first moment in which ``box`` is in a phase."""
    nets = Nets(ran_.diagram)
    (key,) = [
        ElementKey(part, number)
        for number, element in enumerate(nets.elements_of[part])
        if element.name == load
    ]
    rest = next(rest for rest in ran_.trace.rests if rest.phases["box"] == phase)
    return rest.steady.load_volts[key]
