"""The National Electrical Code exactly at its limits, and what an input left out means.

From memory but where a source is named; worked by hand from the tables that `test_nec_conductors.py` compares.
"""

from __future__ import annotations

import pytest

from sld.citation import cited
from sld.quantity import Rating
from sld.ratings.nec import ampacity, busbar, conductor, grounding, overcurrent
from sld.ratings.nec.conductor_size import Demand, Run, VoltageLimit, capacity, device_allowed, smallest_size
from sld.ratings.symbol import Symbol
from sld.tables.table import NoRow
from sld.wire_size import KCMIL_MM2, area_mm2, name_of
from sld.words import phrase

KFT_M = 304.8


def amperes(value: float) -> Rating:
    return Rating(Symbol.IT, value, "A", phrase("table value"), (), cited("NEC 2023 Table 310.16"))


def terminals(celsius: float) -> Rating:
    return Rating(Symbol.THETA_TERMINAL, celsius, "°C", phrase("as specified"), (), cited("spec"))


def run(material: str = "Cu", **more: object) -> Run:
    return Run(material, 90, terminals(75), (), **more)  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("call", "names"),
    [
        (lambda value: ampacity.adjustment_factor(value), ("conductors_count",)),
        (lambda value: ampacity.corrected(amperes(40), (), value), ("parallel_count",)),
        (lambda value: busbar.least_at_any_position(value, [20]), ("main_a",)),
        (lambda value: busbar.least_for_sum_of_devices([20, value]), ("device_a",)),
        (lambda value: grounding.equipment_grounding(value), ("device_a",)),
        (lambda value: grounding.grounding_electrode("Cu", value, "rod"), ("service_mm2",)),
        (lambda value: grounding.bonding_jumper("Cu", value), ("service_mm2",)),
        (lambda value: overcurrent.largest_device(value, "Cu", "8"), ("capacity_a",)),
        (lambda value: overcurrent.largest_service_of_dwelling(value), ("capacity_a",)),
    ],
)
@pytest.mark.parametrize("value", [0, -1])
def test_above_zero_by_definition(call, names, value) -> None:
    with pytest.raises(ValueError, match=f"{names[0]} must be above zero"):
        call(value)


def test_no_negative_source() -> None:
    with pytest.raises(ValueError, match="negative"):
        busbar.least_at_opposite_end(200, [20, -1])
    assert busbar.least_at_opposite_end(240, [0]).value == 200


@pytest.mark.parametrize(
    ("count", "amps", "formula", "symbols"),
    [(1, 36.4, "It · Ca", ["It", "Ca"]), (2, 72.8, "n · It · Ca", ["n", "It", "Ca"])],
)
def test_conductors_in_parallel_stand_in_the_formula(count, amps, formula, symbols) -> None:
    """310.10(G), 310.15(B): 40 A of 10 AWG at 90 °C, 0.91 at 40 °C."""
    rating = ampacity.corrected(ampacity.tabulated("Cu", "10", 90), [ampacity.ambient_factor(40, 90)], count)
    assert rating.value == pytest.approx(amps)
    assert str(rating.formula) == formula
    assert [given.symbol for given in rating.given] == symbols
    if count == 1:
        assert ampacity.corrected(amperes(40), []).value == 40


@pytest.mark.parametrize(("corrected_a", "terminal_a", "carried_a"), [(50, 40, 40), (40, 50, 40), (60, 50, 50)])
def test_terminals_limit_one_conductor(corrected_a, terminal_a, carried_a) -> None:
    assert ampacity.capacity(amperes(corrected_a), amperes(terminal_a)).value == carried_a


def test_two_conductors_of_1_0() -> None:
    """Table 310.16: 170 A at 90 °C, 150 A at 75 °C."""
    assert capacity(run(parallel_count=2), "1/0")[0].value == 300
    assert capacity(run(), "1/0")[0].value == 150


def test_sources_and_devices_are_counted_from_one() -> None:
    assert [given.symbol for given in busbar.least_at_any_position(200, [20, 30]).given] == ["Imain", "Ig1", "Ig2"]
    assert [given.symbol for given in busbar.least_for_sum_of_devices([20, 30]).given] == ["In1", "In2"]


