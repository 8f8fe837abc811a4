"""Thirty-one places and their winters: a sample, not a map. For each: where it lies, how cold it gets, how long it heats.

Everything was worked out from one hourly typical year of each place (365 days; where each comes from stands in its
`source`, and the data may be passed on): degree-days are the sum over the days of what the day's mean lacks to the base,
`heating_days` are the days whose mean is below 65 °F, and `cold` is the dry bulb that 99 % of the hours exceed.

A typical year leaves cold snaps out. Beside 23 published design temperatures its 99 % value was up to 4.6 K too warm, and
less 3 K it was cold enough at 20 of them; so the design temperature is that value less 3 K, and provisional.
"""

from typing import NamedTuple

COLDER = 3.0  # K taken off the typical year's 99 % value for a provisional design temperature
COLDEST = 5.0  # K that would have covered all of the 23 places compared
BASES = (65, 60, 55, 50)  # °F


class Place(NamedTuple):
    """A place with a typical year.

    Degrees north and east, altitude in m, degree-days in °F·day for each base in °F, days with a mean below 65 °F, the
    temperature in °C that 99 % of the hours exceed, and the key of the source.
    """

    key: str
    name: str
    region: str
    latitude: float
    longitude: float
    altitude: float
    degree_days: dict[int, float]
    heating_days: int
    cold: float
    source: str

    @property
    def design_outdoor(self) -> float:
        """The provisional outdoor design temperature, °C."""
        return self.cold - COLDER

    @property
    def mean_while_heating(self) -> float:
        """Mean outdoor temperature of the days that need heat, °F: the base less the degree-days of one such day."""
        return BASES[0] - self.degree_days[BASES[0]] / self.heating_days


def _place(
    key: str,
    name: str,
    region: str,
    at: tuple[float, float, float],
    degree_days: tuple[float, ...],
    heating_days: int,
    cold: float,
    source: str,
) -> Place:
    return Place(key, name, region, *at, dict(zip(BASES, degree_days, strict=True)), heating_days, cold, source)


