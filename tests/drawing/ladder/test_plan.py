"""Every branch of a diagram has its place, and exactly one."""

from collections import Counter

from hypothesis import given, settings

from tests.drawing.ladder.networks import HEATER, any_wiring, diagram
from wirecheck.circuit.nets import Nets
from wirecheck.drawing.ladder.branches import branches
from wirecheck.drawing.ladder.plan import Plan, plan, real_net
from wirecheck.drawing.ladder.series_parallel import Leaf, Series, Tree, leaves


def _plan(text: str) -> Plan:
    return plan(Nets(diagram(text)))


def _told(tree: Tree | None) -> str:
    """Write a tree as a formula: dots in series, bars in parallel."""
    if tree is None:
        return ""
    if isinstance(tree, Leaf):
        branch = tree.branch
        return f"{branch.part.name} {branch.name}".strip()
    told = [_told(item) for item in tree.items]
    return ", ".join(told) if isinstance(tree, Series) else f"({' | '.join(told)})"


def test_a_right_heater_reads_as_a_technician_would_read_it() -> None:
    drawn = _plan(HEATER)
    line, control = drawn.sections
    assert _told(line.tree) == "xfmr primary"
    assert _told(control.tree) == (
        "limit, stat heat, (box electronics | box K1, "
        "(valve pilot operator | box K2, valve main operator))"
    )
    (signal,) = drawn.ignition
    assert _told(signal.tree) == (
        "(box spark coil, pilot spark | box flame amplifier, pilot flame)"
    )
    assert drawn.links == ()
    assert [branch.name for branch in drawn.spare] == ["cool", "fan"]


def test_the_way_back_of_the_flame_signal_is_one_net_split_in_two() -> None:
    (signal,) = _plan(HEATER).ignition
    assert signal.left != signal.right
    assert real_net(signal.left) == real_net(signal.right)


def test_without_the_ground_lead_the_ways_end_on_two_nets() -> None:
    (signal,) = _plan(HEATER.replace("wire box.GND to pilot.HOOD", "")).ignition
    assert real_net(signal.left) != real_net(signal.right)
    assert _told(signal.tree).count("pilot") == 2


def test_one_rod_has_coil_and_amplifier_in_a_row() -> None:
    one_rod = HEATER.replace("two-rod", "one-rod").replace("wire box.SENSE to pilot.ROD", "")
    (signal,) = _plan(one_rod).ignition
    assert _told(signal.tree) == "box flame amplifier, box spark coil, (pilot spark | pilot flame)"


def test_a_control_cut_off_from_its_call_is_still_drawn_whole() -> None:
    drawn = _plan(HEATER.replace("to limit to stat to box.TH", "to limit to stat"))
    assert [_told(link.tree) for link in drawn.links] == [
        "limit, stat heat",
        "(box electronics | box K1, (valve pilot operator | box K2, valve main operator))",
    ]


def test_a_bypassed_limit_is_shown_with_both_ends_on_one_wire() -> None:
    drawn = _plan(HEATER + "jumper limit.1 to limit.2\n")
    (link,) = drawn.links
    assert link.left == link.right
    assert _told(link.tree) == "limit"


def test_a_load_between_two_legs_has_rails_of_its_own() -> None:
    drawn = _plan(
        """
        part line is mains: 240 V, split-phase
        part heat is load: 240 V, 10 A
        part lamp is lamp
        wire line.L1 to heat to line.L2
        wire line.L1 to lamp to line.N
        """
    )
    assert [_told(section.tree) for section in drawn.sections] == ["lamp", "heat"]


def test_two_transformers_in_parallel_feed_one_pair_of_rails() -> None:
    drawn = _plan(
        """
        part a is transformer
        part b is transformer
        part k is relay
        wire a.R to k.A
        wire k.B to a.C
        wire a.R to b.C
        wire a.C to b.R
        """
    )
    (section,) = drawn.sections
    assert [source.part.name for source in section.sources] == ["a", "b"]


def test_metal_of_the_appliance_is_a_way_where_nothing_else_is() -> None:
    """The control's common off, its burner ground on, the burner screwed to earthed metal."""
    earthed = HEATER.replace("wire xfmr.C  to box.COM", "").replace(
        "pilot-burner: two-rod", "pilot-burner: two-rod, bond solid"
    )
    _, control = _plan(earthed).sections
    assert _told(control.tree).endswith("pilot solid bond")


@settings(max_examples=60, deadline=None)
@given(any_wiring())
def test_nothing_is_lost_and_nothing_drawn_twice(text: str) -> None:
    nets = Nets(diagram(text))
    drawn = plan(nets)
    trees = [section.tree for section in drawn.sections]
    trees += [signal.tree for signal in drawn.ignition]
    trees += [link.tree for link in drawn.links]
    shown = Counter(
        leaf.branch.number for tree in trees if tree is not None for leaf in leaves(tree)
    )
    shown.update(branch.number for branch in drawn.spare)
    assert max(shown.values(), default=1) == 1
    fed = {
        terminal for section in drawn.sections for s in section.sources for terminal in (s.a, s.b)
    }
    for branch in branches(nets):
        is_fed = branch.type == "source" and {branch.a, branch.b} <= fed
        assert branch.number in shown or is_fed or branch.type in {"bond", "source"}
        if branch.type == "source" and branch.net_a == branch.net_b:
            assert branch.number in shown


BOILER = """
part l is mains: 240 V, two-legs
part bc is boiler-control
part x is transformer: primary 240 V
part r is relay
part b is blower: 240 V
wire l.L1 to bc.L1
wire l.L2 to bc.L2
wire l.L1 to x.L1
wire l.L2 to x.N
wire x.R to r to x.C
wire l.L1 to r.COM..NO to b to l.L2
"""


def test_a_contact_whose_far_end_is_not_traced_is_drawn_up_to_there() -> None:
    drawn = _plan(f"{BOILER}wire bc.B1 to l.L1\nwire bc.B2 to unknown\n")
    assert not {"bc burner", "bc limit"} & {f"{b.part.name} {b.name}" for b in drawn.spare}
    assert "bc burner, bc limit" in [_told(link.tree) for link in drawn.links]


def test_a_way_through_a_device_wired_at_one_end_is_spare_as_a_whole() -> None:
    drawn = _plan(f"{BOILER}wire bc.B1 to l.L1\n")
    assert {"bc burner", "bc limit"} <= {f"{b.part.name} {b.name}" for b in drawn.spare}


def test_two_hot_legs_come_before_the_control_circuit() -> None:
    drawn = _plan(BOILER)
    families = [section.sources[0].part.family for section in drawn.sections]
    assert families == sorted(families, key=lambda family: family != "mains")
    assert families[0] == "mains"
