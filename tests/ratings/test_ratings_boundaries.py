"""What happens exactly at a limit and a hair beyond it, what an input left out means, and which formula is printed.

The source stands beside each row; "definition" is arithmetic on the quantities themselves. Nothing here was read in a
bought standard; clauses marked (m) are from memory.
"""

from __future__ import annotations

from math import pi, sqrt

import pytest

from sld.citation import cited
from sld.quantity import Rating
from sld.ratings import (
    ac_cable,
    ac_surge,
    array,
    board,
    bonding,
    breaker,
    cable_section,
    conductor,
    data_bus,
    dc_cable,
    dc_isolator,
    dc_surge,
    disconnection,
    fault,
    fuse,
    inverter,
    line_currents,
    meter,
    module,
    rcd,
    residual_monitor,
    selectivity,
    source_impedance,
    string,
    string_fuse,
    transformer,
    voltage_change,
)
from sld.ratings.impedance import Impedance
from sld.ratings.symbol import Symbol
from sld.tables.profiles import profile
from sld.tables.table import NoRow
from sld.words import NOTHING, phrase, verbatim

WALL = "single_layer_wall_floor_unperforated_C"
IT = Rating(Symbol.IT, 57.0, "A", phrase("table value"), (), cited("IEC 60364-5-52:2009"))
PER_METRE = Rating(Symbol.DU_RISE_V, 0.1, "V", "2 · I · L · R", (), cited("IEC 60364-5-52:2009"))


def percent(value: float) -> Rating:
    return Rating(Symbol.DU_DC_CABLE, value, "%", "100 · ΔU / U", (), cited("IEC 60364-5-52:2009"))


@pytest.mark.parametrize(("method", "loaded", "other"), [("F2", 2, 3), ("F3f", 3, 2), ("F3t", 3, 2), ("Gh", 3, 2),
                                                         ("Gv", 3, 2)])  # fmt: skip
def test_single_core_methods_hold_for_their_number_of_conductors(method, loaded, other) -> None:
    """IEC 60364-5-52:2009 Tables B.52.10 to B.52.13: method F with two or three loaded conductors, G with three."""
    assert ac_cable.tabulated_capacity("Cu", "PVC", loaded, method, 25).value > 0
    with pytest.raises(NoRow):
        ac_cable.tabulated_capacity("Cu", "PVC", other, method, 25)


@pytest.mark.parametrize(("medium", "number"), [("air", "B.52.14"), ("ground", "B.52.15")])
def test_table_of_the_ambient_temperature(medium, number) -> None:
    """IEC 60364-5-52:2009: Table B.52.14 for cables in air, B.52.15 for cables in the ground."""
    assert str(ac_cable.ambient_factor(30, "PVC", medium).clause).endswith(number)


@pytest.mark.parametrize(("circuits", "factor", "row"), [(9, 0.70, "9"), (20, 0.70, "20"), (21, 0.70, "9")])
def test_a_layer_above_twenty_circuits_keeps_the_factor_of_nine(circuits, factor, row) -> None:
    """IEC 60364-5-52:2009 Table B.52.17: a single layer loses no more above nine circuits; rows up to twenty."""
    rating = ac_cable.grouping_factor(WALL, circuits)
    assert rating.value == factor
    assert str(rating.table_row).endswith(f", {row} circuits"), rating.table_row


@pytest.mark.parametrize("circuits", [20, 21])
def test_a_bunch_above_twenty_circuits_is_not_tabulated(circuits) -> None:
    """IEC 60364-5-52:2009 Table B.52.17, bunched: 0.38 for twenty circuits, the last column."""
    if circuits == 20:
        assert ac_cable.grouping_factor("bunched_A_to_F", circuits).value == 0.38
        return
    with pytest.raises(NoRow):
        ac_cable.grouping_factor("bunched_A_to_F", circuits)


@pytest.mark.parametrize(("count", "formula", "symbols"), [(1, "It · Ca", ["It", "Ca"]),
                                                           (2, "n · It · Ca", ["It", "Ca", "n"])])  # fmt: skip
def test_parallel_cables_stand_in_the_formula(count, formula, symbols) -> None:
    """IEC 60364-5-52:2009 523.7 (m): n · It · factors; one cable has no n. PVC at 40 °C: 0.87."""
    rating = ac_cable.corrected_capacity(IT, [ac_cable.ambient_factor(40, "PVC")], count)
    assert rating.value == pytest.approx(count * 57 * 0.87)
    assert str(rating.formula) == formula
    assert [given.symbol for given in rating.given] == symbols
    assert "40" in str(rating.given[1].origin)  # the row of the table that the factor is from


