"""The diagram with the new devices in it, as text: comments, order and style stay.

The text is changed step by step and read again after each: new devices are stated; leads that are
left over, or go to something that is there already, come off; each old device gives its name to the
new one, and its terminals are named anew; then the rest of the leads is moved and run, and what
has no use any more comes out.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from typing import NamedTuple

from wirecheck.language import statements as st
from wirecheck.language.build import Built
from wirecheck.language.edit import add_lead, move_end, remove_lead, set_attribute
from wirecheck.language.load import load_text
from wirecheck.model.diagram import OPEN_END, UNKNOWN_END, Diagram, Lead, Terminal
from wirecheck.model.text import Span
from wirecheck.replace.landing import Ends, Landings, counterpart
from wirecheck.replace.plan import Plan
from wirecheck.replace.restated import stated, swapped, taken_out
from wirecheck.replace.rewriting import NotInTextError, Rewriting


class _Later(NamedTuple):
    """Leads that wait for the new devices: where they are and shall be; those in lines anew."""

    moved: list[tuple[Lead, Ends, Ends]]
    stated_anew: list[tuple[Lead, Ends]]


def rewritten(found: Diagram, plan: Plan, landings: Landings) -> tuple[Built, tuple[str, ...]]:
    """Make a replacement in the text: what it reads as then, and what was set aside.

    Raises:
        NotInTextError: it cannot be made in the text.
    """
    text = Rewriting(found)
    for device in plan.request.fitted.values():
        text.change([stated(text, device)])
    later = _taken_off(text, found, plan, landings)
    for swap in plan.request.swaps:
        swapped(text, swap)
    _landed(text, plan, later)
    for new in landings.new:
        text.change([add_lead(text.diagram, new.a, new.b, new.lead)])
    for part in plan.out:
        taken_out(text, part)
    for key, attribute, value in plan.settings:
        text.change([set_attribute(text.diagram, key, attribute, value)])
    _claims_set_aside(text, len(load_text(found.source.text, text.name).problems))
    planned = [*(ends for ends in landings.ends if ends), *((new.a, new.b) for new in landings.new)]
    if Counter(map(_same, planned)) != Counter(_same((e.a, e.b)) for e in text.diagram.leads):
        raise NotInTextError("read again, the changed text says something else")
    return text.built, tuple(text.set_aside)


def _same(ends: tuple[Terminal | None, ...]) -> frozenset[Terminal | None]:
    """The ends of a lead whichever is named first; loose ends are all alike, as are untraced."""
    return frozenset(
        end._replace(name="") if end and end.part in (OPEN_END, UNKNOWN_END) else end
        for end in ends
    )


# ---- leads -------------------------------------------------------------------------------------


def _taken_off(text: Rewriting, found: Diagram, plan: Plan, landings: Landings) -> _Later:
    """Take leads out, and move what can be moved, before any device is swapped."""
    later = _Later([], [])
    for lead, ends in _moves(found, plan, landings):
        if ends is None or _needs_a_line_anew(plan, lead, ends):
            number = _number(text.diagram, (lead.a, lead.b), lead)
            text.change([remove_lead(text.diagram, number)])
            later.stated_anew.extend([(lead, ends)] if ends else [])
        elif (here := _moved_early(text, plan, lead, ends)) is not None:
            later.moved.append((lead, here, ends))
    return later


def _landed(text: Rewriting, plan: Plan, later: _Later) -> None:
    """Land what had to wait until the new devices were there."""
    for lead, here, ends in later.moved:
        _moved_late(text, lead, (_end_after(plan, here[0]), _end_after(plan, here[1])), ends)
    for lead, ends in later.stated_anew:
        text.change([add_lead(text.diagram, *ends, _typed(lead))])


def _moves(found: Diagram, plan: Plan, landings: Landings) -> Iterator[tuple[Lead, Ends | None]]:
    """The leads that do not just follow their device, with where they land."""
    for lead, ends in zip(found.leads, landings.ends, strict=True):
        if ends is None or ends != (_end_after(plan, lead.a), _end_after(plan, lead.b)):
            yield lead, ends


def _end_after(plan: Plan, end: Terminal) -> Terminal | None:
    """Where an end lands by the roles, as naming the terminals anew has it."""
    for swap in plan.request.swaps:
        if swap.old.key == end.part:
            return counterpart(swap.old, end, swap.new.part)
    return end


def _needs_a_line_anew(plan: Plan, lead: Lead, ends: Ends) -> bool:
    """Whether an end moves on one device, from a terminal that the new one has not."""
    named_anew = {swap.old.key for swap in plan.request.swaps}
    return any(
        _end_after(plan, old) is None and new.part in named_anew
        for old, new in zip((lead.a, lead.b), ends, strict=True)
    )


def _typed(lead: Lead) -> str:
    """What was typed for a lead, but for the length of a run that it shared."""
    texts = (
        " ".join(given.span.text.split())
        for name, given in lead.given.items()
        if not (name == "length" and lead.shared_length)
    )
    return ", ".join(dict.fromkeys(texts))


def _moved_early(text: Rewriting, plan: Plan, lead: Lead, ends: Ends) -> Ends | None:
    """Move a lead as far as the text knows where to: where it then lands.

    None if it lands where it shall as soon as its devices are swapped. An end without counterpart
    must be off its device before that is swapped.
    """
    here = [lead.a, lead.b]
    named_anew = {swap.old.key for swap in plan.request.swaps}
    for place, (old, new) in enumerate(zip((lead.a, lead.b), ends, strict=True)):
        if _end_after(plan, old) != new and new.part not in named_anew:
            number = _number(text.diagram, (here[0], here[1]), lead)
            text.change([move_end(text.diagram, number, old, new)])
            here[place] = new
    arrived = all(_end_after(plan, end) == new for end, new in zip(here, ends, strict=True))
    return None if arrived else (here[0], here[1])


def _moved_late(
    text: Rewriting,
    lead: Lead,
    followed: tuple[Terminal | None, Terminal | None],
    ends: Ends,
) -> None:
    """Move the ends that had to wait for the new device."""
    here = list(followed)
    for place, new in enumerate(ends):
        old = here[place]
        if old is None:
            raise NotInTextError("a lead has no end left to be moved by")
        if old != new:
            number = _number(text.diagram, (here[0], here[1]), lead)
            text.change([move_end(text.diagram, number, old, new)])
            here[place] = new


def _number(diagram: Diagram, ends: tuple[Terminal | None, Terminal | None], lead: Lead) -> int:
    """The number of a lead in the text as it stands now: by its ends, then by its colour."""
    wanted = _same(ends)
    alike = [n for n, each in enumerate(diagram.leads) if _same((each.a, each.b)) == wanted]
    colour = lead.given.get("colour")
    of_colour = [
        number
        for number in alike
        if (given := diagram.leads[number].given.get("colour"))
        and colour
        and given.value == colour.value
    ]
    if not alike:
        raise NotInTextError("a lead is not found again in the changed text")
    return (of_colour or alike)[0]


# ---- claims ------------------------------------------------------------------------------------


def _claims_set_aside(text: Rewriting, known: int) -> None:
    """Set aside claims and observations of what the new devices have not: a pilot, a damper."""
    if len(text.built.problems) <= known:
        return
    at = [p.span for p in text.built.problems if p.span.source is text.source]
    claims = [
        Span(text.source, parsed.start, parsed.end)
        for parsed in text.statements()
        if isinstance(parsed.statement, st.ExpectStatement | st.ObserveStatement)
    ]
    text.change(
        [
            text.aside(claim)
            for claim in claims
            if any(claim.start <= span.start < claim.end for span in at)
        ]
    )
