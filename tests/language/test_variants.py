"""``variant`` and ``end``: flat statements, nested afterwards."""

from __future__ import annotations

from pathlib import Path

import pytest

import wirecheck
from tests.language.said import load, problems
from wirecheck.language.read import read_path, read_text
from wirecheck.language.variants import nest


def nested(text: str) -> list[tuple[str, int]]:
    """The variants with how many statements stand in each."""
    return [
        (each.name, len(each.statements)) for each in nest(read_text(text, "x").statements).variants
    ]


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("variant a\nset k: 24 V\nend", [("a", 1)]),
        ("variant a\nset k: 24 V\nremove part k", [("a", 2)]),
        (
            'variant a\nset k: 24 V\nvariant b\nnote "x"\nnote "y"\nend\npart k is relay',
            [("a", 1), ("b", 2)],
        ),
        ('VARIANT "a b"\nEND', [("a b", 0)]),
    ],
)
def test_what_a_variant_holds(text: str, expected: list[tuple[str, int]]) -> None:
    assert nested(text) == expected


def test_what_a_variant_holds_is_not_in_the_base_diagram() -> None:
    text = "part k is relay\nvariant a\npart j is relay\nwire k.A to j.A\nend\nwire k.A to k.B"
    diagram = load(text)
    assert (list(diagram.parts), len(diagram.leads)) == (["k"], 1)


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("end", ["1:1 [end] this end closes nothing: no variant is open here"]),
        ("variant a\nend\nend", ["3:1 [end] this end closes nothing: no variant is open here"]),
        ("set k: 24 V", ["1:1 [set k: 24 V] set belongs inside a variant (variant NAME … end)"]),
        (
            "remove part k",
            ["1:1 [remove part k] remove belongs inside a variant (variant NAME … end)"],
        ),
        ("variant a\nend\nvariant A", ["3:1 [variant A] a variant is called a already, in line 1"]),
        ("variant a\nend\nend variant", ["3:5 [v] “end” stands alone in its line"]),
    ],
)
def test_variants_that_cannot_be(text: str, expected: list[str]) -> None:
    assert problems(text) == expected


def test_a_variant_ends_with_its_file(tmp_path: Path) -> None:
    (tmp_path / "a.wiring").write_text('include "b.wiring"\npart k is relay\n')
    (tmp_path / "b.wiring").write_text('variant v\nnote "x"')
    built = wirecheck.load(tmp_path / "a.wiring")
    assert not built.problems
    assert list(built.diagram.parts) == ["k"]


def test_a_file_included_in_a_variant_belongs_to_it_and_cannot_close_it(tmp_path: Path) -> None:
    (tmp_path / "a.wiring").write_text(
        'variant v\ninclude "b.wiring"\nnote "a"\nend\npart k is relay'
    )
    (tmp_path / "b.wiring").write_text('note "b"\nend\nvariant w\nnote "c"')
    statements = nest(read_path(tmp_path / "a.wiring").statements)
    assert [(each.name, len(each.statements)) for each in statements.variants] == [
        ("v", 2),
        ("w", 1),
    ]
    assert len(statements.base) == 1
    assert [p.message for p in statements.problems] == [
        "this end closes nothing: no variant is open here"
    ]
