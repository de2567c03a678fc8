"""The JSON Schema of the spec language, held against the reader: what it refuses, the reader refuses too.

The validator is the general library jsonschema. That a schema lets through what the reader refuses is meant: names, and
what goes together, are the reader's.
"""

from __future__ import annotations

from functools import cache
from pathlib import Path
from typing import Any

import jsonschema
import pytest
from fuzz import case

import sld
from sld.spec.language.schema import schema
from sld.spec.source import read

SPECS = sorted((Path(__file__).parents[2] / "specs").glob("*.yaml"))


@cache
def validator() -> Any:
    return jsonschema.Draft202012Validator(schema())


def test_the_schema_is_one_by_the_draft() -> None:
    jsonschema.Draft202012Validator.check_schema(validator().schema)
    assert schema() == validator().schema


@pytest.mark.parametrize("path", SPECS, ids=lambda path: path.stem)
def test_every_spec_has_the_form_of_the_schema(path: Path) -> None:
    assert [error.message for error in validator().iter_errors(read(path).data)] == []


@pytest.mark.parametrize("count", [40, pytest.param(400, marks=pytest.mark.whole)])
def test_what_the_schema_refuses_the_reader_refuses(count: int) -> None:
    refused, number = 0, 0
    while refused < count:
        number += 1
        data = case(1, number)[1]
        if not validator().is_valid(data):
            refused += 1
            with pytest.raises(sld.Unusable):
                sld.load(data)
    assert number < 5 * count
