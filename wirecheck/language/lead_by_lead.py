"""A diagram written anew: its devices as typed, then every lead in a statement of its own.

No comment, note, claim or variant is left in it, and nothing tells which leads were typed in one
run: who reads it sees what is wired, and no more.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import Final

from lark import UnexpectedInput

from wirecheck.language import statements as st
from wirecheck.language.cut import cut
from wirecheck.language.format import format_text
from wirecheck.language.parser import parse_statement
from wirecheck.language.spelling import quoted, spell
from wirecheck.model.diagram import Diagram, Lead, LeadRole
from wirecheck.model.text import SourceFile

#: What declares something that leads run to or in.
_DECLARATIONS: Final = (
    st.KindStatement,
    st.PartStatement,
    st.LabelsStatement,
    st.SpliceStatement,
    st.CableStatement,
)


def lead_by_lead(diagram: Diagram, leads: Iterable[Lead], title: str, *, bare: bool = False) -> str:
    """Write a diagram with some leads, in canonical form.

    Args:
        diagram: whose devices are written.
        leads: between its terminals, in the order in which they shall stand.
        title: what it is called.
        bare: leave out the splices and cables too, which are wiring like the leads.
    """
    lines = [f"diagram {quoted(title)}\n"]
    for source in diagram.sources:
        lines += ["\n", *_declarations(source, bare=bare)]
    lines += ["\n", *(lead_statement(diagram, lead) for lead in leads)]
    return format_text("".join(lines))


def lead_statement(diagram: Diagram, lead: Lead) -> str:
    """One lead as a line; its share of the length of a whole run is left out.

    The attributes stand as typed, wherever the lead runs now.
    """
    word = "jumper" if lead.role is LeadRole.JUMPER else "wire"
    given = dict.fromkeys(
        attribute.span.text
        for name, attribute in lead.given.items()
        if not (name == "length" and lead.shared_length)
    )
    attributes = f": {', '.join(filter(None, given))}" if any(given) else ""
    return f"{word} {spell(diagram, lead.a)} to {spell(diagram, lead.b)}{attributes}\n"


def _declarations(source: SourceFile, *, bare: bool) -> Iterator[str]:
    """The statements of a source that declare something, variants left out."""
    whole = cut(source)
    in_variant = False
    for start, end in whole.statements:
        try:
            statement = parse_statement(whole.text, start, end)
        except UnexpectedInput:
            continue
        if isinstance(statement, st.VariantStatement | st.EndStatement):
            in_variant = isinstance(statement, st.VariantStatement)
        wiring = isinstance(statement, st.SpliceStatement | st.CableStatement)
        if isinstance(statement, _DECLARATIONS) and not in_variant and not (bare and wiring):
            yield f"{whole.text[start:end]}\n"
