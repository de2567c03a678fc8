"""Whole-table laws of the tables behind the AC ratings: what a typing error would break."""

from __future__ import annotations

from itertools import pairwise
from math import log, sqrt

import pytest

from sld.tables.table import Row, table

METHODS = ("A1", "A2", "B1", "B2", "C", "D1", "D2", "E")
FREE_AIR = ("F2", "F3f", "F3t", "Gh", "Gv")
FAMILIES = [
    (material, insulation, count) for material in ("Cu", "Al") for insulation in ("PVC", "XLPE") for count in (2, 3)
]


def column(rows: tuple[Row, ...], name: str) -> list[float]:
    return [row.number(name) for row in rows if row.has(name)]


def rises(values: list[float]) -> bool:
    return all(left < right for left, right in pairwise(values))


@pytest.mark.parametrize(("material", "insulation", "count"), FAMILIES)
@pytest.mark.parametrize("method", METHODS)
def test_capacity_rises_with_the_section(material: str, insulation: str, count: int, method: str) -> None:
    rows = table("capacity_iec60364").where(material=material, insulation=insulation, loaded_conductors_count=count)
    assert rises(column(rows, "section_mm2"))
    assert rises(column(rows, method))
    with_lighting = insulation == "PVC" and material == "Cu"  # 1 mm² of BS 7671 too
    assert len(rows) == (15 if material == "Al" else 16 + with_lighting)


@pytest.mark.parametrize("material", ["Cu", "Al"])
@pytest.mark.parametrize("insulation", ["PVC", "XLPE"])
@pytest.mark.parametrize("method", METHODS)
def test_two_loaded_conductors_carry_more_than_three(material: str, insulation: str, method: str) -> None:
    two, three = (
        column(
            table("capacity_iec60364").where(material=material, insulation=insulation, loaded_conductors_count=count),
            method,
        )
        for count in (2, 3)
    )
    assert all(left > right for left, right in zip(two, three, strict=True))


@pytest.mark.parametrize(("material", "insulation", "count"), FAMILIES)
def test_better_cooled_methods_carry_more(material: str, insulation: str, count: int) -> None:
    rows = table("capacity_iec60364").where(material=material, insulation=insulation, loaded_conductors_count=count)
    assert len(rows) > 5
    for row in rows:
        assert row.number("A1") >= row.number("A2")
        assert row.number("B1") >= row.number("B2") > row.number("A2")
        assert row.number("E") >= row.number("C")


@pytest.mark.parametrize("method", METHODS)
@pytest.mark.parametrize("count", [2, 3])
@pytest.mark.parametrize("material", ["Cu", "Al"])
def test_the_hotter_insulation_carries_more(material: str, count: int, method: str) -> None:
    pvc, xlpe = (
        column(
            table("capacity_iec60364").where(material=material, insulation=insulation, loaded_conductors_count=count),
            method,
        )
        for insulation in ("PVC", "XLPE")
    )
    of_both = pvc[-len(xlpe) :]  # 1 mm² is tabulated with PVC alone
    assert all(hot > cold for hot, cold in zip(xlpe, of_both, strict=True))


@pytest.mark.parametrize("insulation", ["PVC", "XLPE"])
@pytest.mark.parametrize("name", FREE_AIR)
def test_single_core_capacity_rises_with_the_section(insulation: str, name: str) -> None:
    rows = table("capacity_single_core_iec60364").where(insulation=insulation)
    assert len(rows) == 10
    assert rises(column(rows, name))


@pytest.mark.parametrize("insulation", ["PVC", "XLPE"])
def test_single_core_order_of_arrangements(insulation: str) -> None:
    rows = table("capacity_single_core_iec60364").where(insulation=insulation)
    assert len(rows) > 5
    for row in rows:
        assert row.number("Gh") > row.number("Gv") > row.number("F3f") > row.number("F3t")
        assert row.number("F2") > row.number("F3f")


@pytest.mark.parametrize(
    ("name", "hottest_c", "reference_c", "values"),
    [("air_PVC", 70, 30, 11), ("air_XLPE", 90, 30, 15), ("ground_PVC", 70, 20, 11), ("ground_XLPE", 90, 20, 15)],
)
def test_ambient_factors_follow_the_square_root_law(
    name: str, hottest_c: float, reference_c: float, values: int
) -> None:
    # heat balance of a conductor: current² is proportional to the temperature difference (IEC 60287)
    rows = [row for row in table("ambient_factor") if row.has(name)]
    assert len(rows) == values
    for row in rows:
        law = sqrt((hottest_c - row.number("temperature_c")) / (hottest_c - reference_c))
        assert row.number(name) == pytest.approx(law, abs=0.0076)


def test_grouping_never_rises_and_never_leaves_its_range() -> None:
    grouping = table("grouping_factor")
    arrangements = dict.fromkeys(row["arrangement"] for row in grouping)
    assert len(arrangements) == 15
    for arrangement in arrangements:
        values = column(grouping.where(arrangement=arrangement), "factor")
        assert values == sorted(values, reverse=True)
        assert 0.25 < values[-1] <= values[0] <= 1


@pytest.mark.parametrize("name", ["D1", "D2"])
def test_soil_factors_fall_and_are_one_at_the_reference(name: str) -> None:
    values = column(table("soil_factor").rows, name)
    assert rises(values[::-1])
    assert table("soil_factor").pick(resistivity_k_m_per_w=2.5).number(name) == 1


@pytest.mark.parametrize("name", ["Cu_class2", "Cu_class5", "Al_class2", "Cu_class2_tinned"])
def test_resistance_falls_with_the_section(name: str) -> None:
    assert rises(column(table("conductor_resistance").rows, name)[::-1])


def test_resistance_is_near_resistivity_over_section() -> None:
    # IEC 60228 limits times the nominal section: 0.0172 Ω·mm²/m (annealed copper, IEC 60028) and stranding
    for row in table("conductor_resistance"):
        resistivity = row.number("Cu_class2") * row.number("section_mm2") / 1000
        assert 0.0172 < resistivity < 0.0194


def k_by_formula(material: str, initial_c: float, final_c: float) -> float:
    """K · √ln(1 + (θf − θi) / (β + θi)), IEC 60364-5-54:2011 Annex A."""
    row = table("conductor_material").pick(material=material)
    beta_c = row.number("adiabatic_beta_c")
    return row.number("adiabatic_k_constant") * sqrt(log(1 + (final_c - initial_c) / (beta_c + initial_c)))


@pytest.mark.parametrize("row", table("k_factor").rows, ids=lambda row: f"{row['use']}-{row['insulation']}")
def test_tabulated_k_follows_its_formula(row: Row) -> None:
    # IEC 60364-5-54:2011 Annex A: the table was computed from this formula
    computed = k_by_formula(row["material"], row.number("initial_temperature_c"), row.number("final_temperature_c"))
    assert row.number("k") == pytest.approx(computed, abs=1.0)


def test_a_misprinted_k_is_caught_by_the_formula() -> None:
    # a public copy prints 78 for aluminium in PVC above 300 mm²; the formula gives 68
    assert k_by_formula("Al", 70, 140) != pytest.approx(78, abs=1.0)
    assert k_by_formula("Al", 70, 140) == pytest.approx(68, abs=1.0)
