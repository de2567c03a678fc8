"""Sizes of conductors: names and areas against published wire tables."""

from __future__ import annotations

import pytest

from sld.wire_size import KCMIL_MM2, SIZES, area_mm2, name_of, size_of

WIRE_TABLE = "Lessons in Electric Circuits, volume V, copper wire gage table, http://www.w1ngl.us/ELE_web/REF_3.html"
CHAPTER_9 = "NEC Chapter 9 Table 8, areas in mm² (from memory)"


@pytest.mark.parametrize(
    ("size", "circular_mils"),
    [
        ("4/0", 211_600), ("3/0", 167_800), ("2/0", 133_100), ("1/0", 105_500), ("1", 83_690), ("2", 66_370),
        ("3", 52_630), ("4", 41_740), ("6", 26_250), ("8", 16_510), ("10", 10_380), ("12", 6_530),
    ],
)  # fmt: skip
def test_area_of_a_gauge(size: str, circular_mils: float) -> None:
    assert area_mm2(size) == pytest.approx(circular_mils / 1000 * KCMIL_MM2, rel=1e-3), WIRE_TABLE


@pytest.mark.parametrize(
    ("size", "printed_mm2"),
    [
        ("14", 2.08),
        ("10", 5.261),
        ("6", 13.30),
        ("1", 42.41),
        ("4/0", 107.2),
        ("250", 127),
        ("500", 253),
        ("1000", 507),
    ],
)
def test_area_rounds_to_the_printed_one(size: str, printed_mm2: float) -> None:
    assert area_mm2(size) == pytest.approx(printed_mm2, rel=3e-3), CHAPTER_9


@pytest.mark.parametrize(
    ("section_mm2", "name"),
    [(area_mm2("10"), "10 AWG"), (5.26, "10 AWG"), (area_mm2("2/0"), "2/0 AWG"), (area_mm2("250"), "250 kcmil"),
     (6.0, ""), (10.0, ""), (120.0, ""), (0.0, "")],
)  # fmt: skip
def test_name_of_an_area(section_mm2: float, name: str) -> None:
    assert name_of(section_mm2) == name


def test_every_size_is_found_again_and_they_rise() -> None:
    areas = [area_mm2(size) for size in SIZES]
    assert [size_of(area) for area in areas] == list(SIZES)
    assert areas == sorted(areas)


def test_no_metric_section_is_taken_for_a_size() -> None:
    """IEC 60228 nominal sections; 150 mm² and 300 kcmil (152 mm²) are the closest, 1.3 % apart."""
    for section_mm2 in (1.5, 2.5, 4, 6, 10, 16, 25, 35, 50, 70, 95, 120, 150, 185, 240, 300):
        assert name_of(section_mm2) == ""


@pytest.mark.parametrize("text", ["5/0", "1/1", "x", "41"])
def test_what_is_no_size_is_refused(text: str) -> None:
    with pytest.raises(ValueError, match=r"."):
        area_mm2(text)
