"""What people type, beside what pint makes of it, and the few texts that need a rule."""

import pint
import pytest

from calc.answer import Typed, answer
from calc.engine.link import read as read_link
from calc.units import UnitError, read_quantity, shown_unit
from calc.worksheets import WORKSHEETS

ureg = pint.UnitRegistry()


def si(text: str, kind: str) -> float:
    return read_quantity(text, kind, shown_unit(kind, "us"), "us").si


@pytest.mark.parametrize(
    ("text", "kind", "theirs"),
    [
        ("100 imperial gallons", "volume", "100 imperial_gallon"),
        ("100 imp. gal", "volume", "100 imperial_gallon"),
        ("100 UK gallons", "volume", "100 imperial_gallon"),
        ("3 imperial gallons per minute", "flow", "3 imperial_gallon / minute"),
        ("0.5 1/h", "air_changes", "0.5 / hour"),
        ("0.5 h-1", "air_changes", "0.5 / hour"),
        ("0.5 h⁻¹", "air_changes", "0.5 / hour"),
        ("0.5 h^-1", "air_changes", "0.5 / hour"),
        ("0.5 air changes per hour", "air_changes", "0.5 / hour"),
        ("22,100,000 Btu/cord", "heat_per_volume", "22100000 Btu / (128 foot**3)"),
        ("22.1 million Btu/cord", "heat_per_volume", "22100000 Btu / (128 foot**3)"),
        ("22.1 million Btu per cord", "heat_per_volume", "22100000 Btu / (128 foot**3)"),
        ("3 million Btu", "energy", "3000000 Btu"),
        ("6 ft 8 in", "length", "80 inch"),
        ("6' 8\"", "length", "80 inch"),
        ("6 feet 8 1/2 inches", "length", "80.5 inch"),
        ("2 m 5 cm", "length", "2.05 meter"),
        ("4 h 30 min", "time", "4.5 hour"),
        ("1 day 6 h", "time", "30 hour"),
        ("1 day and 6 hours", "time", "30 hour"),
        ("40,000 Btu", "power", "40000 Btu / hour"),
        ("40 kBtu", "power", "40000 Btu / hour"),
        ("COP 3.2", "fraction", "3.2 dimensionless"),
        ("3.2 COP", "fraction", "3.2 dimensionless"),
        ("320 %", "fraction", "3.2 dimensionless"),
        ("COP 3.2", "factor", "3.2 dimensionless"),
        ("3.2 COP", "factor", "3.2 dimensionless"),
        ("120", "radiation", "120 kWh / m**2"),
        ("400 MJ/m²", "radiation", "400 MJ / m**2"),
        ("0.016", "loss_growth", "0.016 W / m**2 / delta_degC**2"),
        ("200", "hardness", "200 mg / L"),
        ("200 ppm", "hardness", "200 mg / L"),
        ("200 mg/l as CaCO3", "hardness", "200 mg / L"),
        ("12 gpg", "hardness", "12 grain / gallon"),
        ("12 grains per gallon", "hardness", "12 grain / gallon"),
        ("11 °dH", "hardness", "11 * 17.8480 mg / L"),
        ("11 dH", "hardness", "11 * 17.8480 mg / L"),
        ("25 °f", "hardness", "250 mg / L"),
        ("25 °fH", "hardness", "250 mg / L"),
        ("2 mmol/L", "hardness", "200.1738 mg / L"),
        ("14 °e", "hardness", "14 grain / imperial_gallon"),
        ("40 ppm", "concentration", "40 mg / L"),
        ("0.5 %", "dose", "0.005 dimensionless"),
        ("1", "dose", "0.01 dimensionless"),
        ("5 mL/L", "dose", "0.005 dimensionless"),
        ("pH 8.5", "acidity", "8.5 dimensionless"),
        ("8.5 pH", "acidity", "8.5 dimensionless"),
    ],
)
def test_what_is_typed_is_what_pint_makes_of_it(text: str, kind: str, theirs: str) -> None:
    assert si(text, kind) == pytest.approx(ureg.Quantity(theirs).to_base_units().magnitude, rel=1e-6)
    again = read_quantity(text, kind, shown_unit(kind, "us"), "us")
    assert si(again.link_text(), kind) == pytest.approx(again.si)


