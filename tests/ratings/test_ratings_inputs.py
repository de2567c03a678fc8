"""What a reader needs to work a rating out again: formula, inputs by name and value, clauses in their order.

The formulas are those of the standards that the ratings cite; the values are worked by hand beside each row.
"""

from __future__ import annotations

from collections.abc import Callable

import pytest

from sld.quantity import Rating
from sld.ratings import (
    array,
    battery,
    breaker,
    cable_section,
    conductor,
    conduit,
    dc_path,
    fuse,
    meter,
    protective_conductor,
    rcd,
    release,
    string,
    thermal,
)
from sld.ratings.nec import busbar, conductor_size, overcurrent
from sld.ratings.specified import specified
from sld.ratings.symbol import Symbol
from sld.tables.profiles import profile
from sld.tables.table import NoRow

CAUTIOUS = profile("cautious")  # KI 1.25
PVC_IN_AIR = cable_section.CableDesign("Cu", "PVC", 2, "C")
XLPE_IN_GROUND = cable_section.CableDesign("Cu", "XLPE", 2, "D1")
CARRIES, LEAST = specified(Symbol.IZ, 125, "A"), specified(Symbol.IZ_MIN, 109, "A")


@pytest.mark.parametrize(
    ("make", "formula", "inputs"),
    [
        (lambda: breaker.smallest_rated_current("MCB", 17.3), "smallest In ≥ Ib", [("Ib", "17.3"), ("device", "MCB")]),
        (lambda: breaker.largest_rated_current("MCB", 36), "largest In ≤ Iz with I2 ≤ 1.45 · Iz",
         [("Iz", "36"), ("device", "MCB")]),
        (lambda: rcd.break_time(5, selective=True), "table value", [("IΔ/IΔn", "5"), ("type", "S")]),
        (lambda: rcd.break_time(1, delay_s=0.2), "table value and delay",
         [("IΔ/IΔn", "1"), ("type", "general"), ("Δt", "0.2")]),
        (lambda: battery.smallest_section(35, CARRIES, LEAST), "smallest standard section with Iz ≥ Iz,min",
         [("Iz", "125"), ("Iz,min", "109")]),
        (lambda: thermal.k_factor("live_or_core_in_cable", "PVC70", "Cu", 16), "table value",
         [("use", "live or core in cable"), ("insulation", "PVC70"), ("S", "16")]),
        (lambda: battery.capacity_min(specified(Symbol.IB, 90, "A"), 125), "max(Ib, In)",
         [("Ib", "90"), ("In", "125")]),
        (lambda: battery.capacity_min(specified(Symbol.IB, 90, "A"), None), "Ib", [("Ib", "90")]),
        (lambda: battery.capacity_min(None, 125), "In", [("In", "125")]),
        (lambda: conduit.fill([(2, 12), (1, 8)], 40), "100 · Σ d² / D²", [("d1", "12"), ("d2", "8"), ("D", "40")]),
        (lambda: release.tripping_current(release.Release(i_sd_a=500, t_sd_s=0.1), 0.4), "k · Isd",
         [("k", "1.2"), ("Isd", "500"), ("t", "0.1")]),
        (lambda: release.tripping_current(release.Release(i_i_a=900), 0.4), "k · Ii", [("k", "1.2"), ("Ii", "900")]),
        (lambda: protective_conductor.buried_earthing_conductor("none", "steel"), "table value",
         [("protection", "none"), ("material", "steel")]),
        (lambda: protective_conductor.buried_earthing_conductor("none"), "table value",
         [("protection", "none"), ("material", "copper")]),
        (lambda: meter.metered_behind_transformer(630, 577), "max(min(In, In,transformer + Ig,2), Ig)",
         [("In", "630"), ("In,transformer", "577"), ("Ig,2", "0"), ("Ig", "0")]),
        (lambda: battery.length_to_protection([0.8, 1.5])[0], "L1 + L2", [("L1", "0.8"), ("L2", "1.5")]),
        (lambda: release.holding_current(release.Release(i_sd_a=500)), "k · Isd",
         [("k", "0.8"), ("Isd", "500")]),
        (lambda: dc_path.branch_current_min(2, 6, 10, CAUTIOUS, None), "max(KI·n·Isc, KI·Np,others·Isc)",
         [("KI", "1.25"), ("n", "2"), ("Isc", "10"), ("Np,others", "6")]),
        (lambda: dc_path.branch_current_min(2, 6, 10, CAUTIOUS, 20), "max(KI·n·Isc, In)",
         [("KI", "1.25"), ("n", "2"), ("Isc", "10"), ("In", "20")]),
    ],
)  # fmt: skip
def test_inputs_are_told_by_name_and_value(
    make: Callable[[], Rating], formula: str, inputs: list[tuple[str, str]]
) -> None:
    rating = make()
    assert str(rating.formula) == formula
    told = [(str(each.name), f"{each.value:g}" if isinstance(each.value, float | int) else str(each.value))
            for each in rating.given]  # fmt: skip
    assert told == inputs


@pytest.mark.parametrize(
    ("joined", "others", "fuse_a", "least_a"),
    [
        (2, 6, None, 75.0),  # 1.25 · 6 · 10 A come back, 1.25 · 2 · 10 A go forward
        (3, 1, None, 37.5),  # 1.25 · 3 · 10 A go forward
        (3, 0, None, 37.5),
        (2, 6, 20.0, 25.0),  # the fuse lets less through than goes forward
        (2, 6, 32.0, 32.0),
    ],
)
def test_the_common_side_of_a_branch_connector(joined: int, others: int, fuse_a: float | None, least_a: float) -> None:
    # IEC 62548:2016 7.3 and its table of circuit currents (from memory): what it carries, and what feeds a fault
    least = dc_path.branch_current_min(joined, others, 10.0, CAUTIOUS, fuse_a)
    assert (least.symbol, least.unit) == (Symbol.IN_MIN, "A")
    assert least.value == pytest.approx(least_a)
    assert str(least.clause).endswith("IEC 62548:2016 7.3 (clause from memory)")  # after the clause that KI is from
    assert str(least.table_row) == str(CAUTIOUS.isc_factor.reference)


