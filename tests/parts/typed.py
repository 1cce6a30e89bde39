"""Attributes as the language hands them over, made from plain text."""

import re

from wirecheck.model.diagram import Attribute
from wirecheck.model.finding import Problem
from wirecheck.model.kind import Kind
from wirecheck.model.text import SourceFile, Span
from wirecheck.parts.attributes import Word, interpret
from wirecheck.parts.library import lead_attributes


def words(text: str) -> list[Word]:
    """Cut one attribute into its words."""
    source = SourceFile("typed", text)
    return [
        Word(
            found[0].strip('"'), found[0].startswith('"'), Span(source, found.start(), found.end())
        )
        for found in re.finditer(r'"[^"]*"|[^\s"]+', text)
    ]


def read(kind: Kind, text: str) -> Attribute | Problem:
    """Interpret one attribute of a part."""
    return interpret(words(text), kind.attributes, f"a {kind.name}")


def read_lead(text: str) -> Attribute | Problem:
    """Interpret one attribute of a lead."""
    return interpret(words(text), lead_attributes(), "a lead")


def given(kind: Kind, *texts: str) -> dict[str, Attribute]:
    """Attributes of a part, all of which have to be understood."""
    attributes = {}
    for text in texts:
        attribute = read(kind, text)
        assert isinstance(attribute, Attribute), attribute
        attributes[attribute.name] = attribute
    return attributes
