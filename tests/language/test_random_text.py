"""Whatever is typed, reading it ends well: a diagram and the problems of the text."""

from __future__ import annotations

from hypothesis import example, given
from hypothesis import strategies as st

import wirecheck
from tests.language.typed import texts
from wirecheck.language.build import Built
from wirecheck.language.load import load_bytes
from wirecheck.model.text import Span


def well_formed(built: Built) -> None:
    """Every place lies in its text, every problem says something, and they stand in order."""
    sources = built.diagram.sources
    places = []
    for problem in built.problems:
        assert problem.message[:1].strip()
        assert problem.nearest is None or problem.nearest
        within(problem.span)
        places.append((sources.index(problem.span.source), problem.span.start))
    assert places == sorted(places)
    for lead in built.diagram.leads:
        for span in (lead.a_span, lead.b_span, lead.statement, lead.span):
            within(span)
        assert built.diagram.lead_name(lead)
    for part in built.diagram.parts.values():
        assert part.name_span.text
        within(part.span)


def within(span: Span) -> None:
    assert 0 <= span.start <= span.end <= len(span.source.text)
    assert span.line >= 1
    assert span.column >= 1


@given(texts())
@example("wire")
@example('part "\ud800" is relay')
@example('kind a is b\nkind b is c\nkind c is a\npart x is a\nlabels a: 1 as "x"')
@example('part t is terminal-strip\nlabels t: 1 as "2", 999999999999 as "x"\nwire t.1 to t.0')
@example("part x is transformer: primary 1/2/3/4/5/6/7/8/9/10 V, 999999999999999999999 VA")
def test_any_text_reads(text: str) -> None:
    well_formed(wirecheck.load_text(text))


@given(st.binary(max_size=80))
@example(b"\xff\xfe")
@example(b"\xff\xfe\x00\x00")
@example(b"part k is relay\x00")
@example(b"\x00")
def test_any_bytes_read(data: bytes) -> None:
    well_formed(load_bytes(data, "x"))


@given(texts(), texts())
def test_a_text_behind_another_loses_none_of_its_statements(first: str, second: str) -> None:
    """A bad statement costs only itself: a part declared behind anything is there."""
    built = wirecheck.load_text(f"{first}\nend\npart last-one is relay\n{second}")
    assert "last-one" in built.diagram.parts or "part last-one" in first + second
