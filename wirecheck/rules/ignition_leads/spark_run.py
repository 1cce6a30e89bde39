"""The leads that carry the ignition voltage, where they run from control to electrode."""

from __future__ import annotations

from typing import NamedTuple

from wirecheck.rules.facts import Facts
from wirecheck.rules.ignition_leads.hookup import Hookup, hookups
from wirecheck.rules.ignition_leads.landing import Mistake, landings

_OF_THE_SENSE_LEAD = frozenset(
    {
        Mistake.SENSE_EARTHED,
        Mistake.SENSE_MISSING,
        Mistake.SENSE_ON_CONTROL_CIRCUIT,
        Mistake.SENSE_FROM_ANOTHER_BURNER,
    }
)


class SparkRun(NamedTuple):
    """The leads on the ignition voltage of one hookup, by their numbers in the diagram."""

    hookup: Hookup
    leads: tuple[int, ...]


def spark_runs(facts: Facts) -> tuple[SparkRun, ...]:
    """Each hookup whose spark lead is landed right; use it as ``facts.once(spark_runs)``."""
    wired = facts.as_wired
    wrong = {
        landing.hookup.control.key
        for landing in wired.once(landings)
        if landing.mistake not in _OF_THE_SENSE_LEAD
    }
    runs = {
        wired.net(hookup.spark): (hookup, list[int]())
        for hookup in wired.once(hookups)
        if hookup.control.key not in wrong
    }
    for number, lead in enumerate(facts.diagram.leads):
        run = runs.get(wired.net(lead.a))
        if run is not None:
            run[1].append(number)
    return tuple(SparkRun(hookup, tuple(leads)) for hookup, leads in runs.values())