@pytest.mark.parametrize(("count", "formula"), [(1, "I / Ca"), (2, "I / Ca / n")])
def test_table_value_that_is_needed(count, formula) -> None:
    rating = ac_cable.tabulated_capacity_needed(87, [ac_cable.ambient_factor(40, "PVC")], count)
    assert rating.value == pytest.approx(100 / count)
    assert str(rating.formula) == formula
    assert "40" in str(rating.given[2].origin)


def test_a_declared_factor_is_cited_by_its_clause() -> None:
    declared = ac_cable.declared_factor(Symbol.C_DECLARED, 0.9, verbatim("in a duct"))
    assert ac_cable.corrected_capacity(IT, [declared]).given[1].origin == declared.clause
    assert ac_cable.tabulated_capacity_needed(20, [declared]).given[2].origin == declared.clause


@pytest.mark.parametrize(("sensitive", "level_kv", "word"), [(True, 1.5, "electronics"), (False, 2.5, "category II")])
def test_protection_level_says_for_what(sensitive, level_kv, word) -> None:
    """IEC 60364-4-44:2018 Table 443.2 (m): 2.5 kV for category II on 230/400 V."""
    rating = ac_surge.largest_protection_level(sensitive)
    assert rating.value == level_kv
    assert word in str(rating.input("equipment"))


@pytest.mark.parametrize(("lightning", "overhead", "kind"), [(True, False, 1), (False, True, 1), (False, False, 2)])
def test_type_of_the_device_at_the_origin(lightning, overhead, kind) -> None:
    """IEC 60364-5-53:2019 534.4 (m): type 1 where lightning current may enter; the inputs are printed as they were."""
    rating = ac_surge.surge_device_type(lightning, overhead)
    assert rating.value == kind
    assert str(rating.input("external lightning protection")) == ("yes" if lightning else "no")
    assert str(rating.input("direct strokes to the line")) == ("yes" if overhead else "no")
    if not overhead:
        assert ac_surge.surge_device_type(lightning).value == kind


@pytest.mark.parametrize(
    ("kind", "level", "symbol", "current_ka"),
    [(1, "III/IV", Symbol.IIMP_LEAST, 12.5), (2, "none", Symbol.IN_SURGE_LEAST, 5)],
)
def test_impulse_current_of_type_1_discharge_current_of_type_2(kind, level, symbol, current_ka) -> None:
    """IEC 61643-11: Iimp is a value of class I tests, In of class II; 12.5 kA and 5 kA IEC 60364-5-53 534.4.4 (m)."""
    rating = ac_surge.least_discharge_current(kind, level)
    assert (rating.symbol, rating.value) == (symbol, current_ka)


def test_a_watt_is_above_zero() -> None:
    assert array.dc_ac_ratio(1, 1).value == 1  # definition


def test_sources_are_counted_from_one() -> None:
    assert [given.symbol for given in board.busbar_load(63, [16, 20]).given] == ["In", "Ig1", "Ig2"]
    assert [given.symbol for given in voltage_change.voltage_rise_sum([percent(1), percent(2)]).given] == [
        "Δu1",
        "Δu2",
    ]


@pytest.mark.parametrize(("largest_mm2", "bonding_mm2"), [(12, 6), (12.1, 10), (32, 16), (33, 25), (50, 25), (95, 25)])
def test_main_bonding_from_six_to_twenty_five(largest_mm2, bonding_mm2) -> None:
    """IEC 60364-5-54:2011 544.1.1: not less than half of the largest, not less than 6 mm², need not exceed 25 mm²."""
    assert bonding.main_bonding(largest_mm2).value == bonding_mm2


@pytest.mark.parametrize(("part", "word"), [(True, "lightning"), (False, "functional")])
def test_frame_bonding_says_which(part, word) -> None:
    assert word in str(bonding.frame_bonding(part).input("frame"))


@pytest.mark.parametrize(("i_n_a", "multiple"), [(4, 2.1), (4.1, 1.9), (15.9, 1.9), (16, 1.6)])
def test_fusing_current_at_the_steps_of_the_series(i_n_a, multiple) -> None:
    """IEC 60269-1 Table 2 (m): 2.1 In up to 4 A, 1.9 In above 4 A and below 16 A, 1.6 In from 16 A."""
    assert breaker.conventional_tripping_current("gG", i_n_a).value == pytest.approx(multiple * i_n_a)


