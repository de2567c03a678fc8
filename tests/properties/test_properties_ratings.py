"""Laws of the formulas: what rises with what, what scales how, and that a chosen size passes its own check."""

from __future__ import annotations

import json
from itertools import pairwise
from math import sqrt
from typing import Any

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from some_examples import examples

from sld import model
from sld.model.kinds.ac import MAIN_SWITCH
from sld.model.system import System
from sld.quantity import Origin, Rating
from sld.ratings import (
    ac_cable,
    array,
    breaker,
    data_bus,
    dc_cable,
    dc_section,
    dc_surge,
    disconnection,
    fault,
    meter,
    module,
    rcd,
    string,
    string_fuse,
    thermal,
    transformer,
    voltage_change,
)
from sld.ratings.cable_section import CableDesign, VoltageDemand, smallest_section
from sld.ratings.conductor import resistance
from sld.ratings.impedance import Impedance
from sld.ratings.protective_conductor import standard_section, table_section
from sld.ratings.symbol import Symbol
from sld.rules import review
from sld.spec.document import Spec
from sld.steps import Ratings, rate
from sld.tables.profiles import PROFILE_NAMES, profile
from sld.tables.table import series, table
from specs import specs

FIXED, FEW = examples(30), examples(8)

AMPERES, METRES = st.floats(0.1, 1000), st.floats(0.1, 1000)
OHM_PER_KM, REACTANCE = st.floats(0.05, 20), st.floats(0, 0.2)
FACTORS = st.floats(1.01, 20)
PHASES, COSINES = st.sampled_from([1, 3]), st.floats(0.1, 1)
SECTIONS = series("section_mm2")
AIR_C = st.floats(10, 60)
MODULE_VOLTS, COEFFICIENTS = st.floats(5, 120), st.floats(-0.5, -0.15)
same = pytest.approx


# -- voltage ------------------------------------------------------------------------------------------------------


@FIXED
@given(PHASES, AMPERES, METRES, OHM_PER_KM, REACTANCE, COSINES, FACTORS)
def test_the_rise_goes_with_length_current_and_impedance(phases, current, length, r, x, cosine, factor) -> None:
    rise = voltage_change.voltage_rise(phases, current, length, r, x, cosine).value
    assert voltage_change.voltage_rise(phases, current, factor * length, r, x, cosine).value == same(factor * rise)
    assert voltage_change.voltage_rise(phases, factor * current, length, r, x, cosine).value == same(factor * rise)
    halved = voltage_change.voltage_rise(phases, current, length, r / 2, x / 2, cosine).value  # two cables in parallel
    assert halved == same(rise / 2)


@FIXED
@given(AMPERES, METRES, OHM_PER_KM, REACTANCE, COSINES)
def test_what_raises_an_inverters_voltage_lowers_a_loads(current, length, r, x, cosine) -> None:
    supplied, absorbed = (
        voltage_change.voltage_rise(3, current, length, r, x, cosine, reactive).value
        for reactive in ("supplied", "absorbed")
    )
    assert supplied >= absorbed
    assert supplied + absorbed == same(2 * sqrt(3) * current * length / 1000 * r * cosine, rel=1e-6)
    drop = voltage_change.voltage_drop(3, current, length, r, x, cosine, "absorbed").value
    assert drop == same(supplied)


@FIXED
@given(PHASES, AMPERES, OHM_PER_KM, st.floats(0.1, 10))
def test_at_the_longest_length_the_limit_is_met(phases, current, r, limit_percent) -> None:
    u_v = 230.0 if phases == 1 else 400.0
    longest = voltage_change.longest_length(
        limit_percent, u_v, voltage_change.voltage_rise(phases, current, 1, r, 0.08)
    )
    assert longest is not None
    rise = voltage_change.voltage_rise(phases, current, longest.value, r, 0.08)
    assert voltage_change.change_percent(rise, u_v).value == same(limit_percent)


@FIXED
@given(METRES, AMPERES, OHM_PER_KM, FACTORS)
def test_a_direct_current_drop_goes_with_length_current_and_resistance(length, current, r, factor) -> None:
    drop = dc_cable.voltage_drop(length, current, r).value
    for changed in ((factor * length, current, r), (length, factor * current, r), (length, current, factor * r)):
        assert dc_cable.voltage_drop(*changed).value == same(factor * drop)


