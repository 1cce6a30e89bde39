"""A device replaced: from the diagram as found and the new devices to the diagram as it is then."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from typing import NamedTuple

from wirecheck.circuit.nets import Nets
from wirecheck.correct.proof import Proof, proof
from wirecheck.language.build import Built
from wirecheck.language.edit import apply
from wirecheck.language.load import load_text
from wirecheck.model.diagram import Diagram, Lead
from wirecheck.model.finding import Edit
from wirecheck.replace.claims import no_longer_true
from wirecheck.replace.crossings import Crossing, colour_of, crossings
from wirecheck.replace.device import Device
from wirecheck.replace.landing import Landings, NewLead, landings_of
from wirecheck.replace.old_comments import old_comments
from wirecheck.replace.plan import Plan, Task, planned
from wirecheck.replace.refusals import refusals
from wirecheck.replace.request import CannotReplaceError, request_of
from wirecheck.replace.rewrite import rewritten
from wirecheck.replace.rewriting import NotInTextError
from wirecheck.replace.variants import VariantThen, variants_then, worse

_ANTICIPATOR = "anticipator-setting-off"


class MissingLead(NamedTuple):
    """A lead to run: from where to where, how it is typed, and what it is for."""

    a: str
    b: str
    lead: str
    why: str


class Replacement(NamedTuple):
    """What a replacement comes to.

    Attributes:
        found: the diagram as found; ``before`` what a check and a run say of it.
        after: the diagram then, read from ``text``; ``proof`` what they say of that.
        plan: devices in and out, links and plugs.
        landings: what becomes of each lead.
        crossings: the cross-reference, end by end, in the order of the text.
        left_over: leads that come out, as found.
        missing: leads to run.
        tasks: links to cut, plugs to fit, settings to change.
        old_comments: the title and comments that tell of the old wiring, to be read again.
        set_aside: statements that name what is no longer there; in the text they are comments.
        problems: of the new text, in words.
        variants: the variants of the text, each with the new devices.
        refuted: what the text claims and no longer holds, in sentences.
    """

    found: Diagram
    before: Proof
    after: Diagram
    proof: Proof
    plan: Plan
    landings: Landings
    crossings: tuple[Crossing, ...]
    left_over: tuple[str, ...]
    missing: tuple[MissingLead, ...]
    tasks: tuple[Task, ...]
    old_comments: tuple[str, ...]
    set_aside: tuple[str, ...]
    problems: tuple[str, ...]
    variants: tuple[VariantThen, ...]
    refuted: tuple[str, ...]

    @property
    def text(self) -> str:
        """The new diagram."""
        return self.after.source.text

    @property
    def new_devices(self) -> frozenset[str]:
        """Keys of the devices that go in."""
        request = self.plan.request
        new = {swap.old.key for swap in request.swaps}
        return frozenset(new | {device.part.key for device in request.fitted.values()})

    @property
    def landed(self) -> frozenset[int]:
        """Numbers in `after` of the leads that land on a new device, or are new."""
        return frozenset(
            number
            for number, lead in enumerate(self.after.leads)
            if self.new_devices & {lead.a.part, lead.b.part} or number in self.run
        )

    @property
    def run(self) -> frozenset[int]:
        """Numbers in `after` of the leads that are new; of leads alike the last ones are."""
        new = Counter(frozenset((lead.a, lead.b)) for lead in self.landings.new)
        run = set()
        for number in reversed(range(len(self.after.leads))):
            ends = frozenset((self.after.leads[number].a, self.after.leads[number].b))
            if new[ends]:
                new[ends] -= 1
                run.add(number)
        return frozenset(run)

    @property
    def new_mistakes(self) -> bool:
        """Whether something of safety or operation is wrong then that was not before."""
        return worse(self.before, self.proof) or any(each.is_worse for each in self.variants)

    @property
    def holds(self) -> bool:
        """Whether nothing of safety or operation is found then, and every claim holds as before."""
        return self.proof.holds and not self.refuted and all(e.proof.holds for e in self.variants)


def replace(
    diagram: Diagram, offered: Sequence[Device], replaced: str | None = None
) -> Replacement:
    """Put new devices in the place of old ones.

    Args:
        diagram: as found.
        offered: the new devices.
        replaced: name of the part that a single new device replaces, where that is not clear.

    Raises:
        CannotReplaceError: the request cannot be met; it says why.
    """
    nets = Nets(diagram)
    request = request_of(nets, offered, replaced)
    reasons = refusals(request)
    if reasons:
        raise CannotReplaceError(reasons)
    plan = planned(request)
    landings = landings_of(plan.request, plan.after, plan.out)
    try:
        built, set_aside = rewritten(diagram, plan, landings)
    except NotInTextError as reason:
        raise CannotReplaceError([str(reason)]) from None
    before, after, tasks = proof(diagram), proof(built.diagram), plan.tasks
    built, after, set_anew = _anticipators_set(built, before, after)
    return Replacement(
        found=diagram,
        before=before,
        after=built.diagram,
        proof=after,
        plan=plan,
        landings=landings,
        crossings=tuple(crossings(nets, before, after, landings, plan)),
        left_over=tuple(
            _lead_words(diagram, lead)
            for lead, ends in zip(diagram.leads, landings.ends, strict=True)
            if ends is None
        ),
        missing=tuple(_missing(built.diagram, new) for new in landings.new),
        tasks=(*tasks, *set_anew),
        old_comments=old_comments(diagram, built.diagram, plan, landings),
        set_aside=set_aside,
        problems=tuple(problem.message for problem in built.problems),
        variants=variants_then(load_text(diagram.source.text, diagram.source.name), built),
        refuted=no_longer_true(before, after),
    )


def _anticipators_set(built: Built, before: Proof, after: Proof) -> tuple[Built, Proof, list[Task]]:
    """Set anticipators to what runs through them with the new loads, where they were right."""
    was_off = {finding.terminals for finding in before.grave if finding.rule == _ANTICIPATOR}
    off = [
        finding
        for finding in after.grave
        if finding.rule == _ANTICIPATOR and finding.terminals not in was_off
    ]
    edits = [edit for finding in off for edit in finding.edits]
    if not edits:
        return built, after, []
    source = built.diagram.source
    built = load_text(apply(source.text, edits), source.name)
    tasks = [
        Task(part.name, f"{part.name}: set the {_setting(edit)}, as the loads have changed")
        for finding in off
        for edit in finding.edits
        if (part := built.diagram.parts.get(finding.at_terminals[0].part))
    ]
    return built, proof(built.diagram), tasks


def _setting(edit: Edit) -> str:
    """What is set, from the words typed for it: ``anticipator to 0.75 A``."""
    return " to ".join(edit.new_text.strip(":, ").split(maxsplit=1))


def _lead_words(diagram: Diagram, lead: Lead) -> str:
    colour = f"{colour_of(lead)} " if colour_of(lead) else ""
    return f"the {colour}lead from {diagram.show(lead.a)} to {diagram.show(lead.b)}"


def _missing(after: Diagram, new: NewLead) -> MissingLead:
    return MissingLead(after.show(new.a), after.show(new.b), new.lead, new.why)
