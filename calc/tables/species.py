"""Firewood by species: how dense it is, how wet when green, and what others have printed for the heat in a cord.

Basic specific gravity (oven-dry weight over green volume, against water) and green moisture (share of the oven-dry
weight): USDA Forest Service, Forest Inventory and Analysis, reference table of species, a work of the US Government in
the public domain. The printed range, in million Btu a cord, spans the lists of the University of Kentucky, Utah State
University Extension, the California Energy Commission, the Missouri Department of Conservation and Kansas State
University; single facts are taken, no list is copied whole. Where a species stands in more than one of them they differ
by 7 % on average and by a third at worst: some weigh the wood air-dry and some oven-dry, some pack more of it into a
cord, and the headings do not always say which.
"""

from typing import NamedTuple

WATER = 1000.0  # kg/m³, what a specific gravity is measured against


class Species(NamedTuple):
    """A firewood: `basic_density` in kg/m³, green moisture and the printed heat of a cord as they are printed.

    `green_moisture` is a share of the oven-dry weight (dry basis). `resinous` conifers hold more heat in each weight.
    `printed` is the lowest and highest million Btu a cord found in `lists` published lists; None without one.
    """

    key: str
    label: str
    basic_density: float
    green_moisture: float
    resinous: bool
    printed: tuple[float, float] | None
    lists: int