@pytest.mark.parametrize(("material", "conductor_class"), [("Cu", 2), ("Cu", 5), ("Al", 2)])
@FIXED
@given(temperature=st.floats(-40, 120), warmer=st.floats(0.1, 100))
def test_resistance_rises_with_temperature_and_falls_with_section(material, conductor_class, temperature, warmer):
    sections = [section for section in SECTIONS if material == "Cu" or section >= 10]
    cold = [resistance(material, section, temperature, conductor_class).value for section in sections]
    hot = [resistance(material, section, temperature + warmer, conductor_class).value for section in sections]
    assert all(left < right for left, right in zip(cold, hot, strict=True))
    assert all(left > right for left, right in pairwise(cold))


# -- capacity and choice of a cable -------------------------------------------------------------------------------

METHODS = st.sampled_from(["A1", "A2", "B1", "B2", "C", "E"])
DESIGNS = st.builds(
    lambda insulation, loaded, method, temperature_c, circuits, parallel: CableDesign(
        "Cu", insulation, loaded, method,
        (ac_cable.ambient_factor(temperature_c, insulation), ac_cable.grouping_factor("bunched_A_to_F", circuits)),
        parallel,
    ),
    st.sampled_from(["PVC", "XLPE"]), st.sampled_from([2, 3]), METHODS, AIR_C, st.integers(1, 20), st.integers(1, 4),
)  # fmt: skip


def capacity_a(design: CableDesign, section_mm2: float) -> float:
    it = ac_cable.tabulated_capacity(
        design.material, design.insulation, design.loaded_conductors_count, design.method, section_mm2
    )
    return ac_cable.corrected_capacity(it, design.factors, design.parallel_count).value


@FIXED
@given(st.sampled_from(["PVC", "XLPE"]), AIR_C, AIR_C, st.integers(1, 20), st.integers(1, 20))
def test_capacity_falls_with_heat_and_neighbours(insulation, one_c, other_c, few, many) -> None:
    cool, warm = sorted((one_c, other_c))
    assert ac_cable.ambient_factor(cool, insulation).value >= ac_cable.ambient_factor(warm, insulation).value
    for arrangement in dict.fromkeys(row["arrangement"] for row in table("grouping_factor").where(
        standard_table="B.52.17"
    )):  # fmt: skip
        fewer, more = (ac_cable.grouping_factor(arrangement, count).value for count in sorted((few, many)))
        assert fewer >= more
    arranged = ("single_in_air", "single_on_surface", "two_touching")
    for arrangement in arranged:
        assert (
            dc_cable.corrected_capacity(4, arrangement, cool, min(few, many)).value
            >= dc_cable.corrected_capacity(4, arrangement, warm, max(few, many)).value
        )


@FIXED
@given(DESIGNS, st.floats(1, 600), METRES, st.floats(0.3, 5))
def test_the_smallest_section_passes_and_the_next_smaller_does_not(design, current, length, limit) -> None:
    phases = 1 if design.loaded_conductors_count == 2 else 3
    u_v = 230.0 if phases == 1 else 400.0

    def passes(section_mm2: float) -> bool:
        r = resistance("Cu", section_mm2, 70).value
        rise = voltage_change.voltage_rise(phases, current / design.parallel_count, length, r, 0.08)
        percent = voltage_change.change_percent(rise, u_v).value
        return capacity_a(design, section_mm2) >= current and percent <= limit

    demand = VoltageDemand(phases, current, length, u_v, limit, 70.0, 0.08)
    chosen = smallest_section(design, current, demand)
    smaller = [section for section in SECTIONS if chosen is None or section < chosen.value]
    assert chosen is None or passes(chosen.value)
    assert not any(passes(section) for section in smaller)


@FIXED
@given(DESIGNS, st.floats(1, 500), FACTORS)
def test_more_current_never_takes_a_smaller_section(design, current, factor) -> None:
    less, more = smallest_section(design, current), smallest_section(design, factor * current)
    assert more is None or (less is not None and less.value <= more.value)


@FIXED
@given(st.floats(1, 80), METRES, st.floats(1, 40), st.floats(100, 1000), st.floats(0.3, 3), st.integers(1, 20))
def test_the_smallest_solar_cable_passes_and_the_next_smaller_does_not(needed, length, impp, umpp, limit, circuits):
    def passes(section_mm2: float) -> bool:
        capacity = dc_cable.corrected_capacity(section_mm2, "two_touching", 70, circuits).value
        hot = dc_cable.resistance(dc_cable.tinned_resistance_20(section_mm2).value, 90).value
        drop = dc_cable.voltage_drop(length, impp, hot).value
        return capacity >= needed and dc_cable.voltage_drop_percent(drop, umpp).value <= limit

    chosen = dc_section.smallest_section(
        dc_section.FreeAir("two_touching", 70, circuits), needed, dc_section.Drop(length, impp, umpp, limit)
    )
    sections = [row.number("section_mm2") for row in table("en50618_capacity").where(arrangement="two_touching")]
    usable = [section for section in sections if section >= 4]
    assert chosen is None or passes(chosen.value)
    assert not any(passes(section) for section in usable if chosen is None or section < chosen.value)


