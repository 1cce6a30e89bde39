"""Why something has no volts: what stands open on its way to the supply, or that there is no way.

Answers are for a technician: they name the contact, the fuse, the dead transformer, the missing
lead.  Only conductors are looked at; what volts there are is for the circuit to say.
"""

from __future__ import annotations

from collections import deque
from collections.abc import Collection, Iterator
from typing import NamedTuple, cast

from wirecheck.circuit.found_wrong import condition
from wirecheck.circuit.netlist import ElementKey, highest
from wirecheck.circuit.nets import Element, Nets
from wirecheck.circuit.steady import Steady
from wirecheck.model.diagram import Part, Terminal
from wirecheck.model.kind import SourceSpec
from wirecheck.sequence.answers import OPENS
from wirecheck.sequence.contacts import Contact
from wirecheck.sequence.plant import Plant

#: A secondary with less than this share of its rated volts counts as dead.
DEAD_SHARE = 0.2
#: So many contacts of a way are named.
MOST_NAMED = 3
#: Less than this is no volts.
NO_VOLTS = 1.0


class Moment(NamedTuple):
    """How the circuit stands: contacts, volts, what is burnt out, whether power is on."""

    time_s: float
    closed: tuple[bool, ...]
    steady: Steady
    gone: frozenset[ElementKey]
    power: bool


class _Way(NamedTuple):
    """A way between two nets with as few open contacts as can be."""

    opened: tuple[Contact, ...]


