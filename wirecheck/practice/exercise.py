"""A set of exercises: the same right diagram, each time with other mistakes hidden in it.

What is hidden is drawn by lot from the mistakes that people make, a kind of mistake first, so that
the rare kinds come up as often as the common ones.  None is taken that does not matter: the check
finds it, the simulation shows that the unit does something else, and both still do with the other
mistakes of the exercise beside it.
"""

from __future__ import annotations

import random
from collections.abc import Hashable, Iterable, Iterator, Mapping, Sequence
from pathlib import PurePath
from typing import Final, NamedTuple, TypeVar

from wirecheck.check.engine import Checked, check
from wirecheck.correct.likelihood import joins
from wirecheck.correct.rewired import Fit, Rewired
from wirecheck.language.edit import apply, set_attribute
from wirecheck.language.lead_by_lead import lead_by_lead
from wirecheck.language.load import load_text
from wirecheck.model.diagram import Attribute, Diagram, Lead
from wirecheck.model.finding import Breaks, Finding
from wirecheck.practice.behaviour import behaviour_of
from wirecheck.practice.difficulty import Difficulty, difficulty
from wirecheck.practice.likelihood import FORMS, weight
from wirecheck.practice.mistake import Form, Mistake, links_of, mistakes
from wirecheck.rules.registry import RULES

_Thing = TypeVar("_Thing", bound=Hashable)

#: Ending of the files with the wiring.
SUFFIX: Final = ".wiring"
#: So many draws in a row that give no exercise, and there are no more.
MOST_DRAWS: Final = 300


class NotRightError(ValueError):
    """The diagram that exercises are to be made from has mistakes of its own."""

    def __init__(self, findings: Sequence[Finding]) -> None:
        """Keep what was found in it."""
        super().__init__(f"{len(findings)} findings of safety or operation")
        self.findings = tuple(findings)


class Wish(NamedTuple):
    """What exercises are wanted.

    Attributes:
        exercises: so many, if there are so many.
        mistakes: hidden in each.
        forms: kinds of mistakes to draw from.
        circuits: families of the rules that shall tell of them; empty: any.
        difficulty: of each mistake; None: any.
        seed: the same gives the same exercises.
    """

    exercises: int = 1
    mistakes: int = 1
    forms: tuple[Form, ...] = tuple(Form)
    circuits: tuple[str, ...] = ()
    difficulty: Difficulty | None = None
    seed: str = "1"


class Hidden(NamedTuple):
    """A mistake in an exercise, with what tells of it.

    Attributes:
        mistake: what was done.
        difficulty: how hard it is to see by itself.
        findings: those of the exercise that name its place, the gravest first.
    """

    mistake: Mistake
    difficulty: Difficulty
    findings: tuple[Finding, ...]


class Exercise(NamedTuple):
    """One exercise.

    Attributes:
        name: of its file, without the ending.
        text: the wiring to find the mistakes in.
        checked: the check of it, for the key.
        hidden: its mistakes.
    """

    name: str
    text: str
    checked: Checked
    hidden: tuple[Hidden, ...]

    @property
    def difficulty(self) -> Difficulty:
        """That of its hardest mistake."""
        order = list(Difficulty)
        return max((each.difficulty for each in self.hidden), key=order.index)


def exercises(right: Diagram, wish: Wish = Wish()) -> list[Exercise]:  # noqa: B008 - it is frozen
    """Make exercises from a right diagram; fewer than wished where there are no more.

    Raises:
        NotRightError: the diagram has mistakes of safety or operation of its own.
    """
    faults = _grave(check(right).findings)
    if faults:
        raise NotRightError(faults)
    return _Set(right, wish).made()


class _Drawn(NamedTuple):
    """A single mistake that was looked at: how hard it is, and whether it can be used at all."""

    difficulty: Difficulty
    usable: bool