@pytest.mark.parametrize(("material", "r75", "alpha"), [("Cu", 1.24, 0.00323), ("Al", 2.04, 0.00330)])
@pytest.mark.parametrize("celsius", [60, 75, 90])
def test_resistance_by_the_note_of_table_8(material, r75, alpha, celsius) -> None:
    """Chapter 9 Table 8, 10 AWG, and its note 2: R2 = R1 [1 + α (T2 - 75)], α 0.00323 for copper, 0.00330 aluminium."""
    expected = r75 * (1 + alpha * (celsius - 75)) * 1000 / KFT_M
    assert conductor.resistance(material, "10", celsius).value == pytest.approx(expected, rel=1e-9)


@pytest.mark.parametrize(("size", "amps", "dwelling"), [("4", 90, 100), ("2/0", 175, 200), ("4/0", 250, 250)])
def test_service_conductors_of_a_dwelling(size, amps, dwelling) -> None:
    """Table 310.12(A): 4 AWG for 100 A, 2/0 AWG for 200 A; by 240.4(B) the next rating above 85 A, 175 A and 230 A."""
    carries = capacity(run(), size)[0].value
    assert device_allowed(run(), size, carries).value == amps
    assert device_allowed(run(service_of_dwelling=True), size, carries).value == dwelling


def test_where_both_articles_allow_the_same_the_general_one_is_cited() -> None:
    """101 A: 110 A is the next rating above it, and the last below 101 A / 0.83 = 121.7 A."""
    assert "240.4(B)" in str(device_allowed(run(service_of_dwelling=True), "1", 101).clause)


@pytest.mark.parametrize(("capacity_a", "device_a"), [(83, 100), (82.9, None), (332, 400), (380, None), (80, None)])
def test_services_from_100_to_400_a(capacity_a, device_a) -> None:
    """310.12: not less than 83 % of the rating, for 100 A to 400 A."""
    rating = overcurrent.largest_service_of_dwelling(capacity_a)
    assert (rating and rating.value) == device_a


@pytest.mark.parametrize(
    ("capacity_a", "size", "device_a", "clause"),
    [
        (15, "14", 15, "240.4(B)"),  # no more than its cap of 15 A
        (15.1, "14", 15, "240.4(D)"),
        (790, "500", 800, "240.4(B)"),
        (1000, "500", 1000, "240.4(C)"),
        (999, "500", 800, "240.4(C)"),
    ],
)
def test_next_device_up_to_800_a(capacity_a, size, device_a, clause) -> None:
    rating = overcurrent.largest_device(capacity_a, "Cu", size)
    assert rating.value == device_a
    assert clause in str(rating.clause)


def test_smallest_size_says_what_it_was_chosen_by() -> None:
    """8 AWG: 50 A at terminals of 75 °C, 55 A at 90 °C."""
    chosen = smallest_size(run(), Demand(40, 32, 40))
    assert name_of(chosen.value) == "8 AWG"
    symbols = ["1.25 Imax", "I,terminal", "Imax", "Iz", "In", "S,current", "governed by"]
    assert [given.name for given in chosen.given] == symbols
    assert [chosen.input(symbol) for symbol in symbols[:5]] == [40, 50, 32, 50, 40]
    assert chosen.input("S,current") == chosen.value
    assert str(chosen.input("governed by")) == "current"
    assert "In" not in [given.symbol for given in smallest_size(run(), Demand(40, 32)).given]


def test_terminals_of_conductors_in_parallel() -> None:
    """310.10(G): 1/0 AWG or larger; twice 150 A."""
    assert smallest_size(run(parallel_count=2), Demand(100, 80)).input("I,terminal") == 300


@pytest.mark.parametrize(("least", "size"), [("8", "8 AWG"), ("6", "6 AWG"), ("4", "4 AWG")])
def test_size_that_is_asked_for_is_enough(least, size) -> None:
    assert name_of(smallest_size(run(), Demand(40, 32), (), area_mm2(least)).value) == size


def test_aluminium_begins_at_12() -> None:
    """Table 310.16 has no aluminium of 14 AWG; 12 AWG carries 20 A at 75 °C, at most a device of 15 A (240.4(D))."""
    assert name_of(smallest_size(run("Al"), Demand(12, 10, 15)).value) == "12 AWG"