# -- protective devices, faults, heat -----------------------------------------------------------------------------

DEVICES = st.sampled_from(["MCB", "MCCB", "gG"])


@FIXED
@given(DEVICES, st.floats(0.1, 1200))
def test_a_chosen_device_carries_its_current_and_the_next_smaller_does_not(device, current) -> None:
    chosen = breaker.smallest_rated_current(device, current)
    assume(chosen is not None)
    ratings = series({"MCB": "mcb_a", "MCCB": "mccb_a", "gG": "gg_fuse_a"}[device])
    assert chosen.value >= current
    assert all(rating < current for rating in ratings if rating < chosen.value)


@FIXED
@given(DEVICES, st.floats(6, 1200))
def test_the_largest_device_protects_its_cable_and_the_next_larger_does_not(device, i_z) -> None:
    def protects(i_n: float) -> bool:
        return i_n <= i_z and breaker.conventional_tripping_current(device, i_n).value <= 1.45 * i_z

    largest = breaker.largest_rated_current(device, i_z)
    ratings = series({"MCB": "mcb_a", "MCCB": "mccb_a", "gG": "gg_fuse_a"}[device])
    assert largest is None or protects(largest.value)
    assert not any(protects(rating) for rating in ratings if largest is None or rating > largest.value)


@FIXED
@given(st.floats(0.0001, 1), st.floats(0.0001, 1), OHM_PER_KM, REACTANCE, METRES, METRES, st.floats(0, 200))
def test_fault_currents_fall_with_length_and_heat(r_s, x_s, r, x, length, more, warmer) -> None:
    source = Impedance(r_s, x_s)
    near = source + fault.cable_impedance(r, x, length)
    for far in (
        source + fault.cable_impedance(r, x, length + more),
        source + fault.cable_impedance(r, x, length, 20 + warmer),
    ):
        assert fault.three_phase_current(400, far, 1.1, "max").value <= fault.three_phase_current(
            400, near, 1.1, "max"
        ).value * (1 + 1e-12)
    three = fault.three_phase_current(400, near, 1.0, "min").value
    assert fault.line_to_line_current(400, near, 1.0, "min").value == same(sqrt(3) / 2 * three)
    to_earth = fault.earth_fault_current(400 / sqrt(3), 2 * near, 1.0, "min").value
    assert to_earth == same(three / 2)
    assert fault.loop_impedance([near, near]).value == same(2 * near.magnitude_ohm)


@FIXED
@given(st.floats(50, 3000), st.floats(200, 1000), st.floats(1, 12), FACTORS)
def test_transformer_currents(kva, u_v, uk_percent, factor) -> None:
    i_n = transformer.rated_current(kva, u_v).value
    assert transformer.rated_current(factor * kva, u_v).value == same(factor * i_n)
    behind = fault.three_phase_current(u_v, transformer.transformer_impedance(kva, u_v, uk_percent), 1.0, "max").value
    assert behind == same(i_n / uk_percent / 10)


@FIXED
@given(st.floats(10, 50_000), st.floats(0.1, 5), st.floats(20, 200), FACTORS)
def test_the_adiabatic_section(current, time, k, factor) -> None:
    def least(i_a: float, time_s: float, k_a_sqrt_s_per_mm2: float) -> Rating:
        return thermal.section_for_energy(thermal.cleared_energy(i_a, time_s).value, k_a_sqrt_s_per_mm2)

    section = least(current, time, k).value
    assert least(factor * current, time, k).value == same(factor * section)
    assert least(current, time, factor * k).value == same(section / factor)
    assert least(current, min(5, factor * time), k).value >= section * (1 - 1e-12)
    assert thermal.withstand_energy(section, k).value == same(current**2 * time)
    chosen = standard_section(least(current, time, k))
    assert chosen is None or thermal.withstand_energy(chosen.value, k).value >= current**2 * time * (1 - 1e-12)


@FIXED
@given(st.floats(1, 600), st.floats(1, 600))
def test_a_larger_line_conductor_never_has_a_smaller_protective_one(one, other) -> None:
    small, large = sorted((one, other))
    assert table_section(small).value <= table_section(large).value


