"""Every file of the library says what it should, and says where its numbers come from."""

import re
import subprocess
import sys
import tomllib
from collections.abc import Iterator
from dataclasses import fields

import pytest

from tests.contract.source import ROOT
from wirecheck.model.diagram import key_of
from wirecheck.model.kind import AttributeSpec, Kind, Wiring
from wirecheck.parts.library import (
    cable_attributes,
    kind,
    kind_names,
    lead_attributes,
    splice_attributes,
)
from wirecheck.parts.library_file import LibraryError, kind_from, validated, wiring_from
from wirecheck.parts.typed_values import TAKES, Fault, choice_of, value_of
from wirecheck.resources import part_kind_text, shared_text

KINDS = kind_names()

ROLES = {
    "line-hot", "line-hot-2", "line-hot-3", "line-neutral", "line-ground",
    "secondary-hot", "secondary-common",
    "call", "control-common", "control-hot", "pilot-valve", "main-valve", "valve-feed",
    "valve-common", "burner-ground", "sense", "spark", "spark-coil-cold",
    "damper-hot", "damper-call", "damper-proved", "damper-common",
    "pilot-operator", "main-operator", "operator", "operator-common",
    "generator-hot", "generator-common",
    "adapter-feed", "adapter-common", "adapter-pilot", "adapter-main", "adapter-valve-common",
    "electrode", "rod", "burner-metal",
    "thermostat-feed", "thermostat-heat", "thermostat-common", "thermostat-fan",
    "thermostat-cool", "thermostat-cool-feed",
    "coil", "contact-common", "contact-normally-open", "contact-normally-closed",
    "pump-feed", "pump-neutral", "inner",
    "probe-hot", "probe-common", "probe-out", "fan-contact", "limit-contact",
    "motor", "motor-end-switch", "end-switch", "call-side", "own-common",
    "side", "load-hot", "load-neutral", "tie",
}  # fmt: skip

FAMILIES = {
    "mains", "transformer", "ignition-control", "gas-valve", "valve-adapter", "burner",
    "standing-pilot", "pilot-generator", "vent-damper", "thermostat", "safety-switch",
    "operating-control", "hand-switch", "overcurrent", "relay", "zone-valve", "boiler-call",
    "boiler-control", "fan-limit-control", "low-water-probe", "load", "strip",
}  # fmt: skip

TRADE_NEEDS = {
    "mains", "transformer", "pilot-ignition-control", "direct-ignition-control",
    "gas-valve-3-wire", "gas-valve-2-wire", "millivolt-gas-valve", "valve-adapter",
    "pilot-burner", "direct-burner", "vent-damper", "thermostat", "high-limit", "rollout-switch",
    "spill-switch", "low-water-cutoff", "pressure-switch", "flow-switch", "air-switch",
    "door-switch", "service-switch", "fuse", "breaker", "fusible-link", "emergency-stop",
    "low-water-probe", "fan-limit-control", "relay", "contactor", "switching-relay", "zone-valve",
    "zone-valve-3-wire", "boiler-call", "operating-control", "circulator", "blower", "inducer",
    "lamp", "load", "terminal-strip", "plug",
}  # fmt: skip


def attributes() -> Iterator[tuple[str, str, AttributeSpec]]:
    for name in KINDS:
        yield from ((name, key, spec) for key, spec in kind(name).attributes.items())
    yield from (("lead", key, spec) for key, spec in lead_attributes().items())
    yield from (("splice", key, spec) for key, spec in splice_attributes().items())
    yield from (("cable", key, spec) for key, spec in cable_attributes().items())


def test_the_library_has_what_the_trade_needs() -> None:
    assert set(KINDS) >= TRADE_NEEDS


def test_a_kind_is_one_object_under_any_case() -> None:
    assert kind("High-Limit") is kind("high-limit")
    with pytest.raises(KeyError):
        kind("../leads")


@pytest.mark.parametrize("name", KINDS)
def test_words_are_those_of_the_vocabulary(name: str) -> None:
    found = kind(name)
    assert found.family in FAMILIES
    assert {terminal.role for terminal in found.terminals.values()} <= ROLES
    assert found.numbered is None or found.numbered.role in ROLES
    assert set().union(*(each.must_beside for each in found.terminals.values())) <= FAMILIES
    assert re.fullmatch(r"[A-Z]{1,4}", found.letters)


def test_no_word_of_the_vocabulary_is_idle() -> None:
    found = [kind(name) for name in KINDS]
    assert {each.family for each in found} == FAMILIES
    roles = {terminal.role for each in found for terminal in each.terminals.values()}
    assert roles | {each.numbered.role for each in found if each.numbered} == ROLES


@pytest.mark.parametrize("name", KINDS)
def test_what_is_inside_stands_between_terminals_it_has(name: str) -> None:
    found = kind(name)
    inside = (*found.links, *found.switches, *found.loads, *found.sources, *found.gaps)
    pairs = [each.between for each in inside] + [found.through or ()]
    pairs += [pair for source in found.sources for pair in source.fed_by]
    used = {terminal for pair in pairs for terminal in pair}
    used |= {bond.terminal for bond in found.bonds}
    assert used <= set(found.terminals)
    assert all(each.between[0] != each.between[1] for each in inside)


@pytest.mark.parametrize("name", KINDS)
def test_what_hangs_on_an_attribute_names_one_of_its_values(name: str) -> None:
    found = kind(name)
    conditions = [each.when for each in found.terminals.values()]
    conditions += [e.must for e in found.terminals.values() if not isinstance(e.must, bool)]
    inside = (*found.links, *found.switches, *found.loads, *found.sources, *found.gaps)
    conditions += [each.when for each in inside]
    for condition in conditions:
        for attribute, accepted in condition.items():
            assert set(accepted) <= set(found.attributes[attribute].choices)


