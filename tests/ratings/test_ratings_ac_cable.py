"""Capacity, correction factors and choice of section, against printed tables and worked examples."""

from __future__ import annotations

import pytest

from sld.ratings.ac_cable import (
    ambient_factor,
    corrected_capacity,
    grouping_factor,
    soil_factor,
    tabulated_capacity,
)
from sld.ratings.cable_section import CableDesign, VoltageDemand, smallest_section
from sld.ratings.conductor import loaded_temperature, reactance, resistance
from sld.tables.table import NoRow


@pytest.mark.parametrize(
    ("temperature_c", "insulation", "medium", "factor"),
    [
        (40, "PVC", "air", 0.87),  # on a row
        (40.01, "PVC", "air", 0.79),  # a hair beyond: the hotter row
        (-20, "XLPE", "air", 1.15),  # colder than the table: no more than its first row
        (80, "XLPE", "air", 0.41),  # the last row
        (20, "PVC", "ground", 1.0),
        (60, "PVC", "ground", 0.45),
    ],
)
def test_ambient_factor(temperature_c: float, insulation: str, medium: str, factor: float) -> None:
    # IEC 60364-5-52:2009 Tables B.52.14 and B.52.15
    assert ambient_factor(temperature_c, insulation, medium).value == factor


@pytest.mark.parametrize(("temperature_c", "insulation"), [(61, "PVC"), (80.1, "XLPE"), (30, "paper")])
def test_no_ambient_factor(temperature_c: float, insulation: str) -> None:
    with pytest.raises(NoRow):
        ambient_factor(temperature_c, insulation)


@pytest.mark.parametrize(
    ("arrangement", "circuits", "factor"),
    [
        ("bunched_A_to_F", 1, 1.0),
        ("bunched_A_to_F", 9, 0.50),
        ("bunched_A_to_F", 10, 0.45),  # between 9 and 12: the larger group
        ("bunched_A_to_F", 20, 0.38),
        ("single_layer_perforated_tray_E_F", 21, 0.72),  # a layer loses no more above nine circuits
        ("single_layer_under_ceiling_C", 1, 0.95),
        ("D2_touching", 6, 0.50),
        ("D1_multicore_touching", 20, 0.34),
    ],
)
def test_grouping_factor(arrangement: str, circuits: int, factor: float) -> None:
    # IEC 60364-5-52:2009 Tables B.52.17 to B.52.19
    assert grouping_factor(arrangement, circuits).value == factor


@pytest.mark.parametrize(
    ("arrangement", "circuits"), [("bunched_A_to_F", 21), ("D1_multicore_0.25m", 7), ("in a heap", 2)]
)
def test_no_grouping_factor(arrangement: str, circuits: int) -> None:
    with pytest.raises(NoRow):
        grouping_factor(arrangement, circuits)


@pytest.mark.parametrize(
    ("resistivity", "method", "factor"), [(2.5, "D1", 1.0), (1.0, "D2", 1.5), (2.51, "D2", 0.9), (0.1, "D1", 1.28)]
)
def test_soil_factor(resistivity: float, method: str, factor: float) -> None:
    # IEC 60364-5-52:2009 Table B.52.16 (direct values from memory)
    assert soil_factor(resistivity, method).value == factor


def test_no_soil_factor_above_the_table() -> None:
    with pytest.raises(NoRow):
        soil_factor(3.01, "D1")


@pytest.mark.parametrize(
    ("material", "insulation", "loaded", "method", "section_mm2", "it_a"),
    [
        ("Cu", "PVC", 2, "C", 10, 63),  # not 65 A, which is the single-core value of BS 7671 Table 4D1A
        ("Cu", "XLPE", 2, "C", 10, 80),  # not 81 A (4E1A)
        ("Cu", "PVC", 3, "A1", 240, 286),  # a public copy prints 266
        ("Cu", "PVC", 2, "B1", 300, 458),  # 2009 edition; 477 is the 2001 edition
        ("Cu", "PVC", 2, "D1", 10, 60),  # 2009 edition; 63 is column D of the 2001 edition
        ("Al", "XLPE", 2, "D2", 120, 233),  # a public copy prints 223
        ("Cu", "XLPE", 3, "F3t", 150, 444),
        ("Cu", "XLPE", 2, "F2", 25, 161),
    ],
)
def test_tabulated_capacity_of_the_2009_edition(
    material: str, insulation: str, loaded: int, method: str, section_mm2: float, it_a: float
) -> None:
    assert tabulated_capacity(material, insulation, loaded, method, section_mm2).value == it_a


