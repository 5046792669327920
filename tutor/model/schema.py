"""What can an editor know of a problem file while it is being written? A JSON Schema, draft 4.

The schema is made from the tables that the reader of files uses, so that the two agree; it ships as
`problem.schema.json` beside this module (`python -m tutor.model.schema` prints it anew). It knows
one value at a time: whether a joint that is named is there, or a truss stands, only the reader and
`pinjoint check` can say. Patterns use nothing that any engine of regular expressions may lack.
"""

from __future__ import annotations

import json
import sys
from importlib.resources import files
from typing import Any

from tutor.model.amounts import LARGEST
from tutor.model.parts import AXES
from tutor.model.read import KEYS, NEEDED
from tutor.model.read_loads import MOST_LOADS, SMALLEST_LOAD
from tutor.model.read_parts import MOST_JOINTS, MOST_MEMBERS, NAME
from tutor.model.read_spread import MOST_SPREADS, PER
from tutor.model.read_varied import LOAD_PARTS, PLACE_PARTS, SPREAD_PARTS
from tutor.model.read_vary import MOST_VALUES, RANGE
from tutor.model.read_words import (
    FORCES,
    GIVEN,
    LENGTHS,
    LEVELS,
    LONGEST_TITLE,
    MOST_PERCENT,
    SOUNDNESS,
    TOLERANCES,
)
from tutor.model.supports import SUPPORTS

FILE = "problem.schema.json"
DRAFT = "http://json-schema.org/draft-04/schema#"
DASHES = "-‐‑–−"
SOME_TEXT = r"\S"

Schema = dict[str, Any]


def problem_schema() -> Schema:
    """The schema of a problem file as a JSON value."""
    return {
        "$schema": DRAFT,
        "title": "A problem file of pinjoint: one plane truss",
        "type": "object",
        "required": [key for key in NEEDED if key != "loads"],
        "anyOf": [{"required": ["loads"]}, {"required": ["spread"]}],
        "additionalProperties": False,
        "properties": {key: PROPERTIES[key] for key in KEYS},
        "definitions": DEFINITIONS,
    }


def schema_text() -> str:
    """The text of the schema's file."""
    return json.dumps(problem_schema(), indent=2, ensure_ascii=False) + "\n"


def shipped_text() -> str:
    """The text of the file that comes along."""
    return files("tutor.model").joinpath(FILE).read_text("utf-8")


def _ref(name: str) -> Schema:
    return {"$ref": f"#/definitions/{name}"}


def _text(description: str, **more: Any) -> Schema:
    return {"type": "string", "description": description, **more}


def _number(description: str, least: float, most: float) -> Schema:
    """A number within bounds, or an exact one in quotes."""
    number = {"type": "number", "minimum": least, "maximum": most}
    return {"description": description, "anyOf": [number, _ref("exact")]}


def _table(description: str, most: int | None, value: Schema) -> Schema:
    """A table with one entry for each of some joints."""
    size = {"minProperties": 1} | ({"maxProperties": most} if most is not None else {})
    names = {f"^{NAME.pattern}$": value}
    closed = {"additionalProperties": False}
    return (
        {"type": "object", "description": description}
        | size
        | closed
        | {"patternProperties": names}
    )


def _closed(description: str, required: list[str], properties: dict[str, Schema]) -> Schema:
    found: Schema = {"type": "object", "description": description, "additionalProperties": False}
    return found | ({"required": required} if required else {}) | {"properties": properties}


def _load() -> Schema:
    pushes: dict[str, Schema] = {way: _size(f"a push {way}, positive") for way in AXES}
    polar = {
        "size": _size("the size, positive, with an angle beside it"),
        "angle": _ref("angle"),
    }
    at = _text("the joint it acts on", pattern=f"^{NAME.pattern}$")
    load = _closed("one load at a joint", ["at"], {"at": at, **pushes, **polar})
    none = [{"required": [key]} for key in polar]
    some = [{"required": [way]} for way in AXES]
    load["oneOf"] = [
        {"anyOf": some, "not": {"anyOf": none}},
        {"required": list(polar), "not": {"anyOf": some}},
    ]
    return load


def _spread() -> Schema:
    pushes: dict[str, Schema] = {
        way: _size(f"a force {way} for each unit of length, positive") for way in AXES
    }
    on: Schema = {
        "type": "array",
        "description": "the members it lies on, as in members",
        "minItems": 1,
        "maxItems": MOST_MEMBERS,
        "uniqueItems": True,
        "items": MEMBER,
    }
    spread = _closed(
        "one load spread evenly along members",
        ["on"],
        {
            "on": on,
            **pushes,
            "total": _size("all of it, on all the members together, positive"),
            "way": {"enum": list(AXES), "description": "which way a total acts; down by itself"},
            "per": {
                "enum": list(PER),
                "description": "length: along the member; span: across the push, as snow is given",
            },
        },
    )
    none, some = [{"required": ["total"]}, {"required": ["way"]}], [{"required": [w]} for w in AXES]
    spread["oneOf"] = [
        {"anyOf": some, "not": {"anyOf": none}},
        {"required": ["total"], "not": {"anyOf": some}},
    ]
    return spread


