"""The DC side as the walk rates it: hottest cell, highest voltage, linked inputs, routes, bunches, what is chosen."""

from __future__ import annotations

from dataclasses import replace

import pytest
from rated_specs import MODULE, STRING, changed, rated, rated_data, value

from sld.ratings.symbol import Symbol, Word
from sld.spec.blocks.module import ModuleType
from sld.steps import rate
from sld.steps.inputs import joined_groups, linked_inputs, strings_count
from sld.steps.ledger import NOT_NEEDED, OF_ARRAY, OF_SUB_ARRAY
from sld.steps.strings import uoc_max
from sld.tables.profiles import profile

UNIT = "inverters.roof"
INPUT = f"{UNIT}.inputs.0"
CABLE = f"{STRING}.cable"
BARE = {key: value for key, value in MODULE.items() if "coefficient" not in key}
# row 6235 of the module list of the California Energy Commission, 2019-03-05: 37.80 V at 25 °C; by the single-diode
# model (compared in tests/reference) 42.784 V at -10 °C with its Adjust
OPEN_DATA = {
    "photocurrent": "9.317927 A",
    "saturation_current": "0.6098899 nA",
    "series_resistance": 0.25903,
    "shunt_resistance": "602.153625 ohm",
    "modified_ideality": "1.612427 V",
}
ROW_6235 = {
    **BARE,
    "rated_power": "270 W",
    "open_circuit_voltage": "37.8 V",
    "short_circuit_current": "9.04 A",
    "mpp_voltage": "30.8 V",
    "mpp_current": "8.77 A",
    "current_coefficient": "5.135262 mA/K",
    "single_diode": OPEN_DATA,
}


def _module(**given: object) -> ModuleType:
    return ModuleType.model_validate({**ROW_6235, **given})


def test_the_coefficient_gives_the_design_value_and_the_model_a_second_look() -> None:
    # 20 · 37.8 V · (1 + 0.0036 · 35) = 851.3 V; the model 855.7 V
    changes = {"types.modules.m": {**ROW_6235, "voltage_coefficient": "-0.36 %/K"}, "site.temperature_min": -10}
    found = rated({**changes, f"{STRING}.modules_in_series": 20})
    assert value(found, STRING, Symbol.UOC_MAX) == pytest.approx(20 * 37.8 * 1.126)
    assert value(found, STRING, Symbol.UOC_MODEL) == pytest.approx(20 * 42.784420787, rel=1e-6)
    assert value(found, STRING, Symbol.UOC_MODEL_STC) == pytest.approx(20 * 37.8, rel=1e-6)


def test_the_model_decides_where_it_is_the_only_data() -> None:
    found = rated({"types.modules.m": ROW_6235, "site.temperature_min": -10, f"{STRING}.modules_in_series": 20})
    assert value(found, STRING, Symbol.UOC_MAX) == pytest.approx(20 * 42.784420787, rel=1e-6)


@pytest.mark.parametrize(
    ("name", "t_min_c", "expected_v"),
    [
        # factor table at -10 °C: 1.14 · 37.8 V = 43.1 V, more than the model
        ("IEC 62548-1", -10, 42.784420787),
        ("NEC 690", -10, 43.092),
        ("AS/NZS 5033", -10, 43.092),
        # below -40 °C the table ends
        ("NEC 690", -41, None),
    ],
)
def test_the_table_counts_too_where_the_profile_lays_it_down(name, t_min_c, expected_v) -> None:
    """NEC 2023 690.7(A)(2): the table where the maker gives no coefficient."""
    found = uoc_max(1, _module(), t_min_c, profile(name))
    if expected_v is None:
        assert not found.table_row
    else:
        assert found.value == pytest.approx(expected_v, rel=1e-6)


def test_ideality_by_cells_is_the_modified_ideality() -> None:
    # 1.612427 V / (60 · 25.69258 mV) = 1.045981
    by_cells = {key: each for key, each in OPEN_DATA.items() if key != "modified_ideality"}
    by_cells |= {"ideality_factor": 1.045981, "cells_in_series": 60}
    one, other = (uoc_max(1, _module(single_diode=data), -10, profile("cautious")) for data in (OPEN_DATA, by_cells))
    assert one.value == pytest.approx(other.value, rel=1e-5)


def test_a_wider_band_gap_gives_more_voltage_when_cold() -> None:
    wide = {**OPEN_DATA, "band_gap": "1.475 eV", "band_gap_coefficient": "-0.03 %/K"}
    plain = uoc_max(1, _module(), -10, profile("cautious"))
    assert uoc_max(1, _module(single_diode=wide), -10, profile("cautious")).value > plain.value


