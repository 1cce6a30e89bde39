"""What is dangerous in a run: gas where or when none must flow, whatever the wiring that lets it.

Everything is read from the trace.  What a run does not show is not thereby safe.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from typing import NamedTuple

from wirecheck.circuit.nets import Element, Nets
from wirecheck.model.diagram import Part
from wirecheck.model.kind import SwitchSpec
from wirecheck.sequence.burner import DARK, UNLIT
from wirecheck.sequence.control import FLAME_FAILURE_S, Phase
from wirecheck.sequence.recorder import MOVING
from wirecheck.sequence.script import Script, Stimulus
from wirecheck.sequence.story import Story
from wirecheck.sequence.trace import Span, Trace
from wirecheck.sequence.tracks import MEDIA, common_track, part_track

#: Unlit gas for as long as this is no matter of a short trial any more (the longest usual trial of
#: direct ignition; common practice, no source).
LONG_UNLIT_S = 15.0
#: A spark for as long as this goes on without end: longer than any usual pilot trial (common
#: practice, no source).
LONG_SPARK_S = 120.0
#: What lasts no longer is the time in which a valve shuts.
SHUTS_S = FLAME_FAILURE_S

_RUN_OR_BEFORE = (Phase.TRIAL.value, Phase.PROVING.value, Phase.RUN.value)


class Danger(NamedTuple):
    """Something dangerous: a word for it, a sentence, and when it is first seen."""

    word: str
    sentence: str
    time_s: float


class Scene(NamedTuple):
    """What the dangers of one control are read from.

    Attributes:
        nets, script, trace: of the run.
        story: of the control.
        chain: the nets on the ways to the control and from it; None: every safety is its own.
    """

    nets: Nets
    script: Script
    trace: Trace
    story: Story
    chain: frozenset[int] | None

    def is_own(self, element: Element) -> bool:
        """Whether a contact stands in this control's chain."""
        return self.chain is None or {element.net_a, element.net_b} <= self.chain


def dangers(scene: Scene) -> tuple[Danger, ...]:
    """Everything dangerous that the run shows for one control, each once, in order of time."""
    found = dict.fromkeys(danger for look in _LOOKS for danger in look(scene))
    return tuple(sorted(found, key=lambda danger: danger.time_s))


# ---- spans of time -------------------------------------------------------------------------


def _flows(spans: Sequence[Span]) -> list[Span]:
    """When gas flows: whenever the flame is not dark."""
    return _joined(_not_in(spans, DARK))


def _any_gas(story: Story) -> list[Span]:
    """When gas of either kind flows."""
    some = sorted(_flows(story.main) + _flows(story.pilot))
    joined: list[Span] = []
    for span in some:
        if joined and span.start_s <= joined[-1].end_s:
            joined[-1] = joined[-1]._replace(end_s=max(joined[-1].end_s, span.end_s))
        else:
            joined.append(span)
    return joined


def _joined(spans: Sequence[Span]) -> list[Span]:
    """Spans with those made one that follow on one another."""
    joined: list[Span] = []
    for span in spans:
        if joined and joined[-1].end_s == span.start_s:
            joined[-1] = joined[-1]._replace(end_s=span.end_s)
        else:
            joined.append(span)
    return joined


def _overlaps(some: Sequence[Span], others: Sequence[Span], grace_s: float = 0.0) -> list[Span]:
    """Where spans of both kinds overlap for longer than the grace."""
    return [
        one._replace(start_s=max(one.start_s, other.start_s), end_s=min(one.end_s, other.end_s))
        for one in some
        for other in others
        if min(one.end_s, other.end_s) - max(one.start_s, other.start_s) > grace_s
    ]


def _not_in(spans: Sequence[Span], *states: str) -> list[Span]:
    return [span for span in spans if span.state not in states]


def _for(span: Span) -> str:
    return f"for {span.end_s - span.start_s:g} s"


# ---- what to look for ----------------------------------------------------------------------


def _gas_with_no_call(scene: Scene) -> Iterator[Danger]:
    story = scene.story
    idle = [
        Span(scene.script.starts_s, story.call_s, "off", ""),
        Span(story.call_ends_s, scene.trace.until_s, "off", ""),
    ]
    for name, spans in (("main", story.main), ("pilot", story.pilot)):
        for span in _overlaps(_flows(spans), idle, SHUTS_S)[:1]:
            yield Danger("gas-with-no-call", f"{name} gas flows with no call", span.start_s)
            return


def _main_before_proof(scene: Scene) -> Iterator[Danger]:
    story = scene.story
    allowed = _RUN_OR_BEFORE if story.is_direct else (Phase.RUN.value,)
    early = _overlaps(_flows(story.main), _joined(_not_in(story.phases, *allowed)), SHUTS_S)
    for span in early[:1]:
        phase = next(p.state for p in story.phases if p.start_s <= span.start_s < p.end_s)
        word = "main-gas-unproved"
        what = "with no flame proved" if phase in _RUN_OR_BEFORE else "past the ignition control"
        yield Danger(
            word, f"main gas flows {what}, {_for(span)}: the control is in {phase}", span.start_s
        )


