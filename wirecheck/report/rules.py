"""A rule explained: its record, and what its own examples really give when they are checked.

A property is explained as a rule is, but by what it alone finds in its examples: in a check the
rule that names the mistake speaks in its place.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from typing import Any, NamedTuple

from wirecheck.check.accepts import sort_out
from wirecheck.check.claim_findings import with_claims
from wirecheck.check.engine import check
from wirecheck.circuit.conduction import Conduction
from wirecheck.circuit.nets import Nets
from wirecheck.language.load import load_text
from wirecheck.model.finding import Finding
from wirecheck.properties.property import Property
from wirecheck.properties.unexplained import by_itself
from wirecheck.report.check_json import SCHEMA, finding_json
from wirecheck.report.check_text import cautions_text, finding_text
from wirecheck.report.page import Page
from wirecheck.rules.rule import NO_CERTIFICATE, PRACTICE, Example, Fault, Rule, Source


class Tried(NamedTuple):
    """An example and what a check of it finds."""

    text: str
    findings: tuple[Finding, ...]


class Explained(NamedTuple):
    """A rule with its examples tried out, the wrong ones and the right ones."""

    rule: Rule
    wrong: tuple[Tried, ...]
    right: tuple[Tried, ...]


def explained(rule: Rule) -> Explained:
    """Try out the examples of a rule."""
    return Explained(rule, _tried(rule.bad, "wrong"), _tried(rule.good, "right"))


def explained_property(record: Property) -> Explained:
    """Try out the examples of a property by itself."""
    fault = Fault(_AS_TOLD, record.why)
    rule = Rule(
        name=record.name,
        title=record.title.removesuffix("."),
        family="every position of the switches",
        breaks=record.breaks,
        why=record.why,
        blind_spots=record.blind_spots,
        caution=record.caution,
        sources=(PRACTICE,),
        faults={"broken": fault},
        bad=(Example(record.bad),),
        good=(Example(record.good),),
    )
    return Explained(rule, (_looked_at(record, record.bad),), (_looked_at(record, record.good),))


def explained_text_rule(rule: Rule) -> Explained:
    """Try out the examples of a rule about what a text says of its wiring."""
    return Explained(rule, _tried_whole(rule.bad, "wrong"), _tried_whole(rule.good, "right"))


def _tried_whole(examples: Sequence[Example], name: str) -> tuple[Tried, ...]:
    """What a check finds that tries the claims and sorts out what is accepted."""
    diagrams = [
        load_text(example.text, _file(name, number)).diagram
        for number, example in enumerate(examples, start=1)
    ]
    checks = [sort_out([with_claims(check(diagram))])[0].checked for diagram in diagrams]
    return tuple(Tried(each.diagram.source.text, each.findings) for each in checks)


#: What a broken property says, in every message of one.
_AS_TOLD = (
    "{what_happens} ({how_the_switches_stand}): the current runs over {leads}; look at them for "
    "what lands wrong"
)


def _looked_at(record: Property, text: str) -> Tried:
    nets = Nets(load_text(text, _file("wrong" if text == record.bad else "right", 1)).diagram)
    return Tried(text, by_itself(nets, Conduction(nets), record.name))


def _tried(examples: Sequence[Example], name: str) -> tuple[Tried, ...]:
    return tuple(
        Tried(example.text, check(load_text(example.text, _file(name, number)).diagram).findings)
        for number, example in enumerate(examples, start=1)
    )


def _file(name: str, number: int) -> str:
    return f"{name}.wiring" if number == 1 else f"{name}-{number}.wiring"


def rules_text(rules: Sequence[Explained], page: Page) -> Iterator[str]:
    """Write the explanation of some rules; of several, with a heading for each chapter."""
    yield from cautions_text(page)
    yield ""
    chapter = ""
    for each in rules:
        if len(rules) > 1 and each.rule.family != chapter:
            chapter = each.rule.family
            yield from page.heading(f"==== {chapter} ====")
            yield ""
        yield from _rule_text(each, page)
        yield ""
    yield from page.item(NO_CERTIFICATE, "")


def _rule_text(each: Explained, page: Page) -> Iterator[str]:
    rule = each.rule
    yield from page.heading(rule.name)
    yield from page.item(f"{rule.title}.", "")
    yield from page.named("breaks", str(rule.breaks))
    yield from page.named("why", rule.why)
    for code, fault in rule.faults.items():
        breaks = f" ({fault.breaks})" if fault.breaks else ""
        yield from page.named(code, f"{_with_places(fault.message)}{breaks}")
    if rule.blind_spots:
        yield from page.named("does not see", rule.blind_spots)
    if rule.caution:
        yield from page.named("caution", rule.caution)
    for source in rule.sources:
        yield from page.named("source", str(source))
    yield from _examples_text("wrong", each.wrong, page)
    yield from _examples_text("right", each.right, page)


def _examples_text(heading: str, examples: Sequence[Tried], page: Page) -> Iterator[str]:
    for number, example in enumerate(examples, start=1):
        yield ""
        yield from page.heading(_file(heading, number))
        yield from (f"    {line}" for line in example.text.splitlines())
        for finding in example.findings:
            yield from finding_text(finding, page)


def _with_places(message: str) -> str:
    """A fault's message with its blanks shown as ``<lead>``."""
    return re.sub(r"\{(\w+)\}", lambda blank: f"<{blank[1].replace('_', ' ')}>", message)


def rules_json(rules: Sequence[Explained]) -> dict[str, Any]:
    """Return the explanation of some rules."""
    return {
        "schema": SCHEMA,
        "rules": [_rule_json(each) for each in rules],
        "no_certificate": NO_CERTIFICATE,
    }


def _rule_json(each: Explained) -> dict[str, Any]:
    rule = each.rule
    return {
        "rule": rule.name,
        "title": rule.title,
        "family": rule.family,
        "breaks": str(rule.breaks),
        "why": rule.why,
        "blind_spots": rule.blind_spots,
        "caution": rule.caution,
        "sources": [_source_json(source) for source in rule.sources],
        "faults": [
            {
                "fault": code,
                "message": fault.message,
                "seen_at_unit": fault.seen,
                "breaks": str(fault.breaks or rule.breaks),
            }
            for code, fault in rule.faults.items()
        ],
        "bad": [_example_json(example) for example in each.wrong],
        "good": [_example_json(example) for example in each.right],
    }


def _source_json(source: Source) -> dict[str, Any]:
    return {**source._asdict(), "words": str(source)}


def _example_json(example: Tried) -> dict[str, Any]:
    return {
        "text": example.text,
        "findings": [finding_json(finding) for finding in example.findings],
    }
