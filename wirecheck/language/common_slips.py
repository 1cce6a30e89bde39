"""Slips that are common enough to have words of their own.

Each is told by what stands at the place where the parser stopped and by what stands before it;
they are tried in order.  Every example here is checked to give its own message.
"""

from __future__ import annotations

from typing import Final, NamedTuple


class Slip(NamedTuple):
    """One slip.

    Attributes:
        before: found in the statement's text up to the place of the fault ("" is found anywhere).
        after: matches at the place of the fault.
        message: what is wrong; it may name the groups of both patterns, ``{seen}`` (the text that
            ``after`` matched) and ``{nearest}``.
        nearest: what to write instead, from the same groups.
        example: a statement with the slip, for the tests.
    """

    before: str
    after: str
    message: str
    nearest: str
    example: str


_LEAD = r"^\s*(?:wire|jumper)\s"
_NO_TO_YET = _LEAD + r"+(?:(?!\sto\s).)*[^\s:,]\s*$"
_END = r"\s(?i:to)\s+(?P<end>[^\s:(]+)\s*$"

_CHARACTERS = (
    Slip(
        r"(?P<n>\d[\d./]*) *$",
        '["\u2033\u201d]',
        "an inch mark stands here; write the unit: {nearest}",
        "{n} in",
        'wire a.1 to b.1: ignition-cable, 24"',
    ),
    Slip(
        r"(?P<n>\d[\d./]*) *$",
        "['\u2032\u2019]",
        "a foot mark stands here; write the unit: {nearest}",
        "{n} ft",
        "wire a.1 to b.1: 12'",
    ),
    Slip(
        r"^\s*wire\s+from\s+$",
        r"\S",
        "take “from” away: a wire runs from its first end",
        "",
        "wire from a.1 to b.1",
    ),
    Slip(
        r"^\s*plug\s.*:.*[^\s,:]\s*$",
        "->|=|>|\u2192",
        "between two terminals stands “to”",
        "to",
        "plug box to valve: VC -> C",
    ),
    Slip(
        _NO_TO_YET,
        "[<>=&;,+\u2192|]|-+>?|[\u2010-\u2015](?=\\s)|and\\b",
        "between two ends stands “to”",
        "to",
        "wire a.1 -> b.1",
    ),
    Slip(
        r"\S\s+$",
        r"(?://|--+|/\*)(?![>\s]*\S+\s+to\s)",
        "a comment begins with #",
        "#",
        "wire a.1 to b.1 // note",
    ),
    Slip(
        _LEAD + r".*\s(?i:to)\s+$",
        r"\?+",
        "an end that is not traced is called unknown, a loose one open",
        "unknown",
        "wire a.1 to ?",
    ),
    Slip(
        "",
        "[\u2010-\u2015\u2212]",
        "a long dash stands here; write the plain dash: -",
        "-",
        "part high\u2013limit is high-limit",
    ),
    Slip(
        "",
        "\u2026",
        "three dots made one character stand here; write two dots",
        "..",
        "wire a.1 to k1.COM\u2026NO to b.1",
    ),
    Slip(
        r"\.\.$",
        r"\.",
        "three dots stand here; a contact is passed by two",
        "..",
        "wire a.1 to k1.COM...NO to b.1",
    ),
    Slip(
        "",
        "['\u2018\u2019\u201a\u201b`\u00b4]",
        'a single quote stands here; put names in double quotes: "',
        '"',
        "part 'old box' is relay",
    ),
    Slip(
        "",
        r'"(?=[^"]*$)',
        "this quote is never closed; put the closing quote before the end of the line",
        '"',
        'note "left side door',
    ),
    Slip(
        "",
        r";(?=\s*$)",
        "no semicolon ends a statement; take it away",
        "",
        "wire a.1 to b.1;",
    ),
    Slip(
        r"[^.\s]\.\s*$",
        r"$",
        "no full stop ends a statement; take it away, or name the terminal behind it",
        "",
        "wire a.1 to b.1.",
    ),
)

