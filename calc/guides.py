"""The guides in which worksheets stand, in the order of the sizing record, and what each is about in a word or two."""

GUIDES = {
    "house": "House",
    "storage": "Fire and store",
    "firing": "Firing",
    "emitters": "Emitters",
    "slab": "Slab",
    "air": "Ducts and coil",
    "taps": "Hot taps",
    "room": "The stove's room",
    "stove": "Chimney and return",
    "wood": "Wood",
    "cost": "Cost",
    "pipes": "Pipes",
    "another-building": "Pipe to another building",
    "open-or-pressurised": "Pressure and expansion",
    "antifreeze": "Antifreeze",
    "water": "Fill water",
    "other-heat": "Other heat",
    "safety": "Safety",
    "dump": "Heat dump",
    "plan": "The whole",
}