def _pilot_past_control(scene: Scene) -> Iterator[Danger]:
    story = scene.story
    idle = _joined(_not_in(story.phases, *_RUN_OR_BEFORE))
    for span in _overlaps(_flows(story.pilot), idle, SHUTS_S)[:1]:
        phase = next(p.state for p in story.phases if p.start_s <= span.start_s < p.end_s)
        sentence = (
            f"pilot gas flows past the ignition control, {_for(span)}: the control is in {phase}"
        )
        yield Danger("pilot-gas-past-control", sentence, span.start_s)


def _unlit_gas(scene: Scene) -> Iterator[Danger]:
    story = scene.story
    for name, spans in (("main", story.main), ("pilot", story.pilot)):
        outlet = story.is_direct and name == "pilot"
        at_most_s = SHUTS_S if outlet else LONG_UNLIT_S
        for span in spans:
            if span.state == UNLIT and span.end_s - span.start_s > at_most_s:
                where = ", if its outlet is not plugged," if outlet else ""
                yield Danger(
                    "unlit-gas", f"{name} gas flows unlit{where} {_for(span)}", span.start_s
                )
                break


def _open_safety(scene: Scene) -> Iterator[Danger]:
    """Gas although a safety was put open from outside."""
    for stimulus in scene.script.stimuli:
        opens = stimulus.what == "position" and stimulus.state == "open"
        if not opens or not _is_safety(scene, stimulus):
            continue
        after = [Span(stimulus.time_s, scene.trace.until_s, "", "")]
        name = f"{scene.nets.diagram.parts[stimulus.part].name} {stimulus.contact}".strip()
        for gas, spans in (("main", scene.story.main), ("pilot", scene.story.pilot)):
            for span in _overlaps(_flows(spans), after, SHUTS_S)[:1]:
                yield Danger("safety-open", f"{gas} gas flows with {name} open", span.start_s)


def _is_safety(scene: Scene, stimulus: Stimulus) -> bool:
    """Whether what opens is a safety, and one of this control's."""
    return any(
        isinstance(element.spec, SwitchSpec)
        and element.spec.safety
        and stimulus.contact in ("", element.spec.name)
        and scene.is_own(element)
        for element in scene.nets.elements_of[stimulus.part]
    )


def _damper_not_open(scene: Scene) -> Iterator[Danger]:
    for part in scene.nets.diagram.parts.values():
        if part.family != "vent-damper" or not _has_own_contact(scene, part, "motor"):
            continue
        track = part_track(part)
        shut = _joined(_not_in(tuple(scene.trace.spans(track)), "open"))
        for span in _overlaps(_any_gas(scene.story), shut, SHUTS_S)[:1]:
            how = scene.trace.at(track, span.start_s)
            sentence = f"gas flows while {part.name} is {how}, {_for(span)}"
            yield Danger("damper-not-open", sentence, span.start_s)


def _unproved_air(scene: Scene) -> Iterator[Danger]:
    for medium, moved_by in _PROVED_BY.items():
        parts = scene.nets.diagram.parts.values()
        if not any(_has_own_contact(scene, part, *moved_by) for part in parts):
            continue
        still = _joined(_not_in(tuple(scene.trace.spans(medium)), MOVING["open"]))
        for span in _overlaps(_any_gas(scene.story), still, SHUTS_S)[:1]:
            how = scene.trace.at(medium, span.start_s)
            what = medium.removeprefix("moving ")
            sentence = f"gas flows while the {what} is {how}, {_for(span)}"
            yield Danger("unproved-air", sentence, span.start_s)


#: By which switches the media are proved.
_PROVED_BY = {
    MEDIA["combustion-air"]: ("air", "pressure"),
    MEDIA["air"]: ("air",),
    MEDIA["water"]: ("flow",),
}


def _has_own_contact(scene: Scene, part: Part, *moved_by: str) -> bool:
    """Whether a part has a contact, moved by one of these, in this control's chain."""
    return any(
        isinstance(element.spec, SwitchSpec)
        and element.spec.moved_by in moved_by
        and scene.is_own(element)
        for element in scene.nets.elements_of[part.key]
    )


def _endless_spark(scene: Scene) -> Iterator[Danger]:
    for span in scene.story.spark:
        if span.state == "on" and span.end_s - span.start_s > LONG_SPARK_S:
            yield Danger(
                "endless-spark", f"it sparks on {_for(span)} over unproved gas", span.start_s
            )
            return


def _common_by_metal(scene: Scene) -> Iterator[Danger]:
    name = scene.story.control.name
    for change in scene.trace.of(common_track(name))[:1]:
        sentence = f"the current of {name} goes back through burner ground and metal, not by a lead"
        yield Danger("common-by-metal", sentence, change.time_s)


def _short_circuit(scene: Scene) -> Iterator[Danger]:
    for change in scene.story.events("burns out", "destroyed", "blows", "trips"):
        sentence = f"{change.track} {change.state}: {change.reason}"
        yield Danger("short-circuit", sentence, change.time_s)


_LOOKS: tuple[Callable[[Scene], Iterator[Danger]], ...] = (
    _gas_with_no_call,
    _main_before_proof,
    _pilot_past_control,
    _unlit_gas,
    _open_safety,
    _damper_not_open,
    _unproved_air,
    _endless_spark,
    _common_by_metal,
    _short_circuit,
)
