"""What one part really has, once its attributes are known."""

from itertools import product

import pytest

from tests.parts.typed import given
from wirecheck.model.diagram import key_of
from wirecheck.model.structure import Structure
from wirecheck.parts.defaults import values_of
from wirecheck.parts.library import kind, kind_names
from wirecheck.parts.structure import numbered_terminal, structure_of


def structure(name: str, *typed: str) -> Structure:
    found = kind(name)
    return structure_of(found, values_of(found, given(found, *typed)))


@pytest.mark.parametrize("name", kind_names())
def test_every_choice_leaves_a_whole_part(name: str) -> None:
    """Whatever is chosen, what is inside stands between terminals that are there."""
    found = kind(name)
    choices = {
        key: spec.choices for key, spec in found.attributes.items() if spec.choices and spec.default
    }
    for chosen in product(*choices.values()):
        values = values_of(found, {}) | dict(zip(choices, chosen, strict=True))
        part = structure_of(found, values)
        inside = (*part.links, *part.switches, *part.loads, *part.sources, *part.gaps)
        pairs = [each.between for each in inside] + [part.through or ()]
        pairs += [pair for source in part.sources for pair in source.fed_by]
        assert {terminal for pair in pairs for terminal in pair} <= set(part.terminals)
        assert {name for name, _ in part.bonds} <= set(part.terminals)
        outer = {name for name, spec in part.terminals.items() if not spec.inner}
        assert set(part.lookup.values()) == outer
        assert all(part.lookup[key_of(name)] == name for name in outer)
        assert (found.through is None) == (part.through is None)


def test_equal_parts_share_one_structure() -> None:
    assert structure("relay", "poles 2") is structure("relay", "poles 2", "6 VA")
    assert structure("relay", "poles 2") is not structure("relay")


def test_poles_number_the_contacts() -> None:
    relay = structure("relay", "poles 2")
    assert list(relay.terminals)[2:] == ["1.COM", "1.NO", "1.NC", "2.COM", "2.NO", "2.NC"]
    assert [each.between for each in relay.switches] == [
        ("1.COM", "1.NO"), ("2.COM", "2.NO"), ("1.COM", "1.NC"), ("2.COM", "2.NC"),
    ]  # fmt: skip
    assert "com" not in relay.lookup
    assert structure("relay").lookup["1.com"] == "COM"


def test_a_tapped_primary_has_a_terminal_for_each_of_its_volts() -> None:
    transformer = structure("transformer", "primary 120/208/240 V")
    assert list(transformer.terminals) == ["120V", "208V", "240V", "N", "R", "C"]
    assert transformer.lookup["208"] == transformer.lookup["208v"] == "208V"
    assert transformer.sources[0].fed_by == (("120V", "N"), ("208V", "N"), ("240V", "N"))
    assert not transformer.terminals["208V"].must
    plain = structure("transformer", "primary 208 V")
    assert plain.sources[0].fed_by == (("L1", "N"),)
    assert plain.terminals["L1"].must


@pytest.mark.parametrize(
    ("volts", "hot_legs", "legs_add_up_to"),
    [("120 V", 1, None), ("240 V", 2, 240.0), ("120/240 V", 2, 240.0), ("208 V", 2, 208.0)],
)
def test_legs_of_the_supply_add_up_to_its_volts(
    volts: str, hot_legs: int, legs_add_up_to: float | None
) -> None:
    mains = structure("mains", volts)
    assert sum(spec.role.startswith("line-hot") for spec in mains.terminals.values()) == hot_legs
    if legs_add_up_to:
        leg, other = (
            legs_add_up_to * each.share * complex_of(each.phase_deg) for each in mains.sources
        )
        assert abs(leg - other) == pytest.approx(legs_add_up_to)
        assert abs(leg) == pytest.approx(120, rel=0.01)


def complex_of(degrees: float) -> complex:
    real = {0.0: 1.0, 180.0: -1.0, 120.0: -0.5, -120.0: -0.5}[degrees]
    imaginary = {0.0: 0.0, 180.0: 0.0, 120.0: 0.75**0.5, -120.0: -(0.75**0.5)}[degrees]
    return complex(real, imaginary)


def test_three_phases_are_a_third_of_a_turn_apart() -> None:
    mains = structure("mains", "208 V", "three-phase")
    assert sum(complex_of(each.phase_deg) for each in mains.sources) == pytest.approx(0)


def test_rated_volts_choose_the_circuit() -> None:
    assert structure("relay").terminals["A"].circuit == "24V"
    assert structure("relay", "120 V").terminals["A"].circuit == "line"
    assert structure("thermostat", "750 mV").terminals["R"].circuit == "millivolt"
    assert structure("inducer", "24 V").terminals["L"].circuit == "24V"


def test_a_one_rod_pilot_senses_at_its_electrode() -> None:
    pilot = structure("pilot-burner", "one-rod")
    assert "rod" not in pilot.lookup
    assert {gap.type: gap.between for gap in pilot.gaps} == {
        "spark": ("SPARK", "HOOD"), "flame": ("SPARK", "HOOD"),
    }  # fmt: skip
    assert pilot.bonds == (("HOOD", "poor"),)


def test_two_feeds_of_a_thermostat() -> None:
    split = structure("thermostat", "feeds two")
    assert split.through == ("Rh", "W")
    assert split.lookup["r"] == "Rh"
    assert structure("thermostat").lookup["rh"] == "R"


def test_inside_the_pilot_control() -> None:
    control = structure("pilot-ignition-control")
    links = {frozenset(link.between) for link in control.links}
    for pair in (("TH", "D-CALL"), ("24V", "D-HOT"), ("COM", "D-COM"), ("COM", "VC")):
        assert frozenset(pair) in links
    assert {frozenset(("COM", "GND")), frozenset(("D-CALL", "D-PROVED"))} <= links
    assert [switch.between for switch in control.switches] == [("D-PROVED", "PV"), ("PV", "MV")]
    assert "coil-cold" not in control.lookup
    named = {link.name for link in structure("pilot-ignition-control", "one-rod").links}
    assert named == {"", "shorting plug", "sense link"}
    cut = structure("pilot-ignition-control", "sense-link cut", "damper-plug removed")
    assert {link.name for link in cut.links} == {""}
    assert cut.terminals["24V"].must
    assert not control.terminals["24V"].must


def test_numbered_terminals_grow_on_their_own_part_alone() -> None:
    strip = kind("terminal-strip")
    values = values_of(strip, given(strip, "terminals 4"))
    one, other = structure_of(strip, values), structure_of(strip, values)
    assert numbered_terminal(one, strip, values, "03") == "3"
    assert list(one.terminals) == ["3"]
    assert one.lookup == {"3": "3"}
    assert not other.terminals
    for text in ("0", "5", "-1", "x", "", "٣", "9" * 5000):
        assert numbered_terminal(one, strip, values, text) is None
    relay = kind("relay")
    assert numbered_terminal(structure("relay"), relay, {}, "1") is None


@pytest.mark.parametrize("name", ["pilot-ignition-control", "direct-ignition-control"])
def test_a_control_without_a_damper_socket_has_its_damper_points_inside(name: str) -> None:
    without, plain = structure(name, "damper-socket no"), structure(name)
    points = {"D-HOT", "D-CALL", "D-PROVED", "D-COM"}
    assert {point for point in points if without.terminals[point].inner} == points
    assert not any(plain.terminals[point].inner for point in points)
    assert not points & set(without.lookup.values())
    assert not any(without.terminals[point].must for point in points)
    assert [each.between for each in without.links] == [each.between for each in plain.links]
