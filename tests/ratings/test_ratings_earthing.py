"""Protective, earthing and bonding conductors."""

from __future__ import annotations

import pytest

from sld.ratings.bonding import bonding_as_nzs, copper_equivalent, frame_bonding, main_bonding, main_bonding_pme
from sld.ratings.neutral import smallest_neutral
from sld.ratings.protective_conductor import (
    armour_equivalent,
    armour_resistance_ohm_per_km,
    buried_earthing_conductor,
    combined_conductor_minimum,
    earthing_conductor_as_nzs,
    high_leakage_minimum,
    laid_beside_minimum,
    protective_conductor_section,
    standard_section,
    table_section,
)
from sld.ratings.thermal import cleared_energy, section_for_energy
from sld.tables.table import NoRow


@pytest.mark.parametrize(
    ("line_mm2", "table_mm2"),
    [(1.5, 1.5), (16, 16), (16.01, 16), (35, 16), (35.01, 17.505), (150, 75)],
)
def test_table_section(line_mm2: float, table_mm2: float) -> None:
    # IEC 60364-5-54:2011 Table 54.2, https://the-regs.co.uk/blog/?p=280
    assert table_section(line_mm2).value == pytest.approx(table_mm2)


def test_half_of_150_is_rounded_up_not_to_the_nearest() -> None:
    chosen = protective_conductor_section(150)
    assert chosen is not None
    assert chosen.value == 95  # 75 mm² is nearer to 70 mm²


@pytest.mark.parametrize(("line_mm2", "answer"), [(600, 300), (600.1, None)])
def test_no_standard_section(line_mm2: float, answer: float | None) -> None:
    chosen = protective_conductor_section(line_mm2)
    assert (None if chosen is None else chosen.value) == answer


def test_standard_section_of_an_adiabatic_demand() -> None:
    # 1125 A for 0.1 s with k 143: 2.488 mm², so 2.5 mm² (own computation)
    chosen = standard_section(section_for_energy(cleared_energy(1125, 0.1).value, 143))
    assert chosen is not None
    assert chosen.value == 2.5


@pytest.mark.parametrize(
    ("leakage_ma", "material", "section_mm2"),
    [(10, "Cu", None), (10.01, "Cu", 10), (10.01, "Al", 16), (0, "Al", None)],
)
def test_high_leakage(leakage_ma: float, material: str, section_mm2: float | None) -> None:
    # IEC 60364-5-54:2011 543.7 (from memory)
    chosen = high_leakage_minimum(leakage_ma, material)
    assert (None if chosen is None else chosen.value) == section_mm2


def test_high_leakage_of_another_material() -> None:
    with pytest.raises(NoRow):
        high_leakage_minimum(20, "steel")


@pytest.mark.parametrize(
    ("protection", "material", "section_mm2"),
    [("corrosion_only", "copper", 16), ("none", "copper", 25), ("none", "steel", 50)],
)
def test_buried_earthing_conductor(protection: str, material: str, section_mm2: float) -> None:
    # IEC 60364-5-54 Table 54.1, https://www.elandcables.com/the-cable-lab/faqs/faq-earth-bonding-cable-size
    assert buried_earthing_conductor(protection, material).value == section_mm2


@pytest.mark.parametrize(
    ("protective_mm2", "bonding_mm2"),
    [(4, 6), (12, 6), (12.01, 10), (16, 10), (35, 25), (50, 25), (51, 25), (240, 25)],
)
def test_main_bonding(protective_mm2: float, bonding_mm2: float) -> None:
    # IEC 60364-5-54:2011 544.1: half, from 6 to 25 mm², https://the-regs.co.uk/blog/?p=280; 35 gives 17.5, so 25
    assert main_bonding(protective_mm2).value == bonding_mm2


@pytest.mark.parametrize(
    ("neutral_mm2", "bonding_mm2"),
    [(16, 10), (35, 10), (35.1, 16), (50, 16), (95, 25), (150, 35), (150.1, 50), (400, 50)],
)
def test_main_bonding_with_multiple_earthing(neutral_mm2: float, bonding_mm2: float) -> None:
    # BS 7671 Table 54.8, https://issuu.com/kanagagnana/docs/17th_edition_iee_wiring_regulations/188
    assert main_bonding_pme(neutral_mm2).value == bonding_mm2


@pytest.mark.parametrize(
    ("active_mm2", "material", "section_mm2"),
    [(2.5, "Cu", 2.5), (6, "Cu", 2.5), (16, "Cu", 6), (17, "Cu", 6), (120, "Cu", 35), (630, "Cu", 120), (4, "Al", 2.5),
     (16, "Al", 4), (150, "Al", 25)],
)  # fmt: skip
def test_earthing_conductor_in_australia(active_mm2: float, material: str, section_mm2: float) -> None:
    # AS/NZS 3000 Table 5.1, https://pangonilo.com/?p=202
    rating = earthing_conductor_as_nzs(active_mm2, material)
    assert rating is not None
    assert rating.value == section_mm2


