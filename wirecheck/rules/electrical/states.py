"""The two states a diagram is solved in, each solved once and only if a rule asks.

Most diagrams are right by a wide margin, which sums show: those need not load what solves circuits.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from wirecheck.rules.electrical.running import Solved
    from wirecheck.rules.facts import Facts


def running(facts: Facts) -> Solved:
    """The burner runs and the fan too."""
    from wirecheck.rules.electrical.running import Running

    return facts.once(Running)


def cooling(facts: Facts) -> Solved:
    """A call for cooling."""
    from wirecheck.rules.electrical.running import Cooling

    return facts.once(Cooling)
