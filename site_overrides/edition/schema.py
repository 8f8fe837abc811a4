"""The JSON Schema of edition.toml, from the declarations by which it is read; editors check and explain with it."""

import json
from pathlib import Path
from typing import Any

from edition.declared import Item, entries, inputs

NAME = "edition.schema.json"
TEXT = {"type": "string", "minLength": 1}


def text() -> str:
    """The schema as a file."""
    top = {"$schema": "https://json-schema.org/draft/2020-12/schema", "title": "An edition of Stoke and Store"}
    fills = {
        "type": "object",
        "minProperties": 1,
        "additionalProperties": False,
        "properties": {key: {**TEXT, "description": fields[0].label} for key, fields in inputs().items()},
    }
    schema = {**top, **_table(entries()), "$defs": {"fills": fills}}
    return json.dumps(schema, indent=1, ensure_ascii=False) + "\n"


def refresh(folder: Path) -> None:
    """Bring the schema in an edition's folder up to this release; a folder without one stays without."""
    path = folder / NAME
    if path.is_file() and path.read_text(encoding="utf-8") != text():
        path.write_text(text(), encoding="utf-8", newline="\n")


def _table(items: tuple[Item, ...]) -> dict[str, Any]:
    return {
        "type": "object",
        "additionalProperties": False,
        "required": [item.key for item in items if item.required],
        "properties": {item.key: {"description": f"Write {item.write}.", **_kind(item)} for item in items},
    }


def _kind(item: Item) -> dict[str, Any]:
    match item.kind:
        case "text":
            return {**TEXT, "maxLength": item.longest}
        case "choice":
            return {"enum": list(item.options)}
        case "choices":
            return {"type": "array", "items": {"enum": list(item.options)}}
        case "flag":
            return {"type": "boolean"}
        case "date":
            return {"type": "string", "format": "date"}
        case "fills":
            return {"$ref": "#/$defs/fills"}
        case "rows":
            return {"type": "array", "items": _table(item.items)}
        case _:
            return _table(item.items)
