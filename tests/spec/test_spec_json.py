"""Findings as JSON, and specs as the encoders of JSON write them (RFC 8259)."""

from __future__ import annotations

import json
from math import inf, nan

import pytest

from sld.finding import Finding, Severity
from sld.quantity import Rating
from sld.spec.quote import as_json
from sld.spec.source import read_text


@pytest.mark.parametrize(("value", "written"), [(inf, None), (-inf, None), (nan, None), (1.5, 1.5)])
def test_no_number_is_written_that_json_has_not(value: float, written: float | None) -> None:
    """RFC 8259 section 6: numeric values such as Infinity and NaN are not permitted."""
    rating = Rating("In,max", value, "A", "none", (), "a clause")
    finding = Finding("DC08", Severity.DANGER, "m", "r", ("project",), compared=(rating,))
    document = as_json(read_text("project: {}\n"), finding)
    text = json.dumps(document, allow_nan=False)
    assert json.loads(text)["compared"][0]["value"] == written
