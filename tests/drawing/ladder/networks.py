"""Networks and diagrams to lay out: from a shorthand, and at random."""

from collections.abc import Iterator
from functools import cache
from itertools import count

from hypothesis import strategies as st

from wirecheck.check.engine import Checked
from wirecheck.circuit.nets import Nets
from wirecheck.drawing.ladder.branches import Branch, branches
from wirecheck.language.load import load_text
from wirecheck.model.diagram import Diagram
from wirecheck.parts.library import kind_names

HEATER = """
diagram "Greenhouse heater"
part line   is mains: 120 V
part xfmr   is transformer: primary 120 V, secondary 24 V, rating 40 VA
part limit  is high-limit
part stat   is thermostat
part box    is pilot-ignition-control: pilot two-rod
part valve  is gas-valve-3-wire
part pilot  is pilot-burner: two-rod
wire line.L1 to xfmr.L1
wire line.N  to xfmr.N
wire xfmr.R  to limit to stat to box.TH
wire xfmr.C  to box.COM
wire xfmr.C  to earth
plug box to valve: PV, MV, VC to C
wire box.SPARK to pilot.SPARK
wire box.SENSE to pilot.ROD
wire box.GND to pilot.HOOD
"""

Shorthand = str | tuple["Shorthand", ...]
"""A name is a contact; ("+", …) is in series, ("|", …) in parallel."""


def diagram(text: str) -> Diagram:
    """Read a text that has no problems."""
    built = load_text(text, "test.wiring")
    assert not built.problems, built.problems
    return built.diagram


def unmarked(text: str) -> Checked:
    """Return a diagram as if nothing had been found in it."""
    wiring = diagram(text)
    return Checked(wiring, Nets(wiring), (), (), ())


@cache
def _contact() -> Branch:
    return branches(Nets(diagram("part s is high-limit")))[0]


def branch(number: int, net_a: int, net_b: int) -> Branch:
    """Return a contact between two nets."""
    return _contact()._replace(number=number, net_a=net_a, net_b=net_b)


def network(shorthand: Shorthand, start: int = 0, end: int = 1) -> list[Branch]:
    """Return the contacts of a series-parallel network between two nets."""
    numbers, nets = count(), count(end + 1)

    def between(item: Shorthand, a: int, b: int) -> Iterator[Branch]:
        if isinstance(item, str):
            yield branch(next(numbers), a, b)
        elif item[0] == "|":
            for part in item[1:]:
                yield from between(part, a, b)
        else:
            inner = [next(nets) for _ in item[2:]]
            for part, left, right in zip(item[1:], [a, *inner], [*inner, b], strict=True):
                yield from between(part, left, right)

    return list(between(shorthand, start, end))


def shorthands() -> st.SearchStrategy[Shorthand]:
    """Make series-parallel networks at random."""
    return st.recursive(
        st.just("s"),
        lambda inner: st.builds(
            lambda kind, items: (kind, *items),
            st.sampled_from(["+", "|"]),
            st.lists(inner, min_size=2, max_size=4),
        ),
        max_leaves=25,
    )


@st.composite
def any_wiring(draw: st.DrawFn) -> str:
    """Make diagrams of any parts with leads from anywhere to anywhere, most of them nonsense."""
    kinds = draw(st.lists(st.sampled_from(kind_names()), max_size=12))
    parts = [f"part p{number} is {kind}" for number, kind in enumerate(kinds)]
    drawn = diagram("\n".join(parts))
    ends = [
        f'{part.name}."{name}"'
        for part in drawn.parts.values()
        for name, spec in part.structure.terminals.items()
        if not spec.inner
    ]
    end = st.sampled_from([*ends, "earth", "open", "unknown"])
    leads = draw(st.lists(st.tuples(end, end), max_size=25))
    return "\n".join([*parts, *(f"wire {a} to {b}" for a, b in leads if a != b)])
