"""What a kind of wood weighs and holds, the same on every sheet that asks for it; and what wood of any kind holds."""

from calc.engine.declare import Given, Pick
from calc.tables.species import SPECIES

OF_SPECIES = (
    Pick(
        "basic_density",
        "density",
        "Oven-dry weight of each volume of this wood",
        on="species",
        values={tree.key: f"{tree.basic_density:g} kg/m³" for tree in SPECIES.values()},
        source="usfs-fia-species",
    ),
    Pick(
        "dry_heating_value",
        "heat_per_mass",
        "Heat in it by weight, oven-dry",
        on="species",
        values={tree.key: "9,000 Btu/lb" if tree.resinous else "8,600 Btu/lb" for tree in SPECIES.values()},
        source="wood-heating-value",
    ),
)
ANY_WOOD = Given("dry_heating_value", "heat_per_mass", "Heat in oven-dry wood", "8,600 Btu/lb", "wood-heating-value")