@pytest.mark.parametrize(
    ("design", "hot_c", "surroundings_c"), [(PVC_IN_AIR, 70, 30), (XLPE_IN_GROUND, 90, 20)], ids=["air", "ground"]
)
def test_a_conductor_without_current_is_as_warm_as_what_its_table_is_for(
    design: cable_section.CableDesign, hot_c: float, surroundings_c: float
) -> None:
    # IEC 60364-5-52:2009 B.52.1: 30 °C in air, 20 °C in the ground
    assert cable_section.temperature_at(design, 4, hot_c, 0).value == surroundings_c


def test_the_table_of_let_through_energy_ends_where_it_is_said_to() -> None:
    # EN 60898-1 Annex ZA goes up to 10 kA (from memory)
    assert breaker.let_through_energy("B", 16, breaker.CLASS_3_UP_TO_KA).value == 70_000
    with pytest.raises(NoRow):
        breaker.let_through_energy("B", 16, breaker.CLASS_3_UP_TO_KA * 1.001)


def test_a_fuse_to_bs_88_cites_the_general_standard_before_its_own() -> None:
    # IEC 60269-1 has the gates of every gG fuse, BS 7671 Table 41.2 narrows them at 0.4 s
    clause = str(fuse.opening_current(32, 0.4, bs_88=True).clause)
    assert clause.index("IEC 60269-1") < clause.index("BS 7671")
    assert "BS 7671" not in str(fuse.opening_current(32, 0.4).clause)


@pytest.mark.parametrize(("main_a", "exported_a", "least_a"), [(100, 60, 100), (60, 60, 75), (75, 60, 75), (40, 0, 40)])
def test_a_trunk_cable_carries_its_device_and_125_percent_of_the_sources(
    main_a: float, exported_a: float, least_a: float
) -> None:
    # NEC 2023 705.28(A), 705.30(B), 240.4 (from memory)
    least = busbar.least_for_trunk(main_a, exported_a)
    assert (least.symbol, least.value, least.unit) == (Symbol.INA_LEAST, least_a, "A")


@pytest.mark.parametrize(("protected", "mm2"), [(True, 2.5), (False, 4.0)])
def test_a_protective_conductor_that_is_no_core_is_strong_enough(protected: bool, mm2: float) -> None:
    # IEC 60364-5-54:2011 543.1.3
    least = protective_conductor.laid_beside_minimum(protected)
    assert least.value == mm2
    assert str(least.given[0].value) == ("protected mechanically" if protected else "not protected mechanically")


def test_the_current_of_a_connector_cites_its_factor_before_its_clause() -> None:
    assert str(dc_path.current_min(2, 10.0, CAUTIOUS).clause).endswith("IEC 62548:2016 7.3 (clause from memory)")


def test_the_break_time_cites_clause_and_row() -> None:
    # IEC 61008-1 Table 1: general type 0.3 s, 0.15 s and 0.04 s at once, twice and five times IΔn
    slow = rcd.break_time(1)
    assert slow.value == 0.3
    assert str(slow.clause).startswith("IEC 61008-1")
    assert str(slow.table_row) != str(rcd.break_time(5).table_row)


@pytest.mark.parametrize(
    ("device_a", "conditions"),
    [(None, ["I,terminal ≥ 1.25 Imax", "Iz ≥ Imax"]), (40, ["I,terminal ≥ 1.25 Imax", "Iz ≥ Imax", "In ≤ In,allowed"])],
)
def test_a_conductor_has_a_device_to_suit_where_it_has_one(device_a: float | None, conditions: list[str]) -> None:
    # NEC 2023 690.8(B), 705.28(B): terminals and conductor; 240.4: the device
    assert conductor_size.conditions_of(conductor_size.Demand(32, 40, device_a)) == conditions


def test_a_standard_rating_cites_its_demand_first() -> None:
    # NEC 2023 705.28 asks for 125 %, 240.6(A) has the ratings
    chosen = overcurrent.smallest_device(breaker.continuous_duty_current(32))
    assert chosen is not None
    assert str(chosen.clause).index("705.28(A)") < str(chosen.clause).index("240.6(A)")


def test_the_arrangement_of_a_cable_is_told() -> None:
    assert [str(each.name) for each in conductor.reactance("trefoil").given] == ["arrangement"]


def test_the_currents_that_come_back_cite_their_formula_before_the_factor() -> None:
    clause = str(array.reverse_current(3, 10.0, CAUTIOUS).clause)
    assert clause.startswith("UTE C15-712-1")
    tolerance = string.uoc_max_with_tolerance(specified(Symbol.UOC_MAX, 900, "V"), 3)
    assert tolerance.value == 927
    assert str(tolerance.clause).startswith("data sheet of the module")


@pytest.mark.parametrize(
    ("settings", "sees"),
    [
        (release.Release(i_r_a=100), False),
        (release.Release(i_g_a=40), False),  # earth faults alone
        (release.Release(i_sd_a=500), True),
        (release.Release(i_i_a=900), True),
        (release.Release(i_sd_a=500, i_i_a=900), True),
    ],
)
def test_a_release_sees_short_circuits_by_either_setting(settings: release.Release, sees: bool) -> None:
    # IEC 60947-2: Isd with its delay, Ii without one (from memory)
    assert settings.sees_short_circuits is sees
