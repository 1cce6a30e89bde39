"""Marks one drawing: what is lost in each circuit, what that does, and what caps the mark."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from wirecheck.check.engine import Checked, check
from wirecheck.compare.circuits import Circuit
from wirecheck.compare.engine import compare
from wirecheck.compare.misses import Fitted
from wirecheck.compare.result import Comparison, Difference, Voice
from wirecheck.compare.runs import does
from wirecheck.grade.alone import Alone, alone, exchanged
from wirecheck.grade.key import Key
from wirecheck.grade.marked import Marked
from wirecheck.grade.mistake import SET_OTHERWISE, mistake_in_words
from wirecheck.grade.points import (
    WORKMANSHIP,
    Loss,
    circuit_marks,
    loss_of,
    lost_points,
    rounded_down,
)
from wirecheck.grade.rotations import rotations
from wirecheck.grade.rubric import Rubric
from wirecheck.model.diagram import Diagram, Terminal
from wirecheck.model.finding import Breaks, Finding

VOICE = Voice("the key", "your drawing")
#: So many findings that make a drawing unsafe are told.
MOST_TOLD = 6


def marked(
    keys: Sequence[Key], diagram: Diagram, rubric: Rubric, *, unread: bool = False
) -> Marked:
    """Mark a drawing by the key that it comes nearest to.

    Args:
        keys: at least one; of several that give the same mark the first counts.
        diagram: the drawing.
        rubric: how much each circuit weighs.
        unread: something of its text could not be read: that a lead is missing is then not held
            to be unsafe.
    """
    checked = check(diagram)
    found = [_Marking(key, checked, rubric, unread=unread).marked() for key in keys]
    return max(found, key=lambda each: each.mark)


class _Marking:
    def __init__(self, key: Key, checked: Checked, rubric: Rubric, *, unread: bool) -> None:
        self._key, self._checked, self._rubric, self._unread = key, checked, rubric, unread
        self._diagram = checked.diagram
        self._comparison: Comparison = compare(key.ready, checked.diagram, VOICE)
        self._names = {pair.one: pair.other for pair in self._comparison.pairs}
        self._new = key.beyond(checked.findings)

    def marked(self) -> Marked:
        comparison = self._comparison
        losses = [*self._wiring(), *self._workmanship()]
        circuits = tuple(circuit_marks(losses, self._key.units, self._rubric))
        whole = rounded_down(sum(each.points for each in circuits))
        unsafe = tuple(dict.fromkeys(self._unsafe(losses)))
        mark = min(whole, self._rubric.unsafe.cap) if unsafe else whole
        return Marked(
            self._key.name,
            comparison.how,
            mark,
            self._rubric.out_of,
            whole,
            unsafe[:MOST_TOLD],
            circuits,
            tuple(lost_points(losses, circuits, self._diagram)),
            comparison.does_second or does(self._diagram),
            self._key.does,
            tuple(self._remarks()),
            self._checked,
        )

    # ---- what is wrong ----------------------------------------------------------------------

    def _wiring(self) -> Iterator[Loss]:
        """The differences, and what a check finds besides; none if it does what the key does."""
        comparison = self._comparison
        grave = [each for each in self._new if each.breaks > Breaks.WORKMANSHIP]
        if comparison.how and not grave:
            return
        differences = () if comparison.how == "structure" else comparison.differences
        by_themselves = self._by_themselves(differences)
        explained: set[Finding] = set()
        for difference, by_itself in zip(differences, by_themselves, strict=True):
            about = [each for each in grave if self._is_about(each, difference)]
            explained.update(about)
            yield self._difference(difference, about, by_itself)
        for finding in grave:
            if finding not in explained:
                yield self._finding(finding)
        if not comparison.how and not differences and not grave:
            yield from self._set_otherwise()

    def _by_themselves(self, differences: Sequence[Difference]) -> list[Alone]:
        """What each mistake does in a unit that is right but for it; an exchange is one mistake."""
        found = [Alone((), "")] * len(differences)
        for group in rotations(differences, self._key):
            some = [differences[number] for number in group]
            if len(group) == 1:
                found[group[0]] = alone(self._key, some[0]) or Alone((), "")
            else:
                what = exchanged(self._key, some, self._leads_instead(some))
                for number in group:
                    found[number] = what
        return found

    def _leads_instead(self, group: Sequence[Difference]) -> list[tuple[Terminal, Terminal, str]]:
        """The leads of the drawing at the ends of leads of the key that have changed places."""
        key_leads = [self._key.diagram.leads[n] for each in group for n in each.first_leads]
        places = {end for lead in key_leads for end in (lead.a, lead.b)}
        back = {other: one for one, other in self._names.items()}
        instead = []
        for lead in self._diagram.leads:
            a, b = (end._replace(part=back.get(end.part, end.part)) for end in (lead.a, lead.b))
            if {a, b} & places and not self._key.joins(a, b):
                instead.append((a, b, "ignition-cable" if "ignition-cable" in lead.given else ""))
        return instead

    def _difference(self, difference: Difference, about: list[Finding], by_itself: Alone) -> Loss:
        worst = max(about, key=lambda each: each.breaks, default=None)
        effect = by_itself.effect or (worst.seen_at_unit if worst else "")
        cautions = [each.caution for each in (*about, *by_itself.unsafe) if each.caution]
        breaks = max(
            (each.breaks for each in (*about, *by_itself.unsafe)), default=Breaks.OPERATION
        )
        return Loss(
            self._key.counted(difference.circuit).value,
            mistake_in_words(difference, self._key.diagram),
            difference.message,
            effect,
            breaks,
            difference.leads,
            tuple(self._here(difference.terminals)),
            next(iter(cautions), ""),
            () if self._unread and difference.landed is None else by_itself.unsafe,
        )

    def _finding(self, finding: Finding) -> Loss:
        back = {other: one for one, other in self._names.items()}
        ends = [*finding.at_terminals]
        ends += [end for n in finding.lead_numbers for end in self._diagram.leads[n][:2]]
        theirs = [end._replace(part=back.get(end.part, end.part)) for end in ends]
        circuit = self._key.circuit_of(theirs)
        return loss_of(finding, circuit.value)

    def _set_otherwise(self) -> Iterator[Loss]:
        """The wiring is the key's, and a run shows that some part is set otherwise."""
        comparison = self._comparison
        values = "; ".join(comparison.remarks)
        for seen in comparison.seen:
            reason = f"set otherwise than in the key: {values}"
            effect = f"{seen.when}, {seen.second}; at the key, {seen.first}"
            circuit = self._key.counted(Circuit.CHAIN).value
            yield Loss(circuit, SET_OTHERWISE, reason, effect, Breaks.OPERATION, (), (), "")

    def _workmanship(self) -> Iterator[Loss]:
        """Findings of workmanship that no lost unit explains."""
        differences = () if self._comparison.how else self._comparison.differences
        for finding in self._new:
            if finding.breaks is Breaks.WORKMANSHIP and not any(
                self._is_about(finding, each) for each in differences
            ):
                yield loss_of(finding, WORKMANSHIP)

    def _is_about(self, finding: Finding, difference: Difference) -> bool:
        """Whether a finding speaks of a lead of a difference, or of one of its nets."""
        leads = set(difference.leads)
        if leads & set(finding.lead_numbers):
            return True
        if isinstance(difference.miss, Fitted):
            part = self._names.get(difference.miss.part.key)
            return any(end.part == part for end in finding.at_terminals)
        net_of = self._checked.nets.net_of
        ends = [*self._here(difference.terminals)]
        ends += [end for number in leads for end in self._diagram.leads[number][:2]]
        nets = {net_of[end] for end in ends}
        return any(net_of.get(end) in nets for end in finding.at_terminals)

    def _here(self, terminals: Iterable[Terminal]) -> Iterator[Terminal]:
        """Terminals of the key as the drawing calls them, those that it has."""
        nets = self._checked.nets
        for terminal in terminals:
            here = terminal._replace(part=self._names.get(terminal.part, terminal.part))
            if here in nets.net_of:
                yield here

    def _unsafe(self, losses: Iterable[Loss]) -> Iterator[str]:
        found = [each for each in self._new if each.breaks is Breaks.SAFETY]
        yield from (each.message for each in found)
        told = {each.rule for each in found}
        for finding in (finding for loss in losses for finding in loss.unsafe):
            if finding.rule not in told:
                told.add(finding.rule)
                yield f"by itself, in a unit that is right: {finding.message}"

    def _remarks(self) -> Iterator[str]:
        comparison = self._comparison
        if comparison.how == "function" and not any(
            each.breaks > Breaks.WORKMANSHIP for each in self._new
        ):
            for difference in comparison.differences:
                yield f"wired otherwise, and it does the same: {difference.message}"
        yield from comparison.remarks
