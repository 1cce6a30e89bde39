"""Building much at once without looking for unused objects in between.

A large diagram is some million small objects that all stay, and no rings of them to be collected;
the more there are, the longer each look takes.
"""

from __future__ import annotations

import gc
from collections.abc import Iterator
from contextlib import contextmanager


@contextmanager
def collector_paused() -> Iterator[None]:
    """Keep the garbage collector off (also as a decorator), and leave it as it was."""
    was_on = gc.isenabled()
    gc.disable()
    try:
        yield
    finally:
        if was_on:
            gc.enable()