def test_change_of_voltage_in_parallel_conductors() -> None:
    """√3 · 100 A · 0.1 km · (0.40026 · 0.85 + 0.18045 · 0.52678) Ω/km = 7.539 V, 1.5707 % of 480 V.

    Chapter 9: 1/0 AWG copper 0.122 Ω/kft (Table 8), 0.055 Ω/kft in steel conduit (Table 9).
    """
    limits = (VoltageLimit(3, 200, 100, 480, 2, 0.85), VoltageLimit(3, 200, 100, 480, 3, 0.85))
    chosen = smallest_size(run(parallel_count=2), Demand(200, 160), limits)
    assert name_of(chosen.value) == "1/0 AWG"
    assert chosen.input("Δu") == pytest.approx(1.5707, rel=1e-4)
    assert [given.name for given in chosen.given].count("Δu") == 1
    assert str(chosen.formula).endswith("Δu ≤ Δu,limit")
    assert chosen.input("Δu,limit") == 2


def test_limit_of_voltage_holds_at_equality() -> None:
    change = smallest_size(run(), Demand(40, 32), (VoltageLimit(1, 32, 30, 240, 5),)).input("Δu")
    at = smallest_size(run(), Demand(40, 32), (VoltageLimit(1, 32, 30, 240, change),))
    below = smallest_size(run(), Demand(40, 32), (VoltageLimit(1, 32, 30, 240, change * 0.999999),))
    assert (name_of(at.value), name_of(below.value)) == ("8 AWG", "6 AWG")
    # 2 · 32 A · 0.03 km · 0.778 Ω/kft / 0.3048 = 4.9008 V
    assert change == pytest.approx(100 * 4.9008 / 240, rel=1e-4)
    assert str(below.input("governed by")) == "voltage"
    assert below.input("S,current") == at.value


@pytest.mark.parametrize(
    ("kcmil", "mm2"),
    [(1100, area_mm2("2/0")), (1100.4, 1100.4 / 8 * KCMIL_MM2), (1104, 138 * KCMIL_MM2)],
)
def test_bonding_jumper_of_copper_above_1100_kcmil(kcmil, mm2) -> None:
    """Table 250.102(C)(1) note 1: above 1100 kcmil of copper 12.5 % of the area."""
    assert grounding.bonding_jumper("Cu", kcmil * KCMIL_MM2).value == pytest.approx(mm2)


@pytest.mark.parametrize(("kcmil", "mm2"), [(1750, area_mm2("2/0")), (1750.4, 1750.4 / 8 * KCMIL_MM2)])
def test_bonding_jumper_of_aluminium_above_1750_kcmil(kcmil, mm2) -> None:
    assert grounding.bonding_jumper("Al", kcmil * KCMIL_MM2).value == pytest.approx(mm2)


@pytest.mark.parametrize(("factor", "size"), [(1.0, "8"), (1.005, "6")])
def test_electrode_conductor_just_above_2_awg(factor, size) -> None:
    """Table 250.66: 8 AWG up to 2 AWG of copper, 6 AWG above."""
    assert grounding.grounding_electrode("Cu", factor * area_mm2("2"), "water").value == area_mm2(size)


def test_electrode_conductor_that_meets_its_limit_is_the_tables() -> None:
    """6 AWG by the table, and 6 AWG is the most for a rod (250.66(A))."""
    assert grounding.grounding_electrode("Cu", area_mm2("1/0"), "rod").formula == phrase("table value")
    assert "at most" in str(grounding.grounding_electrode("Cu", area_mm2("3/0"), "rod").formula)


def test_electrode_conductor_beyond_the_table() -> None:
    with pytest.raises(NoRow):
        grounding.grounding_electrode("Cu", 10_100 * KCMIL_MM2, "water")


def test_conductors_as_large_as_needed_increase_nothing() -> None:
    """250.122(B): increased where the conductors are."""
    least = grounding.equipment_grounding(60)
    assert grounding.increased(least, 21.15, 21.15) is least
    assert grounding.increased(least, 33.6, 21.15).value > least.value
