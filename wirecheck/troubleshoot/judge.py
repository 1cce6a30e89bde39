"""From what was observed to a diagnosis: suspects, the next reading or the ending, and remarks."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from wirecheck.troubleshoot.diagnosis import Advice, Diagnosis, Group, Suspect
from wirecheck.troubleshoot.dictionary import Dictionary
from wirecheck.troubleshoot.endings import ending, repairs
from wirecheck.troubleshoot.entropy import entropy_bits
from wirecheck.troubleshoot.next_reading import Choice, Table, bare_table, choose, merged, table
from wirecheck.troubleshoot.part_faults import MOST_NAMED
from wirecheck.troubleshoot.posterior import Standing, standings
from wirecheck.troubleshoot.reading import Observation, Outcome
from wirecheck.troubleshoot.several import contradictions, doubles
from wirecheck.troubleshoot.words import joined, range_words, told_words

#: A group as likely as this leaves hardly anything else.
SURE = 0.995
#: After so many readings a technician stops and looks at what is left.
MOST_READINGS = 10
_WELL = (
    "All that was seen is as it should be: the unit works. A fault that comes and goes has to be "
    "caught while it lasts."
)
_AS_WRONG = (
    "All that was seen goes with the wiring as drawn, and that has a mistake: mend it before "
    "anything is looked for."
)
#: As likely as this, mistakes of the drawing are mended before more is read (common practice, no
#: source).
DRAWN_SO = 0.8
#: So many sets of observations that do not go together are named, the smallest.
MOST_CONFLICTS = 3
#: A suspect less likely than this is not named.
NAMED = 1e-3


def judge(dictionary: Dictionary, observations: Sequence[Observation]) -> Diagnosis:
    """Work out the diagnosis."""
    agreeing = standings(dictionary, dictionary.singles, observations)
    remarks: list[str] = []
    if not agreeing:
        agreeing, remarks = _without_a_single(dictionary, observations)
    may_be_well = bool(agreeing) and agreeing[0].candidate == (0,) and dictionary.works_as_drawn
    taken = {each.reading.key for each in observations}
    if agreeing:
        rest = table(dictionary, agreeing, observations, seen_first=may_be_well)
    else:
        rest = bare_table(dictionary, _nearest(dictionary, observations))
    is_sure = bool(agreeing) and _most(rest) >= SURE
    choice = None
    all_seen = bool(taken) and taken.issuperset(each.key for each in dictionary.symptoms)
    drawn_so = _is_drawn_so(dictionary, rest) if agreeing else False
    is_sure = is_sure or drawn_so
    is_over = is_sure or (may_be_well and all_seen)
    if agreeing and not is_over and _made(dictionary, observations) < MOST_READINGS:
        choice = choose(rest)
    if choice is None and agreeing:
        if may_be_well and observations:
            remarks = [_AS_WRONG if dictionary.mistakes else _WELL]
            rest, is_sure = bare_table(dictionary, agreeing[:1]), False
        rest = rest if drawn_so else merged(rest)
    groups = _named(dictionary, rest, observations)
    dangers = dictionary.allowed.and_seen(observations).remarks
    end = ending(groups if agreeing else (), is_sure=is_sure) if choice is None else None
    return Diagnosis(
        tuple(observations),
        groups,
        _advice(dictionary, rest, choice) if choice else None,
        end,
        (*dangers, *_of_drawing(dictionary), *remarks),
        _bits(rest),
        dangers,
    )


def _is_drawn_so(dictionary: Dictionary, rest: Table) -> bool:
    """Whether mistakes of the drawing explain it so well that they are mended first."""
    return bool(dictionary.mistakes) and any(
        one.candidate == (0,) and share >= DRAWN_SO
        for one, share in zip(rest.standings, rest.shares.tolist(), strict=True)
    )


def _of_drawing(dictionary: Dictionary) -> list[str]:
    """What is wrong in the drawing itself, to be said whatever was seen."""
    mistakes = dictionary.mistakes
    if not mistakes:
        return []
    count = "1 finding" if len(mistakes) == 1 else f"{len(mistakes)} findings"
    named = "; ".join(each.message for each in mistakes[:MOST_NAMED])
    more = "; and more (wirecheck check)" if len(mistakes) > MOST_NAMED else ""
    return [f"The drawing itself has {count}, to be put right first: {named}{more}."]


def _nearest(dictionary: Dictionary, observations: Sequence[Observation]) -> list[Standing]:
    """What explains all but one or two of the observations."""
    for most_failed in (1, 2):
        some = standings(dictionary, dictionary.singles, observations, most_failed)
        if some:
            return some
    return [Standing((0,), 1.0, ())]


def _made(dictionary: Dictionary, observations: Sequence[Observation]) -> int:
    """How many readings were made, or tried, beside what is seen."""
    symptoms = {each.key for each in dictionary.symptoms}
    return sum(each.reading.key not in symptoms for each in observations)


def _most(rest: Table) -> float:
    """The share of the likeliest group."""
    import numpy as np

    return float(np.bincount(rest.groups, rest.shares).max())


def _bits(rest: Table) -> float:
    import numpy as np

    return entropy_bits(np.bincount(rest.groups, rest.shares).tolist())


# ---- no single fault explains it ---------------------------------------------------------------


def _without_a_single(
    dictionary: Dictionary, observations: Sequence[Observation]
) -> tuple[list[Standing], list[str]]:
    remarks = []
    for some in contradictions(dictionary, observations)[:MOST_CONFLICTS]:
        words = joined([told_words(each) for each in some])
        remarks.append(f"No single fault shows all of this together: {words}.")
    pairs = doubles(dictionary, observations)
    if pairs:
        remarks.append("Two faults at once explain it; take that as a lead, and read on.")
    else:
        remarks.append(
            f"None of the {len(dictionary.faults)} faults that are thought of explains it, nor do "
            "two of them: look at those readings again; else the fault is outside this list."
        )
    return pairs, remarks


# ---- in words ------------------------------------------------------------------------------------


def _named(
    dictionary: Dictionary, rest: Table, observations: Sequence[Observation]
) -> tuple[Group, ...]:
    """The groups, the likeliest first."""
    members: dict[int, list[tuple[float, Standing]]] = {}
    for one, share, group in zip(
        rest.standings, rest.shares.tolist(), rest.groups.tolist(), strict=True
    ):
        members.setdefault(group, []).append((share, one))
    groups: list[Group] = []
    for some in members.values():
        some.sort(key=lambda each: -each[0])
        probability = sum(share for share, _one in some)
        if probability < NAMED and groups:
            continue
        suspects = tuple(
            Suspect(
                tuple(dictionary.faults[number] for number in one.candidate),
                share,
                tuple(observations[number] for number in one.failed),
            )
            for share, one in some
        )
        groups.append(
            Group(suspects, probability, repairs(dictionary, [one.candidate for _s, one in some]))
        )
    return tuple(sorted(groups, key=lambda group: -group.probability))


def _advice(dictionary: Dictionary, rest: Table, choice: Choice) -> Advice:
    readings = rest.readings
    return Advice(
        readings[choice.column],
        tuple(sorted(_outcomes(dictionary, rest, choice.column), key=lambda o: -o.probability)),
        choice.gain_bits,
        tuple(readings[column] for column in choice.others),
    )


def _outcomes(dictionary: Dictionary, rest: Table, column: int) -> list[Outcome]:
    reading = rest.readings[column]
    shares = rest.shares.tolist()
    members: dict[int, list[int]] = {}
    for place, number in enumerate(rest.numbers[:, column].tolist()):
        members.setdefault(number, []).append(place)
    found = []
    for places in members.values():
        by_group: dict[int, float] = {}
        for place in places:
            group = int(rest.groups[place])
            by_group[group] = by_group.get(group, 0.0) + shares[place]
        most = max(by_group, key=lambda group: by_group[group])
        likeliest = max(
            (place for place in places if rest.groups[place] == most), key=shares.__getitem__
        )
        values = [dictionary.value(rest.standings[place].candidate, reading) for place in places]
        faults = (dictionary.faults[each] for each in rest.standings[likeliest].candidate)
        found.append(
            Outcome(
                range_words(reading, values),
                dictionary.value(rest.standings[likeliest].candidate, reading),
                sum(by_group.values()),
                "; and ".join(fault.what for fault in faults),
            )
        )
    return _told_once(found)


def _told_once(outcomes: list[Outcome]) -> list[Outcome]:
    """Outcomes that are told in the same words made one, under the likelier of them."""
    by_words: dict[str, Outcome] = {}
    for one in sorted(outcomes, key=lambda each: -each.probability):
        first = by_words.setdefault(one.words, one)
        if first is not one:
            both = first.probability + one.probability
            by_words[one.words] = replace(first, probability=both)
    return list(by_words.values())
