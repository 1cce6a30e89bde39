"""Cutting a run of leads in two, each lead keeping its ends, its attributes and its length."""

from __future__ import annotations

from wirecheck.language.run_text import Piece, RunText, indent, line_break
from wirecheck.language.spelling import spell
from wirecheck.model.diagram import Diagram, Lead
from wirecheck.model.quantity import Quantity


def _neighbour(diagram: Diagram, lead_number: int, step: int) -> Lead | None:
    """The lead before (-1) or behind (1) in the same run."""
    number = lead_number + step
    if not 0 <= number < len(diagram.leads):
        return None
    lead, found = diagram.leads[lead_number], diagram.leads[number]
    joined = found.a_span == lead.b_span if step > 0 else found.b_span == lead.a_span
    return found if found.run == lead.run and joined else None


def stays(diagram: Diagram, lead_number: int, run: RunText, step: int) -> str:
    """How the neighbour's end at the common stop is typed once the run is cut there."""
    stop = run.stops[run.lead_at + (step > 0)]
    neighbour = _neighbour(diagram, lead_number, step)
    if stop.passed and neighbour is not None:
        terminal = neighbour.a if step > 0 else neighbour.b
        if terminal.part in diagram.parts:
            return spell(diagram, terminal)
    return run.source.text[stop.start : stop.end]


def cut_run(
    diagram: Diagram,
    lead_number: int,
    run: RunText,
    stops: tuple[int, int],
    ends: tuple[str, str],
) -> list[Piece]:
    """Make two statements of a run: one ends, the other begins, in place of these stops."""
    left, right = range(stops[0]), range(stops[1], len(run.stops) - 1)
    length = share_of_length(diagram, lead_number, run, left)
    texts = [
        length[0].new_text if length and length[0].start == start else run.source.text[start:end]
        for start, end in run.attributes
    ]
    attributes = f": {', '.join(texts)}" if texts else ""
    begins = line_break(run.span) + indent(run.span) + run.keyword
    piece = Piece(
        run.stops[stops[0]].start,
        run.stops[stops[1]].brackets_end,
        f"{ends[0]}{attributes}{begins} {ends[1]}",
    )
    return [piece, *share_of_length(diagram, lead_number, run, right)]


def share_of_length(diagram: Diagram, lead_number: int, run: RunText, kept: range) -> list[Piece]:
    """The run's length cut down to the leads that stay, each keeping its share, rounded.

    ``kept`` are the stops those leads leave from.
    """
    sharing = _sharing(diagram, lead_number, run)
    starts = {run.stops[at].start for at in kept}
    part = sum(lead.a_span.start in starts for lead in sharing)
    length = sharing[0].given["length"] if sharing else None
    if length is None or not part or not isinstance(length.value, Quantity):
        return []
    share = _share(length.value, part, len(sharing))
    return [Piece(length.span.start, length.span.end, str(share))]


def said_of_length(diagram: Diagram, lead_number: int, run: RunText) -> str:
    """Words for an edit that cuts a run whose length cannot be shared out without rounding."""
    sharing = _sharing(diagram, lead_number, run)
    length = sharing[0].given["length"].value if sharing else None
    if not isinstance(length, Quantity):
        return ""
    count = len(sharing)
    shares = ((part, _share(length, part, count)) for part in range(1, count))
    if all(share.low * count == length.low * part for part, share in shares):
        return ""
    return f"; each lead keeps its share of the run's {length}, rounded"


def _sharing(diagram: Diagram, lead_number: int, run: RunText) -> list[Lead]:
    """The leads of a run that share its length."""
    first = lead_number - run.lead_at
    around = diagram.leads[max(first, 0) : lead_number + len(run.stops)]
    own = diagram.leads[lead_number].run
    return [lead for lead in around if lead.run == own and lead.shared_length]


def _share(length: Quantity, part: int, of: int) -> Quantity:
    low, high, unit = length
    return Quantity(_tidy(low * part / of), _tidy(high * part / of), unit)


def _tidy(length: float) -> float:
    """A length as somebody would write it: whole from ten up, of two figures below."""
    return float(round(length)) if length >= 10 else float(f"{length:.2g}")