def test_tolerance_of_the_maker() -> None:
    # 18 · 37 V · (1 + 0.0026 · 37) = 730.1 V, and 3 %
    found = rated({"types.modules.m.voltage_tolerance": "3 %"})
    assert value(found, STRING, Symbol.UOC_TOL) == pytest.approx(18 * 37 * 1.0962 * 1.03)


@pytest.mark.parametrize(
    ("mounting", "noct", "hottest"),
    [
        # 34 °C air; flush 35 K, free 25 K (Australian guideline, from memory); (NOCT - 20) / 800 · 1000 (IEC 61215)
        ("roof_parallel", None, 69),
        ("roof_parallel", 45, 69),
        ("free_standing", 45, 34 + 31.25),
        ("free_standing", 40, 34 + 25),
        ("roof_parallel", 48.1, 34 + 35.125),
    ],
)
def test_the_hotter_of_mounting_and_noct(mounting, noct, hottest) -> None:
    module = {**MODULE, **({"nominal_cell_temperature": noct} if noct else {})}
    found = rated({"site.mounting": mounting, "types.modules.m": module})
    assert value(found, STRING, Symbol.TC_MAX) == pytest.approx(hottest)


def _three_inputs(**links: int) -> dict[str, object]:
    strings = [{"module": "m", "modules_in_series": 18, "count": 2}]
    inputs = [{"strings": strings, **({"linked_to": links[f"i{n}"]} if f"i{n}" in links else {})} for n in (1, 2, 3)]
    return {f"{UNIT}.inputs": inputs}


@pytest.mark.parametrize(
    ("links", "joined"),
    [({}, [2, 2, 2]), ({"i2": 1}, [4, 4, 2]), ({"i1": 3}, [4, 2, 4]), ({"i2": 1, "i3": 2}, [6, 6, 6])],
)
def test_strings_of_linked_inputs_count_together(links, joined) -> None:
    """Two trackers in parallel are one input to a fault: (Np - 1) · KI · Isc of all of them."""
    system, found = rated_data(changed(_three_inputs(**links)))
    terminals = [system.devices[f"{UNIT}.inputs.{place}"] for place in range(3)]
    assert [strings_count(joined_groups(system, each)) for each in terminals] == joined
    for terminal, count in zip(terminals, joined, strict=True):
        assert value(found, terminal.key, Symbol.IREV) == pytest.approx((count - 1) * 1.25 * 13.5)
        assert len(linked_inputs(system, terminal)) == count // 2


@pytest.mark.parametrize(
    ("count", "given", "circuits", "said"),
    [
        (1, {}, 1, "not bunched"),
        (4, {}, 4, "4 strings bunched"),
        (4, {"grouped_circuits": 1}, 1, ""),
        (4, {"grouped_circuits": 9}, 9, ""),
        (24, {}, 20, "24 strings in bunches of at most 20"),
    ],
)
def test_strings_of_one_entry_are_bunched_unless_the_spec_says_otherwise(count, given, circuits, said) -> None:
    """IEC 60364-5-52:2009 Table B.52.17: 1, 0.65 for four, 0.50 for nine, 0.38 for twenty; EN 50618: 6 mm² 57 A."""
    factor = {1: 1.0, 4: 0.65, 9: 0.50, 20: 0.38}[circuits]
    found = rated({f"{STRING}.count": count, CABLE: {"length": "10 m", "section": "6 mm2", **given}})
    capacity = found.get(CABLE, Symbol.IZ)
    assert capacity is not None
    assert capacity.value == pytest.approx(57 * 0.92 * factor)
    spoken = " ".join(map(str, capacity.assumptions))
    assert said in spoken
    assert said or "bunch" not in spoken


@pytest.mark.parametrize(("arrangement", "it_a"), [("single_in_air", 70), ("single_on_surface", 67)])
def test_how_the_conductors_lie(arrangement, it_a) -> None:
    found = rated({CABLE: {"length": "10 m", "section": "6 mm2", "arrangement": arrangement}})
    assert value(found, CABLE, Symbol.IZ) == pytest.approx(it_a * 0.92)  # EN 50618 Table A.3


def test_nec_tests_the_capacity_before_corrections_too() -> None:
    """NEC 2023 690.8(B)(1): 1.5625 · 13.5 A = 21.1 A; Table 310.16: 12 AWG has 20 A at terminals of 60 °C."""
    system, _ = rated_data(changed({CABLE: {"length": "10 m", "section": "12 AWG"}}))
    found = rate(replace(system, profile="NEC 690"))
    assert value(found, CABLE, Symbol.IT_MIN) == pytest.approx(1.5625 * 13.5)
    assert value(found, CABLE, Symbol.IT) == 20
    assert rate(system).get(CABLE, Symbol.IT_MIN) is None


