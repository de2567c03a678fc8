"""The page and the schema of the forms in which findings are written."""

from __future__ import annotations

import json
from collections.abc import Iterator
from typing import Any

from sld.gallery.markdown import GENERATED, code, plain, table_lines
from sld.report.schema import SCHEMA_NAME, VERSION, schema

__all__ = ["findings_form", "schema_text"]

_TOP = f"""# Findings for machines

`sld check SPEC... --format FORM` writes what was found to standard output, and nothing else there. The exit code is the
same in every form.

| form | what it is | for whom |
| --- | --- | --- |
| `text` | each finding with its line of the spec and what to do | a person |
| `json` | one object with all specs, after the last one | a program that wants everything |
| `jsonl` | one object a line, a spec each, as soon as it is checked | a long run, line by line |
| `sarif` | SARIF 2.1.0 (OASIS) | editors and code hosts, which show it beside the lines |
| `junit` | JUnit XML: a suite a spec, a case a finding | build servers |

In SARIF an error, a danger and a non-compliance have the level `error`, advice is a `note`, an assumption is of the
kind `informational`; the word of ours stands in `properties.severity`. In JUnit XML a finding from `--fail-on` upwards
is a failure, input that cannot be used an error. What the spec accepts is suppressed in the one and skipped in the
other, with its reason.

## The JSON form, version {VERSION}

Its schema is [{SCHEMA_NAME}]({SCHEMA_NAME}) (JSON Schema, draft 2020-12). `jsonl` has an element of `specs` on each
line. Within a version keys are only ever added; a key that goes, or comes to mean something else, is a new version,
which `schema` tells. Lines and columns count from 1, in characters; `end_column` is the one after the last character.
"""


def findings_form() -> str:
    """Return the page."""
    whole = schema()
    lines = [GENERATED, "", _TOP, *_table("The whole", whole)]
    for name, part in whole["$defs"].items():
        lines += _table(name.capitalize(), part)
    return "\n".join(lines).rstrip() + "\n"


def schema_text() -> str:
    """Return the schema as it stands beside the page."""
    return json.dumps(schema(), indent=1, ensure_ascii=False) + "\n"


def _table(title: str, part: dict[str, Any]) -> Iterator[str]:
    yield from (f"### {title}", "", plain(part["description"]), "")
    required = part["required"]
    yield from table_lines(
        ("key", "what it is", "form"),
        (
            (code(key) + ("" if key in required else " (not always)"), plain(each.get("description", "")), _form(each))
            for key, each in part["properties"].items()
        ),
    )
    for each in part["properties"].values():
        inner = each.get("items", {})
        if "properties" in inner:
            yield plain(f"{inner['description'].rstrip('.')}: {', '.join(code(key) for key in inner['properties'])}.")
            yield ""


def _form(each: dict[str, Any]) -> str:
    """Return what a value looks like, in a few words."""
    if "$ref" in each:
        return str(each["$ref"]).rpartition("/")[2]
    if "const" in each:
        return code(str(each["const"]))
    if "enum" in each:
        return ", ".join(map(code, each["enum"]))
    if "anyOf" in each:
        return " or ".join(map(_form, each["anyOf"]))
    if each["type"] == "array":
        inner = each["items"]
        return f"list of {_form(inner) if '$ref' in inner or 'properties' not in inner else 'objects, below'}"
    types = each["type"] if isinstance(each["type"], list) else [each["type"]]
    return " or ".join(types)
