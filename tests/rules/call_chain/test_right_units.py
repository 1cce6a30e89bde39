"""Right units of many sorts: nothing at all is said of them."""

from __future__ import annotations

import pytest

from tests.rules.call_chain.units import CALL, unit, zones
from tests.rules.raised import raised

RIGHT = {
    "limit and rollout ahead of the thermostat": unit(),
    "limit and rollout behind it": unit("wire xfmr.R to stat to rollout to limit to box.TH\n"),
    "written backwards, in two runs": unit(
        "wire box.TH to stat.W..R to rollout.2\nwire rollout.1 to limit.2..1 to xfmr.R\n"
    ),
    "over a strip": unit(
        "wire xfmr.R to strip.1\nwire strip.1 to limit to strip.2\n"
        "wire strip.2 to rollout to strip.3\nwire strip.3 to stat to box.TH\n",
        parts="part strip is terminal-strip\n",
    ),
    "the thermostat with its leads the other way round": unit(
        "wire xfmr.R to limit to rollout to stat.W\nwire stat.R to box.TH\n"
    ),
    "a thermostat with a common": unit(CALL + "wire stat.C to xfmr.C\n").replace(
        "is thermostat", "is thermostat: common"
    ),
    "a thermostat that lives on the load's current": unit().replace(
        "is thermostat", "is thermostat: robbing"
    ),
    "a thermostat with two feeds and a fan relay": unit(
        "wire xfmr.R to limit to rollout to stat.Rh\nwire stat.W to box.TH\n"
        "wire xfmr.R to stat.Rc\nwire stat.G to fan to xfmr.C\n",
        parts="part fan is relay\n",
    ).replace("is thermostat", "is thermostat: feeds two"),
    "a limit in the line that feeds the transformer": unit(
        "wire xfmr.R to rollout to stat to box.TH\n",
        line="wire line.L1 to limit to xfmr.L1: black\n",
    ),
    "an emergency stop in the line": unit(
        line="wire line.L1 to stop to xfmr.L1: black\n", parts="part stop is emergency-stop\n"
    ),
    "a limit that acts through a relay": unit(
        "wire xfmr.R to limit to aid to xfmr.C\n"
        "wire xfmr.R to rollout to aid.COM..NO to stat to box.TH\n",
        parts="part aid is relay\n",
    ),
    "a limit that acts through a relay at line voltage": unit(
        "wire line.L1 to limit to aid to line.N\n"
        "wire xfmr.R to rollout to aid.COM..NO to stat to box.TH\n",
        parts="part aid is relay: 120 V\n",
    ),
    "a limit that drops the contactor ahead of the transformer": unit(
        "wire xfmr.R to rollout to stat to box.TH\nwire line.L1 to limit to main to line.N\n",
        parts="part main is contactor: 120 V, poles 1\n",
        line="wire line.L1 to main.COM..NO to xfmr.L1: black\n",
    ),
    "two thermostats, the safeties ahead of both": unit(
        "wire xfmr.R to limit to rollout to stat to box.TH\nwire rollout.2 to aid to box.TH\n",
        parts="part aid is thermostat\n",
    ),
    "two thermostats, the safeties behind both": unit(
        "wire xfmr.R to stat to nut\nwire xfmr.R to aid to nut\n"
        "wire nut to limit to rollout to box.TH\n",
        parts="part aid is thermostat\nsplice nut\n",
    ),
    "a switch to run it by hand beside the thermostat": unit(
        CALL + "wire rollout.2 to hand to box.TH\n", parts="part hand is service-switch\n"
    ),
    "a relay that puts the water heater first": unit(
        "wire xfmr.R to limit to rollout to stat to first.1.COM..1.NC to box.TH\n"
        "wire xfmr.R to tank to first to xfmr.C\n"
        "wire rollout.2 to first.2.COM..2.NO to box.TH\n",
        parts="part first is relay: poles 2\npart tank is thermostat\n",
    ),
    "a relay that keeps heat off while it cools": unit(
        "wire xfmr.R to limit to rollout to stat to cool.COM..NC to box.TH\n"
        "wire stat.Y to cool to xfmr.C\n",
        parts="part cool is relay\n",
    ),
    "a boiler kept hot, the thermostat on the pump": unit(
        "wire xfmr.R to limit to rollout to aquastat to box.TH\n"
        "wire xfmr.R to stat to aid to xfmr.C\nwire line.L1 to aid.COM..NO to pump to line.N\n",
        parts="part aquastat is operating-control\npart aid is relay\npart pump is circulator\n",
    ),
    "a probe for low water in the call": unit(
        "wire xfmr.R to probe.R\nwire probe.C to xfmr.C\n"
        "wire probe.OUT to limit to rollout to stat to box.TH\n",
        parts="part probe is low-water-probe\n",
    ),
    "an air switch that lights a lamp only": unit(
        CALL + "wire xfmr.R to air to alarm to xfmr.C\n",
        parts="part air is air-switch\npart alarm is lamp\n",
    ),
    "a limit that was not traced to its end": unit(
        "wire xfmr.R to limit to unknown\nwire unknown to rollout to stat to box.TH\n"
    ),
    "a call made from elsewhere, through a relay": unit(
        "wire xfmr.R to limit to rollout to far.COM..NO to box.TH\n"
        "wire unknown to far to unknown\n",
        parts="part far is relay\n",
    ).replace("part stat is thermostat\n", ""),
    "two zones": zones(),
    "two zones with the safeties in the boiler's call": zones(
        parts="part lwco is low-water-cutoff\npart nut-1 is terminal-strip\n",
        ends=(
            "wire nut-1.1 to zone-1.E1..E2 to boiler.2\nwire nut-1.1 to zone-2.E1..E2 to boiler.2\n"
            "wire boiler.1 to lwco to nut-1.1\n"
        ),
    ),
    "two zones with the cut-off ahead of both thermostats": zones(
        "wire xfmr.R to lwco to stat-1 to zone-1.M1\nwire lwco.2 to stat-2 to zone-2.M1\n",
        parts="part lwco is low-water-cutoff\n",
    ),
    "a floor limit in one zone, the boiler's limit in its call": zones(
        "wire xfmr.R to floor to stat-1 to zone-1.M1\nwire xfmr.R to stat-2 to zone-2.M1\n",
        parts="part floor is high-limit\npart limit is high-limit\npart strip is terminal-strip\n",
        ends=(
            "wire strip.1 to zone-1.E1..E2 to boiler.2\nwire strip.1 to zone-2.E1..E2 to boiler.2\n"
            "wire boiler.1 to limit to strip.1\n"
        ),
    ),
}


@pytest.mark.parametrize("text", RIGHT.values(), ids=RIGHT)
def test_a_right_unit_raises_nothing(text: str) -> None:
    assert raised(text) == []
