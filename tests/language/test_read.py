"""Files and what they include: read once, never outside the folder, every fault at its place."""
# ruff: noqa: E501 - each case stands in one line, its message whole

from __future__ import annotations

import os
from pathlib import Path

import pytest

import wirecheck
from wirecheck.language.build import build
from wirecheck.language.read import LARGEST_FILE_BYTES, read_together
from wirecheck.model.finding import Problem
from wirecheck.model.text import SourceFile, Within


def write(folder: Path, files: dict[str, str | bytes]) -> None:
    for name, text in files.items():
        file = folder / name
        file.parent.mkdir(parents=True, exist_ok=True)
        file.write_bytes(text if isinstance(text, bytes) else text.encode())


def messages(problems: tuple[Problem, ...]) -> list[str]:
    """Each problem with the last part of its file's name, its line and column."""
    return [
        f"{Path(problem.span.file).name}:{problem.span.line}:{problem.span.column}: {problem.message}"
        for problem in problems
    ]


def problems_of(folder: Path, files: dict[str, str | bytes]) -> list[str]:
    write(folder, files)
    return messages(wirecheck.load(folder / "a.wiring").problems)


def test_included_statements_stand_in_the_place_of_the_include(tmp_path: Path) -> None:
    write(tmp_path, {
        "a.wiring": 'diagram "Boiler 2"\ninclude "parts/relays.wiring"\nwire k.A to j.A to k.B\n',
        "parts/relays.wiring": 'diagram "Relays"\npart k is relay\ninclude "more.wiring"\n',
        "parts/more.wiring": "part j is relay\n",
    })  # fmt: skip
    built = wirecheck.load(tmp_path / "a.wiring")
    assert not built.problems
    assert list(built.diagram.parts) == ["k", "j"]
    assert len(built.diagram.leads) == 2
    assert built.diagram.title == "Boiler 2"
    assert [Path(source.name).name for source in built.diagram.sources] == [
        "a.wiring", "relays.wiring", "more.wiring",
    ]  # fmt: skip


def test_without_a_title_the_files_name_serves(tmp_path: Path) -> None:
    write(tmp_path, {"boiler 2.wiring": 'include "b.wiring"', "b.wiring": 'diagram "Other"'})
    assert wirecheck.load(tmp_path / "boiler 2.wiring").diagram.title == "boiler 2"


def test_a_file_is_read_once_however_often_and_by_whatever_name(tmp_path: Path) -> None:
    files: dict[str, str | bytes] = {
        "a.wiring": 'include "b.wiring"\ninclude "./x/../b.wiring"\ninclude "c.wiring"\n',
        "b.wiring": "part k is relay\n",
        "x/c.wiring": "",
    }
    write(tmp_path, files)
    (tmp_path / "c.wiring").symlink_to("b.wiring")
    built = wirecheck.load(tmp_path / "a.wiring")
    assert not built.problems
    assert list(built.diagram.parts) == ["k"]


def test_a_ring_is_told_where_it_closes_and_the_rest_is_read(tmp_path: Path) -> None:
    assert problems_of(tmp_path, {
        "a.wiring": 'include "b.wiring"\npart k is relay\nwire k.A to j.A',
        "b.wiring": 'part j is relay\n  include "a.wiring"',
    }) == [
        "b.wiring:2:11: the includes run in a ring: a.wiring includes b.wiring includes a.wiring",
    ]  # fmt: skip


def test_a_long_ring_is_not_spelled_out(tmp_path: Path) -> None:
    files: dict[str, str | bytes] = {f"{n}.wiring": f'include "{n + 1}.wiring"' for n in range(99)}
    files |= {"a.wiring": 'include "0.wiring"', "99.wiring": 'include "1.wiring"'}
    (message,) = problems_of(tmp_path, files)
    assert message == (
        "99.wiring:1:9: the includes run in a ring: 1.wiring includes 2.wiring includes 3.wiring "
        "includes 4.wiring includes … includes 97.wiring includes 98.wiring includes 99.wiring "
        "includes 1.wiring"
    )


@pytest.mark.parametrize("name", ["../out.wiring", "sub/../../out.wiring", "link.wiring", "up/out.wiring", "/etc/passwd"])  # fmt: skip
def test_nothing_outside_the_folder_is_read(tmp_path: Path, name: str) -> None:
    home = tmp_path / "home"
    write(tmp_path, {"out.wiring": "part k is relay", "home/a.wiring": f'include "{name}"'})
    (home / "link.wiring").symlink_to(tmp_path / "out.wiring")
    (home / "up").symlink_to(tmp_path)
    built = wirecheck.load(home / "a.wiring")
    assert messages(built.problems) == [
        f"a.wiring:1:9: “{name}” lies outside the folder of the file first named; only files in it and below it are read"
    ]
    assert not built.diagram.parts


def test_an_included_file_may_include_what_lies_beside_it_or_above_within_the_folder(
    tmp_path: Path,
) -> None:
    assert not problems_of(tmp_path, {
        "a.wiring": 'include "sub/b.wiring"\nwire k.A to k.B',
        "sub/b.wiring": 'include "../c.wiring"',
        "c.wiring": "part k is relay",
    })  # fmt: skip


