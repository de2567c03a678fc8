"""DC cables by what they are made of and how they are laid: capacity, resistance and section."""

from __future__ import annotations

import pytest

from sld.ratings.ac_cable import ambient_factor, declared_factor, grouping_factor
from sld.ratings.dc_section import ByMethod, Drop, FreeAir, capacity, hot_resistance, smallest_section
from sld.ratings.symbol import Symbol
from sld.tables.table import NoRow
from sld.words import phrase

KEMPE = "http://kabelmetal-indonesia.com/technical-information/type-designation/conductor-specification.html"
"""IEC 60228 aluminium as a maker prints it: 16 mm² 1.91, 50 mm² 0.641, 95 mm² 0.320 ohm/km at 20 °C."""

AIR = (ambient_factor(50, "PVC"), grouping_factor("bunched_A_to_F", 2))
DUCT = (ambient_factor(20, "XLPE", "ground"), grouping_factor("bunched_A_to_F", 12))
HALF = declared_factor(Symbol.C_DECLARED, 0.5, phrase("sun"))


@pytest.mark.parametrize(
    ("laid", "section", "capacity_a"),
    [
        # IEC 60364-5-52:2009 B.52.2 C 4 mm² 36 A; B.52.14 50 °C 0.71; B.52.17 two bunched 0.80: 20.448 A
        (ByMethod("Cu", "PVC", "C", 50, AIR), 4, 20.448),
        # B.52.3 aluminium 16 mm² D1 71 A; B.52.15 20 °C 1.00; twelve in one duct 0.45: 31.95 A
        (ByMethod("Al", "XLPE", "D1", 20, DUCT), 16, 31.95),
        # B.52.10 two single-core cables touching in free air, 25 mm² XLPE 161 A
        (ByMethod("Cu", "XLPE", "F", 30), 25, 161),
        # air as warm as the conductor may be takes no heat: nothing is left
        (ByMethod("Cu", "PVC", "B2", 70), 240, 0),
        (ByMethod("Cu", "XLPE", "E", 90), 240, 0),
        (FreeAir("single_in_air", 90, 1, 90), 10, 0),
        # EN 50618: 55 A in air of 60 °C, conductor held to 90 °C: 55 · √(30 / 60)
        (FreeAir("single_in_air", 60, 1, 90), 4, 38.891),
        (FreeAir("single_in_air", 60, 1, 120, (HALF,)), 4, 27.5),
    ],
)  # fmt: skip
def test_capacity_as_laid(laid: FreeAir | ByMethod, section: float, capacity_a: float) -> None:
    assert capacity(laid, section).value == pytest.approx(capacity_a, rel=1e-4)


@pytest.mark.parametrize(
    ("laid", "section", "r_ohm_per_km"),
    [
        (ByMethod("Al", "XLPE", "D1", 20), 50, 0.641 * (1 + 0.00403 * 70)),  # KEMPE, IEC 60287: aluminium at 90 °C
        (ByMethod("Cu", "PVC", "C", 30), 10, 1.83 * (1 + 0.00393 * 50)),  # class 2 at 70 °C
        (ByMethod("Cu", "XLPE", "D1", 20, (), 5, True), 6, 3.39 * (1 + 0.00393 * 70)),  # solar cable in a duct, tinned
        (FreeAir("two_touching", 70), 6, 3.39 * (1 + 0.00393 * 70)),
        (FreeAir("two_touching", 60, 1, 75), 6, 3.39 * (1 + 0.00393 * 55)),
    ],
)
def test_resistance_of_the_hot_conductor(laid: FreeAir | ByMethod, section: float, r_ohm_per_km: float) -> None:
    assert hot_resistance(laid, section).value == pytest.approx(r_ohm_per_km)


def test_smallest_section_of_aluminium_in_the_ground() -> None:
    # 100 m, 130 A at 560 V, 1 %: 5.6 V / (2 · 0.1 km · 130 A) = 0.2154 ohm/km; 185 mm² has 0.164 · 1.2821 = 0.2103;
    # 150 mm² has 0.206 · 1.2821 = 0.264
    chosen = smallest_section(ByMethod("Al", "XLPE", "D1", 20), 160, Drop(100, 130, 560, 1))
    assert chosen is not None
    assert chosen.value == 185


def test_no_section_where_nothing_is_left_or_nothing_is_tabulated() -> None:
    drop = Drop(1, 1, 500, 3)
    assert smallest_section(ByMethod("Cu", "PVC", "B2", 70), 1, drop) is None
    with pytest.raises(NoRow):
        smallest_section(ByMethod("Al", "PVC", "F", 30), 1, drop)
    with pytest.raises(NoRow):
        capacity(ByMethod("Al", "XLPE", "D2", 20), 10)
