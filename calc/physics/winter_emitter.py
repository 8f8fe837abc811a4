"""What heats the rooms in the winter's run: an emitter's output by its power law, at its design flow."""

from typing import NamedTuple

_SPACING = 0.25  # K between the entries of the table of outputs
_REACH = 150.0  # K of supply over room, beyond which nothing is asked


class Curve(NamedTuple):
    """An emitter by its rating: output in W at a mean excess over what it heats (K), exponent, and flow in W/K.

    `flow` is the heat that its water gives up for each degree it cools. `fixed_supply` (K) is the hottest water the
    mixing valve lets through; None where the supply follows the weather, so that the emitter runs without a pause.
    """

    output: float
    mean_excess: float
    exponent: float
    flow: float
    fixed_supply: float | None


class Emitter:
    """An emitter that tells its output at a supply temperature, and its return at an output."""

    def __init__(self, curve: Curve) -> None:
        self._curve = curve
        self._outputs = self._table()
        self.follows_weather = curve.fixed_supply is None
        self._hottest = _REACH + 1000 if curve.fixed_supply is None else curve.fixed_supply

    def supply(self, store: float) -> float:
        """The hottest supply that a store of this temperature (K) gives, K."""
        return min(store, self._hottest)

    def full_output(self, excess: float) -> float:
        """Output in W with the pump running, from the supply's excess over what is heated, K."""
        if excess <= 0:
            return 0.0
        place = min(excess, _REACH) / _SPACING
        at = int(place)
        low = self._outputs[at]
        return low + (place - at) * (self._outputs[at + 1] - low)

    def fall(self, output: float) -> float:
        """How much the water cools while it gives off `output` (W) at design flow, K."""
        return output / self._curve.flow

    def return_excess(self, output: float) -> float:
        """Excess of the return over what is heated, K, when the supply is just as hot as `output` (W) needs."""
        curve = self._curve
        mean: float = curve.mean_excess * (output / curve.output) ** (1 / curve.exponent)
        return mean - output / (2 * curve.flow)

    def _table(self) -> list[float]:
        """Outputs for supplies ever hotter: the mean excess that goes with each by Newton from the last one."""
        curve = self._curve
        mean, outputs = curve.mean_excess, [0.0]
        for entry in range(1, int(_REACH / _SPACING) + 2):
            excess = entry * _SPACING
            if entry == 1:
                mean = excess / 2
            for _ in range(50):
                output = curve.output * (mean / curve.mean_excess) ** curve.exponent
                slope = 1 + curve.exponent * output / (2 * curve.flow * mean)
                step = (mean + output / (2 * curve.flow) - excess) / slope
                mean = max(mean - step, mean / 4)
                if abs(step) < 1e-10:
                    break
            outputs.append(curve.output * (mean / curve.mean_excess) ** curve.exponent)
        return outputs
