"""What heats the rooms in the winter's run: an emitter's output by its power law, at its design flow."""

from typing import NamedTuple

_CLOSE = 1e-9  # K of mean excess: a last step so small, and what is left is far below it


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
        self._mean = curve.mean_excess  # K, of the last answer: the next one begins from it
        self.follows_weather = curve.fixed_supply is None
        self._hottest = 1e4 if curve.fixed_supply is None else curve.fixed_supply

    def supply(self, store: float) -> float:
        """The hottest supply that a store of this temperature (K) gives, K."""
        return min(store, self._hottest)

    def full_output(self, excess: float) -> float:
        """Output in W with the pump running, from the supply's excess over what is heated, K.

        The water cools by output/flow, so its mean lies half of that below the supply: Newton from the last one.
        """
        if excess <= 0:
            return 0.0
        rated, rated_excess, exponent, flow, _ = self._curve
        mean = self._mean
        for _ in range(50):
            half_fall = rated * (mean / rated_excess) ** exponent / (2 * flow)
            step = (mean + half_fall - excess) / (1 + exponent * half_fall / mean)
            mean = max(mean - step, mean / 4)
            if abs(step) < _CLOSE:
                break
        self._mean = mean
        return 2 * flow * (excess - mean)

    def fall(self, output: float) -> float:
        """How much the water cools while it gives off `output` (W) at design flow, K."""
        return output / self._curve.flow

    def return_excess(self, output: float) -> float:
        """Excess of the return over what is heated, K, when the supply is just as hot as `output` (W) needs."""
        curve = self._curve
        mean: float = curve.mean_excess * (output / curve.output) ** (1 / curve.exponent)
        return mean - output / (2 * curve.flow)
