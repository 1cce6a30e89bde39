"""How a run ends, in one sentence that a technician would say, with the reason."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import NamedTuple

from wirecheck.model.nearest import both
from wirecheck.model.quantity import Quantity
from wirecheck.sequence.burner import BURNING
from wirecheck.sequence.control import Phase
from wirecheck.sequence.story import ACTIVE, Story, first
from wirecheck.sequence.trace import Change, Span
from wirecheck.sequence.tracks import part_track

#: So often a flame must be lost for it to be said to be lost again and again.
AGAIN_AND_AGAIN = 3


class Outcome(NamedTuple):
    """How it ends.

    Attributes:
        word: in one of a few words: ``runs``, ``by-luck``, ``stops``, ``no-start``, ``waits``,
            ``held``, ``not-lit``, ``not-proved``, ``no-main``, ``loses-flame``, ``no-call``,
            ``keeps-on``, ``chatters``, ``burns-out``, ``cannot-say``.
        sentence: for people.
    """

    word: str
    sentence: str


#: Outcomes that do not hold where a lead that was not traced may go anywhere.
_FAILURES = frozenset({"no-start", "waits", "not-lit", "not-proved", "no-main"})


def outcome(story: Story, untraced: Sequence[str] = ()) -> Outcome:
    """How the run ends for one control.

    Args:
        story: what it did.
        untraced: the terminals, as people read them, at which leads of its unit are not traced. A
            run takes such a lead as open, so that it proves no failure.
    """
    told = _told(story)
    if not untraced or told.word not in _FAILURES:
        return told
    leads = f"the lead{'s' * (len(untraced) > 1)} at {both(untraced)}"
    verb = "are" if len(untraced) > 1 else "is"
    return Outcome(
        "cannot-say", f"cannot say: {leads} {verb} not traced; taken as open, {told.sentence}"
    )


def _told(story: Story) -> Outcome:
    told = next(filter(None, (tell(story) for tell in _TELLERS)), None) or _runs(story)
    events = story.events("chatters")
    if not events:
        return told
    chatter = f"{events[0].track} chatters: {events[0].reason}"
    if events[0].track == part_track(story.control) or told.word == "no-start":
        return Outcome("chatters", f"{chatter}; {told.sentence}")
    return told._replace(sentence=f"{told.sentence}; {chatter}")


# ---- trouble in the circuit ----------------------------------------------------------------


def _burns_out(story: Story) -> Outcome | None:
    events = story.events("burns out", "destroyed", "blows", "trips")
    if not events:
        return None
    words = [f"{each.track} {_verb(each)} {_when(each.time_s, story)}" for each in events[:2]]
    return Outcome("burns-out", f"{' and '.join(words)}: {events[0].reason}")


def _verb(change: Change) -> str:
    return "is destroyed" if change.state == "destroyed" else change.state


def _when(time_s: float, story: Story) -> str:
    """At which step of the sequence something happens."""
    if time_s < story.call_s:
        return "as soon as the power is on"
    phase = next(
        (span.state for span in story.phases if span.start_s <= time_s < span.end_s), "idle"
    )
    if time_s == story.call_s:
        return "on the call"
    steps = {"trial": "at the start of the trial", "run": "when the main gas is to open"}
    before = [span for span in story.phases if span.end_s == time_s]
    if before and before[-1].state == "proving":
        return steps["run"]
    return steps.get(phase, f"{time_s - story.call_s:g} s after the call")


# ---- with no call --------------------------------------------------------------------------


def _no_call(story: Story) -> Outcome | None:
    early = [span for span in story.spans_in(*ACTIVE) if span.start_s < story.call_s]
    if not early:
        return None
    name = story.control.name
    return Outcome("no-call", f"fires with no call: 24 V reach the ignition of {name} without one")


def _keeps_on(story: Story) -> Outcome | None:
    last = story.after_call()
    if last.start_s >= story.call_ends_s or last.state not in [phase.value for phase in ACTIVE]:
        return None
    early = [each for each in story.events("opening") if each.time_s < story.call_s]
    too = f", and {early[0].track} opens with no call too" if early else ""
    still = f"24 V still reach the ignition of {story.control.name}"
    return Outcome("keeps-on", f"goes on after the call has ended: {still}{too}")


# ---- before the flame ----------------------------------------------------------------------


def _no_start(story: Story) -> Outcome | None:
    if story.spans_in(*ACTIVE, Phase.LOCKOUT):
        return None
    held = story.spans_in(Phase.HELD)
    if held:
        return Outcome("held", f"does not start: {held[0].reason}")
    waits = story.spans_in(Phase.DAMPER_OPENING)
    if waits:
        return Outcome("waits", f"the call is there, but the ignition waits: {waits[-1].reason}")
    reasons = story.own_reasons() or ["nobody calls"]
    return Outcome("no-start", f"nothing happens: {reasons[-1]}")


def _not_lit(story: Story) -> Outcome | None:
    if first(story.first_flame, BURNING):
        return None
    none = first(story.spark, "none")
    if none:
        gas = "" if first(story.first_flame, "unlit gas") is None else _unlit(story)
        return Outcome("not-lit", f"no spark: {none.reason}{gas}; {_ending(story)}")
    what = "spark, but no gas"
    if first(story.main, "unlit gas") and not story.is_direct:
        what = "spark, but no pilot gas, while main gas flows unlit"
    return Outcome("not-lit", f"{what}: {_said(story.first_reasons)}; {_ending(story)}")


def _said(reasons: Sequence[str]) -> str:
    return "; ".join(reasons[:2]) or "no gas flows"


def _unlit(story: Story) -> str:
    longest = max(
        (span.end_s - span.start_s for span in story.first_flame if span.state == "unlit gas"),
        default=0.0,
    )
    return f"; gas flows unlit for {longest:g} s"


def _ending(story: Story) -> str:
    """What follows a trial that proves nothing."""
    values = story.control.values
    trial = f"{values['trial']}" if isinstance(values.get("trial"), Quantity) else "the trial"
    if story.spans_in(Phase.LOCKOUT):
        tries = values.get("tries", 1)
        return f"lockout after {f'{tries} tries' if tries != 1 else f'a trial of {trial}'}"
    if values.get("retry") == "none":
        return "it sparks on without end"
    if story.spans_in(Phase.WAIT):
        return f"after {trial} it waits {values.get('wait', values.get('purge'))} and tries again"
    return "the call ends before the trial does"


# ---- the flame and the main gas ------------------------------------------------------------


def _not_proved(story: Story) -> Outcome | None:
    if story.spans_in(Phase.RUN):
        return None
    reasons = [span.reason for span in story.signal if span.reason] or ["no steady signal"]
    if story.is_direct:
        seen = "burner lights, but the control does not see it"
    else:
        seen = "pilot lights, spark goes on, main never opens"
    return Outcome("not-proved", f"{seen}: {reasons[0]}; {_ending(story)}")


def _no_main(story: Story) -> Outcome | None:
    if first(story.main, BURNING):
        return None
    why = _said(story.main_reasons or story.pilot_reasons)
    return Outcome("no-main", f"pilot lights and is proved, but the main burner does not: {why}")


def _loses_flame(story: Story) -> Outcome | None:
    lost = [
        span
        for before, span in zip(story.phases, story.phases[1:], strict=False)
        if before.state == Phase.RUN.value and span.state in (Phase.TRIAL.value, Phase.WAIT.value)
    ]
    last = story.last_in_call()
    if last is not None and last.state == Phase.LOCKOUT.value:
        why = f": {_said(story.first_reasons)}" if story.first_reasons else ""
        sentence = f"runs, then loses the flame and does not light again{why}; {_ending(story)}"
        return Outcome("loses-flame", sentence)
    if len(lost) < AGAIN_AND_AGAIN:
        return None
    why = _said(story.pilot_reasons + story.main_reasons)
    return Outcome("loses-flame", f"loses its flame again and again: {why}")


def _main_shuts(story: Story) -> Outcome | None:
    last, main = story.last_in_call(), [s for s in story.main if s.start_s < story.call_ends_s]
    if last is None or last.state != Phase.RUN.value or not main or main[-1].state == BURNING:
        return None
    after_s = main[-1].start_s - story.call_s
    why = _said(story.main_reasons)
    return Outcome("stops", f"main shuts {after_s:g} s after the call, pilot burns on: {why}")


def _stops(story: Story) -> Outcome | None:
    last = story.last_in_call()
    if last is None or last.state in [phase.value for phase in ACTIVE]:
        return None
    after_s = last.start_s - story.call_s
    return Outcome(
        "stops", f"lights and runs, but stops {after_s:g} s after the call: {last.reason}"
    )


def _runs(story: Story) -> Outcome:
    steps = [f"{story.flame_word} lit {_after(story, first(story.first_flame, BURNING))} the call"]
    steps.append(f"proved {_after(story, story.spans_in(Phase.RUN)[0])} it and spark off")
    if not story.is_direct:
        steps.append(f"main burner lit {_after(story, first(story.main, BURNING))} it")
    again = len(story.spans_in(Phase.RUN)) - 1
    more = f"; lights again {_times(again)}" if again else ""
    luck = _luck(story)
    sentence = f"lights and runs: {', '.join(steps)}{more}; back to standby when the call ends"
    return Outcome("by-luck" if luck else "runs", f"{sentence}{luck}")


def _after(story: Story, span: Span | None) -> str:
    return f"{span.start_s - story.call_s:g} s after" if span else "never after"


def _luck(story: Story) -> str:
    """What of it is luck: a spark or a flame signal by another way than was meant."""
    odd = [span.reason for span in (*story.spark, *story.signal) if span.reason]
    return "".join(f"; {reason}" for reason in dict.fromkeys(odd))


def _times(count: int) -> str:
    return {1: "once", 2: "twice"}.get(count, f"{count} times")


_Teller = Callable[[Story], Outcome | None]
_TELLERS: tuple[_Teller, ...] = (
    _burns_out,
    _no_call,
    _no_start,
    _not_lit,
    _not_proved,
    _loses_flame,
    _no_main,
    _keeps_on,
    _main_shuts,
    _stops,
)