@pytest.mark.parametrize("text", ["6 ft 14 in", "6 in 8 ft", "4 h 90 min", "6 ft 8 kg", "2 ft 3"])
def test_two_units_that_do_not_go_together_are_refused(text: str) -> None:
    with pytest.raises(UnitError):
        si(text, "time" if "h " in text else "length")


@pytest.mark.parametrize(
    ("text", "share", "taken_as"),
    [
        ("0.82", 0.82, "82 %"),
        ("0.99", 0.99, "99 %"),
        ("4/5", 0.8, "80 %"),
        ("1", 0.01, ""),
        ("1.0", 0.01, ""),
        ("82", 0.82, ""),
        ("0", 0.0, ""),
        ("0.0", 0.0, ""),
        ("0.5 %", 0.005, ""),
    ],
)
def test_a_bare_share_is_in_percent_and_below_one_it_is_asked_about(text: str, share: float, taken_as: str) -> None:
    quantity = read_quantity(text, "fraction", shown_unit("fraction", "us"), "us")
    assert quantity.si == pytest.approx(share)
    assert quantity.taken_as == taken_as


def test_what_could_be_meant_otherwise_is_asked_about_in_a_note() -> None:
    given = {"allowance": Typed("0.15"), "design_load": Typed("30,000 Btu")}
    notes = " ".join(answer("emitter-temperature", given).notes)
    assert "15 %" in notes
    assert "30,000 Btu/h" in notes
    assert "taken as" not in " ".join(answer("emitter-temperature", {"allowance": Typed("15 %")}).notes)


def test_where_shares_under_one_percent_are_sensible_a_bare_one_must_say_which_it_is() -> None:
    leaky = {"duct_way": Typed("length"), "duct_length": Typed("50 ft")}
    asked = answer("air-coil", leaky | {"leakage": Typed("0.5")}).problems
    assert [field.key for field in asked] == ["leakage"]
    assert "0.5 %" in asked[0].text and "50 %" in asked[0].text
    for text, share in (("0.5 %", 0.005), ("50 %", 0.5), ("5", 0.05), ("0", 0.0)):
        assert answer("air-coil", leaky | {"leakage": Typed(text)}).inputs["leakage"].si == pytest.approx(share)
    small = [field for sheet in WORKSHEETS.values() for field in sheet.all_fields() if field.small_shares]
    assert {entry.key for entry in small} == {"leakage", "duct_loss"} and all(
        "% sign" in entry.beside for entry in small
    )


def test_a_wet_basis_out_of_range_offers_the_dry_basis() -> None:
    problems = answer("wood-use", {"moisture": Typed("80 %")}).problems
    assert "80 % db" in problems[0].text
    assert not answer("wood-use", {"moisture": Typed("80 % db")}).problems


@pytest.mark.parametrize("link", ["#", "#v", "#v1", "#v1;", "#v1;stored-h", "#v1;stor", "#v1;pla"])
def test_a_link_cut_inside_its_first_words_is_called_cut(link: str) -> None:
    assert "cut off" in read_link(link, WORKSHEETS).problems[0]


@pytest.mark.parametrize(
    ("worksheet", "key", "text", "value"),
    [
        ("wood-use", "species", "oak", "northern-red-oak"),
        ("wood-use", "species", "red oak", "northern-red-oak"),
        ("wood-use", "species", "spruce", "white-spruce"),
        ("fuel-cost", "fuel_now", "natural gas", "gas"),
        ("fuel-cost", "fuel_now", "fuel oil", "oil"),
        ("fuel-cost", "fuel_now", "LPG", "propane"),
        ("fuel-cost", "fuel_now", "electric", "electricity"),
        ("floor", "floor_covering", "tile", "bare"),
    ],
)
def test_common_words_choose(worksheet: str, key: str, text: str, value: str) -> None:
    sheet = answer(worksheet, {key: Typed(text)})
    assert not sheet.problems
    assert sheet.values[key] == value