@FIXED
@given(st.floats(6, 125), st.sampled_from("BCD"), FACTORS)
def test_loop_and_tripping_current_are_each_others_inverse(i_n, curve, factor) -> None:
    trip = breaker.instantaneous_tripping_current(curve, i_n).value
    loop = disconnection.largest_loop_impedance(230, trip).value
    assert fault.earth_fault_current(230, Impedance(loop, 0), 0.95, "min").value == same(trip)
    assert disconnection.largest_loop_impedance(230, factor * trip).value == same(loop / factor)
    assert breaker.instantaneous_holding_current(curve, i_n).value < trip


@FIXED
@given(st.floats(0, 300), st.floats(1, 2000))
def test_a_chosen_residual_current_is_above_the_leakage_and_kind_to_the_electrode(leakage, electrode) -> None:
    chosen = rcd.chosen_residual_current(leakage, electrode)
    assume(chosen is not None)
    assert chosen.value >= rcd.least_residual_current(leakage).value
    assert disconnection.touch_voltage(electrode, chosen.value).value <= 50
    assert chosen.value <= 1000 * 50 / electrode * (1 + 1e-12)  # IEC 60364-4-41 411.5.3


# -- strings ------------------------------------------------------------------------------------------------------


@FIXED
@given(st.integers(1, 40), MODULE_VOLTS, COEFFICIENTS, st.floats(-40, 25), st.floats(-40, 25))
def test_string_voltage_rises_with_cold_and_with_every_module(count, uoc, beta, one_c, other_c) -> None:
    cold, mild = sorted((one_c, other_c))
    ways = (
        lambda count, t_c: string.uoc_max_by_coefficient(count, uoc, beta, t_c),
        lambda count, t_c: string.uoc_max_by_table(count, uoc, t_c),
    )
    for by in ways:
        assert by(count, cold).value >= by(count, mild).value
        assert by(count, cold).value == same(count * by(1, cold).value)
        assert by(count, cold).value >= count * uoc


@FIXED
@given(MODULE_VOLTS, COEFFICIENTS, st.floats(25, 90), st.floats(25, 90), st.floats(20, 1000))
def test_hot_voltage_falls_with_heat_and_takes_more_modules(umpp, kappa, one_c, other_c, limit) -> None:
    warm, hot = sorted((one_c, other_c))
    assert string.umpp_min(1, umpp, kappa, hot).value <= string.umpp_min(1, umpp, kappa, warm).value <= umpp
    fewer, more = (
        string.modules_count_min(string.umpp_min(1, umpp, kappa, cell_c), limit).value for cell_c in (warm, hot)
    )
    assert fewer <= more


@FIXED
@given(st.floats(0, 55), st.floats(40, 55), FACTORS)
def test_cell_temperature_goes_with_the_sun(air, noct, factor) -> None:
    rise = module.hottest_cell_by_noct(air, noct, 800).value - air
    assert rise == same(noct - 20)
    assert module.hottest_cell_by_noct(air, noct, 800 * factor).value - air == same(factor * rise)


@pytest.mark.parametrize("name", PROFILE_NAMES)
@FIXED
@given(isc=st.floats(0.5, 25), ocpr=st.floats(1, 60), strings=st.integers(1, 30))
def test_a_chosen_fuse_lies_in_its_window_and_more_strings_never_need_less(name, isc, ocpr, strings) -> None:
    rules = profile(name)
    found = string_fuse.window(isc, ocpr, rules)
    chosen = string_fuse.smallest_rating(found)
    assert chosen is None or (found.holds(chosen.value) and chosen.value <= ocpr)
    assert not (found.is_empty and chosen is not None)
    fewer, more = (string_fuse.need(count, isc, ocpr, rules) for count in (strings, strings + 1))
    assert fewer.reverse.value < more.reverse.value
    assert more.needed or not fewer.needed
    assert array.isc_max(strings + 1, isc, rules).value > array.isc_max(strings, isc, rules).value


# -- surge, metering, data bus ------------------------------------------------------------------------------------


@FIXED
@given(st.floats(0.1, 40), FACTORS, st.sampled_from(["dwelling", "ground", "building"]))
def test_more_lightning_shortens_the_critical_length(density, factor, premises) -> None:
    length = dc_surge.critical_length(density, premises).value
    assert dc_surge.critical_length(factor * density, premises).value == same(length / factor)


