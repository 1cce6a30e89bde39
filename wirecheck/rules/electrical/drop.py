"""What is lost on the way from a supply to a load: in the transformer and in the leads."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from wirecheck.circuit.copper import lead_ohms
from wirecheck.circuit.resistances import copper_ohms, lead_size
from wirecheck.circuit.supplies import source_behind
from wirecheck.model.quantity import Quantity
from wirecheck.parts.amounts import each_quantity
from wirecheck.rules.electrical.loads import Loading, Taker
from wirecheck.rules.facts import Facts

if TYPE_CHECKING:
    from wirecheck.rules.electrical.running import Solved

#: Of its rated volts, from where a coil surely pulls in (common practice, no source).
LEAST: Final = 0.85
#: The line at its lowest, as a share of its nominal volts (common practice, no source).
WEAK_LINE: Final = 0.9
#: So near two rated volts count as the same, as 115 and 120 V (common practice, no source).
NEAR: Final = 0.1
#: Gauges a control lead may be run in, and the usual one.
_GAUGES_AWG: Final = (22, 20, 18, 16, 14, 12)
_USUAL_AWG: Final = Quantity(18, 18, "AWG")


def copper_by_region(facts: Facts) -> dict[int, float]:
    """Ohm of all leads of known length, added up by region."""
    region, net_of = facts.conduction.region, facts.nets.net_of
    ohms: dict[int, float] = {}
    for lead in facts.diagram.leads:
        if "length" in lead.given or "in" in lead.given:
            at = region(net_of[lead.a])
            ohms[at] = ohms.get(at, 0.0) + copper_ohms(facts.nets, lead)
    return ohms


def suited(loading: Loading) -> list[Taker]:
    """The loads of a supply that are made for about its rated volts."""
    return [t for t in loading.takers if abs(t.rated_v / loading.rated_v - 1) <= NEAR]


def surely_enough(loading: Loading, copper: dict[int, float]) -> bool:
    """Whether, with all current through the transformer and each lead in turn, the volts do."""
    behind = source_behind(loading.supply.part, loading.spec)
    weak = WEAK_LINE * behind.unloaded_v
    ohms = abs(behind.ohms) + copper.get(loading.hot, 0.0) + copper.get(loading.common, 0.0)
    lowest = min(taker.rated_v for taker in loading.takers)
    highest = max((taker.rated_v for taker in suited(loading)), default=0.0)
    return weak - ohms * loading.amps * weak / lowest >= LEAST * highest


def is_fed_right(solved: Solved, loading: Loading) -> bool:
    """Whether its primary, if it has one, has about the volts it is made for."""
    part, spec = loading.supply.part, loading.spec
    rated = each_quantity(part.values.get(spec.fed_volts or ""))
    return not spec.fed_by or any(
        abs(solved.volts(part.terminal(a), part.terminal(b)) / volts.high_base - 1) <= NEAR
        for (a, b), volts in zip(spec.fed_by, rated, strict=False)
    )


def leads_to(facts: Facts, loading: Loading, taker: Taker) -> tuple[int, ...]:
    """Numbers of the leads from the supply to a load and back."""
    ends = [taker.element.a, taker.element.b]
    if facts.conduction.region(taker.element.net_a) != loading.hot:
        ends.reverse()
    ways = (
        facts.sides.trace(start, end)
        for start, end in zip((loading.supply.hot, loading.supply.common), ends, strict=True)
    )
    return tuple(number for way in ways if way is not None for number in way.leads)


def gauge_for(facts: Facts, lead: int, share: float) -> Quantity | None:
    """The thinnest gauge in which a lead drops no more than ``share`` of what it does now."""
    size = lead_size(facts.diagram.leads[lead]) or _USUAL_AWG
    if size.dimension != "gauge":
        return None
    heavier = (Quantity(gauge, gauge, "AWG") for gauge in _GAUGES_AWG if gauge < size.low)
    now = lead_ohms(size, 1.0)
    return next((gauge for gauge in heavier if lead_ohms(gauge, 1.0) <= share * now), None)
