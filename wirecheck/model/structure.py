"""What one part really has inside, once its attributes are known.

`Kind` states it for every value of the attributes; `wirecheck.parts.structure` works it out for
one set of values.  Parts of the same kind and values share one structure.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from wirecheck.model.kind import GapSpec, LinkSpec, LoadSpec, SourceSpec, SwitchSpec, TerminalSpec


@dataclass(frozen=True, slots=True, eq=False)
class Structure:
    """Terminals and inside of a part, in the order of the part library.

    Attributes:
        terminals: by name as spelled in the library (numbered ones as used so far).
        lookup: every accepted spelling, as a key, to the terminal's name.
        through: the two terminals used when the part is named alone in a lead, if it has such.
        bonds: terminals whose metal touches the appliance, with the strength: solid, poor, none.
    """

    terminals: Mapping[str, TerminalSpec]
    lookup: Mapping[str, str]
    through: tuple[str, str] | None
    links: tuple[LinkSpec, ...]
    switches: tuple[SwitchSpec, ...]
    loads: tuple[LoadSpec, ...]
    sources: tuple[SourceSpec, ...]
    gaps: tuple[GapSpec, ...]
    bonds: tuple[tuple[str, str], ...]
