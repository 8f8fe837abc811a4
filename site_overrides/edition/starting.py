"""Starts an edition: writes its folder from a few answers, with a line for everything else that can be said."""

import json
import shutil
import tempfile
from collections.abc import Mapping
from pathlib import Path

from calc.units import SYSTEMS
from edition import read, schema
from edition.declared import entries
from edition.reading import EditionError

# What is asked, with the question; an answer stands in edition.toml under its key, or in the first place.
QUESTIONS = {
    "name": "Your name, as customers know it",
    "contact": "How customers reach you",
    "units": f"Units in which the site opens ({' or '.join(SYSTEMS)})",
    "place": "The valley or town where most of your customers live",
    "altitude": "Its height above sea level, with the unit",
    "design_outdoor": "Its coldest day, as the building office states it, with the unit",
}
LOOKS = {  # may be said at once, and are not asked
    "site_name": "The site's name, if it is not yours",
    "logo": "An SVG or PNG file, which is copied into the folder",
    "bar": "The bar's colour, like #17383f",
    "accent": "The colour of links and buttons on the light page",
    "accent_dark": "The same on the dark page",
}
HEADS = {
    "appliances.csv": "name,key,water_output,rated_output,peak_output,room_output,burn_time,firebox_volume,log_length,"
    "stoking,jacket_volume,stove_rating,maker_minimum,flue_diameter,draught_needed,weight,clearance_back,"
    "clearance_side,clearance_front,listing,documents,price",
    "tanks.csv": "name,key,store_volume,system_pressure,store_kind,tank_shape,tank_diameter,tank_height,empty_weight,"
    "listing,documents,price",
}
MORE = """
# More that can be said: take the # away and write your own.
# currency = "USD"
# hidden_guides = ["slab"]
#
# [prices]
# date = 2026-11-01
# fuel_price_wood = "280 $/cord"
#
# [[rules]]
# worksheet = "tank-size"
# says = "We have always taken 60 L for each kilowatt."
# of = "water_output"
# each = "1 kW"
# gives = "60 L"
#
# [[notes]]
# text = "What the reader should know about local rules."
# says = "who says so, and when"
"""


def start(folder: Path, answers: Mapping[str, str]) -> None:
    """Write a new edition into `folder`, which must not be there yet. EditionError where an answer cannot stand in it.

    Nothing is left behind where it cannot: the folder is made beside its place, read as the build reads it, and moved.
    """
    if folder.exists():
        raise EditionError(f"{folder} is there already: name a folder that is not.")
    if not folder.resolve().parent.is_dir():
        raise EditionError(f"There is no folder {folder.resolve().parent} to put it into: make that first.")
    with tempfile.TemporaryDirectory(dir=folder.resolve().parent, prefix=".new-") as unfinished:
        made = Path(unfinished, folder.name)
        made.mkdir()
        logo = Path(answers["logo"]) if answers.get("logo") else None
        if logo:
            if not logo.is_file():
                raise EditionError(f"There is no file {logo}: name the file of your logo.")
            shutil.copyfile(logo, made / f"logo{logo.suffix}")
        (made / "edition.toml").write_text(_toml(answers, logo), encoding="utf-8", newline="\n")
        for name, heads in HEADS.items():
            (made / name).write_text(f"{heads}\n", encoding="utf-8", newline="\n")
        (made / schema.NAME).write_text(schema.text(), encoding="utf-8", newline="\n")
        read(made)
        made.rename(folder)


def _toml(answers: Mapping[str, str], logo: Path | None) -> str:
    write = {item.key: item.write for item in entries()}
    lines = [f"#:schema ./{schema.NAME}"]
    said = {key: answers[key] for key in ("name", "contact", "units", "site_name") if answers.get(key)}
    if logo:
        said["logo"] = f"logo{logo.suffix}"
    for key, text in said.items():
        lines += [f"# {key}: {write[key]}", f"{key} = {_quoted(text)}"]
    colours = [f"{key} = {_quoted(answers[key])}" for key in ("bar", "accent", "accent_dark") if answers.get(key)]
    if colours:
        lines += [f"# colours: {write['colours']}", f"colours = {{ {', '.join(colours)} }}"]
    lines += [
        *MORE.splitlines(),
        "",
        "# What is the same for every house of a valley; write one such part for each.",
        "[[places]]",
        f"name = {_quoted(answers['place'])}",
        f"fills.altitude = {_quoted(answers['altitude'])}",
        f"fills.design_outdoor = {_quoted(answers['design_outdoor'])}",
        "",
    ]
    return "\n".join(lines)


def _quoted(text: str) -> str:
    """A text as TOML writes it; its basic strings are escaped as JSON's are."""
    return json.dumps(text, ensure_ascii=False)
