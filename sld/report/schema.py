"""The JSON form of what a check found, as a JSON Schema (draft 2020-12): the one description of it.

Within a version keys are only ever added; a key that goes, or means something else, is a new version.
"""

from __future__ import annotations

from typing import Any

__all__ = ["SCHEMA_NAME", "VERSION", "schema"]

VERSION = 1
SCHEMA_NAME = "findings.schema.json"
"""The file of the schema in `gallery/`."""

_Data = dict[str, Any]


def _text(description: str) -> _Data:
    return {"type": "string", "description": description}


def _count(description: str) -> _Data:
    return {"type": "integer", "minimum": 0, "description": description}


def _list(items: _Data, description: str) -> _Data:
    return {"type": "array", "items": items, "description": description}


def _whole(properties: _Data, description: str, optional: tuple[str, ...] = ()) -> _Data:
    required = [name for name in properties if name not in optional]
    return {"type": "object", "description": description, "properties": properties, "required": required}


_PATH = _list({"type": ["string", "integer"]}, "The way to the value in the spec: keys, and indices from 0.")
_PLACE: _Data = {
    "file": _text("The file, as it was given or included."),
    "line": {"type": "integer", "minimum": 1, "description": "The line, from 1."},
    "column": {"type": "integer", "minimum": 1, "description": "The first character of the place, from 1."},
    "end_column": {"type": "integer", "minimum": 1, "description": "The character after its last one, from 1."},
    "path": _PATH,
}
_VALUE: _Data = {
    "symbol": _text("The letter symbol, as it is printed."),
    "value": {"type": ["number", "null"], "description": "The number; null where it has no bound."},
    "unit": _text("Its unit, empty for a plain number."),
}
_ACCEPTED = _whole(
    {"reason": _text("Why."), "role": _text("Who, by role."), "date": _text("When.")},
    "What the spec says where it accepts the finding, else null.",
)
_FINDING = _whole(
    {
        "code": _text("What kind of finding it is; `sld explain CODE` has more."),
        "severity": {
            "enum": ["error", "danger", "non-compliance", "advice", "assumption"],
            "description": "How bad it is; an error keeps the spec from being used.",
        },
        "message": _text("What is wrong, with the values."),
        "remedy": _text("What to do."),
        "device": _text("The key of the device that it is about, empty for the whole system."),
        **_PLACE,
        "also": _list(
            _whole({**_PLACE, "word": _text("What is there.")}, "A further place."), "Further places that matter."
        ),
        "compared": _list(_whole(_VALUE, "A value."), "The values that were compared."),
        "accepted": {"anyOf": [{"$ref": "#/$defs/accepted"}, {"type": "null"}], "description": "Who accepts it."},
    },
    "Something to tell about a spec.",
)
_RATING = _whole(
    {
        "device": _text("The designation of the device, or the key of what is none."),
        "key": _text("The key of the device."),
        **_VALUE,
        "formula": _text("How it was computed."),
        "inputs": _list({"type": "string"}, "What went into it."),
        "clause": _text("The clause that it follows."),
        "table_row": _text("The row of a table that it was taken from."),
        "assumptions": _list({"type": "string"}, "What was assumed for it."),
    },
    "A rating with its reason.",
)
_COUNTS = _whole(
    {
        "danger": _count("Open findings of this severity."),
        "non_compliance": _count("Open findings of this severity."),
        "advice": _count("Open findings of this severity."),
        "assumption": _count("What was assumed."),
        "accepted": _count("Findings that the spec accepts."),
    },
    "How many findings there are; none where the spec cannot be used.",
)
_SPEC = _whole(
    {
        "spec": _text("The file, as it was given."),
        "usable": {"type": "boolean", "description": "Whether it could be read, resolved and rated."},
        "findings": _list({"$ref": "#/$defs/finding"}, "What was found."),
        "counts": {"$ref": "#/$defs/counts"},
        "ratings": _list({"$ref": "#/$defs/rating"}, "Every rating, where the spec can be used."),
        "fault": _text("What ended the check of this spec early; then there are no findings."),
    },
    "What came of a spec; with `--format jsonl` each line is one of these.",
    optional=("counts", "ratings", "fault"),
)


def schema() -> _Data:
    """Return the schema of what `sld check --format json` prints."""
    whole = _whole(
        {
            "schema": {"const": VERSION, "description": "The version of this form."},
            "specs": _list({"$ref": "#/$defs/spec"}, "What came of each spec, in their order."),
        },
        "What `sld check --format json` prints. Keys may be added within a version.",
    )
    return {
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "title": f"Findings of sld, version {VERSION}",
        **whole,
        "$defs": {
            "spec": _SPEC,
            "finding": _FINDING,
            "accepted": _ACCEPTED,
            "counts": _COUNTS,
            "rating": _RATING,
        },
    }