def _size(description: str) -> Schema:
    return _number(description, SMALLEST_LOAD, LARGEST)


def _support() -> Schema:
    alone = [kind for kind in SUPPORTS.values() if kind.alone]
    plain = {
        "enum": [kind.name for kind in alone],
        "description": ", or ".join(kind.means for kind in alone),
    }
    of = {"angle": "angle", "point": "place"}
    with_more = [
        _closed(f"a {kind.name}: {kind.about}", [kind.name], {kind.name: _ref(of[kind.takes])})
        for kind in SUPPORTS.values()
        if kind.takes != "nothing"
    ]
    return {"anyOf": [plain, *with_more]}


def _values() -> Schema:
    some = {"type": "array", "minItems": 1, "maxItems": MOST_VALUES, "items": _ref("number")}
    ends = {key: _ref("number") for key in RANGE}
    return {"anyOf": [some, _closed("from, to, and the step between", list(RANGE), ends)]}


def _vary() -> Schema:
    def of(what: str, parts: tuple[str, ...]) -> Schema:
        each = _closed(what, [], {part: _ref("values") for part in parts})
        return {"type": "object", "description": what, "additionalProperties": each}

    scale = {part: _ref("values") for part in PLACE_PARTS}
    return _closed(
        "what differs from student to student",
        [],
        {
            "loads": of(
                "by joint, or by several with spaces: what the load there may be", LOAD_PARTS
            ),
            "spread": of(
                "by member, or by several with spaces: what the load on it may be", SPREAD_PARTS
            ),
            "joints": of("by joint, or by several with spaces: where it may be", PLACE_PARTS),
            "scale": _closed("what every place is multiplied by", [], scale),
            "mirror": {"type": "boolean", "description": "may be mirrored left to right"},
            "keep": {
                "type": "array",
                "description": 'conditions, like ["nice", "largest < 100", "AB in compression"]',
                "items": {"type": "string", "pattern": SOME_TEXT},
            },
        },
    )


MEMBER: Schema = {
    "type": "string",
    "pattern": rf"^\s*{NAME.pattern}\s*[{DASHES}]?\s*{NAME.pattern}\s*$",
}
DEFINITIONS: dict[str, Schema] = {
    "exact": _text(
        'an exact number in quotes, like "3/2" or "5*sqrt(3)/2"', pattern=SOME_TEXT, maxLength=500
    ),
    "number": _number("a number, in the units of the file", -LARGEST, LARGEST),
    "angle": _number("degrees from +x, counter-clockwise", -360, 360),
    "place": {
        "type": "array",
        "description": "x to the right and y up, like [4, 0]",
        "minItems": 2,
        "maxItems": 2,
        "items": _ref("number"),
    },
    "support": _support(),
    "load": _load(),
    "spread": _spread(),
    "values": _values(),
}

PROPERTIES: dict[str, Schema] = {
    "title": _text("one line", pattern=SOME_TEXT, maxLength=LONGEST_TITLE),
    "story": _text("any length; three quotes for several lines"),
    "topics": {
        "type": "array",
        "description": 'what it is about, like ["cantilever"]',
        "items": {"type": "string", "pattern": SOME_TEXT},
    },
    "level": {
        "type": "integer",
        "description": "how hard it is",
        "minimum": LEVELS[0],
        "maximum": LEVELS[-1],
    },
    "id": _text("a name of your own that stays when the title changes"),
    "given": {
        "type": "array",
        "description": "what the student is told at the start",
        "items": {"enum": list(GIVEN)},
    },
    "truss": {
        "enum": list(SOUNDNESS),
        "description": "what the student has to find out of it first",
    },
    "force": {"enum": list(FORCES), "description": "the unit of every force"},
    "length": {"enum": list(LENGTHS), "description": "the unit of every length"},
    "members": {
        "type": "array",
        "description": 'each member as its two joints, like "AB" or "U1-L2"',
        "minItems": 1,
        "maxItems": MOST_MEMBERS,
        "uniqueItems": True,
        "items": MEMBER,
    },
    "joints": _table("the place of each joint", MOST_JOINTS, _ref("place")),
    "supports": _table("what holds the truss, by joint", None, _ref("support")),
    "loads": {
        "type": "array",
        "description": "the loads, each under its own [[loads]]",
        "minItems": 1,
        "maxItems": MOST_LOADS,
        "items": _ref("load"),
    },
    "spread": {
        "type": "array",
        "description": "loads spread along members, each under its own [[spread]]",
        "minItems": 1,
        "maxItems": MOST_SPREADS,
        "items": _ref("spread"),
    },
    "tolerance": _closed(
        "how much rounding passes, in percent",
        [],
        {key: _number(TOLERANCES[key], 0, MOST_PERCENT) for key in TOLERANCES},
    ),
    "vary": _vary(),
}


if __name__ == "__main__":
    sys.stdout.write(schema_text())
