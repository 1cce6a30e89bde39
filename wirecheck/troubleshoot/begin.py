"""The beginning of a conversation: what the file observes, and what was said besides."""

from __future__ import annotations

from collections.abc import Sequence

from wirecheck.model.diagram import Diagram
from wirecheck.sequence.named import caller
from wirecheck.troubleshoot.conversation import Conversation
from wirecheck.troubleshoot.dictionary import Dictionary
from wirecheck.troubleshoot.observed import observed
from wirecheck.troubleshoot.seen import seen as read


def begin(diagram: Diagram, seen: Sequence[str], calling: Sequence[str]) -> Conversation:
    """Begin a conversation; arguments and errors are those of `wirecheck.troubleshoot`."""
    dictionary = Dictionary(diagram, tuple(caller(diagram, name) for name in calling))
    given = list(observed(dictionary, diagram.observations))
    for text in seen:
        given += read(dictionary, text)
    return Conversation.begun(dictionary, given)