_DECLARATIONS = (
    Slip(
        r"^$",
        r"(?P<word>[a-zA-Z]+)\s*:",
        "no colon stands behind “{word}”; take it away",
        "{word}",
        'diagram: "Heater 3"',
    ),
    Slip(
        r"^\s*(?:part|kind)\s+[^\s:]+\s*$",
        r",",
        "one line declares one part: PART is KIND",
        "",
        "part k1, k2 is relay",
    ),
    Slip(
        r"^\s*(?:part|kind)\s+[^\s:]+\s*$",
        r"[=:]",
        "between a name and its kind stands “is”",
        "is",
        "part xfmr: transformer",
    ),
    Slip(
        r"^\s*(?:part|kind)\s+(?P<first>[^\s\":]+)\s+$",
        r"(?P<second>[^\s:]+(?: [^\s:]+)*?)(?=\s+is\s)",
        "a name with a blank needs double quotes: {nearest}",
        '"{first} {second}"',
        "part old box is relay",
    ),
    Slip(
        r"^\s*(?:part|kind)\s+[^\s:]+\s+$",
        r"[^\s:,]+",
        "“is” is missing: write “{nearest}”",
        "is {seen}",
        "part xfmr transformer",
    ),
    Slip(
        r"\sis\s+(?P<article>an?|the)\s+$",
        r"\S+",
        "take “{article}” away: the kind is {nearest}",
        "{seen}",
        "part xfmr is a transformer",
    ),
    Slip(
        r"^\s*(?:part|kind)\s.*\sis\s+[^\s:]+\s*$",
        r",\s*$",
        "no comma ends a statement; take it away",
        "",
        "part xfmr is transformer,",
    ),
    Slip(
        r"\sis\s+(?P<kind>[^\s:]+)\s*$",
        r"[,(;=]",
        "attributes follow a colon: write “{nearest}”",
        "{kind}:",
        "part xfmr is transformer, primary 120 V",
    ),
    Slip(
        r"^\s*(?:part|kind)\s.*\sis\s+(?P<kind>\S+)\s+$",
        r"[^\s:,(]+",
        "a colon is missing behind the kind: write “{nearest}”",
        "{kind}: {seen}",
        "part xfmr is transformer primary 120 V",
    ),
    Slip(
        r"^\s*(?:diagram|note|include)\s+$",
        r"(?P<text>[^\"]+?)(?=\s*$)",
        "put the text in double quotes: {nearest}",
        '"{text}"',
        "diagram Heater 3, as found",
    ),
    Slip(
        r"\sas\s+$",
        r"(?P<text>[^\s\",]+)",
        "put the label in double quotes: {nearest}",
        '"{text}"',
        "labels box: PV as P1",
    ),
    Slip(
        r"^\s*labels\s.*[:,]\s*(?P<terminal>[^\s,:]+)\s*$",
        r"[\"=:]|->",
        "“as” is missing between the terminal and its label: write “{nearest}”",
        "{terminal} as",
        'labels box: PV "P1"',
    ),
    Slip(
        r"^\s*labels\s.*\"\s*$",
        r"[^\s,]+",
        "a comma is missing before “{seen}”",
        ", {seen}",
        'labels box: PV as "P1" MV as "M1"',
    ),
    Slip(
        r"^\s*(?:labels|set|cable|splice)\s+(?P<name>[^\s:]+)\s+$",
        r"(?:is\s+)?(?P<word>[^\s:,]+)",
        "a colon is missing behind the name: write “{nearest}”",
        "{name}: {word}",
        "cable c1 18/5",
    ),
    Slip(
        r"^\s*end\s+$",
        r"\S",
        "“end” stands alone in its line",
        "end",
        "end variant",
    ),
    Slip(
        r"^\s*remove\s+$",
        r"\S",
        "name what is removed: remove wire END to END, remove jumper END to END, remove part NAME",
        "wire",
        "remove a.1 to b.1",
    ),
)