def design() -> cable_section.CableDesign:
    return cable_section.CableDesign("Cu", "PVC", 3, "C")


@pytest.mark.parametrize(("needed_a", "section_mm2"), [(17.5, 1.5), (17.6, 2.5), (24, 2.5), (24.1, 4)])
def test_section_at_the_table_value(needed_a, section_mm2) -> None:
    """IEC 60364-5-52:2009 Table B.52.4, method C: 1.5 mm² 17.5 A, 2.5 mm² 24 A, 4 mm² 32 A."""
    rating = cable_section.smallest_section(design(), needed_a)
    assert rating is not None
    assert rating.value == section_mm2
    assert [given.symbol for given in rating.given] == ["I,needed", "Iz"]
    assert "Δu" not in str(rating.formula)


def test_section_by_voltage_names_what_it_was_chosen_by() -> None:
    """√3 · 10 A · 50 m · 7.41 Ω/km · (1 + 0.00393 · 50) = 7.68 V, 1.92 % of 400 V (IEC 60228 2.5 mm²: 7.41 Ω/km)."""
    demand = cable_section.VoltageDemand(3, 10, 50, 400, 2, 70)
    rating = cable_section.smallest_section(design(), 10, demand)
    assert rating is not None
    assert rating.value == 2.5
    assert [given.symbol for given in rating.given] == ["I,needed", "Iz", "Δu", "Δu,limit", "θ"]
    assert str(rating.formula).endswith("Δu ≤ Δu,limit")
    assert rating.input("Δu") == pytest.approx(1.92, abs=0.005)


def test_section_by_voltage_with_reactance() -> None:
    """√3 · 10 A · 50 m · (8.866 Ω/km · 0.9 + 0.08 Ω/km · 0.4359) = 6.941 V, 1.7352 % of 400 V; R as above."""
    demand = cable_section.VoltageDemand(3, 10, 50, 400, 2, 70, x_ohm_per_km=0.08, cos_phi=0.9)
    rating = cable_section.smallest_section(design(), 10, demand)
    assert rating is not None
    assert rating.input("Δu") == pytest.approx(1.7352, rel=1e-4)


def test_a_demand_without_reactance_has_none() -> None:
    """cosφ 0 leaves the reactance alone: none where none is known, else √3 · 10 A · 0.1 km · 0.08 Ω/km = 0.139 V."""
    known = {"phase_count": 3, "i_a": 10, "length_m": 100, "r_ohm_per_km": 2, "cos_phi": 0}
    for change in (voltage_change.voltage_rise, voltage_change.voltage_drop):
        assert change(**known).value == pytest.approx(0, abs=1e-12)
        assert change(**known, x_ohm_per_km=0.08).value == pytest.approx(sqrt(3) * 0.08, rel=1e-6)
    demand = cable_section.VoltageDemand(3, 10, 100, 400, 2, 70, cos_phi=0)
    rating = cable_section.smallest_section(design(), 10, demand)
    assert rating is not None
    assert rating.input("Δu") == pytest.approx(0, abs=1e-12)


@pytest.mark.parametrize(("arrangement", "word"), [("default", "IEC 60364-5-52"), ("trefoil", "common practice")])
def test_reactance_says_where_it_is_from(arrangement, word) -> None:
    assert str(conductor.reactance(arrangement).clause).startswith(word)


def test_limits_of_the_data_bus() -> None:
    """TIA-485-A: 32 unit loads. Modbus over serial line V1.02 2.2: addresses 1 to 247, 0 broadcast, 248 up reserved."""
    assert data_bus.UNIT_LOAD_LIMIT_COUNT == 32
    assert data_bus.ADDRESS_RANGE == (1, 247)


def test_characters_of_one_poll() -> None:
    """Modbus over serial line V1.02 2.5.1: 11 bits a character, silences of 3.5; a request of 8 bytes (definition).

    (8 + 100 + 7) · 11 / 9600 = 0.13177 s.
    """
    assert data_bus.poll_time(1, 9600).value == pytest.approx(115 * 11 / 9600, rel=1e-9)
    assert data_bus.poll_time(1, 9600).input("characters") == 115


