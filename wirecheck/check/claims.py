"""Claims proved or refuted: each is looked up in calls that are run, with the reason if it fails.

What comes on late in a phase still counts: values, and what is to be on, are taken when all has
settled, at the end of the phase.  What is to be off, no volts and an upper bound hold throughout,
and what is to be off must be so even if weak coils act and rusty metal conducts.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from typing import Final, Literal, NamedTuple

from wirecheck.check.claim_continuity import why_continuity
from wirecheck.check.claim_moments import Found, Moment, Moments, is_a_phase_here
from wirecheck.check.claim_phases import built_without
from wirecheck.check.claim_readings import Readings, Shown
from wirecheck.check.claim_reasons import ClaimReasons
from wirecheck.check.claim_signals import NotSimulatedError, Seen, Signals, in_the_words_of
from wirecheck.circuit.nets import Nets
from wirecheck.model.claim import UNITS, Claim, State
from wirecheck.model.diagram import Part
from wirecheck.model.nearest import both
from wirecheck.sequence.answers import View
from wirecheck.sequence.script import Script, heat_call
from wirecheck.sequence.story import Story
from wirecheck.sequence.untraced import untraced
from wirecheck.sequence.verdict import outcome

#: PROVED; REFUTED; NEVER: what it speaks of never comes; UNDECIDED: the drawing does not tell.
Verdict = Literal["proved", "refuted", "never", "undecided"]

#: Signals that hold throughout where they are to be off.
_OFF_THROUGHOUT: Final = frozenset(
    {"spark", "pilot-flame", "main-flame", "flame-signal", "pilot-valve", "main-valve", "load"}
)
#: Signals that end a phase by coming on, and so are seen at its end.
_END_A_PHASE: Final = frozenset({"pilot-flame", "main-flame", "flame-signal"})
#: Why something may be on that is off if all works as it should.
_MAY: Final = "a coil on low volts may act, and rusty metal may conduct"


class Answer(NamedTuple):
    """What became of a claim.

    Attributes:
        claim: it.
        verdict: whether it holds.
        computed: what there is in its place, for people; "" where nothing was computed.
        value: the same in V, A or ohm (inf where nothing conducts); None for a state.
        unit: of the value; "" for a state.
        why: the reason, where it does not hold; "" if none is known.
        phase: the phase in which that is so; "" without a control.
        by_build: it never comes because of how the control is built, not of how it is wired.
    """

    claim: Claim
    verdict: Verdict
    computed: str = ""
    value: float | None = None
    unit: str = ""
    why: str = ""
    phase: str = ""
    by_build: bool = False

    def sentence(self) -> str:
        """All of it: ``claimed 24 V across … during wait; computed 0 V: the control rests …``."""
        said = "claimed" if self.claim.word == "expect" else "observed"
        words = f"{said} {self.claim.text}"
        if self.verdict == "never":
            return f"{words}; that never comes: {self.why}"
        if self.verdict == "undecided":
            return f"{words}; that cannot be decided: {self.why}"
        if self.computed:
            words += f"; computed {self.computed}"
        return f"{words}: {self.why}" if self.why else words


class _Outcome(NamedTuple):
    """One look at a claim: whether it holds there, and what is seen instead."""

    holds: bool
    shown: Shown | None
    seen: Seen | None
    moment: Moment


class Bench:
    """One diagram, on which claims are tried; its runs are kept from one claim to the next."""

    def __init__(self, nets: Nets, call: Callable[..., Script] = heat_call) -> None:
        """Run nothing yet; ``call`` writes the script of a call as `heat_call` does."""
        self._nets = nets
        self._moments = Moments(nets, call)
        self._signals = Signals(nets)
        self._readings = Readings(nets, self._signals)
        self._reasons = ClaimReasons(nets, self._signals)

    def answer(self, claim: Claim) -> Answer:
        """Prove or refute one claim."""
        controls = self._moments.controls_of(claim)
        if not is_a_phase_here(claim, controls):
            why = "no ignition control is drawn, and so there is no such phase"
            return Answer(claim, "undecided", why=why)
        try:
            answer = self._of_continuity(claim) if claim.about == "continuity" else self._of(claim)
        except NotSimulatedError as refused:
            return Answer(claim, "undecided", why=str(refused))
        return self._as_far_as_traced(answer)

    def _as_far_as_traced(self, answer: Answer) -> Answer:
        """A lead that was not traced may bring what was not seen to be there."""
        if _is_something_there(answer):
            return answer
        loose = dict.fromkeys(
            end
            for control in self._moments.controls_of(answer.claim)
            for end in untraced(self._nets, control)
        )
        if not loose:
            return answer
        leads = f"the lead{'s' * (len(loose) > 1)} at {both(list(loose))}"
        why = f"{leads} {'are' if len(loose) > 1 else 'is'} not traced"
        return answer._replace(verdict="undecided", why=why)

    # ---- states and readings -----------------------------------------------------------------

    def _of(self, claim: Claim) -> Answer:
        found = self._moments.of(claim, self._signals.holds)
        if not found.stretches:
            return self._never(claim, found)
        looks: list[_Outcome] = []
        for each in self._looks(claim, found):
            if not each.holds:
                return self._answered(claim, "refuted", each)
            looks.append(each)
        if claim.state and not claim.state.on and claim.state.subject.signal in _OFF_THROUGHOUT:
            dangerous = self._moments.of(claim, self._signals.holds, View.DANGER)
            for each in self._looks(claim, dangerous):
                if not each.holds:
                    surely = self._answered(claim, "refuted", each)
                    return surely._replace(computed=f"may be {surely.computed}", why=_MAY)
        return self._answered(claim, "proved", max(looks, key=_telling))

    def _looks(self, claim: Claim, found: Found) -> Iterator[_Outcome]:
        """One look after the other, at the moments that count."""
        throughout = _holds_throughout(claim)
        stretches = found.stretches
        if not claim.phase and not throughout:
            in_calls = (tuple(filter(lambda each: each.called, stretch)) for stretch in stretches)
            stretches = tuple(filter(None, in_calls)) or stretches
        for stretch in stretches:
            for moment in stretch if throughout else stretch[-1:]:
                yield self._look(claim, moment)

    def _look(self, claim: Claim, moment: Moment) -> _Outcome:
        if claim.state is None:
            shown = self._readings.read(claim, moment)
            holds = claim.bounds is not None and claim.bounds.hold(shown.value)
            return _Outcome(holds, shown, None, moment)
        seen = self._signals.look(claim.state.subject, moment)
        holds = seen.on if claim.state.on else seen.off
        if claim.state.on and not holds:
            later = self._at_the_end(claim, claim.state, moment)
            if later:
                return _Outcome(later.on, None, later, moment)
        return _Outcome(holds, None, seen, moment)

    def _at_the_end(self, claim: Claim, state: State, moment: Moment) -> Seen | None:
        """A flame that ends its phase by being there."""
        if state.subject.signal not in _END_A_PHASE or claim.phase not in ("trial", "proving"):
            return None
        rests = moment.run.trace.rests
        following = next((rest for rest in rests if rest.time_s > moment.time_s), None)
        if following is None:
            return None
        seen = self._signals.look(state.subject, moment._replace(rest=following))
        return seen if seen.on else None

    def _answered(self, claim: Claim, verdict: Verdict, look: _Outcome) -> Answer:
        phase = self._phase(claim, look.moment)
        where = f" in {phase}" if phase and not claim.phase else ""
        why = ""
        if look.shown is not None:
            if verdict == "refuted":
                why = self._reasons.of_reading(claim, look.shown.value, look.moment)
            return Answer(
                claim,
                verdict,
                f"{look.shown.words}{where}",
                look.shown.value,
                UNITS[claim.about],
                why,
                phase,
            )
        if look.seen is None or claim.state is None:
            return Answer(claim, verdict)
        if verdict == "refuted":
            why = self._reasons.of_state(claim.state, look.seen, look.moment)
        words = in_the_words_of(claim.state, look.seen)
        where = "" if words.startswith("in ") else where
        return Answer(claim, verdict, f"{words}{where}", None, "", why, phase)

    def _phase(self, claim: Claim, moment: Moment) -> str:
        phases = [moment.rest.phases[each.key] for each in self._moments.controls_of(claim)]
        return both(list(dict.fromkeys(phases)))

    # ---- continuity --------------------------------------------------------------------------

    def _of_continuity(self, claim: Claim) -> Answer:
        run = self._moments.plain()
        shown = self._readings.ohms(claim, run)
        there = shown.value != float("inf")
        verdict: Verdict = "proved" if there == claim.continuity else "refuted"
        why = why_continuity(self._nets, claim, run) if verdict == "refuted" else ""
        words = "no continuity" if not there else f"continuity, {shown.words}"
        return Answer(claim, verdict, words, shown.value, "ohm", why)

    # ---- what never comes --------------------------------------------------------------------

    def _never(self, claim: Claim, found: Found) -> Answer:
        breaks = next((run.breaks for run in found.runs if run.breaks), "")
        unseen = "" if breaks else self._unseen(claim)
        if breaks or unseen:
            return Answer(claim, "never", why=breaks or unseen)
        controls = self._moments.controls_of(claim)
        built = [
            f"{each.name} {words}"
            for each in controls
            if (words := built_without(each, claim.phase))
        ]
        if built and len(built) == len(controls):
            return Answer(claim, "never", why="; ".join(built), by_build=True)
        if len(controls) > 1 and all(_came_to(claim.phase, each, found) for each in controls):
            names = both([each.name for each in controls])
            why = f"{names} are not in it at one time; name a part of one of them"
            return Answer(claim, "never", why=why)
        stories = [
            Story(found.runs[0].trace, each, many=len(self._moments.controls) > 1)
            for each in controls
        ]
        ends = [f"{s.control.name}: {outcome(s).sentence.partition('; ')[0]}" for s in stories]
        return Answer(claim, "never", why="; ".join(ends) or "no call comes about")

    def _unseen(self, claim: Claim) -> str:
        """Which conditions are never met, where the phase itself comes; "" if it does not."""
        without = claim._replace(when=())
        if not claim.when or not self._moments.of(without, self._signals.holds).stretches:
            return ""
        states = both([str(each) for each in claim.when])
        seen = f"during {claim.phase}" if claim.phase else "in any call"
        return f"{states} {'is' if len(claim.when) == 1 else 'are'} not seen {seen}"


def _holds_throughout(claim: Claim) -> bool:
    if claim.state is not None:
        return not claim.state.on and claim.state.subject.signal in _OFF_THROUGHOUT
    return claim.bounds is not None and claim.bounds.low <= 0


def _telling(look: _Outcome) -> tuple[float, float]:
    """Of looks that hold the most telling: the highest value, and the last of equal ones."""
    return (look.shown.value if look.shown else 0.0), look.moment.time_s


def _is_something_there(answer: Answer) -> bool:
    """Whether an answer rests on something that is on, or has volts, or conducts."""
    claim, proved = answer.claim, answer.verdict == "proved"
    if answer.verdict not in ("proved", "refuted"):
        return False
    if claim.state is not None:
        return claim.state.on == proved
    if claim.bounds is None:
        return claim.continuity == proved
    if proved:
        return claim.bounds.low > 0
    return answer.value is not None and answer.value > claim.bounds.high


def _came_to(phase: str, control: Part, found: Found) -> bool:
    """Whether a control came to a phase in some run."""
    rests = (rest for run in found.runs for rest in run.trace.rests)
    return any(rest.phases[control.key] == phase for rest in rests)
