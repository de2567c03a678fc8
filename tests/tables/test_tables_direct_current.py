"""Spot checks of the DC tables against what the sources print, and against physics that does not use them."""

from __future__ import annotations

from itertools import pairwise
from math import sqrt

import pytest

from sld.tables.table import table

CABLE_SHEET = (
    "https://www.yongbencable.com/products/Electric-Wires/solar-cable-pv1-f-tinned-copper-photovoltaic-cable.html"
)
NEC_TABLE = "https://www.easymanua.ls/generac-power-systems/pv-link/manual?p=11"
INSULATION = "https://mwitty.com/content.php?id=5905340"


@pytest.mark.parametrize(
    ("from_f", "factor"),
    [(41, 1.08), (32, 1.10), (23, 1.12), (14, 1.14), (5, 1.16), (-4, 1.18), (-13, 1.20), (-22, 1.21), (-31, 1.23)],
)
def test_voltage_correction_equals_the_fahrenheit_table(from_f: float, factor: float) -> None:
    # NEC Table 690.7(A) in degrees Fahrenheit, as reproduced in NEC_TABLE; each lower end is the Celsius one.
    assert table("voltage_correction").pick(t_from_c=(from_f - 32) / 1.8).number("factor") == factor, NEC_TABLE


def test_voltage_correction_bins_meet_without_a_gap() -> None:
    rows = table("voltage_correction").rows
    assert len(rows) > 5
    for warmer, colder in pairwise(rows):
        assert float(colder["t_to_c"]) + 1 == float(warmer["t_from_c"])
        assert colder.number("factor") > warmer.number("factor")


@pytest.mark.parametrize(("section", "i_z"), [(1.5, 30), (2.5, 41), (4, 55), (6, 70), (10, 98), (16, 132), (25, 176)])
def test_capacity_in_free_air_as_printed(section: float, i_z: float) -> None:
    row = table("en50618_capacity").pick(section_mm2=section, arrangement="single_in_air")
    assert row.number("i_z_a") == i_z, CABLE_SHEET
    assert row.status == "seen"


@pytest.mark.parametrize("arrangement", ["single_in_air", "single_on_surface", "two_touching"])
def test_capacity_grows_with_the_section_and_less_than_in_proportion(arrangement: str) -> None:
    rows = table("en50618_capacity").where(arrangement=arrangement)
    assert len(rows) > 5
    for small, large in pairwise(rows):
        growth = large.number("i_z_a") / small.number("i_z_a")
        assert 1 < growth < large.number("section_mm2") / small.number("section_mm2")


def test_closer_cables_carry_less() -> None:
    for section in {row["section_mm2"]: None for row in table("en50618_capacity")}:
        air, surface, touching = (row.number("i_z_a") for row in table("en50618_capacity").where(section_mm2=section))
        assert air > surface > touching


@pytest.mark.parametrize("row", table("en50618_ambient").rows, ids=lambda row: row["t_ambient_c"])
def test_ambient_factor_is_near_the_heat_balance(row) -> None:  # type: ignore[no-untyped-def]
    # Heat given off is in proportion to the temperature difference: factor = sqrt((120 - Ta)/60), own calculation.
    assert row.number("factor") == pytest.approx(sqrt((120 - row.number("t_ambient_c")) / 60), rel=0.07)


@pytest.mark.parametrize(("section", "r_20"), [(1.5, 13.7), (4, 5.09), (6, 3.39), (10, 1.95), (16, 1.24), (25, 0.795)])
def test_resistance_of_tinned_conductors_as_printed(section: float, r_20: float) -> None:
    row = table("tinned_conductor_resistance").pick(section_mm2=section)
    assert row.number("r_20_ohm_per_km") == r_20, CABLE_SHEET


@pytest.mark.parametrize("row", table("tinned_conductor_resistance").rows, ids=lambda row: row["section_mm2"])
def test_tin_adds_little_to_the_plain_conductor(row) -> None:  # type: ignore[no-untyped-def]
    # IEC 60228 Table 3: metal-coated wires are a few percent above plain ones of the same class.
    plain = table("conductor_resistance").pick(section_mm2=row.number("section_mm2")).number("Cu_class5")
    assert 1.0 < row.number("r_20_ohm_per_km") / plain < 1.035


@pytest.mark.parametrize(("from_v", "test_v", "resistance_mohm"), [(0, 250, 0.5), (120, 500, 1), (500, 1000, 1)])
def test_insulation_test_as_printed(from_v: float, test_v: float, resistance_mohm: float) -> None:
    row = table("insulation_test").pick(from_v=from_v)
    assert (row.number("test_v"), row.number("resistance_min_mohm")) == (test_v, resistance_mohm), INSULATION


@pytest.mark.parametrize(("premises", "numerator"), [("dwelling", 115), ("ground", 200), ("building", 450)])
def test_critical_length_as_printed(premises: str, numerator: float) -> None:
    # http://photovoltaique.guidenr.fr/informations_techniques/dimensionnement-photovoltaique-continu/parafoudre-cc.php
    assert table("spd_critical_length").pick(premises=premises).number("length_times_density") == numerator


def test_functional_earth_and_insulation_rows_go_the_cautious_way() -> None:
    # IEC 62548:2016 6.4 (from memory): a larger array may have a larger fuse and a smaller resistance to earth.
    fuses = [row.number("i_n_max_a") for row in table("functional_earth_fuse")]
    assert fuses == [1, 2, 3, 4, 5]
    resistances = [row.number("resistance_min_kohm") for row in table("array_insulation_minimum")]
    assert resistances == [30, 20, 15, 10, 7, 4, 2, 1]