@pytest.mark.parametrize(
    ("strings", "downstream_a", "current_a", "formula"),
    [
        (1, 20, 12.5, "f·Isc"),  # nothing feeds a single string but itself
        (2, 20, 32.5, "max(f·Isc, In,down + f·Isc·(Np - 1))"),  # 20 + 1.25 · 10
        (2, 0, 12.5, "max(f·Isc, In,down + f·Isc·(Np - 1))"),
        (3, 0, 25, "max(f·Isc, In,down + f·Isc·(Np - 1))"),
    ],
)
def test_unfused_string_cable(strings, downstream_a, current_a, formula) -> None:
    """IEC 62548:2016 circuit-current table (m), Isc 10 A: the next device's current and the other strings' currents."""
    rating = dc_cable.string_current_min(strings, 10, profile("IEC 62548-1"), downstream_fuse_a=downstream_a)
    assert rating.value == pytest.approx(current_a)
    assert str(rating.formula) == formula


def test_cables_of_a_very_small_module() -> None:
    """1.25 · 0.5 A = 0.625 A: nothing else adds to it."""
    assert dc_cable.string_current_min(1, 0.5, profile("IEC 62548-1")).value == pytest.approx(0.625)
    assert dc_cable.array_current_min(1, 0.5, profile("IEC 62548-1")).value == pytest.approx(0.625)


def test_one_circuit_where_no_number_is_given() -> None:
    """EN 50618:2014 Table A.3: 4 mm² single in air 55 A, at 60 °C with one circuit without correction."""
    rating = dc_cable.corrected_capacity(4, "single_in_air", 60)
    assert rating.value == 55
    assert "1 circuit" in str(rating.given[2].origin)


@pytest.mark.parametrize("own", [None, (10, 20, 30)])
def test_a_list_of_ones_own_is_no_row_of_the_table(own) -> None:
    current = Rating(Symbol.IE_MIN, 17.0, "A", "f·Np·Isc", (), cited("IEC 62548:2016"))
    window = string_fuse.window(13.9, 30, profile("IEC 62548-1"))
    for chosen in (
        dc_isolator.smallest_rating(current, own),
        dc_surge.smallest_ucpv(current, own),
        string_fuse.smallest_rating(window, own and (25,)),
    ):
        assert chosen is not None
        assert bool(chosen.table_row) is (own is None)


@pytest.mark.parametrize(
    ("inputs", "kind"),
    [((False,), "2"), ((True,), "1"), ((True, True), "2"), ((True, False), "1"), ((False, False, True), "1")],
)
def test_type_of_the_dc_device(inputs, kind) -> None:
    """IEC 62305-3 6.3: type 1 where lightning protection is not separated, so also where nothing is known of it."""
    assert dc_surge.spd_type(*inputs).value == kind


@pytest.mark.parametrize(("i_n_a", "sockets", "kind"), [(32, None, "final"), (32.1, None, "distribution"),
                                                        (63, True, "final"), (63.1, True, "distribution"),
                                                        (40, None, "distribution")])  # fmt: skip
def test_final_circuits(i_n_a, sockets, kind) -> None:
    """IEC 60364-4-41:2005+A1:2017 411.3.2.2: final up to 63 A with socket-outlets, up to 32 A with fixed equipment."""
    inputs = {} if sockets is None else {"socket_outlets": sockets}
    assert disconnection.circuit_kind(i_n_a, **inputs) == kind


def test_cable_is_cold_where_no_temperature_is_given() -> None:
    """IEC 60909-0:2016: 20 °C for the greatest current; factor 1 + 0.004 (θ - 20) is nothing at -230 °C."""
    assert fault.cable_impedance(1.83, 0.08, 100) == Impedance(pytest.approx(0.183), pytest.approx(0.008))
    with pytest.raises(ValueError, match="temperature"):
        fault.cable_impedance(1.83, 0.08, 100, -230)


@pytest.mark.parametrize(("ratio", "r_ohm", "x_ohm"), [(0.75, 3, 4), (0, 0, 5), (4 / 3, 4, 3)])
def test_impedance_of_a_magnitude(ratio, r_ohm, x_ohm) -> None:
    """Pythagoras: 3, 4 and 5."""
    impedance = Impedance.of_magnitude(5, ratio)
    assert (impedance.r_ohm, impedance.x_ohm) == (pytest.approx(r_ohm), pytest.approx(x_ohm))


