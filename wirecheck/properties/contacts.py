"""The independent switches of a unit, and when each contact is closed by them.

A limit, a door, a water level, a thermostat, the blade of a damper: each stands as it will,
whatever the others do, and is a variable.  A control is in standby, in its trial or in its run:
two variables.  A relay follows its coil, a proving switch its fan, an end switch its motor; those
follow the states and are no variables.

Contacts in a plain row, with nothing landed between them, act as one: the row is closed if all of
them are.  They share a variable, so that a long chain of limits costs no more than one limit; what
is true with the row open is true with each of them open.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Hashable, Iterable, Iterator, Mapping
from typing import NamedTuple, cast

from wirecheck.circuit.netlist import ElementKey
from wirecheck.circuit.switching import Positions
from wirecheck.model.kind import SwitchSpec
from wirecheck.properties.unit import Unit, Whole
from wirecheck.sequence.contacts import Contact, contact

#: More variables than this are not gone through: 2^20 states, 128 KiB a table.
MOST_VARIABLES = 20


class Switch(NamedTuple):
    """One variable.

    Attributes:
        what: ``call`` (a thermostat or other caller), ``contact`` (any other contact), ``blade``
            (of a damper, fully open), ``first gas`` and ``main gas`` (what a control has on).
        part: key of the part.
        name: of the contact, where there are several; of a row the first.
    """

    what: str
    part: str
    name: str = ""


class Contacts:
    """The contacts of a unit.

    Attributes:
        positions: every position of its independent switches.
        each: the contacts, with what the text records of them.
        variable: of each contact that has one.
        held: variables that were not gone through, as the unit has too many: as in a running
            burner.
    """

    def __init__(  # noqa: PLR0913  # who asks about less says so by name
        self,
        whole: Whole,
        unit: Unit,
        *,
        fixed: Callable[[Switch], bool] | None = None,
        stuck: Mapping[ElementKey, str] | None = None,
        calls_together: bool = False,
        dampers_follow: bool = False,
    ) -> None:
        """Choose the variables.

        Args:
            whole: the diagram.
            unit: one of its units.
            fixed: variables that stand as in a running burner, for who asks only about that.
            stuck: contacts that are stuck ``open`` or ``closed``.
            calls_together: whether all that can call do so at once.
            dampers_follow: whether a damper opens only if its motor is fed; else its blade stands
                as it will, as one that sticks.
        """
        self._whole = whole
        self._unit = unit
        self._dampers_follow = dampers_follow
        self._caller = (
            next((key.part for key in unit.contacts if key.part in whole.callers), None)
            if calls_together
            else None
        )
        elements = {key: whole.element(key) for key in unit.contacts}
        self.each: dict[ElementKey, Contact] = {
            key: contact(key, element, lambda _now_s: True) for key, element in elements.items()
        }
        for key, position in (stuck or {}).items():
            if key in self.each:
                self.each[key] = self.each[key]._replace(found=position)
        self.variable: dict[ElementKey, Switch] = {
            key: variable for key in unit.contacts if (variable := self._variable(key)) is not None
        }
        self._make_rows()
        wanted = dict.fromkeys(self._wanted())
        free = [each for each in wanted if fixed is None or not fixed(each)]
        self.held = tuple(free[MOST_VARIABLES:])
        self.positions = Positions(free[:MOST_VARIABLES])
        self._known: set[Hashable] = set(self.positions.variables)

    def _wanted(self) -> Iterator[Switch]:
        """The variables, those that matter most first."""
        for control in self._unit.controls:
            yield Switch("first gas", control.key)
            if control.with_role("main-valve"):
                yield Switch("main gas", control.key)
        rows = Counter(self.variable.values())
        by_weight = sorted(
            rows, key=lambda each: (each.what != "blade", each.what != "call", -rows[each])
        )
        yield from by_weight

    def _variable(self, key: ElementKey) -> Switch | None:
        each, whole = self.each[key], self._whole
        spec, part = each.spec, each.part
        if spec.moved_by in ("control", "coil"):
            return None
        if spec.moved_by == "motor":
            return Switch("blade", part.key)
        if part.key in whole.callers or part.family == "thermostat":
            is_heat = part.family != "thermostat" or spec.name == "heat"
            caller = self._caller if self._caller and is_heat else part.key
            return Switch("call", caller, "" if is_heat else spec.name)
        return Switch("contact", part.key, spec.name)

    # ---- rows ------------------------------------------------------------------------------

    def _make_rows(self) -> None:
        uses = Counter(self.variable.values())
        lone = {
            key
            for key, variable in self.variable.items()
            if uses[variable] == 1
            and variable.what == "contact"
            and not self.each[key].found
            and not self._whole.moved_by(key)
        }
        for key in lone:
            element = self._whole.element(key)
            for net in (element.net_a, element.net_b):
                beside = [other for other in self._whole.at(net) if other != key]
                if len(beside) == 1 and beside[0] in lone and self._is_bare(net):
                    self._share(key, beside[0])

    def _is_bare(self, net: int) -> bool:
        return net not in self._whole.mains_nets and not self._whole.is_rail(net)

    def _share(self, one: ElementKey, other: ElementKey) -> None:
        kept, gone = sorted((self.variable[one], self.variable[other]))
        for key, variable in self.variable.items():
            if variable == gone:
                self.variable[key] = kept

    # ---- tables ----------------------------------------------------------------------------

    def on(self, variable: Switch) -> int:
        """The states in which a variable is as in a running burner, or a thermostat's fan is on.

        What is not gone through stands as in a running burner that nobody cools with.
        """
        if variable in self._known:
            return self.positions.on(variable)
        is_other_call = variable.what == "call" and variable.name
        return 0 if is_other_call else self.positions.always

    def closed(self, acts: Mapping[ElementKey, int]) -> dict[ElementKey, int]:
        """When each contact is closed.

        Args:
            acts: when each load acts.
        """
        return {key: self._closed(key, each, acts) for key, each in self.each.items()}

    def _closed(self, key: ElementKey, each: Contact, acts: Mapping[ElementKey, int]) -> int:
        positions = self.positions
        if each.found:
            return positions.always if each.found == "closed" else 0
        acted = self._acted(key, each, acts)
        if each.stuck_mover is not None:
            acted = positions.always if each.stuck_mover else 0
        spec = each.spec
        if spec.normal == spec.running:
            # Closed on the shelf and while running: open otherwise.  Open in both (a thermostat's
            # contacts for cooling and fan): closed otherwise.
            return acted if spec.normal == "closed" or self._is_other_call(each) else 0
        return acted if spec.running == "closed" else positions.but(acted)

    def _is_other_call(self, each: Contact) -> bool:
        return each.part.family == "thermostat" and each.spec.name != "heat"

    def _acted(self, key: ElementKey, each: Contact, acts: Mapping[ElementKey, int]) -> int:
        """When what moves a contact has it as in a running burner."""
        part, spec = each.part, each.spec
        if spec.moved_by == "control":
            first = self._whole.nets.elements_of[part.key][0]
            what = "first gas" if self._whole.element(key) is first else "main gas"
            return self.on(Switch(what, part.key))
        movers = self._whole.moved_by(key)
        moved = self._any(acts.get(mover, 0) for mover in movers)
        variable = self.variable.get(key)
        if variable is None:
            return moved
        by_itself = part.values.get("power") == "robbing" or (
            part.family == "vent-damper"
            and (not self._dampers_follow or part.values.get("action") == "spring-open")
        )
        if by_itself or not movers or part.values.get("hold-open") == "set":
            return self.on(variable)
        return self.on(variable) & moved

    def _any(self, tables: Iterable[int]) -> int:
        found = 0
        for table in tables:
            found |= table
        return found


def spec_of(whole: Whole, key: ElementKey) -> SwitchSpec:
    """What the part library says of a contact."""
    return cast(SwitchSpec, whole.element(key).spec)
