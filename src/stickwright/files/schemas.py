"""JSON Schema of the files of a case, from the nouns themselves, with every unit that may be typed; and of a plan.

``python -m stickwright.files.schemas`` writes schemas/player.schema.json, kit.schema.json,
game.schema.json, hub.schema.json and room.schema.json, for editors that check while typing [json-schema], and
plan.schema.json, for programs that read a plan.
"""

from __future__ import annotations

import json
import sys
from pathlib import Path
from typing import Any

from stickwright import units
from stickwright.files.fields import NONE, FieldShape, fields_of, typed_keys
from stickwright.files.plan_schema import plan_schema
from stickwright.files.writing import make_folder, write_whole
from stickwright.model.game import Game
from stickwright.model.hub import Hubs
from stickwright.model.kit import Kit
from stickwright.model.measured import Measured
from stickwright.model.player import Player
from stickwright.model.room import Room

__all__ = ["FILES", "file_schema", "schema_texts", "write_schemas"]

FILES: dict[str, type[Measured]] = {"player": Player, "kit": Kit, "game": Game, "hub": Hubs, "room": Room}
_DRAFT = "https://json-schema.org/draft/2020-12/schema"
_TYPES = {"number": "number", "whole": "integer", "yes-no": "boolean", "words": "string", "choice": "string"}


def file_schema(model: type[Measured]) -> dict[str, Any]:
    """JSON Schema (draft 2020-12) of a file that holds one noun.

    Every number with a unit is offered under all its keys (``force_n``, ``force_gf``, ...), with the
    limits converted; of these keys at most one may stand in a table, and exactly one where the field
    is needed. Repeats may be a list or one bare number.

    Parameters
    ----------
    model : type
        Player, Kit, Game, Hubs or Room.

    Returns
    -------
    dict
        The schema, ready for JSON.

    Examples
    --------
    >>> stick = file_schema(Kit)["$defs"]["Stick"]
    >>> stick["properties"]["travel_mm"]["maximum"], stick["properties"]["travel_cm"]["maximum"]
    (300.0, 30.0)
    """
    source = model.model_json_schema()
    nouns = {noun.__name__: noun for noun in _nouns_in(model)}
    schema = {"$schema": _DRAFT, **_table_schema(model, source)}
    inner = {name: _table_schema(nouns[name], found) for name, found in sorted(source.get("$defs", {}).items())}
    if inner:
        schema["$defs"] = inner
    return schema


def _nouns_in(model: type[Measured]) -> list[type[Measured]]:
    found = [model]
    for shape in fields_of(model).values():
        if shape.model is not None:
            found += _nouns_in(shape.model)
    return found


def _table_schema(model: type[Measured], source: dict[str, Any]) -> dict[str, Any]:
    """One table: descriptions, titles and strictness as the noun has them, keys as they may be typed."""
    properties: dict[str, Any] = {}
    required: list[str] = []
    rules: list[dict[str, Any]] = []
    for name, shape in fields_of(model).items():
        described = source["properties"][name].get("description")
        keys = typed_keys(model, name)
        for key in keys:
            properties[key] = _described(_field_schema(shape, key if len(keys) > 1 else None), described)
        needed = model.model_fields[name].is_required()
        if len(keys) == 1:
            required += [name] if needed else []
        else:
            one_of: list[dict[str, Any]] = [{"required": [key]} for key in keys]
            if not needed:
                one_of.append({"not": {"anyOf": [{"required": [key]} for key in keys]}})
            rules.append({"oneOf": one_of})
    table: dict[str, Any] = {"title": source["title"], "type": "object"}
    if source.get("description"):
        table["description"] = source["description"]
    table["additionalProperties"] = source["additionalProperties"]
    table["properties"] = properties
    if required:
        table["required"] = required
    if rules:
        table["allOf"] = rules
    return table


def _described(schema: dict[str, Any], description: str | None) -> dict[str, Any]:
    return {"description": description, **schema} if description else schema


def _field_schema(shape: FieldShape, key: str | None) -> dict[str, Any]:
    item = _item_schema(shape, key)
    if shape.count is not None:
        return {"type": "array", "prefixItems": [item] * shape.count, "items": False, "minItems": shape.count}
    if not shape.many:
        return item
    listed: dict[str, Any] = {"type": "array", "items": item}
    if shape.shortest is not None:
        listed["minItems"] = shape.shortest
    return {"anyOf": [item, listed]} if shape.or_single else listed


def _item_schema(shape: FieldShape, key: str | None) -> dict[str, Any]:
    if shape.model is not None:
        return {"$ref": f"#/$defs/{shape.model.__name__}"}
    item: dict[str, Any] = {"type": _TYPES[shape.kind]}
    if shape.choices:
        item["enum"] = [*shape.choices, *([NONE] if shape.or_none else [])]
    if shape.kind == "words":
        item |= {"minLength": shape.shortest} if shape.shortest is not None and not shape.many else {}
        item |= {"maxLength": shape.longest} if shape.longest is not None and not shape.many else {}
    factor = units.to_si(1.0, units.ending_of(key)) if key is not None else 1.0
    for limit, name, outer in ((shape.low, "minimum", min), (shape.high, "maximum", max)):
        if limit is not None:
            exact = limit / factor
            # Twelve digits read better (300 mm, not 299.99999999999994), but never narrower than the reader is.
            item[name] = limit if shape.kind == "whole" else outer(float(f"{exact:.12g}"), exact)
    return item


def schema_texts() -> dict[str, str]:
    """File name -> text of every schema file."""
    schemas = {name: file_schema(model) for name, model in FILES.items()} | {"plan": plan_schema()}
    return {
        f"{name}.schema.json": json.dumps(one, indent=2, ensure_ascii=False) + "\n" for name, one in schemas.items()
    }


def write_schemas(folder: Path) -> tuple[Path, ...]:
    """Write the schema files into a folder."""
    make_folder(folder)
    written = []
    for name, text in schema_texts().items():
        write_whole(folder / name, text)
        written.append(folder / name)
    return tuple(written)


if __name__ == "__main__":
    for written_path in write_schemas(Path(sys.argv[1] if len(sys.argv) > 1 else "schemas")):
        print(written_path)
