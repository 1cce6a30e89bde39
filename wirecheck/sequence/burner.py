"""Gas and flame at one burner: what flows, what burns, and the flame signal the control gets."""

from __future__ import annotations

from wirecheck.model.diagram import Part
from wirecheck.sequence.answers import View
from wirecheck.sequence.coils import Coils
from wirecheck.sequence.control import Outputs
from wirecheck.sequence.flame import FlamePath
from wirecheck.sequence.gas import Flow, GasTrain
from wirecheck.sequence.spark import SparkPath
from wirecheck.sequence.travel import INSTANT_S

#: Seconds of gas and spark together until a pilot, or a burner with direct ignition, is lit; and
#: until a main burner is lit by its pilot (common practice, no source).
LIGHTS_S = 2.0
LIGHTS_FROM_PILOT_S = 1.0

#: What is seen of a flame; where it is not dark, its gas flows.
BURNING, LIGHTING, UNLIT, DARK = "on", "lighting", "unlit gas", "off"

#: A flame that sends no signal at all.
UNSEEN = "no signal"


class Flame:
    """One flame: it burns while it has gas, once something has lit it."""

    def __init__(self, lights_s: float) -> None:
        """Dark; it takes so many seconds to light."""
        self._lights_s = lights_s
        self.burning = False
        self.gas = False
        self.lit_at_s: float | None = None

    def settle(self, now_s: float, *, gas: bool, lighter: bool) -> None:
        """Follow the gas and what lights it at this moment."""
        self.gas = gas
        self.burning = self.burning and gas
        if self.burning or not (gas and lighter):
            self.lit_at_s = None
        elif self.lit_at_s is None:
            self.lit_at_s = now_s + self._lights_s
        elif now_s >= self.lit_at_s - INSTANT_S:
            self.burning, self.lit_at_s = True, None

    @property
    def shown(self) -> str:
        """What is seen of it."""
        if self.burning:
            return BURNING
        if not self.gas:
            return DARK
        return UNLIT if self.lit_at_s is None else LIGHTING


class BurnerState:
    """The burner of one control.  `settle` follows gas and spark; `deadline_s` is the next change.

    Attributes:
        gas_supply: whether there is gas at the inlet of its valves.
    """

    def __init__(  # noqa: PLR0913 - the parts of one burner
        self,
        control: Part,
        gas_train: GasTrain,
        spark_path: SparkPath,
        flame_path: FlamePath,
        coils: Coils,
        *,
        false_flame: bool,
    ) -> None:
        """Cold, no gas."""
        self.is_direct = not control.with_role("main-valve")
        self.gas_train = gas_train
        self.spark_path = spark_path
        self.flame_path = flame_path
        self.gas_supply = True
        self.pilot = Flame(LIGHTS_S)
        self.main = Flame(LIGHTS_S if self.is_direct else LIGHTS_FROM_PILOT_S)
        self._coils = coils
        self._false_flame = false_flame

    def blow_out(self) -> None:
        """Every flame goes out once."""
        self.pilot.burning = self.main.burning = False

    @property
    def sensed(self) -> Flame:
        """The flame the rod stands in."""
        return self.main if self.is_direct else self.pilot

    @property
    def flame_signal(self) -> bool:
        """Whether the control sees a flame."""
        if self._false_flame:
            return True
        return self.sensed.burning and self.flame_path.answer.counts(self._coils.view)

    @property
    def deadline_s(self) -> float | None:
        """When the next flame will be lit."""
        due = [flame.lit_at_s for flame in (self.pilot, self.main) if flame.lit_at_s is not None]
        return min(due, default=None)

    def settle(self, now_s: float, outputs: Outputs) -> None:
        """Follow the gas and the spark at this moment."""
        flow = (
            self.gas_train.flow(self._coils) if self.gas_supply else Flow(pilot=False, main=False)
        )
        sparks = outputs.spark and self.spark_path.gap is not None
        if self.is_direct:
            # Its main burner has the electrode; where the pilot outlet leads is not its business.
            self.main.settle(now_s, gas=flow.main, lighter=sparks)
            self.pilot.settle(now_s, gas=flow.pilot and not flow.main, lighter=False)
            return
        self.pilot.settle(now_s, gas=flow.pilot, lighter=sparks)
        self.main.settle(now_s, gas=flow.main, lighter=self.pilot.burning)

    # ---- for the record --------------------------------------------------------------------

    def spark_shown(self, outputs: Outputs) -> tuple[str, str]:
        """State of the spark, and why it is missing where it should be."""
        if not outputs.spark:
            return "off", ""
        if self.spark_path.gap is None:
            return "none", self.spark_path.reason
        return "on", self.spark_path.reason

    def signal_shown(self) -> tuple[str, str]:
        """The flame signal as a meter in series with the sense lead shows it, and what of that."""
        if self._false_flame:
            return "false", "a flame signal with no flame"
        if not self.sensed.burning:
            return "0 uA", ""
        microamps = self.flame_path.microamps
        shown = f"{microamps:.1f} uA" if microamps else UNSEEN
        if self.flame_path.answer.counts(View.OPERATION):
            return shown, ""
        if not self.flame_path.answer.counts(View.DANGER):
            return shown, self.flame_path.reason
        luck = "by luck" if self._coils.view is View.DANGER else "by luck at most"
        return shown, f"the flame is seen {luck}: {self.flame_path.reason}"
