"""Random text: what somebody, something or a thumb may type into a wiring file."""
# ruff: noqa: RUF001 - phones type such characters

from __future__ import annotations

from hypothesis import strategies as st

from wirecheck.language.common_slips import SLIPS
from wirecheck.language.statements import STATEMENT_WORDS

_FRAGMENTS = (
    *STATEMENT_WORDS, "is", "to", "TO", "as", "and", "when", "during", "trial", "across", "through",
    "a", "b", "k1", "a.1", "k1.COM..NO", "earth", "open", "unknown", "relay", "high-limit", "mains",
    ".", "..", ",", ":", "(", ")", "#", '"', '""', "“", "”", "'", "–", "…", "\\", "\n", "\n", "\n",
    "\r\n", "\r", "\t", "\u00a0", "\u2028", "\x85", "\x00", "\ufeff", "\ufffd", "\ud800", "24 V",
    "18AWG", "1/2 in", '24"', "red", "in c", "18/5", "on", "at least", "between", "continuity", "é",
    "primary 120V", "部品", "part a is relay\n", "part b is high-limit\n", "kind k is relay\n",
    "wire a.COM to b.1", "labels a: COM as ", "splice s\n", "cable c: 18/5\n", "variant v\n",
    "expect 24 V across ", "plug a to b: ", 'include "x"\n',
)  # fmt: skip


def texts() -> st.SearchStrategy[str]:
    """Fragments of the language in any order, slips of all sorts, or any characters at all."""
    fragments = st.lists(st.sampled_from(_FRAGMENTS), max_size=30)
    slips = st.lists(st.sampled_from([slip.example for slip in SLIPS]), max_size=4)
    anything = st.text(st.characters(), max_size=60)
    return st.one_of(
        fragments.map(" ".join),
        fragments.map("".join),
        slips.map("\n".join),
        anything,
        st.lists(st.one_of(anything, st.sampled_from(_FRAGMENTS)), max_size=12).map(" ".join),
    )
