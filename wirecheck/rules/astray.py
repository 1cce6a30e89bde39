"""The lead that leaves a group of terminals which belong together."""

from __future__ import annotations

from wirecheck.model.diagram import Terminal
from wirecheck.rules.facts import Facts


def astray_lead(facts: Facts, *home: Terminal) -> tuple[int, Terminal] | None:
    """The lead that takes some terminals, which belong together, to another one; and that one.

    A lead to a device or to earth comes before one to a splice, which may go on to the right place.
    """
    leaving = [
        (number, far)
        for end in home
        for number in facts.nets.leads_at(end)
        if (far := facts.other_end(number, end)) not in home
    ]
    to_device = (item for item in leaving if item[1].part not in facts.diagram.splices)
    return next(to_device, leaving[0] if leaving else None)