@FIXED
@given(st.sampled_from([1.0, 5.0]), METRES, st.sampled_from([1.5, 2.5, 4, 6]), FACTORS)
def test_lead_burden_goes_with_length_and_current_squared(secondary, length, section, factor) -> None:
    burden = meter.transformer_lead_burden(secondary, length, section).value
    assert meter.transformer_lead_burden(secondary, factor * length, section).value == same(factor * burden)
    assert meter.transformer_lead_burden(factor * secondary, length, section).value == same(factor**2 * burden)


@FIXED
@given(st.floats(300, 1e7), FACTORS, st.integers(1, 60))
def test_faster_buses_are_shorter_and_quicker(baud, factor, devices) -> None:
    assert data_bus.longest_segment(factor * baud).value <= data_bus.longest_segment(baud).value <= 1200
    round_s = data_bus.poll_time(devices, baud).value
    assert data_bus.poll_time(devices, factor * baud).value == same(round_s / factor)
    assert data_bus.poll_time(2 * devices, baud).value == same(2 * round_s)


# -- whole systems ------------------------------------------------------------------------------------------------

LEAST = {
    Symbol.IN: (Symbol.IN_MIN, Symbol.IB),
    Symbol.IE: (Symbol.IE_MIN,),
    Symbol.UE: (Symbol.UE_MIN,),
    Symbol.UN: (Symbol.UN_MIN,),
    Symbol.UCPV: (Symbol.UCPV_MIN,),
    Symbol.IMAX: (Symbol.IM,),
    Symbol.IPN: (Symbol.IM,),
    Symbol.INA: (Symbol.INA_LEAST,),
    Symbol.IDN: (Symbol.IDN_LEAST,),
}
"""A size that the tool chooses, and what it must not be below."""

OF_A_MAIN_SWITCH = {**LEAST, Symbol.IN: (Symbol.IN_MIN, Symbol.IEXPORT)}
"""What the loads draw, the overcurrent device in series with it limits."""

SIZE_OF_RULE = {
    "AC01": "In", "AC02": "S", "AC03": "S", "AC09": "IΔn", "AC12": "In", "AC13": "In", "AC16": "S", "AC19": "InA",
    "DC14": "In", "DC16": "Un", "DC18": "Ue", "DC19": "Ie", "DC22": "S", "ME01": "Imax", "ME02": "Ipn",
}  # fmt: skip
"""The size that a finding says is too small."""


def is_chosen(rating: Rating | None) -> bool:
    return rating is not None and rating.origin is not Origin.GIVEN


def rated(data: dict[str, Any]) -> tuple[System, Ratings]:
    system = model.build(Spec.model_validate_json(json.dumps(data)))
    return system, rate(system)


@FEW
@given(specs())
def test_every_chosen_size_passes_its_own_check(data) -> None:
    """Also by the rules: a size left out, as remedies advise, never gets a finding that it is too small."""
    system, ratings = rated(data)
    chosen = [
        (key, symbol, rating)
        for key, held in ratings.values.items()
        for symbol, rating in held.items()
        if is_chosen(rating)
    ]
    wrong = []
    for key, symbol, rating in chosen:
        device = system.devices.get(key)
        of_kind = OF_A_MAIN_SWITCH if device is not None and device.has(MAIN_SWITCH) else LEAST
        least = [ratings.get(key, each) for each in of_kind.get(symbol, ())]
        wrong += [(key, str(rating), str(each)) for each in least if each is not None and rating.value < each.value]
        if symbol is Symbol.S:
            wrong += too_small(key, ratings)
    assert not wrong
    found = [
        (finding.code, finding.device, str(finding.message))
        for finding in review(system, ratings)
        if (symbol := SIZE_OF_RULE.get(finding.code)) and is_chosen(ratings.get(finding.device, symbol))
    ]
    assert not found


def too_small(key: str, ratings: Ratings) -> list[tuple[str, str, str]]:
    """Return what a chosen section does not meet: the current, and the change of voltage of its own choice."""
    section, capacity, needed = (ratings.get(key, symbol) for symbol in (Symbol.S, Symbol.IZ, Symbol.IZ_MIN))
    wrong = []
    if capacity is not None and needed is not None and capacity.value < needed.value * (1 - 1e-9):
        wrong.append((key, str(capacity), str(needed)))
    for change, limit in ((Symbol.DU_RISE, "Δu,limit"), (Symbol.DU_DC_CABLE, "Δu,max")):
        rating = ratings.get(key, change)
        given = {each.symbol: each.value for each in section.given} if section else {}
        if rating is not None and limit in given and rating.value > float(given[limit]) * (1 + 1e-9):
            wrong.append((key, str(rating), f"{limit} {given[limit]}"))
    return wrong