@pytest.mark.parametrize(
    ("material", "insulation", "loaded", "method", "section_mm2"),
    [
        ("Cu", "PVC", 2, "C", 12),
        ("Al", "PVC", 2, "D2", 10),  # an empty cell
        ("Al", "PVC", 2, "C", 1.5),
        ("Cu", "XLPE", 3, "F2", 25),
        ("Cu", "XLPE", 3, "F3t", 16),
        ("Cu", "XLPE", 3, "Z", 16),
    ],
)
def test_no_tabulated_capacity(material: str, insulation: str, loaded: int, method: str, section_mm2: float) -> None:
    with pytest.raises(NoRow):
        tabulated_capacity(material, insulation, loaded, method, section_mm2)


def test_parallel_cables_multiply() -> None:
    it = tabulated_capacity("Cu", "XLPE", 3, "E", 50)
    iz = corrected_capacity(it, [grouping_factor("single_layer_perforated_tray_E_F", 2)], parallel_count=2)
    assert iz.value == pytest.approx(2 * 192 * 0.88)
    assert str(iz.formula) == "n · It · Cg"


@pytest.mark.parametrize(
    ("section_mm2", "single_mv", "three_mv"),
    [(1.5, 31, 27), (2.5, 19, 16), (4, 12, 10), (6, 7.9, 6.8), (10, 4.7, 4.0), (16, 2.9, 2.5)],
)
def test_millivolts_per_ampere_and_metre(section_mm2: float, single_mv: float, three_mv: float) -> None:
    # BS 7671 Table 4E1B as printed at https://www.cse-distributors.co.uk/cable/technical-tables-useful-info/table-4e1b.html
    # (90 °C conductor; two significant digits)
    r = resistance("Cu", section_mm2, 90).value
    assert 2 * r == pytest.approx(single_mv, rel=0.03)
    assert 3**0.5 * r == pytest.approx(three_mv, rel=0.03)


@pytest.mark.parametrize(
    ("material", "temperature_c", "factor"),
    [("Cu", 20, 1), ("Cu", 70, 1.1965), ("Cu", 90, 1.2751), ("Al", 70, 1.2015), ("Al", 90, 1.2821)],
)
def test_resistance_at_temperature(material: str, temperature_c: float, factor: float) -> None:
    # https://www.uecables.com/471-power-copper-conductors-according-to-iec-60228.html (0.00393 and 0.00403 /K)
    r_20 = {"Cu": 1.15, "Al": 1.91}[material]
    assert resistance(material, 16, temperature_c).value == pytest.approx(r_20 * factor, rel=1e-4)


def test_flexible_and_tinned_conductors() -> None:
    # IEC 60228:2004 Tables 2 and 3
    assert resistance("Cu", 6, 20, conductor_class=5).value == 3.30
    assert resistance("Cu", 6, 20, tinned=True).value == 3.11


@pytest.mark.parametrize(
    ("material", "section_mm2", "conductor_class"), [("Al", 6, 2), ("Al", 16, 5), ("Cu", 11, 2), ("Ag", 10, 2)]
)
def test_no_such_conductor(material: str, section_mm2: float, conductor_class: int) -> None:
    with pytest.raises(NoRow):
        resistance(material, section_mm2, 20, conductor_class)


def test_a_temperature_below_absolute_zero_is_refused() -> None:
    with pytest.raises(ValueError, match="absolute_temperature_k"):
        resistance("Cu", 10, -300)


def test_reactance_default_says_that_it_is_assumed() -> None:
    # IEC 60364-5-52 Annex G, http://www.electrical-installation.org/enwiki/Calculation_of_voltage_drop_in_steady_load_conditions
    x = reactance()
    assert x.value == 0.08
    assert x.assumptions
    with pytest.raises(NoRow):
        reactance("knotted")


DESIGN = CableDesign("Cu", "XLPE", 3, "C")


@pytest.mark.parametrize(
    ("needed_a", "section_mm2"),
    [(71, 10), (71.001, 16), (0.1, 1.5), (576, 300), (576.001, None)],
)
def test_smallest_section_by_capacity(needed_a: float, section_mm2: float | None) -> None:
    # IEC 60364-5-52:2009 Table B.52.5, XLPE, method C: 10 mm² 71 A, 300 mm² 576 A
    chosen = smallest_section(DESIGN, needed_a)
    assert (None if chosen is None else chosen.value) == section_mm2