@pytest.mark.parametrize(
    ("name", "message"),
    [
        ("none.wiring", "there is no file “none.wiring” beside this one"),
        ("sub", "“sub” is no file"),
        ("pipe", "“pipe” is no file"),
        ("ring", "no file can be reached by the name “ring”"),
        ("x" * 300, f"“{'x' * 300}” cannot be read: file name too long"),
    ],
)
def test_a_file_that_cannot_be_included(tmp_path: Path, name: str, message: str) -> None:
    write(tmp_path, {"sub/b.wiring": ""})
    os.mkfifo(tmp_path / "pipe")
    (tmp_path / "ring").symlink_to("gnir")
    (tmp_path / "gnir").symlink_to("ring")
    text = f'include "{name}"\npart k is relay\nwire k.A to k.B'
    assert problems_of(tmp_path, {"a.wiring": text}) == [f"a.wiring:1:9: {message}"]


def test_names_that_may_stand_in_a_missing_file_are_not_called_wrong(tmp_path: Path) -> None:
    """A name close to one that is there is still a slip."""
    text = (
        'include "b.wiring"\npart limit is high-limit\nwire limit to box.TH\nwire limt to limit.1'
    )
    assert problems_of(tmp_path, {"a.wiring": text}) == [
        "a.wiring:1:9: there is no file “b.wiring” beside this one",
        "a.wiring:4:6: no part or splice is called “limt”; did you mean limit?",
    ]


def test_a_text_that_is_no_file_includes_nothing() -> None:
    built = wirecheck.load_text('include "b.wiring"')
    assert messages(built.problems) == ["text:1:9: a text that is no file can include nothing"]


def test_a_file_too_large_is_refused_and_the_others_are_read(tmp_path: Path) -> None:
    write(tmp_path, {
        "a.wiring": 'include "big.wiring"\npart k is relay',
        "big.wiring": b"#" * (LARGEST_FILE_BYTES + 1),
    })  # fmt: skip
    built = wirecheck.load(tmp_path / "a.wiring")
    assert messages(built.problems) == [
        "big.wiring:1:1: the file is larger than 16 MB, more than is read; split it with include"
    ]
    assert list(built.diagram.parts) == ["k"]
    alone = wirecheck.load(tmp_path / "big.wiring")
    assert len(alone.problems) == 1
    assert not alone.diagram.parts


def test_includes_beyond_all_measure_are_refused(tmp_path: Path) -> None:
    files: dict[str, str | bytes] = {f"{n}.wiring": f'include "{n + 1}.wiring"' for n in range(300)}
    (message,) = problems_of(tmp_path, files | {"a.wiring": 'include "0.wiring"'})
    assert message == "198.wiring:1:9: more than 200 files are included"


# ---- bytes -------------------------------------------------------------------------------------


@pytest.mark.parametrize("encoding", ["utf-16", "utf-16-le", "utf-16-be", "utf-32"])
def test_other_encodings_are_named_and_read(tmp_path: Path, encoding: str) -> None:
    text = "part k is relay\nwire k.A to k.B\n"
    marked = text if encoding in ("utf-16", "utf-32") else "\ufeff" + text
    write(tmp_path, {"a.wiring": marked.encode(encoding)})
    built = wirecheck.load(tmp_path / "a.wiring")
    (problem,) = built.problems
    assert problem.message.endswith("save it as plain text in UTF-8")
    assert len(built.diagram.leads) == 1


def test_what_is_no_text_is_said_once(tmp_path: Path) -> None:
    assert problems_of(tmp_path, {"a.wiring": bytes(range(4)) * 1000}) == [
        "a.wiring:1:1: this is no text; save it as plain text in UTF-8"
    ]


def test_bytes_that_are_not_utf_8_are_told_once_a_line_and_cost_nothing_else(
    tmp_path: Path,
) -> None:
    data = (
        b'part k is relay  # 200 \xb0F \xb0\nwire k.A to k.B: number "\xe9"\n\xffpart j is relay\n'
    )
    write(tmp_path, {"a.wiring": data})
    built = wirecheck.load(tmp_path / "a.wiring")
    said = "what stands here is not UTF-8; save the file as UTF-8 and type the character again"
    assert messages(built.problems) == [
        f"a.wiring:1:24: {said}", f"a.wiring:2:26: {said}", f"a.wiring:3:1: {said}",
    ]  # fmt: skip
    assert list(built.diagram.parts) == ["k", "j"]
    assert len(built.diagram.leads) == 1


def test_a_file_that_is_not_there_raises(tmp_path: Path) -> None:
    with pytest.raises(FileNotFoundError):
        wirecheck.load(tmp_path / "a.wiring")
    with pytest.raises(IsADirectoryError):
        wirecheck.load(tmp_path)


def test_texts_of_one_document_are_read_as_one_diagram(tmp_path: Path) -> None:
    write(tmp_path, {"limit.wiring": "part limit is high-limit\n"})
    first = SourceFile("note.md", 'diagram "First"\ninclude "limit.wiring"\n', Within(10, (2, 2)))
    second = SourceFile("note.md", "wire limit.1 to limit.3\n", Within(20, (2,)))
    built = build(read_together([first, second], tmp_path / "note.md", "note, line 19"))
    assert built.diagram.title == "note, line 19"
    assert [part.name for part in built.diagram.parts.values()] == ["limit"]
    assert [str(problem.span) for problem in built.problems] == ["note.md:20:25"]
