"""A file is written whole or not at all."""

import os
import stat
from pathlib import Path

import pytest

from wirecheck.report.whole_file import write_whole


def test_a_new_file_has_the_bytes_and_usual_permissions(tmp_path: Path) -> None:
    write_whole(tmp_path / "new", b"\r\n\x00")
    assert (tmp_path / "new").read_bytes() == b"\r\n\x00"
    plain = tmp_path / "plain"
    plain.touch()
    assert (tmp_path / "new").stat().st_mode == plain.stat().st_mode


@pytest.mark.skipif(os.name == "nt", reason="permissions of the POSIX kind")
def test_an_old_file_keeps_its_permissions(tmp_path: Path) -> None:
    old = tmp_path / "old"
    old.write_bytes(b"old")
    old.chmod(0o640)
    write_whole(old, b"new")
    assert old.read_bytes() == b"new"
    assert stat.S_IMODE(old.stat().st_mode) == 0o640


@pytest.mark.skipif(os.name == "nt", reason="links need a permission there")
def test_behind_a_link_the_file_it_points_at_is_replaced(tmp_path: Path) -> None:
    (tmp_path / "kept").mkdir()
    (tmp_path / "kept" / "real").write_bytes(b"old")
    (tmp_path / "link").symlink_to("kept/real")
    write_whole(tmp_path / "link", b"new")
    assert (tmp_path / "link").is_symlink()
    assert (tmp_path / "kept" / "real").read_bytes() == b"new"


@pytest.mark.parametrize("step", ["os.fsync", "pathlib.Path.chmod"])
def test_if_writing_fails_the_old_file_stays_and_nothing_else(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, step: str
) -> None:
    def fail(*_arguments: object) -> None:
        raise OSError(28, "No space left on device")

    old = tmp_path / "old"
    old.write_bytes(b"old")
    monkeypatch.setattr(step, fail)
    with pytest.raises(OSError, match="No space left"):
        write_whole(old, b"new")
    assert [file.name for file in tmp_path.iterdir()] == ["old"]
    assert old.read_bytes() == b"old"


def test_what_is_no_file_is_not_replaced(tmp_path: Path) -> None:
    (tmp_path / "folder").mkdir()
    with pytest.raises(OSError, match="no plain file"):
        write_whole(tmp_path / "folder", b"new")
    assert (tmp_path / "folder").is_dir()


def test_a_folder_that_is_not_there_is_not_made(tmp_path: Path) -> None:
    with pytest.raises(FileNotFoundError):
        write_whole(tmp_path / "none" / "file", b"new")
