"""Findings as JSON, and specs as the encoders of JSON write them (RFC 8259)."""

from __future__ import annotations

import json
from math import inf, nan

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from sld.finding import Finding, Severity
from sld.quantity import Rating
from sld.spec.quote import as_json
from sld.spec.source import Unusable, read_text


@pytest.mark.parametrize(("value", "written"), [(inf, None), (-inf, None), (nan, None), (1.5, 1.5)])
def test_no_number_is_written_that_json_has_not(value: float, written: float | None) -> None:
    """RFC 8259 section 6: numeric values such as Infinity and NaN are not permitted."""
    rating = Rating("In,max", value, "A", "none", (), "a clause")
    finding = Finding("DC08", Severity.DANGER, "m", "r", ("project",), compared=(rating,))
    document = as_json(read_text("project: {}\n"), finding)
    text = json.dumps(document, allow_nan=False)
    assert json.loads(text)["compared"][0]["value"] == written


@pytest.mark.parametrize(
    "title",
    [
        "\U0001f600",
        "a \U0001f600 b \U0010ffff\U00010000 c",
        r"not one: \ud83d\ude00",
        r"\\" + "\U0001f600",
        "\uf83d\ufe00",  # these stand in for a pair while it is read
        "é – \u2009 Ω",
    ],
)
@pytest.mark.parametrize("ascii_only", [True, False])
def test_what_an_encoder_writes_is_read(title: str, ascii_only: bool) -> None:
    data = {"project": {title if title.isprintable() else "x": "key", "title": title, "next": 1}}
    source = read_text(json.dumps(data, ensure_ascii=ascii_only))
    assert source.data == data
    text = source.lines("-")
    if len(text) == 1:  # U+2028 ends a line of YAML
        span = source.locate(("project", "next"), on_key=True)
        assert text[0][span.column - 1 :][: span.width] == '"next"'


@settings(derandomize=True, max_examples=200, deadline=None)
@given(st.text(st.characters(categories=["L", "N", "P", "S"]), min_size=1, max_size=8))
def test_every_text_comes_back(title: str) -> None:
    assert read_text(json.dumps({"project": {"title": title}})).data["project"]["title"] == title


@pytest.mark.parametrize("plain", [r"'\ud83d\ude00'", r"\ud83d\ude00", r"a\uD83D\uDe00b"])
def test_outside_of_double_quotes_an_escape_is_letters(plain: str) -> None:
    assert read_text(f"project: {{title: {plain}}}\n").data["project"]["title"] == plain.strip("'")


@pytest.mark.parametrize("half", [r"\ud83d", r"\ude00", r"a\ude00\ud83d"])
def test_half_a_pair_is_refused_with_advice_that_json_can_follow(half: str) -> None:
    with pytest.raises(Unusable) as caught:
        read_text(f'{{"project": {{"title": "{half}"}}}}')
    (finding,) = caught.value.findings
    assert finding.code == "SP19"
    assert "half" in str(finding.message)
    assert "single quotes" not in str(finding.remedy)
