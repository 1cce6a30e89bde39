"""Single faults: what the unit then does."""

from __future__ import annotations

import pytest

import wirecheck
from tests.properties.test_properties import EXAMPLES, LEADS, PARTS, unit
from wirecheck.faults.effect import Class, Effect


def effects(text: str) -> dict[tuple[str, str], Effect]:
    """What each fault comes to, by its kind and the lead or contact."""
    loaded = wirecheck.load_text(text)
    assert not loaded.problems
    tried = wirecheck.try_faults(loaded.diagram).tried
    return {(each.fault.kind, each.fault.name): each.effect for each in tried}


@pytest.fixture(scope="module")
def right() -> dict[tuple[str, str], Effect]:
    return effects(unit())


EXPECTED = {
    ("open", "xfmr.R to limit.1"): (Class.NO_HEAT, "at once"),
    ("earthed", "xfmr.R to limit.1"): (Class.DAMAGE, "at once"),
    ("earthed", "stat.W to box.TH"): (Class.DAMAGE, "at the next cycle"),
    ("earthed", "xfmr.C to box.COM"): (Class.NO_EFFECT, "not noticed"),
    ("earthed", "line.L1 to xfmr.L1"): (Class.DAMAGE, "at once"),
    ("open", "line.G to earth"): (Class.LATENT, "not noticed"),
    ("open", "box.SPARK to pilot.SPARK"): (Class.NO_HEAT, "at the next cycle"),
    ("open", "box.SENSE to pilot.ROD"): (Class.NO_HEAT, "at once"),
    ("open", "box.GND to pilot.HOOD"): (Class.NO_HEAT, "at once"),
    ("welded", "limit"): (Class.LATENT, "not noticed"),
    ("welded", "rollout"): (Class.LATENT, "not noticed"),
    ("stuck open", "limit"): (Class.NO_HEAT, "at once"),
    ("welded", "box K2"): (Class.HAZARD, "at the next cycle"),
    ("welded", "stat heat"): (Class.LATENT, "at once"),
    ("touching", "xfmr.R to limit.1, at limit.1, and limit.2"): (Class.HAZARD, "not noticed"),
    ("touching", "box.PV to valve.PV, at box.PV, and box.MV"): (
        Class.HAZARD,
        "at the next cycle",
    ),
}


@pytest.mark.parametrize("fault", EXPECTED, ids=" ".join)
def test_effect(right: dict[tuple[str, str], Effect], fault: tuple[str, str]) -> None:
    assert right[fault][:2] == EXPECTED[fault]


def test_the_worst_stand_first() -> None:
    tried = wirecheck.try_faults(wirecheck.load_text(unit()).diagram).tried
    severities = [each.effect.severity for each in tried]
    assert severities == sorted(severities, reverse=True)


# ---- a limit in the common lead, with the secondary earthed and not ---------------------------

FREE = PARTS.replace("pilot-burner: two-rod", "pilot-burner: two-rod, bond none")


def limited(where: str, *, earthed: bool) -> str:
    """A limit in the hot or common lead; the burner touches no earth, so only faults do."""
    if where == "hot":
        leads = "wire xfmr.R to limit to rollout to stat to box.TH\nwire xfmr.C to box.COM\n"
    else:
        leads = "wire xfmr.R to rollout to stat to box.TH\nwire xfmr.C to limit to box.COM\n"
    rest = "".join(LEADS[name] for name in ("mains", "valve", "spark", "sense", "ground"))
    return FREE + leads + ("wire xfmr.C to earth\n" if earthed else "") + rest


def test_one_earth_fault_defeats_a_limit_in_the_common_of_an_earthed_secondary() -> None:
    found = effects(limited("common", earthed=True))[("earthed", "limit.2 to box.COM")]
    assert found.severity is Class.HAZARD
    assert found.reason.startswith("main gas flows with limit open")
    assert " V at valve " in found.reason


def test_the_same_fault_is_latent_where_the_secondary_floats() -> None:
    found = effects(limited("common", earthed=False))[("earthed", "limit.2 to box.COM")]
    assert found.severity is Class.LATENT
    assert "main gas flows with limit open" in found.reason


def test_in_the_hot_lead_of_an_earthed_secondary_it_shorts_and_no_gas_flows() -> None:
    found = effects(limited("hot", earthed=True))[("earthed", "limit.2 to rollout.1")]
    assert found.severity is Class.DAMAGE


def test_in_the_hot_lead_of_a_floating_secondary_it_is_latent() -> None:
    found = effects(limited("hot", earthed=False))[("earthed", "limit.2 to rollout.1")]
    assert found.severity is Class.LATENT


def test_what_is_wrong_without_a_fault_is_said() -> None:
    text = (EXAMPLES / "limit-in-common.wiring").read_text(encoding="utf-8")
    tried = wirecheck.try_faults(wirecheck.load_text(text).diagram)
    assert "main gas flows with limit open" in tried.already


def test_a_damper_without_its_common_does_not_open() -> None:
    text = (EXAMPLES / "boiler-with-vent-damper.wiring").read_text(encoding="utf-8")
    found = effects(text)
    assert found[("open", "box.D-COM to vent.COM")].severity is Class.NO_HEAT
    assert found[("welded", "vent")].severity is Class.LATENT
    shown = found[("touching", "box.D-CALL to vent.CALL, at box.D-CALL, and box.D-PROVED")]
    assert (shown.severity, shown.reason.partition(":")[0]) == (
        Class.HAZARD,
        "main gas flows while vent is not open",
    )
