"""A mapping of Python is read as the text that it makes, and refused at its keys."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import date
from decimal import Decimal
from fractions import Fraction
from types import MappingProxyType
from typing import Any

import pytest

from sld.spec.mapping import read_mapping
from sld.spec.source import Unusable


@pytest.mark.parametrize(
    ("given", "read"),
    [
        ("25 m", "25 m"),
        ("200:5", "200:5"),
        ("010", "010"),
        ("yes", "yes"),
        ("null", "null"),
        ("", ""),
        ('a "quote", {braces}: [x] # no comment', 'a "quote", {braces}: [x] # no comment'),
        ("two\nlines\u2028three", "two\nlines\u2028three"),
        ("é Ω 😀 \U0001f9f0", "é Ω 😀 \U0001f9f0"),
        (7, 7),
        (-0.26, -0.26),
        (1e-5, 1e-5),
        (1e16, 1e16),
        (True, True),
        (None, None),
        (Fraction(1, 4), 0.25),
        (float("nan"), "nan"),
        (float("-inf"), "-inf"),
        (date(2026, 3, 31), "2026-03-31"),
        ((1, [2, {}]), [1, [2, {}]]),
        (MappingProxyType({"a": 1}), {"a": 1}),
        ({1: "a"}, {"1": "a"}),
    ],
)
def test_what_a_value_is_read_as(given: object, read: object) -> None:
    found = read_mapping({"key": given}, "<mapping>").data["key"]
    assert found == read
    assert type(found) is type(read)


def _itself() -> dict[str, Any]:
    mapping: dict[str, Any] = {"a": {"b": [1]}}
    mapping["a"]["b"].append(mapping["a"])
    return mapping


def _deep(count: int) -> dict[str, Any]:
    found: dict[str, Any] = {}
    for _ in range(count):
        found = {"a": found}
    return found


@pytest.mark.parametrize(
    ("mapping", "code", "at", "told"),
    [
        ({"a": [{"b": object()}]}, "SP34", ("a", 0, "b"), "class `object`"),
        ({"a": Decimal(1)}, "SP34", ("a",), "class `Decimal`"),
        ({"a": {1, 2}}, "SP34", ("a",), "class `set`"),
        ({"a": b"text"}, "SP34", ("a",), "class `bytes`"),
        ({"a": {None: 1}}, "SP17", ("a", "None"), "class `NoneType`"),
        ({"a": {True: 1}}, "SP17", ("a", "True"), "class `bool`"),
        ({"a": {1: 1, "1": 2}}, "SP11", ("a", "1"), "given twice"),
        (_itself(), "SP16", ("a", "b", 1), "holds itself"),
    ],
)  # fmt: skip
def test_what_is_refused_at_its_keys(mapping: Mapping[Any, Any], code: str, at: tuple[Any, ...], told: str) -> None:
    with pytest.raises(Unusable) as caught:
        read_mapping(mapping, "<mapping>")
    (finding,) = caught.value.findings
    assert (finding.code, finding.at) == (code, at)
    assert told in str(finding.message)
    assert at in caught.value.source.spots
    assert str(caught.value).startswith("<mapping>:")
    assert "^" in caught.value.quoted()


def test_every_value_that_is_refused_is_told() -> None:
    with pytest.raises(Unusable) as caught:
        read_mapping({"a": object(), "b": [Decimal(1), 2, {3}]}, "<mapping>")
    assert [each.at for each in caught.value.findings] == [("a",), ("b", 0), ("b", 2)]


@pytest.mark.parametrize(
    ("mapping", "code"),
    [
        (_deep(51), "SP16"),
        ({"a": [0] * 100_001}, "SP02"),
        ({"a": "x" * 2_000_001}, "SP02"),
        ({"": 1}, "SP17"),
        ({"a": "bell \x07"}, "SP04"),
        ({"a": "turned \u202e"}, "SP04"),
    ],
)
def test_what_no_text_may_hold_is_refused_as_there(mapping: dict[str, Any], code: str) -> None:
    with pytest.raises(Unusable) as caught:
        read_mapping(mapping, "<mapping>")
    assert [each.code for each in caught.value.findings] == [code]


def test_as_deep_as_a_text_may_be() -> None:
    assert read_mapping(_deep(49), "<mapping>").data == _deep(49)


def test_a_list_within_itself_many_times_ends() -> None:
    endless: list[Any] = []
    endless += [endless] * 50
    shared: Any = 1
    for _ in range(40):
        shared = [shared, shared]  # 2 to the power of 40 values, none within itself
    for each in (endless, shared):
        with pytest.raises(Unusable):
            read_mapping({"a": each}, "<mapping>")


def test_what_is_read_is_a_copy() -> None:
    mapping = {"a": {"b": 1}}
    source = read_mapping(mapping, "<mapping>")
    mapping["a"]["b"] = 2
    assert source.data == {"a": {"b": 1}}
