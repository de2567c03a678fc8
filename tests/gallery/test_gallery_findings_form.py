"""The page of the forms names every key of the schema, and the schema beside it is the one that outputs are held to."""

from __future__ import annotations

import json
from typing import Any

from sld.cli.check import Format
from sld.gallery.findings_form import findings_form, schema_text
from sld.report.schema import schema


def keys(part: Any) -> set[str]:
    if isinstance(part, list):
        return set().union(*map(keys, part), set())
    if not isinstance(part, dict):
        return set()
    own = set(part["properties"]) if isinstance(part.get("properties"), dict) else set()
    return own.union(*map(keys, part.values()))


def test_the_page_has_every_key_and_form() -> None:
    page = findings_form()
    assert {key for key in keys(schema()) if f"`{key}`" not in page} == set()
    assert len(keys(schema())) > 30
    assert {each.value for each in Format if f"| `{each.value}` |" not in page} == set()


def test_the_schema_is_the_same() -> None:
    assert json.loads(schema_text()) == schema()