def test_angle_of_a_source_where_none_is_given() -> None:
    """All reactance behind a fault current; R 0.1 X above a transformer (IEC 60909-0:2016 6.2 (m))."""
    # 400 V / (√3 · 6 kA) = 38.49 mΩ
    assert source_impedance.impedance_from_fault_current(6, 400, 1) == Impedance(0, pytest.approx(0.0384900, rel=1e-5))
    above = source_impedance.impedance_from_short_circuit_power(250, 400)
    assert above.r_ohm / above.x_ohm == pytest.approx(0.1)
    assert above.magnitude_ohm == pytest.approx(400**2 / 250e6)


@pytest.mark.parametrize(("phases", "formula", "symbol"), [(1, "Smax / U0", "U0"), (3, "Smax / (√3 · Un)", "Un")])
def test_formula_of_the_design_current(phases, formula, symbol) -> None:
    rating = inverter.design_current(phases, 230, s_max_va=2300)
    assert str(rating.formula) == formula
    assert rating.input(symbol) == 230


def test_full_voltage_is_no_low_voltage() -> None:
    assert inverter.current_at_low_voltage(16, 1).value == 16
    with pytest.raises(ValueError, match="above 1"):
        inverter.current_at_low_voltage(16, 1.001)


def test_burden_of_cold_leads() -> None:
    """IEC 60228:2004 class 2, 2.5 mm²: 7.41 Ω/km at 20 °C; (5 A)² · 2 · 10 m · 7.41 Ω/km = 3.705 VA."""
    assert meter.transformer_lead_burden(5, 10, 2.5).value == pytest.approx(3.705, rel=1e-9)


@pytest.mark.parametrize(("bifaciality", "rear", "assumed"), [(0.7, 0.1, True), (0.7, 0, False), (0, 0.1, False)])
def test_rear_irradiance_is_an_assumption_where_it_counts(bifaciality, rear, assumed) -> None:
    rating = module.design_short_circuit_current(10, bifaciality, rear)
    assert rating.value == pytest.approx(10 * (1 + bifaciality * rear))
    assert any("10 %" in str(text) for text in rating.assumptions) is assumed


@pytest.mark.parametrize(("declared_ma", "letter", "row"), [(6, "A", "6"), (6.1, "F", "10"), (10, "F", "10"),
                                                            (10.1, "B", "")])  # fmt: skip
def test_declared_direct_current(declared_ma, letter, row) -> None:
    """IEC 60364-5-53:2019 531.3.3 (m): type A up to 6 mA of smooth direct current, F up to 10 mA, else B."""
    found = rcd.residual_current_type(False, declared_ma)
    assert found.letter == letter
    assert f"{declared_ma:g} mA" in str(found.reason)
    assert str(found.clause).startswith("IEC 60364-7-712")
    assert (f"up to {row} mA" in str(found.table_row)) if row else (str(found.table_row) == "")


def test_residual_current_in_the_window() -> None:
    """Standing leakage at most 0.3 IΔn: 9 mA needs 30 mA; without an electrode the next above 30 mA is taken."""
    assert rcd.chosen_residual_current(9).value == 100
    assert [given.symbol for given in rcd.chosen_residual_current(9).given] == ["IΔn,least"]
    by_electrode = rcd.chosen_residual_current(9, 100)
    assert [given.symbol for given in by_electrode.given] == ["IΔn,least", "RA"]
    assert by_electrode.input("RA") == 100
    assert by_electrode.value == 100


@pytest.mark.parametrize(("lower_a", "upper_a", "empty"), [(20, 20, True), (20, 20.1, False), (20.1, 20, True)])
def test_an_open_window_without_width_is_empty(lower_a, upper_a, empty) -> None:
    lower, upper = (Rating(Symbol.IN, value, "A", "f·Isc", (), cited("IEC 62548:2016")) for value in (lower_a, upper_a))
    assert string_fuse.FuseWindow(lower, False, upper, False).is_empty is empty


def test_one_string_is_told_from_by_the_profile() -> None:
    """IEC 60364-7-712:2017 712.431.101: none for one or two strings, so max(2, ...)."""
    rating = string_fuse.unfused_strings_max(18.5, 5, profile("IEC 60364-7-712"))
    assert rating.value == 2
    assert str(rating.formula).startswith("max(2, ")


@pytest.mark.parametrize(("i_n_a", "holds"), [(30, False), (30.1, True), (34.9, True), (35, False)])
def test_window_of_grouped_strings_is_open(i_n_a, holds) -> None:
    """IEC 62548:2016 6.5 (m): f·SG·Isc < In < OCPR - (SG - 1)·Isc; 1.5 · 2 · 10 = 30 A, 45 - 10 = 35 A."""
    assert string_fuse.grouped_window(10, 45, 2, profile("IEC 62548-1")).holds(i_n_a) is holds


