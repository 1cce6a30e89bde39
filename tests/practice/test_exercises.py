"""Exercises: what is hidden in them matters, is found, and is never the same twice."""

from pathlib import Path

import pytest

from wirecheck import check, load, load_text
from wirecheck.circuit.nets import Nets
from wirecheck.model.diagram import Diagram
from wirecheck.model.finding import Breaks
from wirecheck.practice.behaviour import behaviour_of
from wirecheck.practice.difficulty import Difficulty
from wirecheck.practice.exercise import Exercise, NotRightError, Wish, exercises
from wirecheck.practice.likelihood import weight
from wirecheck.practice.mistake import Form, mistakes
from wirecheck.rules.registry import RULES

EXAMPLES = Path(__file__).parents[2] / "examples"
HEATER = "furnace-room-heater"
ONE_ROD = "workshop-heater-one-rod"


def right(name: str = HEATER) -> Diagram:
    return load(EXAMPLES / f"{name}.wiring").diagram


def joins(diagram: Diagram) -> frozenset[frozenset[object]]:
    return frozenset(frozenset(net) for net in Nets(diagram).members)


@pytest.fixture(scope="module")
def pairs() -> list[Exercise]:
    """Exercises with two mistakes each."""
    return exercises(right(ONE_ROD), Wish(exercises=4, mistakes=2))


def test_as_many_are_made_as_are_wished(pairs: list[Exercise]) -> None:
    assert len(pairs) == 4
    assert [each.name for each in pairs[:2]] == [f"{ONE_ROD}-exercise-01", f"{ONE_ROD}-exercise-02"]
    assert all(len(each.hidden) == 2 for each in pairs)


def test_the_text_is_the_diagram_that_was_checked_and_gives_nothing_away(
    pairs: list[Exercise],
) -> None:
    for each in pairs:
        built = load_text(each.text)
        assert not built.problems
        assert joins(built.diagram) == joins(each.checked.diagram)
        assert "#" not in each.text
        assert not {"note", "expect", "observe", "variant"} & {
            line.partition(" ")[0] for line in each.text.splitlines()
        }


def test_each_mistake_is_found_and_changes_what_the_unit_does(pairs: list[Exercise]) -> None:
    does = behaviour_of(right(ONE_ROD))
    for each in pairs:
        assert behaviour_of(each.checked.diagram) != does
        for hidden in each.hidden:
            assert hidden.findings
            assert all(finding.breaks > Breaks.WORKMANSHIP for finding in hidden.findings)
            assert all(hidden.mistake.places & {*f.at_terminals} for f in hidden.findings)


def test_no_two_of_a_set_are_alike(pairs: list[Exercise]) -> None:
    assert len({joins(each.checked.diagram) for each in pairs}) == len(pairs)


def test_the_same_seed_gives_the_same_exercises() -> None:
    first, again, other = (
        [each.text for each in exercises(right(), Wish(exercises=2, seed=seed))] for seed in "774"
    )
    assert first == again
    assert first != other


@pytest.mark.parametrize("wished", Difficulty)
def test_each_is_as_hard_as_wished(wished: Difficulty) -> None:
    does = behaviour_of(right())
    made = exercises(right(), Wish(exercises=3, difficulty=wished))
    assert len(made) == 3
    for each in made:
        assert each.difficulty is wished
        wrong = behaviour_of(each.checked.diagram)
        assert (wrong.call == does.call) == (wished is Difficulty.HARD)
        if wished is Difficulty.EASY:
            assert wrong.destroys or not wrong.begins


@pytest.mark.parametrize("form", [form for form in Form if form is not Form.LINK])
def test_only_mistakes_of_the_wished_kind_are_hidden(form: Form) -> None:
    made = exercises(right(), Wish(exercises=2, forms=(form,)))
    assert made
    assert all(hidden.mistake.form is form for each in made for hidden in each.hidden)


def test_a_link_can_be_the_mistake() -> None:
    one_rod = right(ONE_ROD)
    (made,) = exercises(one_rod, Wish(exercises=1, forms=(Form.LINK,)))
    (hidden,) = made.hidden
    assert hidden.mistake.form is Form.LINK
    assert made.text != exercises(one_rod, Wish(exercises=1, forms=(Form.MISSING,)))[0].text


def test_only_mistakes_in_the_wished_circuit_are_hidden() -> None:
    made = exercises(right(), Wish(exercises=3, circuits=("valve",)))
    assert made
    for each in made:
        told = [finding.rule for hidden in each.hidden for finding in hidden.findings]
        assert any(rule in RULES and RULES[rule].rule.family == "valve" for rule in told)


def test_where_there_are_no_more_there_are_fewer() -> None:
    wish = Wish(exercises=500, forms=(Form.JUMPER,), difficulty=Difficulty.HARD)
    assert 0 < len(exercises(right(), wish)) < 20


def test_a_wrong_diagram_is_refused() -> None:
    wrong = load(EXAMPLES / "no-burner-ground.wiring").diagram
    with pytest.raises(NotRightError) as refused:
        exercises(wrong)
    assert refused.value.findings


def test_a_jumper_looks_like_the_leads_of_its_device_and_stands_among_them() -> None:
    (made,) = exercises(right(), Wish(exercises=1, forms=(Form.JUMPER,)))
    lines = made.text.splitlines()
    a, b = (f"{end.part}.{end.name}" for end in sorted(made.hidden[0].mistake.places))
    (at,) = [n for n, line in enumerate(lines) if f"wire {a} to {b}" in line]
    assert lines[at].partition(":")[2] == lines[at - 1].partition(":")[2]
    assert f"{a.partition('.')[0]}." in lines[at - 1]


def test_mistakes_are_those_of_one_device() -> None:
    """Nobody runs a burner's lead to the meter cupboard by mistake."""
    diagram = right()
    every = list(mistakes(diagram))
    assert {each.form for each in every} == set(Form)
    for each in every:
        if each.form in (Form.EXCHANGED, Form.JUMPER):
            assert len({place.part for place in each.places}) == 1
    assert len({each.words for each in every}) == len(every)


def test_the_key_itself_is_right() -> None:
    assert not [each for each in check(right()).findings if each.breaks > Breaks.WORKMANSHIP]


def test_every_exercise_states_its_links_so_that_a_wrong_one_does_not_stand_out() -> None:
    for made in exercises(right(), Wish(exercises=2, forms=(Form.MISSING,))):
        assert "sense-link cut" in made.text
        assert "damper-plug fitted" in made.text


def test_no_lead_lands_on_a_pin_of_the_damper_socket() -> None:
    for each in mistakes(right()):
        if each.form is Form.WRONG_TERMINAL:
            assert not any(place.name.startswith("D-") for place in each.places)


def test_what_people_do_often_comes_up_often() -> None:
    diagram = right()
    by_words = {each.words: weight(diagram, each) for each in mistakes(diagram)}
    ground = by_words["the lead from box.GND to pilot.HOOD is missing"]
    line = by_words["the lead from line.L1 to service.1 is missing"]
    assert ground > 5 * line