@pytest.mark.parametrize("name", KINDS)
def test_numbers_come_from_attributes_that_give_them(name: str) -> None:
    found = kind(name)
    specs = found.attributes

    def check(attribute: float | str | None, *dimensions: str) -> None:
        if isinstance(attribute, str):
            assert set(specs[attribute].units) <= set(dimensions)
            assert specs[attribute].units
            assert specs[attribute].default

    for load in found.loads:
        assert 0 < load.power_factor <= 1
        check(load.volts, "volts")
        check(load.takes, "amps", "volt-amps", "watts", "ohms")
    for source in found.sources:
        assert 0 < source.share <= 1
        check(source.volts, "volts")
        check(source.rating, "volt-amps")
        check(source.regulation, "percent")
        check(source.fed_volts, "volts")
    for terminal in found.terminals.values():
        check(terminal.circuit_by, "volts")
        check(terminal.each, "volts")
        assert terminal.per is None or specs[terminal.per].whole
    for switch in found.switches:
        assert switch.coil is None or switch.coil in {load.name for load in found.loads}
        assert switch.per is None or specs[switch.per].whole
    for bond in found.bonds:
        assert set(specs[bond.strength].choices) == {"solid", "poor", "none"}
    assert not (found.numbered and found.numbered.limit) or specs[found.numbered.limit].whole


@pytest.mark.parametrize("name", KINDS)
def test_every_default_states_its_source_in_the_file(name: str) -> None:
    typed = tomllib.loads(part_kind_text(name)).get("attributes", {})
    without = [key for key, spec in typed.items() if "default" in spec and "source" not in spec]
    assert not without
    for spec in kind(name).attributes.values():
        known = spec.source == "common practice, no source" or "from memory" in spec.source
        assert known, spec.source


@pytest.mark.parametrize(("owner", "name", "spec"), list(attributes()))
def test_an_attribute_is_well_formed(owner: str, name: str, spec: AttributeSpec) -> None:
    assert spec.about
    assert set(spec.units) <= set(TAKES), owner
    ways = [bool(spec.units), bool(spec.choices), spec.whole, spec.text, spec.flag]
    assert sum(ways) == 1
    assert not spec.default_from or spec.default
    for word in (*spec.spellings.values(), *spec.found_wrong):
        assert spec.flag or choice_of(word, spec) == word
    if spec.default is not None:
        value = value_of(name, spec.default.split(), spec)
        assert not isinstance(value, Fault), value


@pytest.mark.parametrize("name", KINDS)
def test_a_bare_word_means_one_thing(name: str) -> None:
    """No two attributes share a choice that may stand alone, and no choice is a name."""
    found = kind(name)
    names = [key_of(word) for key, spec in found.attributes.items() for word in (key, *spec.also)]
    bare = [
        key_of(word)
        for spec in found.attributes.values()
        if not spec.keyed
        for word in (*spec.choices, *spec.spellings)
    ]
    assert len(names + bare) == len(set(names + bare))


@pytest.mark.parametrize("name", KINDS)
def test_every_switch_can_be_found_wrong(name: str) -> None:
    found = kind(name)
    wrong = [spec for spec in found.attributes.values() if spec.found_wrong]
    assert len(wrong) >= bool(found.switches)


@pytest.mark.parametrize("name", KINDS)
def test_every_file_is_valid_in_every_field(name: str) -> None:
    """Pydantic finds each value of the type it has to be, and reads the same kind from it."""
    checked = validated(Kind, part_kind_text(name), name)
    quick = kind_from(part_kind_text(name), name)
    assert [getattr(checked, field.name) for field in fields(Kind)] == [
        getattr(quick, field.name) for field in fields(Kind)
    ]


def test_the_file_on_leads_is_valid_in_every_field() -> None:
    text = shared_text("leads.toml")
    assert validated(Wiring, text, "leads.toml") == wiring_from(text, "leads.toml")


def test_a_wrong_type_is_found_by_validation() -> None:
    with pytest.raises(LibraryError, match=r"x\.toml: terminals\.A\.circuit"):
        validated(Kind, shaped(terminals='{ A = { role = "coil", circuit = "hot" } }'), "x.toml")


def test_a_check_need_not_wait_for_pydantic() -> None:
    code = (
        "import sys\n"
        "from wirecheck.parts.library import kind, kind_names, lead_attributes\n"
        "lead_attributes()\n"
        "assert [kind(name) for name in kind_names()]\n"
        "sys.exit('pydantic' in sys.modules)\n"
    )
    assert subprocess.run([sys.executable, "-c", code], cwd=ROOT, check=False).returncode == 0


def shaped(**changes: object) -> str:
    lines = {"name": '"x"', "title": '"x"', "family": '"x"', "letters": '"X"', "about": '"x"'}
    lines |= {key: str(value) for key, value in changes.items()}
    return "\n".join(f"{key} = {value}" for key, value in lines.items() if value != "None")


@pytest.mark.parametrize(
    ("text", "names"),
    [
        (shaped(title=None), "parts/x.toml: title"),
        (shaped(colour='"red"'), "parts/x.toml: colour"),
        (shaped(terminals='{ A = { circuit = "24V" } }'), "parts/x.toml: terminals.A.role"),
        (shaped(terminals="{ A = 1 }"), "parts/x.toml: terminals.A"),
        (shaped(links="1"), "parts/x.toml: links"),
        ("name = ", "parts/x.toml: "),
    ],
)
def test_a_fault_of_a_file_names_file_and_field(text: str, names: str) -> None:
    with pytest.raises(LibraryError, match=re.escape(names)):
        kind_from(text, "parts/x.toml")
