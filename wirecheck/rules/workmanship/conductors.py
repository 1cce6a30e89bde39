"""The conductors of cables: leads in one cable that a splice joins are one that goes on."""

from __future__ import annotations

from wirecheck.model.diagram import Cable, Terminal, key_of
from wirecheck.rules.facts import Facts


def conductors_of(facts: Facts) -> tuple[tuple[Cable, list[list[int]]], ...]:
    """For each cable its conductors, each as the leads typed for it.

    Use it as ``facts.once(conductors_of)``.
    """
    diagram = facts.diagram
    found: dict[str, list[list[int]]] = {key: [] for key in diagram.cables}
    at_splice: dict[tuple[str, Terminal], list[int]] = {}
    for number, lead in enumerate(diagram.leads if found else ()):
        run_in = lead.given.get("in")
        key = key_of(str(run_in.value)) if run_in else ""
        if key not in found:
            continue
        splices = [end for end in (lead.a, lead.b) if end.part in diagram.splices]
        known = (at_splice[key, end] for end in splices if (key, end) in at_splice)
        conductor = next(known, None)
        if conductor is None:
            conductor = []
            found[key].append(conductor)
        conductor.append(number)
        for end in splices:
            at_splice.setdefault((key, end), conductor)
    return tuple((diagram.cables[key], conductors) for key, conductors in found.items())
