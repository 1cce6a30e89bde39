"""The files of the drawings that a document asks for."""

from pathlib import Path

import pytest

from wirecheck import check_note_bytes
from wirecheck.notes.checked import CheckedDocument
from wirecheck.notes.drawings import as_drawn

LIMIT = "part limit is high-limit\n"
VARIANT = 'variant "more heat"\nset limit: manual\nend\n'


def checked(*blocks: tuple[str, str]) -> CheckedDocument:
    text = "".join(f"```wiring {opening}\n{content}```\n" for opening, content in blocks)
    return check_note_bytes(text.encode(), "job/note.md", Path("job/note.md"))


def files(document: CheckedDocument) -> list[str]:
    return [wanted.path(Path("job/note.md")).as_posix() for wanted in document.drawings]


def test_a_file_is_named_after_document_block_and_sheet() -> None:
    document = checked(('name "as found, v.2", draw ladder, draw connections', LIMIT + VARIANT))
    assert files(document) == [
        "job/note.as-found-v-2.ladder.svg",
        "job/note.as-found-v-2.connections.svg",
        "job/note.as-found-v-2+more-heat.ladder.svg",
        "job/note.as-found-v-2+more-heat.connections.svg",
    ]


def test_of_a_block_that_holds_only_variants_these_are_drawn() -> None:
    document = checked(("name base", LIMIT), ("name options, on base, draw ladder", VARIANT))
    assert files(document) == ["job/note.options+more-heat.ladder.svg"]


@pytest.mark.parametrize(
    ("blocks", "problem"),
    [
        ((("draw ladder", LIMIT),), "1:16: a block that is drawn needs a name, as its file has it"),
        (
            (("name a, piece, draw ladder", LIMIT), ("on a", "")),
            "1:31: a piece is no diagram: draw a block that builds on it",
        ),
        (
            (('name "a b", draw ladder', LIMIT), ('name "A?b", draw ladder', LIMIT)),
            "4:28: this drawing has the file of the block in line 1; rename one",
        ),
    ],
)
def test_what_cannot_be_drawn_is_told(blocks: tuple[tuple[str, str], ...], problem: str) -> None:
    told = [
        f"{each.span.line}:{each.span.column}: {each.message}" for each in checked(*blocks).problems
    ]
    assert told == [problem]


def test_a_sheet_says_the_bare_name_of_its_document() -> None:
    document = checked(("name a, draw ladder", LIMIT + VARIANT))
    base, variant = (
        as_drawn("some/where/note.md", each, document.diagrams[each.number].checked).diagram
        for each in document.drawings
    )
    assert base.source.name == "note.md: a"
    assert variant.source.name == "note.md: a, variant more heat"
    assert base.parts == document.diagrams[0].checked.diagram.parts
