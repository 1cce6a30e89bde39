"""Requests that cannot be met, each with its reason in the trade's words, and what would do."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from wirecheck.replace import refused_controls, refused_valves
from wirecheck.replace.landing import counterpart
from wirecheck.replace.plan import unit_after
from wirecheck.replace.request import Request
from wirecheck.replace.unit import SLOTS, Unit


def refusals(request: Request) -> tuple[str, ...]:
    """Every reason why a request cannot be met; none if it can."""
    after = unit_after(request)
    return tuple(reason for refuse in _REFUSALS for reason in refuse(request, after))


def _terminals(request: Request, _after: Unit) -> Iterator[str]:
    """A device outside the unit that lacks a terminal where a lead lands."""
    for swap in request.swaps:
        if swap.old.family in SLOTS and swap.old.family not in ("transformer", "mains"):
            continue
        for name in swap.old.structure.terminals:
            end = swap.old.terminal(name)
            if request.nets.is_wired(end) and counterpart(swap.old, end, swap.new.part) is None:
                yield (
                    f"a lead lands on {request.diagram.show(end)}, and the new device has no such"
                    " terminal"
                )


_REFUSALS: tuple[Callable[[Request, Unit], Iterator[str]], ...] = (
    refused_controls.pilot_type,
    refused_controls.damper_socket,
    refused_controls.gas,
    refused_valves.seats,
    refused_valves.valve_volts,
    refused_valves.made_for_millivolts,
    refused_valves.standing_valve_kept,
    refused_valves.operators,
    refused_valves.standing_pilot_lost,
    refused_valves.standing_pilot_comes,
    refused_controls.electrode_without_control,
    refused_valves.transformer_volts,
    refused_controls.burner_of_another_system,
    refused_controls.adapter,
    _terminals,
)
