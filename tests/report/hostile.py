"""Diagrams in which every text that a person types holds what a format might take for its own."""

from __future__ import annotations

from typing import Final

import wirecheck
from wirecheck.check.accepts import sort_out
from wirecheck.report.checks import CheckedFile

#: What may stand between quotes: controls, markup, formulas, quotes, links, marks of direction.
TEXTS: Final = (
    "\x1b[2J\x07",
    "<script>alert(1)</script>&amp;",
    "]]><!-- --><x/>",
    "=cmd|' /C calc'!A0",
    '+1""@SUM(1)""',
    "\u202eover\u2066\u200f",
    "[click](http://example.invalid) {0} {{1}}",
    "a\\b\\u0041 %s %(x)s $x `x`",
    "\ufffe\uffff\ue000\x85\x7f",
    "]\r\x0b\x0c\x1c\x00",
    "\U0001f525 é ß \u0301",
    '\'""; DROP TABLE leads; --',
)


def diagram(text: str) -> str:
    """A heater with a mistake, a claim, an option and an acceptance, in which all names are a text.

    Args:
        text: a quote in it is doubled already.
    """
    return f"""\
diagram "{text}"
part "{text}1" is pilot-ignition-control
part "{text}2" is pilot-burner: two-rod
part "{text}3" is gas-valve-3-wire
labels "{text}1": GND as "{text}g", TH as "{text}t"
kind "{text}k" is relay
part "{text}4" is "{text}k"
splice "{text}s"
cable "{text}c": 18/5
wire "{text}1".SPARK to "{text}2".SPARK: ignition-cable
wire "{text}1".SENSE to "{text}2".ROD: in "{text}c"
wire "{text}1".PV to "{text}s" to "{text}3".PV  # accept no-such-rule: {text}
wire "{text}1".MV to "{text}3".MV  # accept lead-in-cable: {text}
wire "{text}1".VC to "{text}3".C
note "{text}"
expect 24 V across "{text}1"."{text}t" and "{text}s" during run
expect "{text}4" on during idle, "{text}x" on
variant "{text}"
    remove wire "{text}1".SPARK to "{text}2".SPARK
    remove part "{text}q"
end
"""


def checked(text: str) -> list[CheckedFile]:
    """Everything that a check says of such a diagram, in a file of such a name."""
    name = f"{text.replace('/', '|').replace(chr(0), '')}.wiring"
    built = wirecheck.load_text(diagram(text), name)
    variants = wirecheck.variants(built)
    diagrams = [built.diagram, *(each.diagram for each in variants)]
    checks = [wirecheck.check(each) for each in diagrams]
    names: list[str | None] = [None, *(each.name for each in variants)]
    problems = [built.problems, *(each.problems for each in variants)]
    files = [
        CheckedFile(name, (*said, *each.problems), each.checked, variant, accepted=each.accepted)
        for said, each, variant in zip(problems, sort_out(checks), names, strict=True)
    ]
    known = files[0]._replace(known=files[0].findings[:1])
    return [known, *files[1:], CheckedFile(name, built.problems, None)]