class Reasons:
    """Looks for reasons in one diagram."""

    def __init__(self, nets: Nets, plant: Plant) -> None:
        """Note which nets each contact lies between."""
        self._nets = nets
        self._plant = plant
        self._beside: dict[int, list[tuple[int, int]]] = {}
        for number, each in enumerate(plant.contacts):
            element = nets.elements_of[each.key.part][each.key.number]
            self._beside.setdefault(element.net_a, []).append((element.net_b, number))
            self._beside.setdefault(element.net_b, []).append((element.net_a, number))
        self._sources = {
            ElementKey(part, number): element
            for part, elements in nets.elements_of.items()
            for number, element in enumerate(elements)
            if element.type == "source"
        }

    def unfed(self, hot: Terminal, common: Terminal, moment: Moment) -> str:
        """Why there are no volts, or too few, between two terminals."""
        if not moment.power:
            return "the power is off"
        best: tuple[tuple[int, int], str] | None = None
        for key, source in self._sources.items():
            for a, b in ((source.a, source.b), (source.b, source.a)):
                found = self._by(key, source, (a, b), (hot, common), moment)
                if best is None or found[0] < best[0]:
                    best = found
        return best[1] if best else "no supply is drawn"

    def _by(
        self,
        key: ElementKey,
        source: Element,
        ends: tuple[Terminal, Terminal],
        wanted: tuple[Terminal, Terminal],
        moment: Moment,
    ) -> tuple[tuple[int, int], str]:
        """What is missing if the two ends of a source are to feed the two wanted terminals.

        The first number ranks how far off it is: the sides that no way reaches, then the open
        contacts.
        """
        show = self._nets.diagram.show
        ways = [
            self._way(self._nets.net(end), self._nets.net(want), moment.closed)
            for end, want in zip(ends, wanted, strict=True)
        ]
        missing = [
            f"no way from {show(end)} to {show(want)}"
            for end, want, way in zip(ends, wanted, ways, strict=True)
            if way is None
        ]
        opened = [contact for way in ways if way for contact in way.opened]
        rank = (2 * len(missing) + (source.part.family == "mains"), len(opened))
        if len(missing) == 2:
            return rank, f"nothing feeds {show(wanted[0])}"
        if missing:
            return rank, missing[0]
        if opened:
            return rank, self.opened(opened)
        return rank, self._dead(key, source, moment) or self._few_volts(wanted)

    def _few_volts(self, wanted: tuple[Terminal, Terminal]) -> str:
        show = self._nets.diagram.show
        return f"too few volts between {show(wanted[0])} and {show(wanted[1])}"

    def opened(self, contacts: Collection[Contact]) -> str:
        """Contacts that stand open, each with what keeps it so."""
        words = list(dict.fromkeys(self._open_words(each) for each in contacts))
        return " and ".join(words[:MOST_NAMED])

    def _open_words(self, contact: Contact) -> str:
        part, spec = contact.part, contact.spec
        if part.key in self._plant.callers:
            forced = self._plant.forced
            put = forced.get((part.key, spec.name)) or forced.get((part.key, ""))
            is_still = part.key not in self._plant.calling or contact.found or put
            return f"{part.name} does not call" if is_still else f"{part.name} has no power"
        if spec.moved_by == "overcurrent":
            return f"{part.name} is open"
        if spec.moved_by == "motor":
            return f"the end switch of {part.name} has not made"
        if spec.moved_by == "control":
            return f"{part.name} keeps {spec.name} open"
        return f"{contact.name} stands open"

    def _dead(self, key: ElementKey, source: Element, moment: Moment) -> str:
        """Why a source gives nothing; "" if it gives enough."""
        spec, name = cast(SourceSpec, source.spec), source.part.name
        if key in moment.gone:
            return f"{name} is burnt out"
        if condition(source) == "open":
            return f"{name} gives nothing: it was found bad"
        if not spec.fed_by or key not in moment.steady.source_volts:
            return ""
        volts = source.part.values.get(spec.volts) if isinstance(spec.volts, str) else spec.volts
        if moment.steady.source_volts[key] >= DEAD_SHARE * highest(volts):
            return ""
        first, second = (source.part.terminal(each) for each in spec.fed_by[0])
        return f"{name} gives no volts: {self._unfed_primary(first, second, moment)}"

    def _unfed_primary(self, first: Terminal, second: Terminal, moment: Moment) -> str:
        """Why a primary is dead, looking at the mains alone."""
        mains = {k: s for k, s in self._sources.items() if s.part.family == "mains"}
        found = [
            self._by(key, source, (source.a, source.b), ends, moment)
            for key, source in mains.items()
            for ends in ((first, second), (second, first))
        ]
        return min(found)[1] if found else "its load pulls them down"

    def returns_by_metal(self, control: Part, moment: Moment) -> bool:
        """Whether a control that works has its common from the metal, and not over conductors."""
        common = self._nets.net(control.with_role("control-common")[0])
        ways = [
            self._way(self._nets.net(end), common, moment.closed)
            for source in self._sources.values()
            if source.part.family != "mains"
            for end in (source.a, source.b)
        ]
        return bool(ways) and all(way is None or way.opened for way in ways)

    # ---- ways ------------------------------------------------------------------------------

    def _way(self, start: int, goal: int, closed: tuple[bool, ...]) -> _Way | None:
        """A way through contacts with the fewest open ones; None if there is none at all."""
        fewest: dict[int, int] = {start: 0}
        came: dict[int, tuple[int, int]] = {}
        waiting = deque([start])
        while waiting:
            net = waiting.popleft()
            for there, number in self._beside.get(net, ()):
                count = fewest[net] + (not closed[number])
                if count < fewest.get(there, 1_000_000):
                    fewest[there], came[there] = count, (net, number)
                    if closed[number]:
                        waiting.appendleft(there)
                    else:
                        waiting.append(there)
        if goal not in fewest:
            return None
        return _Way(tuple(self._open_on(start, goal, came, closed))[::-1])

    def _open_on(
        self, start: int, goal: int, came: dict[int, tuple[int, int]], closed: tuple[bool, ...]
    ) -> Iterator[Contact]:
        net = goal
        while net != start:
            net, number = came[net]
            if not closed[number]:
                yield self._plant.contacts[number]

    # ---- the damper ------------------------------------------------------------------------

    def not_passed_on(self, control: Part, damper: Part | None, moment: Moment) -> str:
        """Why a call that has reached the control does not reach its ignition."""
        proved, common = control.with_role("damper-proved"), control.with_role("control-common")
        if damper is not None:
            return self._damper_waits(damper, moment) or (
                f"{damper.name} is open, but {self.unfed(proved[0], common[0], moment)}"
            )
        if control.values.get("damper-plug") == "removed":
            return "the shorting plug is out and no damper passes the call on"
        return self.unfed(proved[0], common[0], moment)

    def _damper_waits(self, damper: Part, moment: Moment) -> str:
        """Why a damper does not pass the call on; "" if it does."""
        ends = damper.with_role("damper-call") + damper.with_role("damper-common")
        if damper.values.get("stuck") == "closed":
            return f"{damper.name} is stuck shut: its end switch never makes"
        if damper.values.get("end-switch") == "never-makes":
            return f"the end switch of {damper.name} does not make, however far it is open"
        if not self._plant.coils.acts(damper, "motor") and len(ends) == 2:
            return f"{damper.name} does not move: {self.unfed(ends[0], ends[1], moment)}"
        if not self._plant.travels[damper.key].is_open(moment.time_s):
            return f"waits here: the end switch of {damper.name} has not passed the call on"
        return ""

    # ---- the gas ---------------------------------------------------------------------------

    def unopened(self, feed: Terminal, common: Terminal, key: ElementKey, moment: Moment) -> str:
        """Why an operator does not open.

        Args:
            feed: the control's terminal that feeds it.
            common: the control's terminal that its other end returns to.
            key: of the operator.
            moment: how the circuit stands.
        """
        coils, show = self._plant.coils, self._nets.diagram.show
        element = coils.elements[key]
        found = condition(element)
        if found != "well":
            return f"its coil was found {found}"
        volts = moment.steady.load_volts.get(key, 0.0)
        if volts > NO_VOLTS:
            return f"only {volts:.1f} V, it surely opens from {OPENS * coils.rated_v[key]:.0f} V"
        opened: list[Contact] = []
        for ours, its in ((feed, element.a), (common, element.b)):
            way = self._way(self._nets.net(ours), self._nets.net(its), moment.closed)
            if way is None or any(each.key.part == feed.part for each in way.opened):
                return f"no lead joins {show(ours)} and {show(its)}"
            opened += way.opened
        return self.opened(opened) if opened else self.unfed(element.a, element.b, moment)
