"""What a report may say of whatever a finding can be called: rule, property, claim, acceptance."""

from __future__ import annotations

from typing import Final, NamedTuple

from wirecheck.model.finding import Breaks
from wirecheck.properties.registry import PROPERTIES
from wirecheck.rules.registry import RULES


class RuleWords(NamedTuple):
    """The words for one name.

    Attributes:
        name: as a finding bears it.
        title: what should be, as a statement.
        why: why it matters.
        breaks: what is usually broken.
        caution: what to mind, or "".
        sources: where it comes from.
    """

    name: str
    title: str
    why: str
    breaks: Breaks
    caution: str = ""
    sources: tuple[str, ...] = ()

    @property
    def help(self) -> tuple[str, ...]:
        """All of it, a line each."""
        source = f"source: {'; '.join(self.sources)}" if self.sources else ""
        return self.title, self.why, f"caution: {self.caution}" if self.caution else "", source


_PRACTICE: Final = ("common practice, no source",)

#: What is neither a rule nor a property.
_OTHERS: Final = {
    words.name: words
    for words in (
        RuleWords(
            "claim-refuted",
            "What the file claims with expect holds",
            "The wiring does something else than the sheet says: one of the two is wrong.",
            Breaks.OPERATION,
        ),
        RuleWords(
            "claim-never-tested",
            "What a claim speaks of comes about",
            "The phase or the conditions of the claim never come, so it says nothing.",
            Breaks.OPERATION,
        ),
        RuleWords(
            "accept-unused",
            "Each acceptance is for a finding that is there",
            "One that is left over hides the same mistake when it is made again.",
            Breaks.WORKMANSHIP,
            sources=_PRACTICE,
        ),
        RuleWords(
            "accept-without-reason",
            "A safety finding is accepted only with a reason",
            "Who reads the sheet next must know why a protection is missing.",
            Breaks.WORKMANSHIP,
            sources=_PRACTICE,
        ),
        RuleWords(
            "problem",
            "Everything in the text can be used",
            "What was not understood was not checked.",
            Breaks.SAFETY,
        ),
    )
}


def rule_words(name: str) -> RuleWords:
    """The words for what a finding or a result is called.

    Raises:
        KeyError: nothing is called that.
    """
    if name in RULES:
        rule = RULES[name].rule
        sources = tuple(map(str, rule.sources))
        return RuleWords(name, rule.title, rule.why, rule.breaks, rule.caution, sources)
    if name in PROPERTIES:
        record = PROPERTIES[name]
        sources = (record.source,)
        return RuleWords(name, record.title, record.why, record.breaks, record.caution, sources)
    return _OTHERS[name]
