"""A diagram written anew says the same and nothing more."""

from pathlib import Path

import pytest

from wirecheck import load, load_text
from wirecheck.circuit.nets import Nets
from wirecheck.language.lead_by_lead import lead_by_lead, lead_statement

EXAMPLES = sorted((Path(__file__).parents[2] / "examples").glob("*.wiring"))


@pytest.mark.parametrize("path", EXAMPLES, ids=lambda path: path.stem)
def test_every_example_written_anew_joins_the_same_terminals(path: Path) -> None:
    diagram = load(path).diagram
    again = load_text(lead_by_lead(diagram, diagram.leads, diagram.title))
    assert not again.problems
    assert Nets(again.diagram).members == Nets(diagram).members
    assert again.diagram.title == diagram.title
    assert len({lead.run for lead in again.diagram.leads}) == len(diagram.leads)
    for lead, same in zip(diagram.leads, again.diagram.leads, strict=True):
        kept = {n: a.value for n, a in lead.given.items() if n != "length"}
        assert {n: a.value for n, a in same.given.items() if n != "length"} == kept


def test_comments_notes_claims_and_variants_are_left_out() -> None:
    text = """\
diagram "Heater"  # ours
note "seen in May"
part x is transformer: 40 VA,
    # the one by the door
    primary 120 V
part s is thermostat
variant spare
part t is thermostat
wire x.R to t
end
wire x.R to s
expect 24 V across x.R and x.C
"""
    diagram = load_text(text).diagram
    again = lead_by_lead(diagram, diagram.leads, "Heater")
    assert again == (
        'diagram "Heater"\n\n'
        "part x is transformer: 40 VA, primary 120 V\npart s is thermostat\n\n"
        "wire x.R to s.R\n"
    )


def test_a_blank_has_no_splice_and_no_cable() -> None:
    text = "part x is transformer\nsplice n: wire-nut\ncable w: 18/2\nwire x.R to n: in w\n"
    diagram = load_text(text).diagram
    assert lead_by_lead(diagram, (), "Blank", bare=True) == (
        'diagram "Blank"\n\npart x is transformer\n'
    )


def test_the_share_of_a_run_s_length_is_left_out_and_a_lead_s_own_stays() -> None:
    text = (
        "part x is transformer\npart s is thermostat\npart b is pilot-ignition-control\n"
        "wire x.R to s to b.TH: red, 20 ft\njumper x.C to b.COM: 2 ft\n"
    )
    diagram = load_text(text).diagram
    assert [lead_statement(diagram, lead) for lead in diagram.leads] == [
        "wire x.R to s.R: red\n",
        "wire s.W to b.TH: red\n",
        "jumper x.C to b.COM: 2 ft\n",
    ]
