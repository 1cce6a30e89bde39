"""From the text of one statement to its parts: the LALR parser over ``grammar/wiring.lark``.

The tables are generated into ``grammar/tables.py`` (``python -m wirecheck.language.tables``)
and only loaded here; with another release of lark they are built from the grammar instead.
"""

from __future__ import annotations

from functools import cache
from typing import Any, Protocol, cast

from lark import Lark, TextSlice, Token, Transformer
from lark import __version__ as lark_version
from lark.lexer import LexerState, LexerThread, LineCounter

from wirecheck.language import statements as st
from wirecheck.language.statements import Name, Place, Statement, Words
from wirecheck.resources import grammar_text

Children = list[Any]


def parse_statement(text: str, start: int, end: int) -> Statement:
    """Read the statement in ``text[start:end]``; positions count from the beginning of ``text``.

    Raises:
        lark.UnexpectedInput: it is not a statement; see `syntax_faults.explain`.
    """
    frontend = _parser().parser
    here = LineCounter("\n")  # type: ignore[no-untyped-call]
    here.char_pos = start  # lark itself would count the lines before it, for each statement anew
    state = LexerState(TextSlice(text, start, end), here)
    return cast(Statement, frontend.parser.parse(LexerThread(frontend.lexer, state), "start"))


@cache
def _parser() -> Lark:
    from wirecheck.grammar import tables

    if lark_version == tables.LARK_VERSION:
        load = cast(Any, Lark)._load_from_dict  # noqa: SLF001 - made for generated modules like ours
        return cast(Lark, load(tables.DATA, tables.MEMO, transformer=_ToStatements()))
    return build_parser(_ToStatements())


def build_parser(transformer: Transformer[Token, Any] | None = None) -> Lark:
    """Build the parser from the grammar text, without the generated tables."""
    return Lark(
        grammar_text("wiring.lark"),
        parser="lalr",
        maybe_placeholders=True,
        propagate_positions=transformer is None,
        transformer=transformer,
    )


class _Placed(Protocol):
    """A token of the lexer, which always knows its place."""

    start_pos: int
    end_pos: int


class _ToStatements(Transformer[Token, Any]):
    """Makes each grammar rule its class of `wirecheck.language.statements`."""

    def NAME(self, token: _Placed) -> Name:
        return Name(str(token), token.start_pos, token.end_pos)

    def STRING(self, token: _Placed) -> Name:
        return Name(str(token)[1:-1].replace('""', '"'), token.start_pos, token.end_pos)

    QUANTITY = STATE = PHASE = NAME

    def start(self, children: Children) -> Statement:
        return cast(Statement, children[0])

    def terminal(self, names: list[Name]) -> Name:
        if len(names) == 1:
            return names[0]
        return Name(".".join(name.text for name in names), names[0].start, names[-1].end)

    def place(self, children: Children) -> Place:
        return Place(*children) if len(children) == 3 else Place(children[0], None, None)

    def stop(self, children: Children) -> st.Stop:
        return st.Stop(*children)

    def attribute(self, words: list[Any]) -> Words:
        return words

    def attributes(self, attributes: list[Words]) -> list[Words]:
        return attributes

    def wire(self, children: Children) -> st.WireStatement:
        return st.WireStatement(children[:-1], children[-1] or [])

    def jumper(self, children: Children) -> st.JumperStatement:
        return st.JumperStatement(children[:-1], children[-1] or [])

    def pin(self, children: Children) -> st.Pin:
        return st.Pin(*children)

    def plug(self, children: Children) -> st.PlugStatement:
        return st.PlugStatement(children[0], children[1], children[2:])

    def diagram(self, children: Children) -> st.DiagramStatement:
        return st.DiagramStatement(*children)

    def part(self, children: Children) -> st.PartStatement:
        return st.PartStatement(children[0], children[1], children[2] or [])

    def kind(self, children: Children) -> st.KindStatement:
        return st.KindStatement(children[0], children[1], children[2] or [])

    def labelling(self, children: Children) -> st.Labelling:
        return st.Labelling(*children)

    def labels(self, children: Children) -> st.LabelsStatement:
        return st.LabelsStatement(children[0], children[1:])

    def splice(self, children: Children) -> st.SpliceStatement:
        return st.SpliceStatement(children[0], children[1] or [])

    def cable(self, children: Children) -> st.CableStatement:
        return st.CableStatement(*children)

    def include(self, children: Children) -> st.IncludeStatement:
        return st.IncludeStatement(*children)

    def note(self, children: Children) -> st.NoteStatement:
        return st.NoteStatement(*children)

    def variant(self, children: Children) -> st.VariantStatement:
        return st.VariantStatement(*children)

    def end(self, _children: Children) -> st.EndStatement:
        return st.EndStatement()

    def remove_lead(self, children: Children) -> st.RemoveLeadStatement:
        return st.RemoveLeadStatement(str(children[0]).lower(), children[1:])

    def remove_part(self, children: Children) -> st.RemovePartStatement:
        return st.RemovePartStatement(*children)

    def set(self, children: Children) -> st.SetStatement:
        return st.SetStatement(*children)

    def about(self, children: Children) -> st.Bound:
        return st.Bound("about", children)

    def at_least(self, children: Children) -> st.Bound:
        return st.Bound("at least", children)

    def at_most(self, children: Children) -> st.Bound:
        return st.Bound("at most", children)

    def between(self, children: Children) -> st.Bound:
        return st.Bound("between", children)

    def volts_across(self, children: Children) -> st.Predicate:
        return st.Predicate("across", [place for place in children[1:] if place], children[0], None)

    def amps_through(self, children: Children) -> st.Predicate:
        return st.Predicate("through", children[1:], children[0], None)

    def continuity(self, children: Children) -> st.Predicate:
        word: Token = children[0]
        state = Name(str(word).lower(), cast(int, word.start_pos), cast(int, word.end_pos))
        return st.Predicate("continuity", [place for place in children[1:] if place], None, state)

    def state(self, children: Children) -> st.Predicate:
        return st.Predicate("state", children[:1], None, children[1])

    def condition(self, children: Children) -> st.Condition:
        return st.Condition(*children)

    def conditions(self, children: Children) -> list[st.Condition]:
        return children

    def phase(self, children: Children) -> Name:
        return cast(Name, children[0])

    def expect(self, children: Children) -> st.ExpectStatement:
        return st.ExpectStatement(children[:-2], children[-2] or [], children[-1])

    def observe(self, children: Children) -> st.ObserveStatement:
        return st.ObserveStatement(children[:-2], children[-2] or [], children[-1])
