"""The shortest form of a link: its text deflated against a dictionary of the words of plans, in letters of an address.

The dictionary is part of every packed link that was ever printed, so not a letter of it may change.
"""

import base64
import zlib

# The keys and units of the first release, those that most plans hold last: near matches are the shortest.
_WORDS = (
    "=yes;=no;=0;=0psi;=0ft;=1;=2;=none;=open;=closed;=typed;=slab;=full;=stove;=round;=membrane;"
    "=by-hand;=higher;Btu/h;ft;in;gal;psi;F;F%C2%B0;h;%25;ft2;ft3;lb;kW;L;m2;m;mm;bar;C;K;!s;!m;!b;!m~;"
    "units=si;draught_left=;chimney_known=;tap_store=;taps_from_store=;loop_volume=;water_share=;"
    "wood_heat=;wood_left=;dump_output=;inverter_efficiency=;pump_watts=;safety_coil=;damper=;"
    "loop_flows=;jacket_volume=;fire_left=;vent_height=;vent_bore_fitted=;stove_rating=;valve_capacity=;"
    "plant_kind=;tap_side=;coldest=;standing_water=;highest=;vessel_water=;pump_pressure=;highest_rule=;"
    "relief_setting=;top_pressure=;height_above_vessel=;high_limit=;vessel_fitted=;metal_credit=;"
    "expansion_kind=;fill_temperature=;other_volume=;exposed_air=;exposed_length=;cord_heat=;hours_hot=;"
    "ground=;soil_conductivity=;soil=;pipe_distance=;depth=;insulation_conductivity=;pipe_insulation=;"
    "jacket=;trench_length=;loop_heat=;loop_height=;loop_return=;loop_supply=;loop_question=;"
    "peak_output=;peak_factor=;suction_loss=;highest_point=;pump_height=;peak_known=;antifreeze=;"
    "pump_efficiency=;velocity_limit=;pipe_heat=;pipe_place=;other_pressure=;other_losses=;valves=;tees=;"
    "elbows=;pipe_length=;pipe_size=;pipe_kind=;supply_water=;installed_cost=;own_pay=;own_hours=;"
    "pellet_content=;propane_content=;oil_content=;wood_heat_content=;efficiency_pellets=;"
    "efficiency_heat_pump=;efficiency_gas=;efficiency_propane=;efficiency_oil=;efficiency_wood=;"
    "fuel_price_pellets=;fuel_price_electricity=;fuel_price_gas=;fuel_price_propane=;fuel_price_oil=;"
    "fuel_price_wood=;fuel_now=;stack_rows=;stack_height=;wood_share=;solid_share=;split_thickness=;"
    "log_length=;species=;yearly_heat=;maker_minimum=;system_return=;stove_outlet=;room_humidity=;"
    "flue_bends=;draught_needed=;air_ratio=;tightness=;fans=;flue_place=;flue_wall=;flue_diameter=;"
    "flue_height=;wall_capacity=;room_conductance=;doorway_height=;partition=;build=;room_limit=;"
    "hours_burning=;doorway_width=;room_known=;room_area=;sidearm_losses=;sidearm_bore=;riser_height=;"
    "sidearm_height=;sidearm_conductance=;tap_tank_temperature=;tap_tank_volume=;coil_cold_out=;"
    "coil_cold_in=;coil_store=;coil_rating=;tap_approach=;exchanger_conductance=;plate_cold_out=;"
    "plate_cold_in=;plate_hot_out=;plate_hot_in=;plate_rating=;shower_time=;showers=;fire_refill=;"
    "primary_flow=;exchanger_known=;emitters_need=;exchanger_wall=;antifreeze_kind=;tap_flow=;"
    "tap_wanted=;tap_way=;leakage=;duct_surroundings=;duct_insulation=;duct_diameter=;duct_length=;"
    "duct_loss=;rated_air_flow=;rated_coil_flow=;rated_coil_air=;rated_coil_water=;rated_coil_heat=;"
    "coil_ua=;flow_basis=;entering_air=;duct_way=;air_flow=;coil_flow=;coil_known=;mixed_flow=;"
    "floor_return=;flow_known=;mixed_wanted=;mix_purpose=;slab_heat_capacity=;slab_density=;fire_known=;"
    "slab_thickness=;slab_cool=;slab_warm=;covering_resistance=;floor_zone=;below_floor=;"
    "insulation_below=;slab_conductivity=;pipe_diameter=;concrete_cover=;pipe_spacing=;floor_covering=;"
    "floor_area=;radiator_rating=;baseboard_rating=;baseboard_length=;emitter_factor=;supply_tried=;"
    "average_outdoor=;exponent=;rating_air=;rating_water=;allowance=;emitter=;outdoor_tomorrow=;"
    "reading_lower=;reading_middle=;reading_upper=;outdoor=;lowest_useful_average=;room_can_use=;"
    "tap_load=;heating_days=;tank_depth=;place_width=;ceiling_height=;door_width=;floor_allowable=;"
    "floor_kind=;tank_insulation=;empty_weight=;tank_height=;tank_diameter=;tank_shape=;liner_limit=;"
    "open_water=;slenderness=;waiting=;store_kind=;fittings=;conductivity=;insulation_kind=;insulation=;"
    "store_inside=;store_surroundings=;room_output=;packing_density=;firebox_volume=;size_factor=;"
    "part_load=;relight_temperature=;load_during_burn=;rated_output=;firebox_known=;stoking=;"
    "hours_wanted=;burn_time=;water_output=;drop_then=;drop_known=;exchanger_approach=;standby_loss=;"
    "load=;outlet_height=;charge_rise=;system_pressure=;cold_water=;water_drop=;design_load=;"
    "lowest_useful=;store_top=;store_volume=;loss_per_area=;house_class=;heated_area=;altitude=;"
    "air_changes=;house_volume=;ground_resistance=;ground_area=;ceiling_resistance=;ceiling_area=;"
    "door_resistance=;door_area=;window_resistance=;window_area=;wall_resistance=;wall_area=;moisture=;"
    "efficiency_basis=;heat_content=;amount=;other_heat=;tap_share=;efficiency=;fuel=;base_temperature=;"
    "degree_days=;design_outdoor=;indoor=;method=;"
)
_DICTIONARY = _WORDS.encode("ascii")
_WINDOW = -15  # bits; below zero: no header and no checksum of its own
_CHECK = 3  # bytes by which a spoilt text is found out


def pack(text: str) -> str:
    """A text of ASCII in its shortest form."""
    deflate = zlib.compressobj(9, zlib.DEFLATED, _WINDOW, 9, zlib.Z_DEFAULT_STRATEGY, _DICTIONARY)
    plain = text.encode("ascii")
    short = _check(plain) + deflate.compress(plain) + deflate.flush()
    return base64.urlsafe_b64encode(short).decode("ascii").rstrip("=")


def unpack(text: str, longest: int) -> str:
    """The text again; empty if it was spoilt on its way, or would be longer than `longest` characters."""
    try:
        short = base64.urlsafe_b64decode(text + "=" * (-len(text) % 4))
        inflate = zlib.decompressobj(_WINDOW, _DICTIONARY)
        plain = inflate.decompress(short[_CHECK:], longest + 1)
        whole = inflate.eof and len(plain) <= longest and _check(plain) == short[:_CHECK]
        return plain.decode("ascii") if whole else ""
    except (ValueError, zlib.error):
        return ""


def _check(plain: bytes) -> bytes:
    return zlib.crc32(plain).to_bytes(4)[:_CHECK]