SPECIES: dict[str, Species] = {
    species.key: species
    for species in (
        # Medians of the hardwoods and of the conifers below, for a pile whose trees nobody knows.
        Species("mixed-hardwood", "Mixed hardwood", 0.50 * WATER, 0.74, False, None, 0),
        Species("mixed-softwood", "Mixed softwood", 0.38 * WATER, 0.64, False, None, 0),
        Species("osage-orange", "Osage-orange", 0.76 * WATER, 0.31, False, (30.5, 32.9), 4),
        Species("shagbark-hickory", "Shagbark hickory", 0.64 * WATER, 0.60, False, (29.1, 29.3), 2),
        Species("black-locust", "Black locust", 0.66 * WATER, 0.41, False, (28.1, 28.3), 3),
        Species("white-oak", "White oak", 0.60 * WATER, 0.68, False, (27.0, 29.1), 3),
        Species("bur-oak", "Bur oak", 0.58 * WATER, 0.74, False, (24.9, 26.3), 2),
        Species("oregon-white-oak", "Oregon white oak", 0.64 * WATER, 0.58, False, (28.0, 28.0), 1),
        Species("eastern-hophornbeam", "Eastern hophornbeam", 0.63 * WATER, 0.53, False, None, 0),
        Species("sweet-birch", "Sweet birch", 0.60 * WATER, 0.73, False, None, 0),
        Species("northern-red-oak", "Northern red oak", 0.56 * WATER, 0.83, False, (24.0, 25.9), 3),
        Species("pin-oak", "Pin oak", 0.58 * WATER, 0.77, False, (25.9, 25.9), 1),
        Species("sugar-maple", "Sugar maple", 0.56 * WATER, 0.57, False, (24.0, 25.9), 2),
        Species("american-beech", "American beech", 0.56 * WATER, 0.55, False, (26.3, 27.5), 2),
        Species("yellow-birch", "Yellow birch", 0.55 * WATER, 0.72, False, None, 0),
        Species("white-ash", "White ash", 0.55 * WATER, 0.46, False, (23.6, 24.6), 3),
        Species("green-ash", "Green ash", 0.53 * WATER, 0.57, False, (20.0, 22.8), 2),
        Species("honeylocust", "Honeylocust", 0.60 * WATER, 0.60, False, (24.6, 25.6), 2),
        Species("siberian-elm", "Siberian elm", 0.54 * WATER, 0.66, False, (20.9, 20.9), 2),
        Species("pacific-madrone", "Pacific madrone", 0.58 * WATER, 0.66, False, (30.9, 30.9), 1),
        Species("tanoak", "Tanoak", 0.58 * WATER, 0.80, False, (27.5, 27.5), 1),
        Species("california-black-oak", "California black oak", 0.51 * WATER, 1.01, False, (27.4, 27.4), 1),
        Species("black-walnut", "Black walnut", 0.51 * WATER, 0.79, False, (21.8, 22.6), 2),
        Species("hackberry", "Hackberry", 0.49 * WATER, 0.64, False, (21.0, 21.7), 2),
        Species("red-maple", "Red maple", 0.49 * WATER, 0.64, False, None, 0),
        Species("paper-birch", "Paper birch", 0.48 * WATER, 0.74, False, (20.8, 20.8), 1),
        Species("gray-birch", "Gray birch", 0.45 * WATER, 0.64, False, None, 0),
        Species("slippery-elm", "Slippery elm", 0.48 * WATER, 0.77, False, (20.6, 21.7), 2),
        Species("black-cherry", "Black cherry", 0.47 * WATER, 0.53, False, (20.4, 20.5), 2),
        Species("american-elm", "American elm", 0.46 * WATER, 0.94, False, (19.8, 21.4), 4),
        Species("american-sycamore", "American sycamore", 0.46 * WATER, 0.81, False, (19.5, 20.2), 2),
        Species("sweetgum", "Sweetgum", 0.46 * WATER, 0.74, False, (21.3, 21.3), 1),
        Species("black-ash", "Black ash", 0.45 * WATER, 0.85, False, None, 0),
        Species("silver-maple", "Silver maple", 0.44 * WATER, 0.68, False, (18.9, 19.3), 2),
        Species("bigleaf-maple", "Bigleaf maple", 0.44 * WATER, 0.71, False, (22.7, 22.7), 1),
        Species("boxelder", "Boxelder", 0.42 * WATER, 0.91, False, (17.5, 18.3), 2),
        Species("yellow-poplar", "Yellow-poplar", 0.40 * WATER, 0.95, False, (17.3, 17.3), 1),
        Species("red-alder", "Red alder", 0.37 * WATER, 0.99, False, (17.5, 19.5), 2),
        Species("bigtooth-aspen", "Bigtooth aspen", 0.36 * WATER, 0.91, False, None, 0),
        Species("quaking-aspen", "Quaking aspen", 0.35 * WATER, 1.29, False, (18.0, 18.2), 2),
        Species("eastern-cottonwood", "Eastern cottonwood", 0.37 * WATER, 1.17, False, (15.8, 16.8), 4),
        Species("black-willow", "Black willow", 0.36 * WATER, 1.27, False, (16.0, 16.0), 1),
        Species("american-basswood", "American basswood", 0.32 * WATER, 1.05, False, (13.8, 15.2), 2),
        Species("balsam-poplar", "Balsam poplar", 0.31 * WATER, 1.07, False, None, 0),
        Species("tamarack", "Tamarack", 0.49 * WATER, 0.54, True, None, 0),
        Species("western-larch", "Western larch", 0.48 * WATER, 0.60, True, (28.7, 28.7), 1),
        Species("shortleaf-pine", "Shortleaf pine", 0.47 * WATER, 0.77, True, (19.0, 19.0), 1),
        Species("douglas-fir", "Douglas-fir", 0.45 * WATER, 0.35, True, (20.7, 26.5), 2),
        Species("eastern-redcedar", "Eastern redcedar", 0.44 * WATER, 0.35, True, (18.9, 20.2), 2),
        Species("western-hemlock", "Western hemlock", 0.42 * WATER, 0.56, False, (24.4, 24.4), 1),
        Species("red-pine", "Red pine", 0.41 * WATER, 0.64, True, None, 0),
        Species("scotch-pine", "Scotch pine", 0.43 * WATER, 0.76, True, None, 0),
        Species("jack-pine", "Jack pine", 0.40 * WATER, 1.00, True, None, 0),
        Species("lodgepole-pine", "Lodgepole pine", 0.38 * WATER, 0.64, True, (21.1, 22.3), 2),
        Species("ponderosa-pine", "Ponderosa pine", 0.38 * WATER, 0.90, True, (16.2, 21.7), 2),
        Species("eastern-hemlock", "Eastern hemlock", 0.38 * WATER, 1.11, False, (17.3, 17.3), 1),
        Species("white-spruce", "White spruce", 0.37 * WATER, 0.52, False, None, 0),
        Species("black-spruce", "Black spruce", 0.38 * WATER, 0.48, False, None, 0),
        Species("red-spruce", "Red spruce", 0.37 * WATER, 0.47, False, None, 0),
        Species("norway-spruce", "Norway spruce", 0.36 * WATER, 0.59, False, None, 0),
        Species("engelmann-spruce", "Engelmann spruce", 0.33 * WATER, 0.89, False, None, 0),
        Species("sitka-spruce", "Sitka spruce", 0.33 * WATER, 0.60, False, (21.7, 21.7), 1),
        Species("white-fir", "White fir", 0.37 * WATER, 1.04, False, (21.1, 21.1), 1),
        Species("grand-fir", "Grand fir", 0.35 * WATER, 1.06, False, (20.1, 20.1), 1),
        Species("balsam-fir", "Balsam fir", 0.33 * WATER, 1.19, False, None, 0),
        Species("eastern-white-pine", "Eastern white pine", 0.34 * WATER, 0.65, True, (15.0, 15.0), 1),
        Species("western-redcedar", "Western redcedar", 0.31 * WATER, 0.40, True, None, 0),
        Species("northern-white-cedar", "Northern white-cedar", 0.29 * WATER, 0.99, True, None, 0),
    )
}
