"""The adiabatic equation against published examples and its own k."""

from __future__ import annotations

import pytest

from sld.ratings.thermal import (
    cleared_energy,
    k_factor,
    section_for_energy,
    withstand_energy,
)
from sld.tables.table import NoRow

CORE, SEPARATE = "live_or_core_in_cable", "separate_insulated_PE"


@pytest.mark.parametrize(
    ("use", "insulation", "material", "section_mm2", "k"),
    [
        (CORE, "PVC70", "Cu", 10, 115),
        (CORE, "PVC70", "Cu", 300, 115),  # on the step
        (CORE, "PVC70", "Cu", 300.1, 103),
        (CORE, "XLPE_EPR90", "Cu", 400, 143),
        (SEPARATE, "PVC70", "Cu", 10, 143),  # the trap: a separate conductor starts colder
        (CORE, "PVC70", "Al", 10, 76),
        (CORE, "XLPE_EPR90", "Al", 10, 94),
        ("bare_no_risk", "visible_restricted", "Al", 10, 125),
        ("armour_or_sheath", "PVC70", "lead", 10, 26),
    ],
)
def test_k_factor(use: str, insulation: str, material: str, section_mm2: float, k: float) -> None:
    # IEC 60364-4-43 Table 43A, IEC 60364-5-54 Annex A; 115/143 and 76/94 also in
    # https://www.easymanua.ls/ht/fulltest3/manual?p=55
    assert k_factor(use, insulation, material, section_mm2).value == k


@pytest.mark.parametrize(
    ("use", "insulation", "material"), [(CORE, "PVC70", "lead"), (CORE, "PVC71", "Cu"), ("aerial", "PVC70", "Cu")]
)
def test_no_k_factor(use: str, insulation: str, material: str) -> None:
    with pytest.raises(NoRow):
        k_factor(use, insulation, material, 10)


@pytest.mark.parametrize(
    ("section_mm2", "k", "a2s"), [(2.5, 115, 82_656), (4, 115, 211_600), (6, 115, 476_100), (10, 115, 1_322_500)]
)
def test_withstand_energy(section_mm2: float, k: float, a2s: float) -> None:
    # k² · S², IEC 60364-4-43:2008 434.5.2 (arithmetic)
    assert withstand_energy(section_mm2, k).value == pytest.approx(a2s, abs=0.6)
    assert section_for_energy(a2s, k).value == pytest.approx(section_mm2, rel=1e-5)


@pytest.mark.parametrize("time_s", [0.02, 0.1, 5.0])
def test_energy_of_a_current_that_is_switched_off(time_s: float) -> None:
    # IEC 60364-4-43:2008 434.5.2: I² · t, up to 5 s
    assert cleared_energy(1000, time_s).value == pytest.approx(1e6 * time_s)


@pytest.mark.parametrize("time_s", [5.0001, 0, -1])
def test_time_outside_the_range_is_refused(time_s: float) -> None:
    with pytest.raises(ValueError, match=r"5 s|time_s"):
        cleared_energy(1000, time_s)
