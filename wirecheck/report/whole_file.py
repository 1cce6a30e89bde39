"""Writing a file whole or not at all."""

from __future__ import annotations

import os
from pathlib import Path


def write_whole(path: Path, data: bytes) -> None:
    """Write a file so that at no time half of it stands there.

    The bytes go to a file of another name in the same folder, which then takes the place of the
    old one; whatever fails, the old one stays. Permissions of an old file are kept, and where it
    is a link, what it points at is replaced.

    Raises:
        OSError: it cannot be written, or something that is no file stands there.
    """
    import tempfile

    target = path.resolve()
    if target.exists() and not target.is_file():
        raise OSError(0, "something that is no plain file stands there", str(path))
    handle, name = tempfile.mkstemp(dir=target.parent, prefix=f".{target.name[:40]}.")
    try:
        with os.fdopen(handle, "wb") as file:
            file.write(data)
            file.flush()
            os.fsync(file.fileno())
        Path(name).chmod(_mode(target))
        Path(name).replace(target)
    except BaseException:
        Path(name).unlink(missing_ok=True)
        raise


def _mode(target: Path) -> int:
    """Permissions of the file that is there, or those a new one gets."""
    if target.exists():
        return target.stat().st_mode & 0o7777
    mask = os.umask(0)
    os.umask(mask)
    return 0o666 & ~mask