_LEADS = (
    Slip(
        r"\s(?i:to)\s+to\s+$",
        r"\S",
        "“to” stands here twice; take one away",
        "to",
        "wire a.1 to to b.1",
    ),
    Slip(
        r"\sto\s*$",
        r"$",
        "the last end is missing behind “to” (write open for a loose end, unknown if not traced)",
        "open",
        "wire a.1 to",
    ),
    Slip(
        _LEAD + r"+[^\s:]+\s*$",
        r"$|:",
        "a lead needs two ends: “to” and the other end are missing",
        "to",
        "wire a.1",
    ),
    Slip(
        _LEAD + r".*\s(?P<part>[^\s.]+)$",
        r"\.\.(?P<terminal>[^\s.]*)",
        "a contact is passed from one terminal to another: {nearest}",
        "{part}.COM..NO",
        "wire a.1 to k1..NO to b.1",
    ),
    Slip(
        _LEAD + r".*\((?:[^)]*)$",
        r"$",
        "a bracket is not closed: “)” is missing",
        ")",
        "wire a.1 to b.1 (3 ft",
    ),
    Slip(
        r"\(\s*$",
        r"\)",
        "the brackets are empty; take them away",
        "",
        "wire a.1 to b.1 ()",
    ),
    Slip(
        r":.*$",
        r"[()]",
        "brackets stand behind an end of a lead, never among the attributes",
        "",
        "wire a.1 to b.1: red, (18 AWG)",
    ),
    Slip(
        _LEAD + r".*" + _END,
        r",",
        "attributes follow a colon: write “{nearest}”",
        "{end}:",
        "wire a.1 to b.1, red",
    ),
    Slip(
        _LEAD + r".*" + _END,
        r"(?P<word>[\w/-][^\s:,()\"]*)(?!.*\sto\s)",
        "a colon is missing before the attributes: write “{nearest}”",
        "{end}: {word}",
        "wire a.1 to b.1 black, 18 AWG",
    ),
    Slip(
        _LEAD + r"+(?P<first>[^\s.\":(]+)\s+$",
        r"(?P<second>[^\s.\":(]+)(?=\.)",
        "“to” is missing between two ends, or double quotes around a name with a blank: {nearest}",
        '"{first} {second}"',
        "wire old box.1 to b.1",
    ),
    Slip(
        _LEAD + r".*[^\s:,]\s+$",
        r"[^\s:,()]+",
        "between two ends stands “to”",
        "to",
        "wire a.1 b.1",
    ),
    Slip(
        r"^\s*plug\s+[^\s:]+$",
        r"\.",
        "a plug joins two parts, its terminals follow a colon: plug PART to PART: TERMINAL, …",
        "",
        "plug box.PV to valve.PV",
    ),
    Slip(
        r"^\s*plug\s+\S+\s+$",
        r"[^\s:,.]+",
        "“to” is missing between the two parts: write “{nearest}”",
        "to {seen}",
        "plug box valve: PV",
    ),
    Slip(
        r"^\s*plug\s+\S+\s+to\s+(?P<name>[^\s:]+)\s+$",
        r"[^\s:,]+",
        "a colon is missing before the terminals: write “{nearest}”",
        "{name}: {seen}",
        "plug box to valve PV, MV",
    ),
    Slip(
        r"^\s*plug\s.*:.*[^\s,]\s+$",
        r"[^\s:,()]+",
        "a comma is missing before “{seen}”",
        ", {seen}",
        "plug box to valve: PV MV",
    ),
)

_CLAIMS = (
    Slip(
        r"\sno\s+$",
        r"continuity\b",
        "write it with a dash: no-continuity",
        "no-continuity",
        "expect no continuity across a.1 and b.1",
    ),
    Slip(
        r"\sacross\s+(?P<one>[^\s,]+)\s*,\s*(?P<other>[^\s,]+)\s*$",
        r"$|(?=when|during)",
        "between the two ends stands “and”: {nearest}",
        "across {one} and {other}",
        "expect 24 V across a.1, b.1",
    ),
    Slip(
        r"\sacross\s+\S+\s+$",
        r"to|&|-",
        "between the two ends stands “and”",
        "and",
        "expect 24 V across a.1 to b.1",
    ),
    Slip(
        r"^\s*(?:expect|observe)\s.*\d\s*[^\W\d]+\s+$",
        r"at|on|in|from|between",
        "volts stand across two ends, amperes run through a part: {nearest}",
        "across",
        "expect 24 V at box.PV",
    ),
    Slip(
        r"\sduring\s+[^\s,]+\s*$",
        r"when\b",
        "“when …” stands before “during …”",
        "",
        "expect main-valve on during trial when limit open",
    ),
    Slip(
        r"^\s*(?P<word>expect|observe)\s.*\s(?P<until>during|when)\s.*[^\s,]\s*$",
        r",",
        "“{until}” holds for all that this line claims: begin another “{word}” in a new line",
        "",
        "expect spark off during run, spark on during trial",
    ),
    Slip(
        r"^\s*(?:expect|observe)\s.*\s$",
        r"(?:is|are|stays)(?=\s)",
        "take “{seen}” away: a subject and its state stand side by side",
        "",
        "expect main-valve is on",
    ),
)

_ANYWHERE = (
    Slip(
        r",\s*$",
        r",",
        "two commas in a row; take one away",
        ",",
        "wire a.1 to b.1: red,, 18 AWG",
    ),
    Slip(
        r"[,:]\s*$",
        r"$",
        "the statement ends here, but something must follow",
        "",
        "wire a.1 to b.1: red,",
    ),
    Slip(
        r":.*$",
        r":",
        "one colon is enough, before the first attribute; take this one away",
        "",
        "part xfmr is transformer: primary: 120 V",
    ),
    Slip(
        "",
        r"[\[\]{}<>@$&*+!?%|\\^~]",
        "“{seen}” has no meaning here; a name that holds it needs double quotes",
        '"',
        "part b&m is relay",
    ),
)

SLIPS: Final = (*_CHARACTERS, *_DECLARATIONS, *_LEADS, *_CLAIMS, *_ANYWHERE)
