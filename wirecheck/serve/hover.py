"""What is told of the name under the pointer: the part, its net, its volts while the unit runs."""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.circuit.instrument import Voltmeter
from wirecheck.circuit.nets import Nets
from wirecheck.language.build import Built
from wirecheck.model.diagram import EARTH, Diagram, Part, Terminal, key_of
from wirecheck.model.kind import SourceSpec
from wirecheck.sequence.answers import View
from wirecheck.sequence.script import heat_call
from wirecheck.sequence.simulator import Simulation
from wirecheck.sequence.trace import Rest
from wirecheck.serve.mentions import Mention

#: Seconds from a call at which a unit runs, if it ever does.
RUNS_AFTER_S = 500.0
#: So many terminals of a net are named.
MOST_NAMED = 12
_UNSOLVED = frozenset({"ignition", "flame"})


def hover_text(built: Built, mention: Mention) -> str:
    """What a mention is, as Markdown; "" for a name that nothing bears."""
    return "\n\n".join(_told(built.diagram, mention))


def terminal_of(diagram: Diagram, mention: Mention) -> Terminal | None:
    """The terminal that a mention names, by the library's name or by its printed label."""
    part = diagram.parts.get(mention.key)
    if mention.key in diagram.splices:
        return Terminal(mention.key, "")
    if part is None or mention.terminal is None:
        return None
    typed = key_of(mention.terminal[0])
    labelled = {key_of(label.text): name for name, label in part.labels.items()}
    name = labelled.get(typed) or part.structure.lookup.get(typed)
    return part.terminal(name) if name else None


def _told(diagram: Diagram, mention: Mention) -> Iterator[str]:
    part = diagram.parts.get(mention.key)
    cable = diagram.cables.get(mention.key)
    if part is not None:
        yield f"**{_plain(part.name)}**: {part.kind.title or part.kind.name}"
        ratings = [each.span.text for each in part.given.values()]
        if ratings:
            yield _plain(", ".join(dict.fromkeys(ratings)))
        elif mention.terminal is None:
            yield _plain(part.kind.about)
    elif mention.key in diagram.splices:
        yield f"**{_plain(diagram.splices[mention.key].name)}**: splice"
    elif cable is not None:
        yield f"**{_plain(cable.name)}**: cable, {cable.conductors} of {cable.gauge_awg:g} AWG"
    terminal = terminal_of(diagram, mention)
    if terminal is not None:
        yield from _of_terminal(diagram, part, terminal)


def _of_terminal(diagram: Diagram, part: Part | None, terminal: Terminal) -> Iterator[str]:
    spec = diagram.spec(terminal)
    if part is not None and spec is not None and spec.about:
        yield _plain(f"{diagram.show(terminal)}: {spec.about}")
    nets = Nets(diagram)
    if terminal not in nets.net_of:
        yield "no lead lands here"
        return
    joined = [each for each in nets.members[nets.net(terminal)] if each != terminal]
    if joined:
        shown = [diagram.show(each) for each in joined[:MOST_NAMED]]
        more = f" and {len(joined) - MOST_NAMED} more" if len(joined) > MOST_NAMED else ""
        yield _plain(f"joined to {', '.join(shown)}{more}")
    volts = _volts_in_run(nets, terminal)
    if volts is not None:
        yield f"{volts:.1f} V against its common late in a call for heat, as computed"


def _volts_in_run(nets: Nets, terminal: Terminal) -> float | None:
    """None where no volts are computed, or nothing feeds the unit."""
    spec = nets.diagram.spec(terminal)
    if terminal == EARTH or (spec is not None and spec.circuit in _UNSOLVED):
        return None
    commons = [
        element.b
        for elements in nets.elements_of.values()
        for element in elements
        if isinstance(element.spec, SourceSpec) and not nets.joined(element.b, terminal)
    ]
    rest = _running(nets)
    if rest is None or not commons:
        return None if rest is None else 0.0
    meter = Voltmeter(nets)
    return max(meter.volts(rest.closed, terminal, common) for common in commons)


def _running(nets: Nets) -> Rest | None:
    rests = Simulation(nets, heat_call(), View.OPERATION).run().rests
    before = [rest for rest in rests if rest.time_s <= RUNS_AFTER_S]
    return before[-1] if before else None


def _plain(text: str) -> str:
    """A text of the diagram in Markdown: as it is, none of its characters a mark."""
    return "".join(f"\\{one}" if one in r"\`*_{}[]<>()#+!|~&" else one for one in text)
