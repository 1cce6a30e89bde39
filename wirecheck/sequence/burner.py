"""Gas and flame at one burner: what flows, what burns, what the control sees of it."""

from __future__ import annotations

from wirecheck.model.diagram import Part
from wirecheck.sequence.answers import View
from wirecheck.sequence.control import Outputs
from wirecheck.sequence.flame import Electrodes
from wirecheck.sequence.plant import Plant

#: Seconds of gas and spark together until a pilot, or a burner with direct ignition, is lit; and
#: until a main burner is lit by its pilot (common practice, no source).
LIGHTS_S = 2.0
LIGHTS_FROM_PILOT_S = 1.0


class BurnerState:
    """The burner of one control.  `settle` follows gas and spark; `deadline_s` is the next change."""

    def __init__(  # noqa: PLR0913  # the parts of one burner
        self,
        control: Part,
        burner: Part | None,
        valve: Part | None,
        electrodes: Electrodes,
        plant: Plant,
        *,
        false_flame: bool,
    ) -> None:
        """Cold, no gas."""
        self.control = control
        self.burner = burner
        self.valve = valve
        self.plant = plant
        self.is_direct = not control.with_role("main-valve")
        self.spark_path = electrodes.spark()
        self.flame_path = electrodes.flame()
        self.false_flame = false_flame
        self.gas_supply = True
        self.pilot_flame = False
        self.main_flame = False
        self.unlit_main = False
        self.deadline_s: float | None = None

    def blow_out(self) -> None:
        """Every flame goes out once."""
        self.pilot_flame = self.main_flame = False

    @property
    def flame_signal(self) -> bool:
        """Whether the control sees a flame."""
        if self.false_flame:
            return True
        lit = self.main_flame if self.is_direct else self.pilot_flame
        return lit and self.flame_path.answer.counts(self.plant.view)

    def settle(self, now_s: float, outputs: Outputs) -> None:
        """Follow the gas and the spark at this moment."""
        pilot_gas, main_gas = self._gas()
        sparks = outputs.spark and self.spark_path.gap is not None
        if self.is_direct:
            self.main_flame = self._burns(self.main_flame, main_gas, sparks, now_s, LIGHTS_S)
            self.unlit_main = main_gas and not self.main_flame and not sparks
            return
        self.pilot_flame = self._burns(self.pilot_flame, pilot_gas, sparks, now_s, LIGHTS_S)
        if self.pilot_flame:
            waiting = self.main_flame or not main_gas
            if waiting:
                self.main_flame = self.main_flame and main_gas
            else:
                lit = self._burns(False, main_gas, True, now_s, LIGHTS_FROM_PILOT_S)  # noqa: FBT003
                self.main_flame = lit
        elif not main_gas:
            self.main_flame = False
        self.unlit_main = main_gas and not self.main_flame and not self.pilot_flame

    def _burns(self, burning: bool, gas: bool, lighter: bool, now_s: float, takes_s: float) -> bool:  # noqa: FBT001, PLR0913
        """Whether it burns now; a lighter needs some seconds of gas."""
        if not gas:
            self.deadline_s = None
            return False
        if burning:
            return True
        if not lighter:
            self.deadline_s = None
            return False
        if self.deadline_s is None:
            self.deadline_s = now_s + takes_s
        elif now_s >= self.deadline_s - 1e-9:
            self.deadline_s = None
            return True
        return False

    def _gas(self) -> tuple[bool, bool]:
        """Whether pilot gas and main gas flow, by the operators and the kind of valve."""
        if self.valve is None or not self.gas_supply:
            return False, False
        if not self.valve.with_role("main-operator"):
            opened = self.plant.acts(self.valve, "operator")
            return opened, opened
        pilot = self.plant.acts(self.valve, "pilot operator")
        main = self.plant.acts(self.valve, "main operator")
        single_seat = self.valve.values.get("seats") == "single-seat"
        return pilot, main and (pilot or single_seat)

    # ---- for the record --------------------------------------------------------------------

    def spark_shown(self, outputs: Outputs) -> tuple[str, str]:
        """State of the spark, and why it is missing where it should be."""
        if not outputs.spark:
            return "off", ""
        if self.spark_path.gap is None:
            return "none", self.spark_path.reason
        return "on", ""

    def signal_shown(self) -> tuple[str, str]:
        """The flame signal as a meter in series with the sense lead shows it."""
        if self.false_flame:
            return "false", "a flame signal with no flame"
        lit = self.main_flame if self.is_direct else self.pilot_flame
        if not lit:
            return "0 uA", ""
        answer = self.flame_path.answer
        if answer.counts(View.DANGER):
            luck = "by luck" if not answer.counts(View.OPERATION) else ""
            return f"{self.flame_path.microamps:.1f} uA", luck
        return f"{self.flame_path.microamps:.1f} uA", self.flame_path.reason
