"""A layered store whose layers move with the water: slugs from top to bottom, each of one temperature.

Charging takes water from the bottom and lays it, hotter, on the top; a load takes from the top and lays it, cooler, at
the bottom. Layers that stand still would smear the boundary between hot and cold at every step; moving ones keep it as
sharp as it is. What does blend is said: water that enters blends with the slug at its port until that is a layer of the
store, water that lies the wrong way up turns over, and heat creeps down through water and shell (`conductivity`). One
layer is a stirred tank, exactly; ever more layers come to plug flow.

Standing cools all slugs by one straight line, temperature = base + scale · mark: the line is kept and the slugs keep
their marks, so an hour of standing costs the same however many slugs there are.
"""

import math

_WHOLE = 1 - 1e-9  # of a layer: what roundings leave of a whole one
_GONE = 1e-9  # of a layer: what roundings leave of none
_ALIKE = 0.02  # K; water that enters no further from the slug at its port joins it, however large that is
_TINY = 1e-3  # J, not worth another slug: it is lost, and the balance of a year must not notice
_FAINT = 0.5  # a scale at which marks are written anew, long before their digits would be lost
_UNCUT = 1.5  # layers: a slug that is larger is cut into layers before heat creeps


class LayeredStore:
    """Slugs from top to bottom: volumes in m³ and temperatures in K; `heat` is what they hold above 0 K, J."""

    def __init__(
        self, volume: float, height: float, heat_content: float, temperature: float, layers: int, conductivity: float
    ) -> None:
        """A store of one temperature.

        `volume` in m³, `height` in m, `heat_content` in J/(m³·K), `temperature` in K. The part of the store that moves
        at once is no more than 1/layers. `conductivity` in W/(m·K) is that of water and shell together.
        """
        self.volumes, self._marks = [volume], [temperature]
        self._base, self._scale = 0.0, 1.0
        self.capacity = volume * heat_content
        self.heat = self.capacity * temperature
        self.layer = volume / layers
        self._stirred = layers == 1
        self._heat_content = heat_content
        self._creeping = 2 * conductivity * (volume / height) ** 2 / heat_content

    @property
    def temperatures(self) -> list[float]:
        """Of each slug from top to bottom, K."""
        return [self._base + self._scale * mark for mark in self._marks]

    @property
    def top(self) -> float:
        """Temperature of the highest slug, K."""
        return self._base + self._scale * self._marks[0]

    @property
    def mean(self) -> float:
        """Mean temperature, K."""
        return self.heat / self.capacity

    def charge(self, heat: float, rise: float, least_return: float, full: float) -> tuple[float, float]:
        """Give the water `heat` (J): the lowest slug goes through the fire and onto the top, slug after slug.

        A slug leaves `rise` (K) warmer than it came, or than `least_return` (K) where that is more. Nothing goes in
        once the lowest water has `full` (K). The heat left over, J, and the hottest water that went in, K.
        """
        left, hottest = heat, 0.0
        while left > _TINY:
            lowest = self._base + self._scale * self._marks[-1]
            if lowest >= full:
                return left, hottest
            outlet = (lowest if lowest > least_return else least_return) + rise
            if outlet > hottest:
                hottest = outlet
            left -= self.lift(left / (self._heat_content * (outlet - lowest)), outlet)
        return 0.0, hottest

    def draw(self, heat: float, back: float, least: float) -> float:
        """Draw up to `heat` (J) while the top has `least` (K) or more; water of `back` (K) comes in. Heat drawn, J."""
        left = heat
        while left > _TINY:
            top = self._base + self._scale * self._marks[0]
            if top < least:
                break
            left -= self.sink(left / (self._heat_content * (top - back)), back)
        return heat - left

    def lift(self, volume: float, temperature: float) -> float:
        """Take up to `volume`, but at most the lowest slug or a layer, from below, lay it on top; heat gained, J."""
        if self._stirred:
            return self._stir(volume, temperature)
        volumes, marks, layer = self.volumes, self._marks, self.layer
        volume = min(volume, volumes[-1], layer)
        mark = (temperature - self._base) / self._scale
        gained = volume * self._heat_content * self._scale * (mark - marks[-1])
        self.heat += gained
        volumes[-1] -= volume
        if volumes[-1] <= _GONE * layer:
            del volumes[-1], marks[-1]
        if volumes and (volumes[0] < layer * _WHOLE or mark < marks[0] + _ALIKE):
            whole = volumes[0] = volumes[0] + volume
            marks[0] += (mark - marks[0]) * volume / whole
            while len(marks) > 1 and marks[0] < marks[1]:
                self._join(0)
        else:
            volumes.insert(0, volume)
            marks.insert(0, mark)
        return gained

    def sink(self, volume: float, temperature: float) -> float:
        """Take up to `volume`, but at most the highest slug or a layer, from above, lay it below; heat lost, J."""
        if self._stirred:
            return -self._stir(volume, temperature)
        volumes, marks, layer = self.volumes, self._marks, self.layer
        volume = min(volume, volumes[0], layer)
        mark = (temperature - self._base) / self._scale
        lost = volume * self._heat_content * self._scale * (marks[0] - mark)
        self.heat -= lost
        volumes[0] -= volume
        if volumes[0] <= _GONE * layer:
            del volumes[0], marks[0]
        if volumes and (volumes[-1] < layer * _WHOLE or mark > marks[-1] - _ALIKE):
            whole = volumes[-1] = volumes[-1] + volume
            marks[-1] += (mark - marks[-1]) * volume / whole
            while len(marks) > 1 and marks[-2] < marks[-1]:
                self._join(len(marks) - 2)
        else:
            volumes.append(volume)
            marks.append(mark)
        return lost

    def stand(self, decay: float, surroundings: float) -> float:
        """Let the store stand until its excess over `surroundings` (K) has shrunk by the factor `decay`; heat lost, J.

        Each slug loses as its share of the volume: exact for any time, exp(-time * conductance / capacity).
        """
        lost = (self.heat - self.capacity * surroundings) * (1 - decay)
        self.heat -= lost
        self._base = surroundings + (self._base - surroundings) * decay
        self._scale *= decay
        if self._scale < _FAINT:
            self._marks = self.temperatures
            self._base, self._scale = 0.0, 1.0
        return lost

    def conduct(self, time: float) -> None:
        """Let heat creep down from slug to slug for `time`, s: one implicit step, which no slug is too thin for."""
        if self._stirred:
            return
        if max(self.volumes) > _UNCUT * self.layer:
            self._cut()
        creeping, marks = self._creeping * time, self._marks
        # Thomas's algorithm: down the stack, then up again. Half of each slug's height lies between its middle and the
        # boundary; below the lowest one nothing is linked.
        shares, knowns = [], []
        above = known = share = 0.0
        for volume, mark, following in zip(self.volumes, marks, [*self.volumes[1:], math.inf], strict=True):
            below = creeping / (volume + following)
            pivot = volume + below + above * (1 - share)
            known = (volume * mark + above * known) / pivot
            share, above = below / pivot, below
            shares.append(share)
            knowns.append(known)
        lower = 0.0
        for place in range(len(marks) - 1, -1, -1):
            marks[place] = lower = knowns[place] + shares[place] * lower

    def counted_heat(self) -> float:
        """The heat of all slugs added up again, J: what `heat` must have come to."""
        pairs = zip(self.volumes, self.temperatures, strict=True)
        return self._heat_content * math.fsum(volume * temperature for volume, temperature in pairs)

    def _stir(self, volume: float, temperature: float) -> float:
        """Let `volume`, at most all, flow in and as much out of the stirred store; the heat gained, J."""
        near = -math.expm1(-min(volume / self.volumes[0], 1.0))
        short = temperature - self.top
        gained = self.capacity * short * near
        self._marks[0] += short * near / self._scale
        self.heat += gained
        return gained

    def _cut(self) -> None:
        """Cut slugs that are much larger than a layer, so that they can cool at one end and stay warm at the other."""
        volumes: list[float] = []
        marks: list[float] = []
        for volume, mark in zip(self.volumes, self._marks, strict=True):
            parts = max(round(volume / self.layer), 1)
            volumes += [volume / parts] * parts
            marks += [mark] * parts
        self.volumes, self._marks = volumes, marks

    def _join(self, upper: int) -> None:
        """Blend a slug with the one below it."""
        volumes, marks = self.volumes, self._marks
        volume, mark = volumes.pop(upper + 1), marks.pop(upper + 1)
        whole = volumes[upper] = volumes[upper] + volume
        marks[upper] += (mark - marks[upper]) * volume / whole