@pytest.mark.parametrize(("routes", "length"), [((None, None), 35), (("east", "east"), 25), (("east", "west"), 35)])
def test_different_routes_add_up(routes, length) -> None:
    """UTE C15-712-1: strings on one cable way count once, different ways add up: 20 m, 10 m, 5 m to the inverter."""
    strings = [
        {"module": "m", "modules_in_series": 18, "cable": {"length": metres}, **({"cable_route": name} if name else {})}
        for metres, name in zip((20, 10), routes, strict=True)
    ]
    circuit = [{"kind": "isolator"}, {"kind": "cable", "length": "5 m"}]
    found = rated({INPUT: {"strings": strings, "circuit": circuit}})
    assert value(found, INPUT, Symbol.LROUTE) == pytest.approx(length)


def test_fuses_of_joined_strings_are_fewer() -> None:
    """Two strings to a fuse: half the fuses, and the window of IEC 62548:2016 6.5 for groups (from memory)."""
    module = {**MODULE, "rated_power": "118 W", "short_circuit_current": "4 A", "mpp_current": "3.8 A"}
    changes = {"types.modules.m": module, f"{STRING}.count": 7, f"{INPUT}.string_fuses": {}}
    system, found = rated_data(changed({**changes, f"{INPUT}.strings_per_fuse": 2}))
    fuse = system.devices[f"{STRING}.fuse"]
    assert fuse.count == 4
    assert value(found, fuse.key, Symbol.IN_MIN) == pytest.approx(1.5 * 2 * 4)
    assert value(found, fuse.key, Symbol.IN_MAX) == pytest.approx(25 - 4)
    # 1.25 · 2 · 4 A / 0.85 = 11.8 A, and above 12 A
    assert value(found, fuse.key, Symbol.IN) == 15


def test_insulation_and_leakage_of_the_array() -> None:
    """IEC 62109-2:2011 4.8.2: 730 V / 30 mA; IEC 62548:2016 6.4: 30 kΩ to 20 kWp (from memory)."""
    found = rated({f"{STRING}.count": 2, f"{INPUT}.functional_earth": True})
    assert value(found, "", Symbol.RISO_START) == pytest.approx(18 * 37 * 1.0962 / 30)
    assert value(found, "", Symbol.RISO_ARRAY) == 30
    assert value(found, INPUT, Symbol.IN_FE_MAX) == 1
    # 14.4 kWp · 50 nF · 2π · 50 Hz · 230 V
    assert value(found, UNIT, Symbol.ILEAK_ARRAY) == pytest.approx(52.0, abs=0.05)
    separated = rated({"types.inverters.t.galvanic_separation": True})
    assert separated.get(UNIT, Symbol.ILEAK_ARRAY) is None


def test_cables_of_strings_that_share_a_fuse_carry_what_it_lets_through() -> None:
    """IEC 62548:2016 6.5 (from memory): the fuse of 15 A and 1.25 · 4 A of the string beside it."""
    module = {**MODULE, "rated_power": "118 W", "short_circuit_current": "4 A", "mpp_current": "3.8 A"}
    fuses = {f"{INPUT}.string_fuses": {"rated_current": "15 A"}, f"{INPUT}.strings_per_fuse": 2}
    changes = {"types.modules.m": module, f"{STRING}.count": 8, CABLE: {"length": "10 m"}, **fuses}
    assert value(rated(changes), CABLE, Symbol.IZ_MIN) == pytest.approx(15 + 1.25 * 4)
    assert value(rated({**changes, f"{INPUT}.strings_per_fuse": 1}), CABLE, Symbol.IZ_MIN) == pytest.approx(15)


def test_the_fuse_in_the_circuit_of_one_string_is_a_string_fuse() -> None:
    """IEC 62548:2016 6.5: 1.5 · 13.5 A < In <= 25 A for a string; 1.25 and 2.4 · 27 A for an array (from memory)."""
    circuit = {f"{INPUT}.circuit": [{"kind": "fuse"}, {"kind": "isolator"}]}
    one, two = rated(circuit), rated({**circuit, f"{STRING}.count": 2})
    key = f"{INPUT}.circuit.0"
    assert (value(one, key, Symbol.IN_MIN), value(one, key, Symbol.IN_MAX)) == (pytest.approx(20.25), 25)
    assert (value(two, key, Symbol.IN_MIN), value(two, key, Symbol.IN_MAX)) == (
        pytest.approx(33.75),
        pytest.approx(64.8),
    )


def test_the_model_gives_the_hot_voltage_too_where_there_is_no_coefficient() -> None:
    """Row 6235 at 69 °C by the single-diode model, computed with the general library of tests/reference."""
    found = rated({"types.modules.m": ROW_6235})
    assert value(found, STRING, Symbol.UOC_HOT) == pytest.approx(18 * 31.44994248868261, rel=1e-6)