@pytest.mark.parametrize(("limit_percent", "section_mm2"), [(1.38, 10), (1.37, 16), (0.01, None)])
def test_smallest_section_by_voltage(limit_percent: float, section_mm2: float | None) -> None:
    # 28.87 A over 60 m: √3 · 28.87 · 0.060 · 1.83 / 400 = 1.3725 % in 10 mm² (own computation; a load flow
    # with the library of tests/reference: 1.3534 % at the real voltage)
    demand = VoltageDemand(3, 28.8675, 60, 400, limit_percent, conductor_temperature_c=20)
    chosen = smallest_section(DESIGN, 30, demand)
    assert (None if chosen is None else chosen.value) == section_mm2


def test_aluminium_starts_where_its_resistance_is_tabulated() -> None:
    demand = VoltageDemand(3, 10, 1, 400, 5, conductor_temperature_c=70)
    chosen = smallest_section(CableDesign("Al", "PVC", 3, "C"), 10, demand)
    assert chosen is not None
    assert chosen.value == 10  # IEC 60228 class 2 aluminium starts at 10 mm²


def test_a_design_without_any_table_is_refused() -> None:
    with pytest.raises(NoRow):
        smallest_section(CableDesign("Cu", "paper", 3, "C"), 10)


def test_parallel_cables_share_current_and_drop() -> None:
    one = VoltageDemand(3, 100, 50, 400, 0.5, conductor_temperature_c=90)
    chosen = smallest_section(CableDesign("Cu", "XLPE", 3, "E", parallel_count=2), 100, one, at_least_mm2=50)
    assert chosen is not None
    assert chosen.value == 70  # √3 · 50 A · 0.05 · 0.387 · 1.2751 / 400 = 0.534 % in 50 mm², 0.370 % in 70 mm²


def test_the_limit_of_voltage_holds_at_equality() -> None:
    # 10 A, 100 m, one phase, 10 mm² at 20 °C: 2 · 10 · 0.1 · 1.83 = 3.66 V (Ohm's law with IEC 60228)
    limit = 100 * (10 * 100 / 1000 * 1.83 * 2) / 230
    exact = smallest_section(DESIGN, 10, VoltageDemand(1, 10, 100, 230, limit, 20))
    tighter = smallest_section(DESIGN, 10, VoltageDemand(1, 10, 100, 230, limit * (1 - 1e-9), 20))
    assert exact is not None
    assert tighter is not None
    assert (exact.value, tighter.value) == (10, 16)


@pytest.mark.parametrize(("at_least_mm2", "section_mm2"), [(6, 6), (6.001, 10), (301, None)])
def test_a_least_section_is_kept(at_least_mm2: float, section_mm2: float | None) -> None:
    # a caller may ask for a section for other reasons; 300 mm² is the largest of the series
    chosen = smallest_section(DESIGN, 1, at_least_mm2=at_least_mm2)
    assert (None if chosen is None else chosen.value) == section_mm2


@pytest.mark.parametrize(
    ("hot_c", "reference_c", "i_a", "tabulated_a", "factor", "theta_c"),
    [
        (70, 30, 27, 27, 1, 70),  # the full tabulated current
        (70, 30, 0, 27, 1, 30),  # none: the air of the table
        (70, 30, 13.5, 27, 1, 40),  # half of it: a quarter of the 40 K
        (70, 30, 18.9, 27, 0.7, 70),  # the full current of a group of three circuits
        (90, 20, 50, 100, 1, 37.5),  # in the ground: 70 K in all
        (90, 30, 120, 100, 1, 116.4),  # overloaded: hotter than it bears
    ],
)
def test_temperature_of_a_conductor_under_its_current(hot_c, reference_c, i_a, tabulated_a, factor, theta_c) -> None:
    # BS 7671:2018 Appendix 4 6.1: tp − (C² − I²/It²)(tp − θ0), printed for 30 °C in
    # http://www.theiet.org/forums/forum/messageview.cfm?catid=205&threadid=47433
    assert loaded_temperature(hot_c, reference_c, i_a, tabulated_a, factor).value == pytest.approx(theta_c)
