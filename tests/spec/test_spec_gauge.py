"""Conductor sizes of North America in a spec, and what is said about those that are none."""

from __future__ import annotations

import pytest
from pydantic import TypeAdapter, ValidationError

from sld.spec.blocks.block import Metres, SquareMillimetres
from sld.wire_size import area_mm2

SECTION = TypeAdapter(SquareMillimetres)


@pytest.mark.parametrize(
    ("written", "size"),
    [
        ("10 AWG", "10"), ("10AWG", "10"), ("#10 AWG", "10"), ("AWG 10", "10"), ("10 awg", "10"), ("1/0 AWG", "1/0"),
        ("0 AWG", "1/0"), ("0000 AWG", "4/0"), ("250 kcmil", "250"), ("250 MCM", "250"), ("1000 kcmil", "1000"),
    ],
)  # fmt: skip
def test_sizes_are_read_as_areas(written: str, size: str) -> None:
    assert SECTION.validate_python(written) == pytest.approx(area_mm2(size), rel=1e-12)


@pytest.mark.parametrize(
    ("written", "message", "remedy"),
    [
        ("250 AWG", "no gauge number", "write the unit as kcmil"),
        ("11 AWG", "no gauge of a power conductor, expected 14, 12, 10", "the size of the conductor"),
        ("5/0 AWG", "4/0 AWG, or an area in kcmil", "the size of the conductor"),
        ("ten AWG", "cannot be read", "then AWG"),
        ("10 kcm", "unknown unit", "mm2"),
    ],
)
def test_what_is_no_size_is_explained(written: str, message: str, remedy: str) -> None:
    with pytest.raises(ValidationError) as told:
        SECTION.validate_python(written)
    (error,) = told.value.errors()
    assert message in error["msg"]
    assert remedy in error["ctx"]["remedy"]


def test_a_gauge_is_no_length() -> None:
    with pytest.raises(ValidationError):
        TypeAdapter(Metres).validate_python("10 AWG")