@pytest.mark.parametrize(("building", "section_mm2"), [("ground_mounted", 16), ("dwelling", 6)])
def test_frames_on_the_ground_share_the_lightning_current(building, section_mm2) -> None:
    """IEC 62305-3 and IEC 62548:2016 7.4 (from memory): 6 mm² with separation, 16 mm² where lightning current flows."""
    lightning = {"separation_kept": True}
    changes = {"site.building": building, "earthing": {"lightning_protection": lightning}}
    assert value(rated(changes), "earth.array_frame", Symbol.S_MIN) == section_mm2


@pytest.mark.parametrize(
    ("site", "cable", "factor"),
    [
        # IEC 60364-5-52:2009 Table B.52.16, laid direct: 1.28 at 1.5 K·m/W, 1.12 at 2 K·m/W, against 2.5 K·m/W
        ({"site.soil_resistivity": 1.5}, {}, 1.28),
        ({}, {"soil_resistivity": 1.5}, 1.28),
        ({"site.soil_resistivity": 1.5}, {"soil_resistivity": 2}, 1.12),
        ({}, {"depth": "1 m"}, 0.97),  # REBT ITC-BT-07
    ],
)
def test_soil_around_a_dc_cable(site: dict[str, object], cable: dict[str, object], factor: float) -> None:
    buried = {"length": "20 m", "section": "10 mm2", "method": "D2"}
    least = value(rated({CABLE: buried}), CABLE, Symbol.IZ)
    assert value(rated({**site, CABLE: {**buried, **cable}}), CABLE, Symbol.IZ) == pytest.approx(factor * least)


def test_a_module_without_a_largest_fuse_bears_what_its_test_current_leaves() -> None:
    """IEC 61730-2 MST 26 tests with 1.35 times the largest fuse, 1.25 Isc at least: 1.08 · 13.5 A (from memory)."""
    found = rated({"types.modules.m.series_fuse_max": None})
    assert value(found, INPUT, Symbol.IN_MAX) == pytest.approx(14.58)


@pytest.mark.parametrize(
    ("left_out", "kappa"),
    [
        # common practice, no source: -0.5 %/K of the power and 0.05 %/K of the current where the maker gives neither
        ((), -0.34 - 0.05),
        (("current_coefficient",), -0.34 - 0.05),
        (("power_coefficient",), -0.5 - 0.05),
        (("power_coefficient", "current_coefficient"), -0.5 - 0.05),
    ],
)
def test_coefficient_of_the_mpp_voltage_from_those_of_power_and_current(left_out, kappa) -> None:
    found = rated({f"types.modules.m.{key}": None for key in left_out})
    assert value(found, STRING, Symbol.KAPPA) == pytest.approx(kappa)


@pytest.mark.parametrize(
    ("circuits", "maker"),
    [((), "module"), ((0,), "module"), ((0, 1), "optimiser")],
)
def test_who_says_how_many_strings_need_no_fuses(circuits, maker) -> None:
    """The maker of the optimisers only where no string feeds the fault past them."""
    unit = {"kind": "optimiser", "output_voltage_max": "60 V", "output_current_max": "15 A", "parallel_unfused_max": 1}
    strings = [
        {"module": "m", "modules_in_series": 18, **({"circuit": [unit]} if n in circuits else {})} for n in (0, 1)
    ]
    found = rated({"types.modules.m.parallel_unfused_max": 1, f"{INPUT}.strings": strings})
    most = found.get(INPUT, Symbol.NP_UNFUSED)
    assert most.value == 1
    assert str(most.clause) == f"data sheet of the {maker}"


@pytest.mark.parametrize(
    ("joined", "backfeed", "why", "least_a", "most_a"),
    [
        # IEC 62548:2016 6.5 (from memory): a fuse for each of more than two sub-arrays, 1.25 and 2.4 times 13.5 A
        (1, None, NOT_NEEDED, None, None),
        (2, None, NOT_NEEDED, None, None),
        (3, None, OF_SUB_ARRAY, 16.875, 32.4),
        (1, "1 A", OF_ARRAY, 16.875, 32.4),
        (3, "1 A", OF_SUB_ARRAY, 16.875, 32.4),
    ],
)
def test_which_arrays_ask_for_a_fuse_of_their_own(joined, backfeed, why, least_a, most_a) -> None:
    one = {"strings": [{"module": "m", "modules_in_series": 18}], "circuit": [{"kind": "isolator"}]}
    changes = {f"{UNIT}.inputs": [one] * joined, "types.inverters.t.inputs_independent": False}
    if backfeed is not None:
        changes["types.inverters.t.backfeed_current"] = backfeed
    found = rated(changes)
    assert found.told(INPUT, Word.ARRAY_FUSE) == why
    window = [found.get(INPUT, symbol) for symbol in (Symbol.IN_ARRAY_MIN, Symbol.IN_ARRAY_MAX)]
    assert [each and round(each.value, 3) for each in window] == [least_a, most_a]
