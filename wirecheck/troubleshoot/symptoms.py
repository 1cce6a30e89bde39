"""What anybody sees and hears of a unit on a call, without a meter."""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.circuit.companions import Companions
from wirecheck.circuit.netlist import ElementKey
from wirecheck.circuit.nets import Nets
from wirecheck.model.diagram import Part
from wirecheck.model.kind import LoadSpec
from wirecheck.sequence.burner import BURNING
from wirecheck.sequence.control import PROOF_S, Phase
from wirecheck.sequence.story import ACTIVE, Story
from wirecheck.sequence.trace import Trace
from wirecheck.sequence.tracks import load_track, part_track
from wirecheck.sequence.travel import INSTANT_S
from wirecheck.troubleshoot.modes import costs
from wirecheck.troubleshoot.reading import Reading, Stage

NEVER, ON_CALL, NO_CALL = 0, 1, 2
GOES_OUT, MAIN_NO_CALL = 2, 3
BEFORE_DAMPER = 2
NOTHING, RUNS, TRIES_AGAIN, LOCKS_OUT, NO_END, DROPS_OUT, UNCALLED = range(7)

#: What each is asked as, and what it can come to; {it} is a part, {of} tells burners apart.
_BURNER: dict[str, tuple[str, tuple[str, ...]]] = {
    "spark": (
        "Watch the spark{of} on a call",
        ("no spark", "it sparks, and stops once lit", "it goes on sparking until the trial ends"),
    ),
    "pilot": (
        "Watch the pilot flame{of} on a call",
        ("the pilot does not light", "the pilot lights", "the pilot burns with no call"),
    ),
    "main": (
        "Watch the main flame{of} on a call",
        (
            "the main burner does not light",
            "the main burner lights and burns on",
            "the main burner lights and goes out again",
            "the main burner burns with no call",
        ),
    ),
    "ending": (
        "Watch how a call ends{of}",
        (
            "nothing happens on a call",
            "it runs on",
            "it tries, stops and tries again",
            "it locks out",
            "it tries on without end",
            "it starts and drops out, again and again",
            "it starts with no call",
        ),
    ),
}
_START = (
    "Watch whether the ignition{of} waits until {it} is open",
    (
        "the ignition does not start",
        "the ignition starts once {it} is open",
        "the ignition starts before {it} is open",
    ),
)
_DAMPER_ROLES = ("damper-call", "damper-proved", "damper-common")
_MOTOR = "Watch {it} on a call", ("{it} does not run", "{it} runs", "{it} runs with no call")
_LAMP = "Watch {it} on a call", ("{it} stays dark", "{it} lights", "{it} is lit with no call")
_BLADE = "Watch {it} on a call", ("{it} stays shut", "{it} opens", "{it} stands open with no call")
_COIL = (
    "Listen to {it} on a call",
    ("{it} does not pull in", "{it} pulls in", "{it} is pulled in with no call"),
)


def symptoms(nets: Nets) -> Iterator[Reading]:
    """What is seen of flames, spark, motors and dampers: what a call for service tells of."""
    parts = nets.diagram.parts.values()
    controls = [part for part in parts if part.family == "ignition-control"]
    companions = Companions(nets.diagram)
    for control in controls:
        of = f" of {control.name}" if len(controls) > 1 else ""
        for about, (ask, choices) in _BURNER.items():
            if about == "pilot" and not control.with_role("main-valve"):
                continue
            asked = ask.format(of=of)
            if about == "ending" and of:
                asked = f"Watch how a call ends for {control.name}"
            yield _watch(control.key, about, asked, choices)
        for damper in companions.all_of(control, "vent-damper", *_DAMPER_ROLES):
            ask, choices = _START
            named = tuple(choice.format(it=damper.name) for choice in choices)
            asked = ask.format(of=of, it=damper.name)
            yield _watch(control.key, f"start {damper.key}", asked, named)
    for part in parts:
        if part.family in ("vent-damper", "zone-valve"):
            yield _named(part.key, "blade", part.name, _BLADE)
    yield from _loads(nets, {"motor": _MOTOR, "lamp": _LAMP})


def pull_ins(nets: Nets) -> Iterator[Reading]:
    """Which relays pull in: heard by who stands beside them."""
    yield from _loads(nets, {"coil": _COIL})


