"""What a rule is: its words, its reasons, its examples, and how it makes a finding.

A rule is one question a reviewing technician would ask, with one remedy.  Its module holds the
record ``RULE`` and one function ``check(facts)`` that yields findings; the record's bad and good
diagrams are run as its test, printed by ``wirecheck explain`` and listed in the reference.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from typing import TYPE_CHECKING, Literal, NamedTuple

from wirecheck.model.diagram import Terminal
from wirecheck.model.finding import Breaks, Edit, Finding, Related
from wirecheck.model.text import Span

if TYPE_CHECKING:
    from wirecheck.rules.facts import Facts

#: Said once under every explanation: a silent rule certifies nothing.
NO_CERTIFICATE = (
    "That this check finds nothing does not make an installation safe: local codes, the "
    "appliance maker's instructions and licensed people decide."
)


class Source(NamedTuple):
    """Where a requirement comes from; ``kind`` says how far it can be leaned on.

    ``from_memory`` marks a published source whose wording nobody here has read.
    """

    title: str
    kind: Literal["standard", "law", "textbook", "practice", "judgement"]
    clause: str = ""
    from_memory: bool = False

    def __str__(self) -> str:
        """As printed behind a finding."""
        if self.kind == "practice":
            return f"common practice, no source{f': {self.title}' if self.title else ''}"
        clause = f" {self.clause}" if self.clause else ""
        memory = " (from memory)" if self.from_memory else ""
        return f"{self.title}{clause}{memory}"


#: The usual source: how the trade does it, written down nowhere that we could cite.
PRACTICE = Source("", "practice")


class Fault(NamedTuple):
    """One way of breaking the rule.

    Attributes:
        message: the mistake, naming lead and terminal, and what to do; ``{fields}`` are filled.
        seen: what the unit does because of it; fields too.
        breaks: if it differs from the rule's.
    """

    message: str
    seen: str
    breaks: Breaks | None = None


class Example(NamedTuple):
    """A small diagram; ``finds`` are the faults it must raise and the text each span covers."""

    text: str
    finds: tuple[tuple[str, str], ...] = ()


class Rule(NamedTuple):
    """The record of a rule.

    Attributes:
        name: a plain phrase that says the mistake; stable once released.
        title: the required state as a statement.
        family: the chapter it is listed under.
        breaks: what the mistake usually breaks.
        why: what happens at the unit if it is ignored.
        blind_spots: when the rule is wrong or cannot see.
        caution: what to mind if somebody can be hurt, else "".
        sources: never empty.
        faults: by code.
        bad: diagrams with the mistake, as small as can be; good: the same put right.
        stands_back_for: rules whose finding at the same device explains this one's.
        general: it speaks of anything (a loose end, an empty terminal) and only where no other
            rule says something of the same lead or, where it names no lead, of the same terminal
            or of a lead at the same device.
        covers: whatever else is found at its leads and terminals follows from this; if it is
            general too, only where that is more than one finding.
    """

    name: str
    title: str
    family: str
    breaks: Breaks
    why: str
    blind_spots: str
    caution: str
    sources: tuple[Source, ...]
    faults: Mapping[str, Fault]
    bad: tuple[Example, ...]
    good: tuple[Example, ...]
    stands_back_for: tuple[str, ...] = ()
    general: bool = False
    covers: bool = False

    def finding(  # noqa: PLR0913  # all but three are optional and named
        self,
        facts: Facts,
        fault: str,
        at: Span,
        *,
        leads: Iterable[int] = (),
        terminals: Iterable[Terminal] = (),
        edits: Sequence[Edit] = (),
        related: Sequence[Related] = (),
        breaks: Breaks | None = None,
        also_breaks: Sequence[Breaks] = (),
        **fields: str,
    ) -> Finding:
        """Make a finding.

        Args:
            facts: the diagram's facts, for names.
            fault: code of the fault.
            at: the place of the cause.
            leads: numbers of the leads concerned.
            terminals: the terminals concerned.
            edits: text edits that mend it.
            related: other places that belong to it.
            breaks: what it breaks on this diagram, if that was worked out.
            also_breaks: what else it breaks.
            fields: texts for the fault's message and ``seen``.

        Raises:
            KeyError: the fault has no such code, or a field is missing: a bug in the rule.
        """
        words = self.faults[fault]
        numbers, touched = tuple(leads), tuple(terminals)
        diagram = facts.diagram
        return Finding(
            rule=self.name,
            fault=fault,
            breaks=breaks or words.breaks or self.breaks,
            also_breaks=tuple(also_breaks),
            message=words.message.format_map(fields),
            span=at,
            seen_at_unit=words.seen.format_map(fields),
            leads=tuple(diagram.lead_name(diagram.leads[number]) for number in numbers),
            lead_numbers=numbers,
            terminals=tuple(diagram.show(terminal) for terminal in touched),
            at_terminals=touched,
            caution=self.caution,
            source="; ".join(str(source) for source in self.sources),
            edits=tuple(edits),
            related=tuple(related),
        )


#: A rule's function.
Check = Callable[["Facts"], Iterator[Finding]]
