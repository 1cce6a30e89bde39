"""``wirecheck kinds``: the part library."""

import pytest

from tests.cli.command_line import CommandLine
from wirecheck import kind, kind_names


def unfolded(text: str) -> str:
    return " ".join(text.split())


def test_the_list_names_every_kind_under_its_family(wirecheck: CommandLine) -> None:
    answer = wirecheck("kinds")
    assert answer.code == 0
    family = ""
    listed = {}
    for line in answer.out.splitlines():
        if line and not line.startswith(" "):
            family = line
        elif line.startswith("  ") and not line.startswith("   "):
            listed[line.split(":")[0].strip()] = family
    assert listed == {name: kind(name).family for name in kind_names()}


@pytest.mark.parametrize("name", kind_names())
def test_a_kind_is_shown_with_all_that_is_known_of_it(wirecheck: CommandLine, name: str) -> None:
    answer = wirecheck("kinds", name)
    assert answer.code == 0
    said = unfolded(answer.out)
    shown = kind(name)
    for terminal, spec in shown.terminals.items():
        assert spec.inner or f"{terminal}: {unfolded(spec.about)} ({spec.role}; " in said
    for attribute, takes in shown.attributes.items():
        assert f"{attribute}: {unfolded(takes.about)}" in said
        assert takes.default is None or f"{takes.default} unless typed; {takes.source}" in said
    for contact in shown.switches:
        assert f"{' to '.join(contact.between)}, {contact.normal} on the shelf" in said
    for inside in (*shown.links, *shown.loads, *shown.sources, *shown.gaps):
        assert " to ".join(inside.between) in said


def test_the_block_shows_every_terminal_at_its_side(wirecheck: CommandLine) -> None:
    block = """\
         +---------+
    A ---|  relay  |--- NO
    B ---|  (CR)   |--- NC
  COM ---|         |
         +---------+
"""
    assert block in wirecheck("kinds", "relay").out


def test_case_does_not_matter(wirecheck: CommandLine) -> None:
    assert wirecheck("kinds", "RELAY") == wirecheck("kinds", "relay")


@pytest.mark.parametrize(("ending", "magic"), [("svg", b"<?xml"), ("png", b"\x89PNG")])
def test_the_block_is_drawn_into_a_file(wirecheck: CommandLine, ending: str, magic: bytes) -> None:
    answer = wirecheck("kinds", "gas-valve-3-wire", "--draw", f"valve.{ending}")
    assert answer.code == 0
    picture = (wirecheck.folder / f"valve.{ending}").read_bytes()
    assert picture.startswith(magic)
    if ending == "svg":
        for name in (b"PV", b"MV", b"C", b"gas valve"):
            assert b">" + name + b"<" in picture


@pytest.mark.parametrize(
    ("words", "message"),
    [
        (("kinds", "relai"), "there is no kind 'relai'; did you mean relay?"),
        (("kinds", "../relay"), "there is no kind '../relay'"),
        (("kinds", "--draw", "x.svg"), "name the kind that shall be drawn"),
        (("kinds", "relay", "--draw", "x.pdf"), "a kind is drawn as SVG or PNG"),
        (("kinds", "relay", "--draw", "no/x.svg"), "no/x.svg cannot be written: no such file"),
    ],
)
def test_what_cannot_be_done_is_said(
    wirecheck: CommandLine, words: tuple[str, ...], message: str
) -> None:
    answer = wirecheck(*words)
    assert answer.code == 2
    assert message in unfolded(answer.err)
    assert not list(wirecheck.folder.iterdir())