def test_earthing_conductor_beyond_the_table() -> None:
    assert earthing_conductor_as_nzs(631, "Cu") is None


def test_bonding_in_australia() -> None:
    # AS/NZS 3000:2018 5.6.3.2, from memory
    assert bonding_as_nzs("AS/NZS 3000:2018 5.6.3.2").value == 4


@pytest.mark.parametrize(
    ("armour_mm2", "k_lines", "k_armour", "stands_for_mm2"),
    # by hand: 16 mm² of copper are 16 · 143/46 = 49.74 mm² of steel with XLPE, 16 · 115/51 = 36.08 mm² with PVC
    [(49.74, 143, 46, 16.0), (36.08, 115, 51, 16.0), (76, 143, 46, 24.45)],
)
def test_armour_as_protective_conductor(armour_mm2, k_lines, k_armour, stands_for_mm2) -> None:
    # BS 7671 Table 54.7, worked in https://ru.scribd.com/document/383258516/
    assert armour_equivalent(armour_mm2, k_lines, k_armour).value == pytest.approx(stands_for_mm2, rel=1e-3)


@pytest.mark.parametrize(("armour_mm2", "printed_ohm_per_km"), [(15, 10.2), (17, 8.8), (21, 7.9), (24, 7.0)])
def test_resistance_of_an_armour(armour_mm2: float, printed_ohm_per_km: float) -> None:
    # two-core cables of 1.5 to 6 mm²: resistances of Guide to the Wiring Regulations, 17th edition, Table 4.4,
    # https://www.scribd.com/document/455845828/app4-pdf; their sections of steel from memory
    assert armour_resistance_ohm_per_km(armour_mm2) == pytest.approx(printed_ohm_per_km, rel=0.1)


def test_resistance_of_steel_belongs_to_its_k() -> None:
    # IEC 60364-5-54 Annex A: K = √(Qc · (β + 20) / ρ20) with Qc 3.8e-3 J/(K·mm³), β 202 °C, K 78
    assert (3.8e-3 * 222 / (armour_resistance_ohm_per_km(1) / 1.1 * 1e-6)) ** 0.5 == pytest.approx(78, rel=0.005)


@pytest.mark.parametrize(("protected", "section_mm2"), [(True, 2.5), (False, 4)])
def test_protective_conductor_beside_a_cable(protected: bool, section_mm2: float) -> None:
    # IEC 60364-5-54 543.1.3, https://18theditionmock.com/temario/earthing-protective-conductors-and-bonding-part-5-chapter-54/
    assert laid_beside_minimum(protected).value == section_mm2


@pytest.mark.parametrize(
    ("section_mm2", "lines", "material", "neutral_mm2"),
    [(10, 3, "Cu", 10), (16, 3, "Cu", 16), (35, 3, "Cu", 16), (35, 2, "Cu", 35), (35, 1, "Cu", 35), (25, 3, "Al", 25),
     (95, 3, "Al", 25)],
)  # fmt: skip
def test_neutral_smaller_than_its_lines(section_mm2, lines, material, neutral_mm2) -> None:
    # IEC 60364-5-52 524.2, quoted in https://www.scribd.com/document/505816006/
    assert smallest_neutral(section_mm2, lines, material).value == neutral_mm2


def test_neutral_of_another_material() -> None:
    with pytest.raises(NoRow):
        smallest_neutral(35, 3, "steel")


@pytest.mark.parametrize(("material", "section_mm2"), [("Cu", 10), ("Al", 16)])
def test_combined_conductor(material: str, section_mm2: float) -> None:
    # https://digilib.universitaspertamina.ac.id/ebook/Electrical%20Safety%20of%20Low-Voltage%20Systems/files/basic-html/page214.html
    assert combined_conductor_minimum(material).value == section_mm2


def test_combined_conductor_without_a_value() -> None:
    with pytest.raises(NoRow):
        combined_conductor_minimum("steel")


@pytest.mark.parametrize(("material", "section_mm2", "copper_mm2"), [("Cu", 25, 25), ("Al", 95, 59.375)])
def test_copper_equivalent(material: str, section_mm2: float, copper_mm2: float) -> None:
    # IEC 60364-5-52 Annex G: 0.0225 and 0.036 Ω·mm²/m
    assert copper_equivalent(section_mm2, material).value == pytest.approx(copper_mm2)


@pytest.mark.parametrize(
    ("lightning", "material", "section_mm2"), [(False, "Cu", 6), (True, "Cu", 16), (True, "Al", 50)]
)
def test_frame_bonding(lightning: bool, material: str, section_mm2: float) -> None:
    # 6 mm²: https://resources.ipd.com.au/Flipbook/35_DS702_E_2014_Lightning_Protection_Guide/files/basic-html/page365.html
    # 16 mm²: https://cld.bz/bookdata/zrrcP5i/basic-html/page-27.html; aluminium from memory
    assert frame_bonding(lightning, material).value == section_mm2


def test_frame_bonding_without_a_value() -> None:
    with pytest.raises(NoRow):
        frame_bonding(False, "Al")
