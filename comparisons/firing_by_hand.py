"""How often a fire is lit, worked out by hand for the invented houses."""

from calc.law import Law
from calc.physics import firing
from comparisons.check import At, Check, Published

_DIGITS = "half the last printed digit"


def _check(topic: str, where: str, law: Law, theirs: str, within: str, place: str, **given: str | At) -> Check:
    source = Published("By hand", "Worked out with a pocket calculator", "2025", place)
    return Check(topic, where, law, given, theirs, within, _DIGITS, source, "hand calculation")


CHECKS = [
    _check(
        "Heat of one load of wood",
        "35.8 lb of wood at 20 % moisture in one cubic foot, 6,880 Btu/lb, 65 %, all to the water",
        firing.heat_per_load,
        "160.1 kBtu",
        "0.03 %",
        "35.8 × 6,880 × 0.65",
        firebox_volume="1 ft³",
        packing_density="35.8 lb/ft³",
        heating_value="6880 Btu/lb",
        efficiency="65 %",
        share_to_water="100 %",
    ),
    _check(
        "Heat of one load of wood",
        "30 L at 250 kg/m³, 14.311 MJ/kg, 75 %, 60 % to the water",
        firing.heat_per_load,
        "13.417 kWh",
        "0.005 %",
        "0.030 × 250 × 14.311 × 0.75 × 0.60 = 48.300 MJ",
        firebox_volume="30 L",
        packing_density="250 kg/m³",
        heating_value="14.311 MJ/kg",
        efficiency="75 %",
        share_to_water="60 %",
    ),
    _check(
        "Share of the heat to the water",
        "40 kBtu/h to the water and 10 to the room",
        firing.share_to_water,
        "80 %",
        "0.001 %",
        "40 / 50",
        water_output="40 kBtu/h",
        room_output="10 kBtu/h",
    ),
    _check(
        "Heat to the room of a load that falls short",
        "10 kBtu/h, with 120 of 160 kBtu to the water",
        firing.room_output_of_load,
        "7.5 kBtu/h",
        "0.001 %",
        "10 × 120 / 160",
        room_output="10 kBtu/h",
        water_heat="120 kBtu",
        heat_at_output="160 kBtu",
    ),
    _check(
        "Usable heat lasts",
        "95,500 Btu at 9,660 Btu/h",
        firing.time_until_lighting,
        "9.886 h",
        "0.01 %",
        "95,500 / 9,660",
        heat="95500 Btu",
        load="9660 Btu/h",
    ),
    *(
        _check(
            "Until a whole load fits",
            f"room for {room}, a load of 160 kBtu, 10 kBtu/h drawn",
            firing.time_until_room,
            theirs,
            "0.001 %",
            place,
            burn_heat="160 kBtu",
            room_left=room,
            load="10 kBtu/h",
        )
        for room, theirs, place in (("100 kBtu", "6 h", "(160 - 100) / 10"), ("191 kBtu", "0 h", "it fits already"))
    ),
    _check(
        "Loads that fit the store",
        "room for 191 kBtu, loads of 160",
        firing.loads_that_fit,
        "1.19375",
        "0.001 %",
        "191 / 160",
        room_left="191 kBtu",
        burn_heat="160 kBtu",
    ),
    _check(
        "What a load leaves for the store",
        "160 kBtu in 4 h while the house takes 15 kBtu/h",
        firing.heat_left_of_burn,
        "100 kBtu",
        "0.001 %",
        "160 - 15 × 4",
        burn_heat="160 kBtu",
        load="15 kBtu/h",
        burn_time="4 h",
    ),
    _check(
        "Heat of a burn to the water",
        "40 kBtu/h for 4 h",
        firing.heat_at_output,
        "160 kBtu",
        "0.001 %",
        "40 × 4",
        water_output="40 kBtu/h",
        burn_time="4 h",
    ),
    *(
        _check(
            "Heat of a burn to the water",
            where,
            firing.water_heat_of_burn,
            "46 kBtu",
            "0.001 %",
            "the smaller of the two",
            heat_at_output=at_output,
            heat_per_load=per_load,
        )
        for where, at_output, per_load in (
            ("a small firebox behind a large printed output", "160 kBtu", "46 kBtu"),
            ("a firebox that is not filled", "46 kBtu", "160 kBtu"),
        )
    ),
    *(
        _check(
            "Heat to the room that counts",
            where,
            firing.room_heat_counted,
            theirs,
            "0.001 %",
            "the smallest of stove, room and house",
            room_output=output,
            room_can_use=room,
            load=load,
        )
        for where, output, room, load, theirs in (
            ("all of it", "10 kBtu/h", "12 kBtu/h", "15 kBtu/h", "10 kBtu/h"),
            ("as much as the room passes on", "10 kBtu/h", "6 kBtu/h", "15 kBtu/h", "6 kBtu/h"),
            ("as much as the house needs", "10 kBtu/h", "12 kBtu/h", "4 kBtu/h", "4 kBtu/h"),
        )
    ),
    _check(
        "Useful heat of a burn",
        "160 kBtu to the water and 10 kBtu/h to the room for 4 h",
        firing.heat_per_burn,
        "200 kBtu",
        "0.001 %",
        "160 + 10 × 4",
        water_heat="160 kBtu",
        room_heat_counted="10 kBtu/h",
        burn_time="4 h",
    ),
    _check(
        "Burns a day",
        "load 15, water 40, room 10 kBtu/h, 4 h",
        firing.burns_per_day,
        "1.8 a day",
        "0.001 %",
        "24 × 15 / (4 × (40 + 10))",
        load="15 kBtu/h",
        heat_per_burn="200 kBtu",
    ),
    _check(
        "Share of the day with a fire",
        "1.8 burns of 4 h",
        firing.burning_share,
        "30 %",
        "0.001 %",
        "1.8 × 4 / 24",
        burns_per_day="1.8 a day",
        burn_time="4 h",
    ),
    _check(
        "Output while it burns",
        "200 kBtu in 4 h",
        firing.output_while_burning,
        "50 kBtu/h",
        "0.001 %",
        "200 / 4",
        heat_per_burn="200 kBtu",
        burn_time="4 h",
    ),
    _check(
        "Loads that fill the store",
        "8.19 h of burning, 4 h a load",
        firing.loads_to_charge,
        "2.0475",
        "0.001 %",
        "8.19 / 4",
        hours_to_charge="8.19 h",
        burn_time="4 h",
    ),
    _check(
        "From lighting to lighting",
        "8.19 h of burning, then 19.10 h cold",
        firing.hours_between,
        "27.29 h",
        "0.001 %",
        "8.19 + 19.10",
        hours_to_charge="8.19 h",
        hours_cold="19.10 h",
    ),
    _check(
        "From lighting to lighting, one load each time",
        "1.8 burns a day",
        firing.hours_between_single,
        "13.333 h",
        "0.003 %",
        "24 / 1.8",
        burns_per_day="1.8 a day",
    ),
    _check(
        "Does a burn fit the store",
        "room for 100 kBtu, a burn of 160",
        firing.share_that_fits,
        "62.5 %",
        "0.001 %",
        "100 / 160",
        store_room="100 kBtu",
        burn_heat="160 kBtu",
    ),
]