@pytest.mark.parametrize(
    ("change", "phases", "reactive", "formula"),
    [
        (voltage_change.voltage_rise, 1, "supplied", "2 · I · L · (R · cosφ + X · sinφ)"),
        (voltage_change.voltage_rise, 3, "absorbed", "√3 · I · L · (R · cosφ − X · sinφ)"),
        (voltage_change.voltage_drop, 3, "absorbed", "√3 · I · L · (R · cosφ + X · sinφ)"),
        (voltage_change.voltage_drop, 1, "supplied", "2 · I · L · (R · cosφ − X · sinφ)"),
    ],
)
def test_formula_of_a_change_of_voltage(change, phases, reactive, formula) -> None:
    """IEC 60364-5-52:2009 Annex G; the sign of X by the flow of reactive power."""
    rating = change(phases, 20, 50, 3, 0.08, 0.9, reactive)
    assert str(rating.formula) == formula
    assert [rating.input(symbol) for symbol in ("I", "L", "R", "X", "cosφ")] == [20, 50, 3, 0.08, 0.9]


def test_percent_and_volt_are_not_summed() -> None:
    with pytest.raises(ValueError, match="percentages"):
        voltage_change.voltage_rise_sum([percent(1), PER_METRE])


@pytest.mark.parametrize(
    ("depth_m", "duct", "direct"), [(0.5, 1.02, 1.02), (0.7, 1, 1), (0.71, 0.99, 0.99), (1.21, 0.95, 0.94)]
)
def test_depth_of_laying(depth_m, duct, direct) -> None:
    """REBT ITC-BT-07 to 1.2 m, the deepest row of BS 7671:2018 Table 4B4 (m); base 0.7 m."""
    assert ac_cable.depth_factor(depth_m, "D1").value == duct
    assert ac_cable.depth_factor(depth_m, "D2").value == direct
    assert ("REBT" in str(ac_cable.depth_factor(depth_m, "D2").clause)) == (depth_m <= 1.2)


def test_one_cable_where_no_number_is_given() -> None:
    assert ac_cable.tabulated_capacity_needed(20).value == 20


@pytest.mark.parametrize(("backfeed_a", "current_a", "formula"), [(0, 25, "f·Np·Isc"),
                                                                  (50, 50, "max(Ibackfeed, f·Np·Isc)")])  # fmt: skip
def test_backfeed_of_the_inverter(backfeed_a, current_a, formula) -> None:
    """1.25 · 2 · 10 A; IEC 62548:2016 circuit-current table (m)."""
    rating = dc_cable.array_current_min(2, 10, profile("IEC 62548-1"), backfeed_a=backfeed_a)
    assert (rating.value, rating.formula) == (current_a, formula)


def test_routes_are_counted_from_one() -> None:
    assert [given.symbol for given in dc_surge.route_length([10, 20], 5).given] == ["L1", "L2", "Lshared"]


@pytest.mark.parametrize(("idn_ma", "r_a_ohm"), [(30, 1667), (100, 500), (300, 167), (500, 100)])
def test_largest_electrode_resistance(idn_ma, r_a_ohm) -> None:
    """BS 7671:2018 Table 41.5: 1667 Ω for 30 mA, 500 Ω for 100 mA, 167 Ω for 300 mA, 100 Ω for 500 mA."""
    assert disconnection.largest_electrode_resistance(idn_ma).value == pytest.approx(r_a_ohm, abs=0.5)


def test_two_cables_in_parallel_halve_the_impedance() -> None:
    two = fault.cable_impedance(1.83, 0.08, 100, parallel_count=2)
    assert two == Impedance(pytest.approx(0.0915), pytest.approx(0.004))


@pytest.mark.parametrize(("ratio", "peak_factor"), [(0, 2.0), (1 / 3, 1.3805), (1, 1.0688)])
def test_peak_factor(ratio, peak_factor) -> None:
    """IEC 60909-0:2016 8.1 (m): κ = 1.02 + 0.98 e^(-3 R/X), 2 without resistance, 1.02 + 0.98/e at R/X 1/3."""
    assert fault.peak_current(10, ratio).value == pytest.approx(10 * sqrt(2) * peak_factor, rel=1e-4)


