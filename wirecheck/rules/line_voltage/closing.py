"""When a short behind contacts comes about."""

from __future__ import annotations

from wirecheck.circuit.nets import Element


def closing(contacts: tuple[Element, ...]) -> str:
    """From when on a way through these contacts carries current: the breaker trips then."""
    return f"once {contacts[-1].part.name} closes" if contacts else "as soon as power is on"