class _Set:
    """A set in the making."""

    def __init__(self, right: Diagram, wish: Wish) -> None:
        self._wish = wish
        self._stem = PurePath(right.source.name).stem or "diagram"
        self._right = _with_links_stated(_read(lead_by_lead(right, right.leads, right.title)))
        self._start = Rewired.nothing_changed(self._right)
        self._does = behaviour_of(self._right)
        self._chance = random.Random(f"{wish.seed} {wish.mistakes}")  # noqa: S311 - no secret
        self._by_form: dict[Form, dict[Mistake, float]] = {form: {} for form in wish.forms}
        for mistake in mistakes(self._right):
            if mistake.form in self._by_form:
                self._by_form[mistake.form][mistake] = weight(self._right, mistake)
        self._looked_at: dict[Mistake, _Drawn] = {}
        self._wirings: set[object] = set()
        self._told: set[object] = set()

    def made(self) -> list[Exercise]:
        """Draw until there are enough, or nothing new comes any more."""
        made: list[Exercise] = []
        draws = 0
        while (
            len(made) < self._wish.exercises and draws < MOST_DRAWS and any(self._by_form.values())
        ):
            draws += 1
            exercise = self._exercise(len(made) + 1)
            if exercise is not None:
                made.append(exercise)
                draws = 0
        return made

    def _exercise(self, number: int) -> Exercise | None:
        """One draw; None if it makes no exercise, or one that is in the set already."""
        chosen = self._drawn()
        if len(chosen) < self._wish.mistakes:
            return None
        state = self._with(chosen)
        wiring = joins(state), frozenset(state.fitted.items())
        if wiring in self._wirings:
            return None
        name = f"{self._stem}-exercise-{number:02}"
        text = self._text(state, number)
        checked = check(_read(text, f"{name}{SUFFIX}"))
        hidden = [self._hidden(mistake, checked, chosen) for mistake in chosen]
        if not all(each.findings and self._is_wanted(each) for each in hidden):
            return None
        told = frozenset((f.rule, f.fault, f.at_terminals) for f in _grave(checked.findings))
        if told in self._told or not self._all_matter(chosen, checked.diagram):
            return None
        self._wirings.add(wiring)
        self._told.add(told)
        return Exercise(name, text, checked, tuple(hidden))

    def _drawn(self) -> list[Mistake]:
        """Mistakes at different leads and places, each of which matters alone."""
        chosen: list[Mistake] = []
        for _ in range(self._wish.mistakes):
            form = self._one_of({form: FORMS[form] for form, some in self._by_form.items() if some})
            mistake = self._one_of(self._by_form[form])
            if not self._look_at(mistake).usable:
                del self._by_form[form][mistake]
                break
            apart = all(
                not (mistake.leads & other.leads or mistake.places & other.places)
                for other in chosen
            )
            if not apart:
                break
            chosen.append(mistake)
        return chosen

    def _one_of(self, weights: Mapping[_Thing, float]) -> _Thing:
        """One of some things, drawn by their weights."""
        return self._chance.choices(list(weights), list(weights.values()))[0]

    def _look_at(self, mistake: Mistake) -> _Drawn:
        """Whether a mistake can be used: it is as hard as wished, and is more than workmanship."""
        if mistake not in self._looked_at:
            diagram = _read(self._text(self._with([mistake]), 1))
            does = behaviour_of(diagram)
            hard = difficulty(self._does, does)
            wanted = self._wish.difficulty in (None, hard) and does != self._does
            usable = wanted and bool(_grave(check(diagram).findings))
            self._looked_at[mistake] = _Drawn(hard, usable)
        return self._looked_at[mistake]

    def _hidden(self, mistake: Mistake, checked: Checked, chosen: Sequence[Mistake]) -> Hidden:
        """A mistake with the findings at its place, and at no other's more than at its own."""
        findings = [
            finding
            for finding in _grave(checked.findings)
            if max(chosen, key=lambda each: len(each.places & {*finding.at_terminals})) is mistake
            and mistake.places & {*finding.at_terminals}
        ]
        findings.sort(key=lambda finding: -finding.breaks)
        return Hidden(mistake, self._look_at(mistake).difficulty, tuple(findings))

    def _is_wanted(self, hidden: Hidden) -> bool:
        """Whether one of the findings is about a circuit that is wished for."""
        circuits = self._wish.circuits
        told = (RULES[f.rule].rule.family for f in hidden.findings if f.rule in RULES)
        return not circuits or any(family in circuits for family in told)

    def _all_matter(self, chosen: Sequence[Mistake], wrong: Diagram) -> bool:
        """Whether the unit does something else for each of the mistakes, with the others in it."""
        does = behaviour_of(wrong)
        for mistake in chosen:
            others = [each for each in chosen if each is not mistake]
            without = behaviour_of(_read(self._text(self._with(others), 1)))
            if without == does:
                return False
        return True

    # ---- the wiring with mistakes in it --------------------------------------------------------

    def _with(self, chosen: Iterable[Mistake]) -> Rewired:
        state = self._start
        for mistake in chosen:
            state = state.after(mistake.change)
        return state

    def _text(self, state: Rewired, number: int) -> str:
        """The wiring as somebody would type it who found it so."""
        title = f"{self._right.title}, exercise {number}"
        text = lead_by_lead(self._right, _leads(state), title)
        for change in state.changes:
            if isinstance(change, Fit):
                edit = set_attribute(_read(text), change.part, change.attribute, change.value)
                text = apply(text, [edit])
        return text


def _with_links_stated(diagram: Diagram) -> Diagram:
    """The diagram with every link and plug stated, so that none follows from a misplaced lead.

    Otherwise a wrong one would be the only one that is stated, and give itself away.
    """
    for key, part in diagram.parts.items():
        for name, value in links_of(part):
            edit = set_attribute(diagram, key, name, value)
            diagram = _read(apply(diagram.source.text, [edit]))
    return diagram


def _leads(state: Rewired) -> list[Lead]:
    """The leads as they run; one that was added looks like one beside it at its device."""
    count = len(state.found.leads)
    leads = [state.lead(number) for number in state.numbers if number < count]
    for number in range(count, len(state.ends)):
        added = state.lead(number)
        device = added.a.part
        at = [n for n, lead in enumerate(leads) if device in (lead.a.part, lead.b.part)]
        if at:
            added = added._replace(given=dict(_look(leads[at[-1]])))
        leads.insert(at[-1] + 1 if at else len(leads), added)
    return leads


def _look(lead: Lead) -> Iterator[tuple[str, Attribute]]:
    """What a lead is like, but for its length and the cable it runs in."""
    cable = lead.given.get("in")
    for name, attribute in lead.given.items():
        if name != "length" and not (cable and attribute.span == cable.span):
            yield name, attribute


def _read(text: str, name: str = "exercise") -> Diagram:
    return load_text(text, name).diagram


def _grave(findings: Iterable[Finding]) -> list[Finding]:
    return [each for each in findings if each.breaks > Breaks.WORKMANSHIP]
