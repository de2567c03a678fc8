"""Inputs that no formula of the field has a meaning for are refused with a ValueError, as each docstring says.

Lengths, sections, voltages, currents, powers and counts are above zero by their definition; what may be absent (a
leakage, a length of nothing) is at least zero. Each row: a call that is good, and the inputs that must be above zero
(+) or at least zero (0).
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

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
    conduit,
    data_bus,
    dc_cable,
    dc_surge,
    disconnection,
    fault,
    fuse,
    inverter,
    meter,
    module,
    neutral,
    protective_conductor,
    rcd,
    residual_monitor,
    selectivity,
    source_impedance,
    thermal,
    transformer,
    voltage_change,
)
from sld.ratings.impedance import Impedance
from sld.ratings.nec import busbar
from sld.ratings.symbol import Symbol
from sld.tables.table import NoRow
from sld.words import phrase

IT = Rating(Symbol.IT, 57.0, "A", phrase("table value"), (), cited("IEC 60364-5-52:2009"))
RISE = Rating(Symbol.DU_RISE_V, 4.0, "V", phrase("as declared"), (), cited("IEC 60364-5-52:2009"))
SECTION = Rating(Symbol.SPE_TABLE, 35.0, "mm²", "S/2", (), cited("IEC 60364-5-54:2011"))
DESIGN = cable_section.CableDesign("Cu", "XLPE", 3, "C")
CHANGE = {"phase_count": 3, "i_a": 20.0, "length_m": 30.0, "r_ohm_per_km": 3.0, "x_ohm_per_km": 0.08}
LOOP = Impedance(0.3, 0.1)

DUCT = phrase("duct")

ROWS: tuple[tuple[Callable[..., Any], dict[str, Any], str, str], ...] = (
    (ac_cable.soil_factor, {"resistivity_k_m_per_w": 2.5, "method": "D1"}, "resistivity_k_m_per_w", ""),
    (ac_cable.grouping_factor, {"arrangement": "bunched_A_to_F", "circuits_count": 2}, "circuits_count", ""),
    (ac_cable.declared_factor, {"symbol": Symbol.CD, "value_factor": 0.9, "reason": DUCT}, "value_factor", ""),
    (ac_cable.corrected_capacity, {"tabulated": IT, "parallel_count": 2}, "parallel_count", ""),
    (ac_cable.tabulated_capacity_needed, {"current_a": 20.0, "parallel_count": 2}, "current_a parallel_count", ""),
    (ac_surge.least_operating_voltage, {"earthing": "TT", "mode": "L-N", "u_0_v": 230.0, "u_n_v": 400.0},
     "u_0_v u_n_v", ""),
    (array.dc_ac_ratio, {"p_dc_w": 6000.0, "p_ac_w": 5000.0}, "p_ac_w", ""),
    (board.busbar_load, {"incomer_i_n_a": 63.0, "source_currents_a": [16.0]}, "incomer_i_n_a", ""),
    (board.standard_assembly_current, {"busbar_load_a": 63.0}, "busbar_load_a", ""),
    (board.largest_source_breaker_120, {"busbar_a": 200.0, "main_breaker_a": 100.0}, "busbar_a main_breaker_a", ""),
    (protective_conductor.armour_equivalent, {"armour_mm2": 60.0, "k_lines": 143.0, "k_armour": 46.0},
     "armour_mm2 k_lines k_armour", ""),
    (neutral.smallest_neutral, {"section_mm2": 35.0, "line_count": 3, "material": "Cu"}, "section_mm2 line_count", ""),
    (protective_conductor.earthing_conductor_as_nzs, {"active_mm2": 6.0, "material": "Cu"}, "active_mm2", ""),
    (bonding.copper_equivalent, {"section_mm2": 25.0, "material": "Cu"}, "section_mm2", ""),
    (bonding.main_bonding, {"largest_protective_mm2": 16.0}, "largest_protective_mm2", ""),
    (bonding.main_bonding_pme, {"neutral_mm2": 25.0}, "neutral_mm2", ""),
    (breaker.smallest_rated_current, {"device": "MCB", "i_b_a": 12.0}, "i_b_a", ""),
    (breaker.conventional_tripping_current, {"device": "gG", "i_n_a": 16.0}, "i_n_a", ""),
    (breaker.overload_limit, {"i_z_a": 20.0}, "i_z_a", ""),
    (breaker.largest_rated_current, {"device": "MCB", "i_z_a": 20.0}, "i_z_a", ""),
    (breaker.instantaneous_tripping_current, {"curve": "C", "i_n_a": 16.0}, "i_n_a", ""),
    (breaker.instantaneous_holding_current, {"curve": "C", "i_n_a": 16.0}, "i_n_a", ""),
    (breaker.let_through_energy, {"curve": "C", "i_n_a": 16.0, "i_k_ka": 6.0}, "i_n_a i_k_ka", ""),
    (breaker.loading, {"i_b_a": 12.0, "i_n_a": 16.0}, "i_b_a i_n_a", ""),
    (breaker.current_by_diversity, {"i_b_a": 12.0, "diversity_factor": 0.8}, "i_b_a diversity_factor", ""),
    (breaker.continuous_duty_current, {"i_max_a": 12.0}, "i_max_a", ""),
    (cable_section.smallest_section, {"design": DESIGN, "capacity_needed_a": 20.0}, "capacity_needed_a", ""),
    (conductor.resistance, {"material": "Cu", "section_mm2": 4.0, "temperature_c": 70.0}, "section_mm2", ""),
    (data_bus.longest_segment, {"baud": 9600.0}, "baud", ""),
    (data_bus.poll_time, {"devices_count": 4, "baud": 9600.0, "request_byte_count": 8, "reply_byte_count": 100,
                          "bits_per_character_count": 11},
     "devices_count baud request_byte_count reply_byte_count bits_per_character_count", ""),
    (dc_cable.voltage_drop_percent, {"drop_v": 4.0, "umpp_v": 500.0}, "umpp_v", ""),
    (dc_surge.critical_length, {"flash_density_per_km2_year": 2.0, "premises": "dwelling"},
     "flash_density_per_km2_year", ""),
    (disconnection.circuit_kind, {"i_n_a": 16.0}, "i_n_a", ""),
    (disconnection.largest_loop_impedance, {"u_0_v": 230.0, "i_a_a": 160.0, "c_min_factor": 0.95},
     "u_0_v i_a_a c_min_factor", ""),
    (disconnection.measured_loop_limit, {"u_0_v": 230.0, "i_a_a": 160.0}, "u_0_v i_a_a", ""),
    (disconnection.touch_voltage, {"resistance_ohm": 100.0, "i_delta_n_ma": 30.0}, "i_delta_n_ma", "resistance_ohm"),
    (disconnection.largest_electrode_resistance, {"i_delta_n_ma": 30.0}, "i_delta_n_ma", ""),
    (fault.cable_impedance, {"r_20_ohm_per_km": 1.83, "x_ohm_per_km": 0.08, "length_m": 50.0, "parallel_count": 1},
     "parallel_count", "r_20_ohm_per_km x_ohm_per_km length_m"),
    (fault.three_phase_current, {"u_n_v": 400.0, "z": LOOP, "c_factor": 1.1, "extreme": "max"}, "u_n_v c_factor", ""),
    (fault.peak_current, {"i_k_ka": 6.0, "r_over_x_ratio": 0.5}, "i_k_ka", "r_over_x_ratio"),
    (inverter.declared_current, {"i_max_a": 17.0}, "i_max_a", ""),
    (inverter.design_current, {"phase_count": 3, "u_v": 400.0, "s_max_va": 12_000.0}, "u_v s_max_va", ""),
    (inverter.current_at_low_voltage, {"i_b_a": 17.0, "voltage_factor": 0.9}, "i_b_a voltage_factor", ""),
    (meter.metered_current, {"main_device_a": 35.0, "export_a": 17.0}, "main_device_a export_a", ""),
    (meter.metered_behind_transformer,
     {"main_device_a": 630.0, "transformer_a": 577.0, "elsewhere_a": 0.0, "export_a": 0.0},
     "main_device_a transformer_a", "elsewhere_a export_a"),
    (meter.direct_meter_current, {"current_a": 35.0}, "current_a", ""),
    (meter.transformer_primary, {"current_a": 90.0}, "current_a", ""),
    (meter.transformer_ratio, {"primary_a": 100.0, "secondary_a": 5.0}, "primary_a secondary_a", ""),
    (meter.transformer_lead_burden, {"secondary_a": 5.0, "length_m": 4.0, "section_mm2": 2.5},
     "secondary_a length_m", ""),
    (module.coefficient_percent_per_k, {"coefficient_per_k": -0.1, "stc_value": 37.0}, "stc_value", ""),
    (module.design_short_circuit_current, {"isc_a": 13.9, "bifaciality_factor": 0.7, "rear_irradiance_factor": 0.1},
     "", "bifaciality_factor rear_irradiance_factor"),
    (protective_conductor.table_section, {"line_section_mm2": 16.0}, "line_section_mm2", ""),
    (protective_conductor.high_leakage_minimum, {"leakage_ma": 12.0}, "", "leakage_ma"),
    (rcd.residual_current_type, {"simple_separation": False, "declared_dc_ma": 6.0}, "", "declared_dc_ma"),
    (rcd.least_residual_current, {"leakage_ma": 9.0}, "", "leakage_ma"),
    (rcd.chosen_residual_current, {"leakage_ma": 9.0, "r_a_ohm": 100.0}, "r_a_ohm", "leakage_ma"),
    (source_impedance.impedance_from_fault_current,
     {"i_k_ka": 6.0, "u_n_v": 400.0, "c_factor": 1.0, "r_over_x_ratio": 0.5}, "i_k_ka u_n_v c_factor",
     "r_over_x_ratio"),
    (source_impedance.impedance_from_short_circuit_power,
     {"s_k_mva": 250.0, "u_lv_v": 400.0, "c_factor": 1.1, "r_over_x_ratio": 0.1}, "s_k_mva u_lv_v c_factor",
     "r_over_x_ratio"),
    (thermal.k_factor, {"use": "live_or_core_in_cable", "insulation": "PVC70", "material": "Cu", "section_mm2": 16.0},
     "section_mm2", ""),
    (thermal.cleared_energy, {"i_a": 1000.0, "time_s": 0.1}, "i_a time_s", ""),
    (thermal.section_for_energy, {"let_through_a2s": 55_000.0, "k_a_sqrt_s_per_mm2": 115.0},
     "let_through_a2s k_a_sqrt_s_per_mm2", ""),
    (thermal.withstand_energy, {"section_mm2": 4.0, "k_a_sqrt_s_per_mm2": 115.0}, "section_mm2 k_a_sqrt_s_per_mm2", ""),
    (transformer.rated_current, {"s_r_kva": 250.0, "u_r_v": 400.0}, "s_r_kva u_r_v", ""),
    (transformer.transformer_impedance, {"s_r_kva": 250.0, "u_r_v": 400.0, "u_k_percent": 4.0, "u_kr_percent": 1.0},
     "s_r_kva u_r_v u_k_percent", "u_kr_percent"),
    (transformer.correction_factor, {"u_k_percent": 4.0, "u_kr_percent": 1.0, "c_max_factor": 1.1},
     "u_k_percent c_max_factor", "u_kr_percent"),
    (voltage_change.voltage_rise, CHANGE, "", "i_a length_m r_ohm_per_km x_ohm_per_km"),
    (voltage_change.voltage_drop, CHANGE, "", "i_a length_m r_ohm_per_km x_ohm_per_km"),
    (voltage_change.change_percent, {"change": RISE, "u_v": 400.0}, "u_v", ""),
    (voltage_change.voltage_at_inverter, {"u_network_v": 230.0, "rise_percent": 1.0}, "u_network_v", ""),
    (voltage_change.longest_length, {"limit_percent": 1.0, "u_v": 400.0, "change_at_one_metre": RISE},
     "limit_percent u_v", ""),
    (ac_cable.depth_factor, {"depth_m": 0.7, "method": "D1"}, "depth_m", ""),
    (board.both_ways_load, {"i_n_a": 16.0, "source_a": 12.2}, "i_n_a", "source_a"),
    (board.generation_load, {"source_a": 17.0}, "source_a", ""),
    (fault.standard_peak_current, {"i_k_ka": 6.0}, "i_k_ka", ""),
    (fault.generation_share, {"generation_a": 17.0, "i_k_ka": 6.0}, "i_k_ka", "generation_a"),
    (fuse.opening_current, {"i_n_a": 20.0, "time_s": 5.0}, "i_n_a time_s", ""),
    (fuse.energy_until_open, {"i_n_a": 20.0, "i_k_min_a": 200.0}, "i_n_a i_k_min_a", ""),
    (fuse.holding_current, {"i_n_a": 20.0}, "i_n_a", ""),
    (fuse.pre_arcing_energy, {"i_n_a": 20.0}, "i_n_a", ""),
    (residual_monitor.array_leakage,
     {"capacitance_nf_per_kwp": 50.0, "power_kwp": 10.0, "u_0_v": 230.0, "frequency_hz": 50.0},
     "capacitance_nf_per_kwp power_kwp u_0_v frequency_hz", ""),
    (conduit.largest_fill, {"count": 2, "by_code": True}, "count", ""),
    (conduit.fill, {"cables": [(2, 12.0)], "inside_diameter_mm": 40.0}, "inside_diameter_mm", ""),
    (conductor.loaded_temperature,
     {"hot_c": 70.0, "reference_c": 30.0, "i_a": 16.0, "tabulated_a": 24.0, "factor": 1.0},
     "tabulated_a factor", "i_a"),
    (busbar.least_for_trunk, {"main_a": 60.0, "exported_a": 40.0}, "main_a", "exported_a"),
    (busbar.protected, {"main_a": 60.0}, "main_a", ""),
    (breaker.duty_current, {"exported_a": 40.0, "continuous_a": 20.0, "other_a": 10.0}, "",
     "exported_a continuous_a other_a"),
    (selectivity.residual_ratio, {"upstream_ma": 300.0, "downstream_ma": 30.0}, "upstream_ma downstream_ma", ""),
)  # fmt: skip

POSITIVE = [(call, good, name) for call, good, names, _ in ROWS for name in names.split()]
NOT_NEGATIVE = [(call, good, name) for call, good, _, names in ROWS for name in names.split()]


def _called(case: object) -> str:
    return f"{case.__module__.rpartition('.')[2]}.{case.__name__}" if callable(case) else str(case)


@pytest.mark.parametrize(("call", "good", "names", "others"), ROWS, ids=_called)
def test_the_call_is_good_as_it_stands(call, good, names, others) -> None:
    assert call(**good) is not None
    assert set(f"{names} {others}".split()) <= set(good)


@pytest.mark.parametrize(("call", "good", "name"), POSITIVE, ids=_called)
@pytest.mark.parametrize("value", [0, -1])
def test_what_is_above_zero_by_definition(call, good, name, value) -> None:
    with pytest.raises(ValueError, match=r"above|at least|not"):
        call(**{**good, name: value})


@pytest.mark.parametrize(("call", "good", "name"), NOT_NEGATIVE, ids=_called)
def test_what_may_be_nothing_is_not_negative(call, good, name) -> None:
    with pytest.raises(ValueError, match="negative"):
        call(**{**good, name: -1e-6})
    call(**{**good, name: 0})


@pytest.mark.parametrize(
    "call",
    [
        lambda: board.busbar_load(63, [16, -1]),
        lambda: data_bus.unit_loads([1, 0]),
        lambda: data_bus.unit_loads([]),
        lambda: data_bus.bus_length([10, 0]),
        lambda: voltage_change.voltage_rise_sum([]),
        lambda: fault.loop_impedance([]),
        lambda: protective_conductor.standard_section(
            Rating(Symbol.S, 0.0, "mm²", "", (), cited("IEC 60364-5-54:2011"))
        ),
        lambda: fault.earth_fault_current(230, Impedance(0, 0), 0.95, "min"),
        lambda: inverter.design_current(2, 400, s_max_va=12_000),
        lambda: inverter.design_current(3, 400),
        lambda: conductor.resistance("Cu", 4, -273.15),  # absolute zero
    ],
)
def test_refused(call) -> None:
    with pytest.raises(ValueError, match=r"."):
        call()


@pytest.mark.parametrize(
    "call",
    [
        lambda: breaker.smallest_rated_current("fusible link", 16),
        lambda: breaker.conventional_tripping_current("fusible link", 16),
        lambda: ac_cable.tabulated_capacity("Cu", "PVC", 3, "F2", 16),  # F2 is tabulated for two conductors
    ],
)
def test_no_row(call) -> None:
    with pytest.raises(NoRow):
        call()