_ROWS = (
    _place("houlton-me", "Houlton, Maine", "New England", (46.12, -67.8, 150), (9011, 7517, 6267, 5162), 325, -23.9, "tmy3"),
    _place("burlington-vt", "Burlington, Vermont", "New England", (44.47, -73.15, 101), (7299, 5945, 4749, 3714), 292, -18.3, "tmy3"),
    _place("boston-ma", "Boston, Massachusetts (coast)", "New England", (42.37, -71.02, 6), (5775, 4520, 3430, 2479), 267, -11.1, "tmy3"),
    _place("buffalo-ny", "Buffalo, New York", "Upstate New York", (42.93, -78.73, 215), (6579, 5249, 4100, 3104), 283, -12.8, "tmy3"),
    _place("pittsburgh-pa", "Pittsburgh (Allegheny County), Pennsylvania", "Appalachians", (40.35, -79.92, 380), (5259, 4035, 3013, 2143), 266, -8.9, "tmy3"),
    _place("sterling-va", "Sterling (Dulles), Virginia", "Blue Ridge foothills", (38.98, -77.47, 82), (4806, 3697, 2746, 1922), 239, -11.1, "tmy3"),
    _place("louisville-ky", "Louisville, Kentucky", "Ohio Valley", (38.18, -85.73, 147), (4527, 3493, 2609, 1862), 217, -10, "tmy3"),
    _place("cleveland-oh", "Cleveland, Ohio", "Great Lakes", (41.4, -81.85, 235), (6060, 4874, 3833, 2904), 253, -12.8, "tmy3"),
    _place("milwaukee-wi", "Milwaukee, Wisconsin", "Upper Midwest", (42.95, -87.9, 205), (7281, 5966, 4784, 3734), 280, -18.9, "tmy3"),
    _place("hibbing-mn", "Hibbing, Minnesota", "Upper Midwest", (47.38, -92.85, 411), (9794, 8281, 6962, 5790), 320, -30, "tmy3"),
    _place("minneapolis-mn", "Minneapolis, Minnesota", "Upper Midwest", (44.88, -93.23, 254), (7721, 6460, 5307, 4247), 263, -22.2, "tmy3"),
    _place("fargo-nd", "Fargo, North Dakota", "Northern Plains", (46.93, -96.82, 274), (9092, 7755, 6563, 5511), 284, -27.2, "tmy3"),
    _place("ellsworth-sd", "Ellsworth AFB (Black Hills edge), South Dakota", "Northern Plains", (44.15, -103.1, 980), (7791, 6460, 5223, 4078), 274, -22, "tmy3"),
    _place("missoula-mt", "Missoula, Montana", "Northern Rockies", (46.92, -114.1, 973), (7384, 5942, 4626, 3452), 303, -12.2, "tmy3"),
    _place("bozeman-mt", "Bozeman, Montana", "Northern Rockies", (45.8, -111.15, 1349), (8292, 6847, 5493, 4271), 300, -21, "tmy3"),
    _place("idaho-falls-id", "Idaho Falls, Idaho", "Northern Rockies", (43.52, -112.07, 1441), (7774, 6343, 5054, 3897), 300, -15.8, "tmy3"),
    _place("jackson-wy", "Jackson Hole, Wyoming", "Northern Rockies", (43.6, -110.73, 2016), (9588, 7889, 6391, 5071), 356, -21, "tmy3"),
    _place("gunnison-co", "Gunnison, Colorado", "Southern Rockies", (38.53, -106.93, 2339), (9308, 7632, 6197, 4929), 356, -21, "tmy3"),
    _place("portland-or", "Portland (Troutdale), Oregon", "Pacific Northwest", (45.55, -122.4, 11), (4392, 3039, 1892, 980), 297, 1.7, "tmy3"),
    _place("eugene-or", "Eugene, Oregon", "Pacific Northwest", (44.05, -123.07, 109), (4898, 3461, 2268, 1282), 315, -1.7, "tmy3"),
    _place("port-angeles-wa", "Port Angeles, Washington", "Pacific Northwest", (48.12, -123.5, 91), (5978, 4227, 2740, 1544), 360, -2, "tmy3"),
    _place("northway-ak", "Northway, Alaska (interior)", "Alaska", (62.967, -141.933, 522), (15007, 13268, 11674, 10223), 361, -42.7, "tmy3"),
    _place("montreal-qc", "Montreal (Trudeau Airport), Quebec", "Canada", (45.47, -73.75, 36), (8263, 6860, 5629, 4544), 293, -20.6, "cwec"),
    _place("london-on", "London, Ontario", "Canada", (43.03, -81.15, 278), (6684, 5378, 4235, 3218), 278, -13.2, "cwec"),
    _place("garmisch-de", "Garmisch-Partenkirchen, Bavaria (alpine valley)", "Central Europe", (47.483, 11.067, 719), (7248, 5646, 4228, 3041), 341, -10.8, "dwd-try"),
    _place("muehldorf-de", "Mühldorf am Inn, Bavaria (alpine foreland)", "Central Europe", (48.283, 12.5, 405), (6554, 5040, 3730, 2634), 317, -9.2, "dwd-try"),
    _place("hof-de", "Hof, Bavaria (upland)", "Central Europe", (50.317, 11.883, 567), (7254, 5621, 4201, 2985), 343, -8, "dwd-try"),
    _place("fichtelberg-de", "Fichtelberg, Saxony (mountain top)", "Central Europe", (50.433, 12.95, 1213), (9558, 7767, 6075, 4552), 363, -11.6, "dwd-try"),
    _place("braunlage-de", "Braunlage, Lower Saxony (Harz)", "Central Europe", (51.733, 10.6, 607), (7654, 5948, 4424, 3117), 351, -8.2, "dwd-try"),
    _place("potsdam-de", "Potsdam, Brandenburg (lowland)", "Central Europe", (52.383, 13.067, 81), (5990, 4538, 3297, 2249), 310, -6.4, "dwd-try"),
    _place("piedmont-it", "Piedmont (the plain at 45° N, 8° E), Italy", "Alpine south side", (45, 8, 250), (3932, 2796, 1872, 1067), 248, -0.7, "pvgis-tmy"),
)
PLACES: dict[str, Place] = {place.key: place for place in _ROWS}


class Winter(NamedTuple):
    """A winter told in words, and the place in the table that has it: for people whose own place is not there."""

    key: str
    words: str
    place: str


WINTERS = (
    Winter("rainy", "rain more often than snow", "portland-or"),
    Winter("mild", "snow that comes and goes", "louisville-ky"),
    Winter("cold", "snow that lies for weeks", "buffalo-ny"),
    Winter("hard", "snow from December to March", "burlington-vt"),
    Winter("severe", "weeks far below 0 °F (−18 °C)", "hibbing-mn"),
    Winter("arctic", "half a year of frost", "northway-ak"),
)