@pytest.mark.parametrize(("bs_88", "current_a", "time_s"), [(False, 147, 0.4), (True, 130, 0.4)])
def test_fuse_of_20_a_within_0_4_s(bs_88, current_a, time_s) -> None:
    """Manual of a loop tester: 147 A of gG; BS 7671:2018 Table 41.2(a): 130 A of BS 88-2."""
    inputs = {"bs_88": True} if bs_88 else {}
    opens = fuse.opening_current(20, 0.4, **inputs)
    assert (opens.value, opens.input("t")) == (current_a, time_s)
    energy = fuse.energy_until_open(20, 140, **inputs)
    # at 140 A those 147 A are not reached: 85 A for 5 s, or 130 A for 0.4 s
    assert energy.value == pytest.approx(130**2 * 0.4 if bs_88 else 85**2 * 5)
    assert [given.symbol for given in energy.given] == ["Ik1,min", "Ia", "t", "In"]
    assert energy.input("In") == 20


def test_a_fuse_holds_for_a_tenth_of_a_second() -> None:
    assert fuse.holding_current(20).input("t") == 0.1


@pytest.mark.parametrize(("phases", "current_a"), [(1, 10), (3, 5.7735)])
def test_design_current(phases, current_a) -> None:
    assert inverter.design_current(phases, 230, s_max_va=2300).value == pytest.approx(current_a, rel=1e-4)


@pytest.mark.parametrize(
    ("units", "line", "phasor"),
    [
        ([(("L2",), 10)], "L2", complex(-5, -8.66025)),
        ([(("L3",), 10)], "L3", complex(-5, 8.66025)),
        ([(("L1", "L2"), 10)], "L1", complex(8.66025, 5)),
        ([(("L1", "L2"), 10)], "L2", complex(-8.66025, -5)),
        ([(("L1", "L2"), 10), (("L1",), 10)], "L1", complex(18.66025, 5)),
    ],
)
def test_phasors(units, line, phasor) -> None:
    """Three phases L1, L2, L3 at 0°, -120°, 120°; the voltage L1-L2 leads L1 by 30° (circuit theory)."""
    assert line_currents.phasors(units)[line] == pytest.approx(phasor, rel=1e-5)


def mcb(i_n_a: float, curve: str = "C") -> selectivity.Protection:
    return selectivity.Protection("MCB", i_n_a, curve)


def gg(i_n_a: float) -> selectivity.Protection:
    return selectivity.Protection("gG", i_n_a)


@pytest.mark.parametrize(
    ("upstream", "downstream", "why"),
    [
        (gg(39), mcb(25), ""),  # 1.56 · 25 A exactly
        (gg(38.9), mcb(25), "38.9 A is less than 1.6 times 25 A"),
        (gg(20), gg(10), "20 A is less than 1.6 times 16 A"),
        (mcb(32), mcb(25), "36.2 A that it carries are less than the 36.3 A that trip the device below"),
        # 1.05 · 130 A = 1.30 · 105 A
        (selectivity.Protection("MCCB", 130), selectivity.Protection("MCCB", 105), ""),
    ],
)
def test_overload_shortfall_in_words(upstream, downstream, why) -> None:
    """IEC 60898-1: 1.13 and 1.45 In; IEC 60947-2: 1.05 and 1.30 In; IEC 60269-1: 1.6:1 from 16 A."""
    assert str(selectivity.overload_shortfall(upstream, downstream) or "") == why


@pytest.mark.parametrize(
    ("upstream", "downstream", "ik_ka", "formula", "assumed"),
    [
        (gg(63), gg(32), 10, "Ik,max: In,up ≥ 1.6 · In,down", False),
        (gg(160), mcb(16), 6, "Ik,max: I²t ≤ I²t,melt", True),
        (gg(160), mcb(16), 10, "Ik,max: I²t ≤ I²t,melt", True),
        (gg(160), mcb(16), 10.05, "I,hold for 0.1 s", False),
    ],
)
def test_how_far_selectivity_reaches(upstream, downstream, ik_ka, formula, assumed) -> None:
    """Energy limiting class 3 is stated at 6 kA (EN 60898-1 Annex ZA (m)); beyond it the time-current gate is left."""
    rating = selectivity.selectivity_limit(upstream, downstream, ik_ka)
    assert str(rating.formula) == formula
    assert bool(rating.assumptions) is assumed
    assert rating.given[-1].symbol == ("t" if formula.endswith("s") else "Ik,max")


