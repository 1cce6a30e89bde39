"""What a report may say of whatever a finding can be called: rule, property, claim, acceptance."""

from __future__ import annotations

from typing import Final, NamedTuple

from wirecheck.check.text_rules import TEXT_RULES
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


#: What could not be used of a text, which no rule finds.
_PROBLEM: Final = RuleWords(
    "problem",
    "Everything in the text can be used",
    "What was not understood was not checked.",
    Breaks.SAFETY,
)


def rule_words(name: str) -> RuleWords:
    """The words for what a finding or a result is called.

    Raises:
        KeyError: nothing is called that.
    """
    if name == _PROBLEM.name:
        return _PROBLEM
    if name in PROPERTIES:
        record = PROPERTIES[name]
        words = record.title, record.why, record.breaks, record.caution
        return RuleWords(name, *words, (record.source,))
    rule = TEXT_RULES[name] if name in TEXT_RULES else RULES[name].rule
    sources = tuple(map(str, rule.sources))
    return RuleWords(name, rule.title, rule.why, rule.breaks, rule.caution, sources)
