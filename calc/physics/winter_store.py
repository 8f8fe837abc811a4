"""A layered store whose layers move with the water: slugs from top to bottom, each of one temperature.

Charging takes water from the bottom and lays it, hotter, on the top; a load takes from the top and lays it, cooler, at
the bottom. Layers that stand still would smear the boundary between hot and cold at every step; moving ones keep it as
sharp as it is. What does blend is said: water that enters blends with the slug at its port until that is a layer of the
store, water that lies the wrong way up turns over, and heat creeps down through water and shell (`conductivity`). One
layer is a stirred tank, exactly; ever more layers come to plug flow.
"""

import math
from itertools import pairwise

_WHOLE = 1 - 1e-9  # of a layer: what roundings leave of a whole one
_ALIKE = 0.02  # K; water that enters no further from the slug at its port joins it, however large that is


class LayeredStore:
    """Slugs from top to bottom: volumes in m³ and temperatures in K; `heat` is what they hold above 0 K, J."""

    def __init__(
        self, volume: float, height: float, heat_content: float, temperature: float, layers: int, conductivity: float
    ) -> None:
        """A store of one temperature.

        `volume` in m³, `height` in m, `heat_content` in J/(m³·K), `temperature` in K. The part of the store that moves
        at once is no more than 1/layers. `conductivity` in W/(m·K) is that of water and shell together.
        """
        self.volumes, self.temperatures = [volume], [temperature]
        self.capacity = volume * heat_content
        self.heat = self.capacity * temperature
        self.layer = volume / layers
        self._stirred = layers == 1
        self._heat_content = heat_content
        self._creeping = 2 * conductivity * (volume / height) ** 2 / heat_content

    @property
    def mean(self) -> float:
        """Mean temperature, K."""
        return self.heat / self.capacity

    def lift(self, volume: float, temperature: float) -> float:
        """Take `volume` (at most the lowest slug, or a layer) from below, lay it on the top; the heat gained, J."""
        if self._stirred:
            return self._stir(volume, temperature)
        volumes, temperatures = self.volumes, self.temperatures
        gained = volume * self._heat_content * (temperature - temperatures[-1])
        self.heat += gained
        volumes[-1] -= volume
        if volumes[-1] <= 1e-9 * self.layer and len(volumes) > 1:
            del volumes[-1], temperatures[-1]
        top = volumes[0]
        if top < self.layer * _WHOLE or -_ALIKE < temperatures[0] - temperature < _ALIKE:
            volumes[0] = top + volume
            temperatures[0] += (temperature - temperatures[0]) * volume / volumes[0]
        else:
            volumes.insert(0, volume)
            temperatures.insert(0, temperature)
        while len(volumes) > 1 and temperatures[0] < temperatures[1]:
            self._join(0)
        return gained

    def sink(self, volume: float, temperature: float) -> float:
        """Take `volume` (at most the highest slug, or a layer) from above, lay it at the bottom; the heat lost, J."""
        if self._stirred:
            return -self._stir(volume, temperature)
        volumes, temperatures = self.volumes, self.temperatures
        lost = volume * self._heat_content * (temperatures[0] - temperature)
        self.heat -= lost
        volumes[0] -= volume
        if volumes[0] <= 1e-9 * self.layer and len(volumes) > 1:
            del volumes[0], temperatures[0]
        lowest = volumes[-1]
        if lowest < self.layer * _WHOLE or -_ALIKE < temperatures[-1] - temperature < _ALIKE:
            volumes[-1] = lowest + volume
            temperatures[-1] += (temperature - temperatures[-1]) * volume / volumes[-1]
        else:
            volumes.append(volume)
            temperatures.append(temperature)
        while len(volumes) > 1 and temperatures[-2] < temperatures[-1]:
            self._join(len(volumes) - 2)
        return lost

    def stand(self, decay: float, surroundings: float) -> float:
        """Let the store stand until its excess over `surroundings` (K) has shrunk by the factor `decay`; heat lost, J.

        Each slug loses as its share of the volume: exact for any time, exp(-time * conductance / capacity).
        """
        lost = (self.heat - self.capacity * surroundings) * (1 - decay)
        base = surroundings * (1 - decay)
        self.temperatures = [base + decay * temperature for temperature in self.temperatures]
        self.heat -= lost
        return lost

    def conduct(self, time: float) -> None:
        """Let heat creep down from slug to slug for `time`, s: one implicit step, which no slug is too thin for."""
        if len(self.volumes) == 1:
            return
        self._split()
        volumes, temperatures = self.volumes, self.temperatures
        count = len(volumes)
        # Half of each slug's height lies between its middle and the boundary.
        links = [self._creeping * time / (upper + lower) for upper, lower in pairwise(volumes)] + [0.0]
        # Thomas's algorithm: down the stack, then up again.
        above = known = share = 0.0
        shares, all_known = [], []
        for volume, temperature, below in zip(volumes, temperatures, links, strict=True):
            pivot = volume + below + above * (1 - share)
            known = (volume * temperature + above * known) / pivot
            share, above = below / pivot, below
            shares.append(share)
            all_known.append(known)
        for at in range(count - 2, -1, -1):
            all_known[at] += shares[at] * all_known[at + 1]
        self.temperatures = all_known

    def counted_heat(self) -> float:
        """The heat of all slugs added up again, J: what `heat` must have come to."""
        pairs = zip(self.volumes, self.temperatures, strict=True)
        return self._heat_content * math.fsum(volume * temperature for volume, temperature in pairs)

    def _stir(self, volume: float, temperature: float) -> float:
        """Let `volume` flow in, and as much out of the stirred store; the heat gained, J."""
        near = -math.expm1(-volume / self.volumes[0])
        gained = self.capacity * (temperature - self.temperatures[0]) * near
        self.temperatures[0] += (temperature - self.temperatures[0]) * near
        self.heat += gained
        return gained

    def _split(self) -> None:
        """Cut slugs that are much larger than a layer, so that they can cool at one end and stay warm at the other."""
        volumes: list[float] = []
        temperatures: list[float] = []
        for volume, temperature in zip(self.volumes, self.temperatures, strict=True):
            parts = max(round(volume / self.layer), 1)
            volumes += [volume / parts] * parts
            temperatures += [temperature] * parts
        self.volumes, self.temperatures = volumes, temperatures

    def _join(self, upper: int) -> None:
        """Blend a slug with the one below it."""
        volumes, temperatures = self.volumes, self.temperatures
        volume, temperature = volumes.pop(upper + 1), temperatures.pop(upper + 1)
        both = volumes[upper] + volume
        temperatures[upper] += (temperature - temperatures[upper]) * volume / both
        volumes[upper] = both