def _loads(nets: Nets, words: dict[str, tuple[str, tuple[str, ...]]]) -> Iterator[Reading]:
    for part, elements in nets.elements_of.items():
        for number, element in enumerate(elements):
            spec = element.spec
            if not isinstance(spec, LoadSpec) or spec.type not in words or spec.takes is None:
                continue
            if element.part.family in ("vent-damper", "zone-valve"):
                continue
            several = len(element.part.structure.loads) > 1
            name = f"{element.part.name} {element.name}".strip() if several else element.part.name
            yield _named(part, f"load {number}", name, words[spec.type])


def _named(part: str, about: str, name: str, words: tuple[str, tuple[str, ...]]) -> Reading:
    ask, choices = words
    return _watch(
        part, about, ask.format(it=name), tuple(choice.format(it=name) for choice in choices)
    )


def _watch(part: str, about: str, ask: str, choices: tuple[str, ...]) -> Reading:
    return Reading(
        f"watch:{part}:{about}",
        "watch",
        Stage.RUN,
        ask,
        "",
        costs()["watch"],
        choices,
        part=part,
        about=about,
    )


# ---- what a run shows ----------------------------------------------------------------------


def watched(nets: Nets, trace: Trace, reading: Reading) -> int:
    """What a run shows of a symptom: the number of the choice."""
    part = nets.diagram.parts[reading.part]
    if reading.about == "blade":
        return _on(trace, part_track(part), "open")
    if reading.about.startswith("load "):
        key = ElementKey(reading.part, int(reading.about.removeprefix("load ")))
        return _on(trace, load_track(nets, key), "on")
    story = story_of(nets, trace, part)
    if reading.about.startswith("start "):
        damper = nets.diagram.parts[reading.about.removeprefix("start ")]
        return _start(story, part_track(damper))
    return {"spark": _spark, "pilot": _pilot, "main": _main, "ending": _ending}[reading.about](
        story
    )


def story_of(nets: Nets, trace: Trace, control: Part) -> Story:
    """What one control and its burner did in a run."""
    parts = nets.diagram.parts.values()
    many = sum(part.family == "ignition-control" for part in parts) > 1
    return Story(trace, control, many=many)


def _on(trace: Trace, track: str, state: str) -> int:
    """Whether a track was in a state in the call, or already before it."""
    spans = [span for span in trace.spans(track) if span.state == state]
    if any(span.start_s < 0 for span in spans):
        return NO_CALL
    return ON_CALL if spans else NEVER


def _spark(story: Story) -> int:
    sparks = [span for span in story.spark if span.state == "on"]
    if not sparks:
        return NEVER
    proved = story.spans_in(Phase.RUN)
    stops = proved and proved[0].start_s <= sparks[0].end_s + PROOF_S
    return 1 if stops else 2


def _start(story: Story, damper: str) -> int:
    """Whether the ignition has waited for its damper."""
    active = story.spans_in(*ACTIVE)
    if not active:
        return NEVER
    is_open = story.trace.at(damper, active[0].start_s) == "open"
    return ON_CALL if is_open else BEFORE_DAMPER


def _pilot(story: Story) -> int:
    burns = [span for span in story.pilot if span.state == BURNING]
    if any(_uncalled(story, span.start_s, span.end_s) for span in burns):
        return NO_CALL
    return ON_CALL if burns else NEVER


def _main(story: Story) -> int:
    burns = [span for span in story.main if span.state == BURNING]
    if any(_uncalled(story, span.start_s, span.end_s) for span in burns):
        return MAIN_NO_CALL
    if not burns:
        return NEVER
    return ON_CALL if burns[0].end_s >= story.call_ends_s - INSTANT_S else GOES_OUT


def _uncalled(story: Story, start_s: float, end_s: float) -> bool:
    """Whether it is so before the call, or still at the end of the watch."""
    return start_s < story.call_s or end_s >= story.trace.until_s - INSTANT_S > story.call_ends_s


def _ending(story: Story) -> int:
    active = story.spans_in(*ACTIVE)
    if any(span.start_s < story.call_s for span in active):
        return UNCALLED
    if story.events("chatters") and not story.spans_in(Phase.RUN):
        return DROPS_OUT
    last = story.last_in_call()
    if not active or last is None:
        return NOTHING
    known = {Phase.RUN.value: RUNS, Phase.LOCKOUT.value: LOCKS_OUT, Phase.WAIT.value: TRIES_AGAIN}
    again = TRIES_AGAIN if len(story.spans_in(Phase.TRIAL)) > 1 else NO_END
    trying = (Phase.TRIAL.value, Phase.PROVING.value)
    return known.get(last.state, again if last.state in trying else DROPS_OUT)