@pytest.mark.parametrize(("breaker_a", "limit_a"), [(20, 200), (25, None)])
def test_a_fuse_that_holds_what_trips_the_breaker(breaker_a, limit_a) -> None:
    """A gG fuse of 32 A stands 200 A for 0.1 s (IEC 60269-1 Table 3 (m)); curve C trips at once from 10 In."""
    rating = selectivity.selectivity_limit(gg(32), mcb(breaker_a), 10)
    assert (rating and rating.value) == limit_a


def test_a_breaker_whose_magnetic_trip_is_not_known_promises_nothing() -> None:
    assert selectivity.selectivity_limit(selectivity.Protection("MCCB", 100), mcb(6, "B"), 5) is None


UOC_MAX = Rating(
    Symbol.UOC_MAX,
    1000.0,
    "V",
    "N·Uoc",
    (),
    cited("IEC 62548:2016 7.2"),
    NOTHING,
    (phrase("no lowest temperature known"),),
)


@pytest.mark.parametrize(("percent_up", "uoc_v"), [(3, 1030), (0, 1000), (10, 1100)])
def test_upper_end_of_the_tolerance(percent_up, uoc_v) -> None:
    """t % upwards (data sheet of the module); what was assumed of the voltage stays said."""
    rating = string.uoc_max_with_tolerance(UOC_MAX, percent_up)
    assert rating.value == pytest.approx(uoc_v)
    assert (rating.input("Uoc,max"), rating.input("t")) == (1000, percent_up)
    assert rating.assumptions == UOC_MAX.assumptions


def test_a_fuse_bears_the_highest_voltage() -> None:
    """IEC 60269-6 (m): the rated voltage is at least Uoc,max."""
    rating = string_fuse.voltage_min(UOC_MAX)
    assert (rating.value, rating.unit, rating.assumptions) == (1000, "V", UOC_MAX.assumptions)
    assert rating.given[0].unit == "V"


def test_highest_mpp_voltage_names_its_inputs() -> None:
    """18 · 31 V · (1 + 0.0039 · 37) = 638.5 V."""
    rating = string.umpp_max(18, 31, -0.39, -12)
    assert rating.value == pytest.approx(638.5, abs=0.05)
    assert str(rating.formula) == "N·Umpp·(1 + κ/100·(Tmin - 25))"
    assert [given.symbol for given in rating.given] == ["N", "Umpp", "κ", "Tmin"]


@pytest.mark.parametrize(("name", "words", "clause"), [("gpv_fuse_a", "gPV rating", "IEC 60269-6"),
                                                       ("nec_240_6_a", "standard rating", "NEC 240.6(A)")])  # fmt: skip
def test_series_of_the_string_fuse(name, words, clause) -> None:
    window = string_fuse.window(13.9, 30, profile("IEC 62548-1"))
    rating = string_fuse.smallest_rating(window, series_name=name)
    assert str(rating.formula).startswith(f"smallest {words} from")
    assert clause in str(rating.clause)
    if name == "gpv_fuse_a":
        assert string_fuse.smallest_rating(window).formula == rating.formula


def test_what_a_dc_fuse_breaks() -> None:
    """1.25 · 41.7 A = 52.1 A, and what the inverter feeds back."""
    assert string_fuse.breaking_current(41.7, profile("IEC 62548-1")).value == pytest.approx(0.052125)
    assert string_fuse.breaking_current(41.7, profile("IEC 62548-1"), 5).value == pytest.approx(0.057125)


def test_a_transformer_without_losses_is_all_reactance() -> None:
    """4 % of (400 V)² / 250 kVA = 25.6 mΩ."""
    impedance = transformer.transformer_impedance(250, 400, 4)
    assert (impedance.r_ohm, impedance.x_ohm) == (0, pytest.approx(0.0256))


def test_leakage_of_a_wet_array() -> None:
    """2π · 50 Hz · 500 nF · 230 V = 36.128 mA (definition of a capacitor's current)."""
    rating = residual_monitor.array_leakage(50, 10, 230, 50)
    assert rating.value == pytest.approx(2 * pi * 50 * 500e-9 * 230e3, rel=1e-9)


def test_no_device_of_zero() -> None:
    for pair in ((gg(0), mcb(16)), (gg(63), mcb(0))):
        with pytest.raises(ValueError, match="above zero"):
            selectivity.overload_shortfall(*pair)
