"""Cells of the tables against a public source other than the one that the table names, which stands above each block.

Tables without a block: no second source was seen. They are in WITHOUT, so that a new table is not forgotten.
"""

from __future__ import annotations

from math import log, pi, sqrt
from pathlib import Path

import pytest

import sld.tables
from sld.tables.table import series, table

NEN_SHEET = (
    "https://www.scribd.com/document/696570623/Wiring-calculation-current-carrying-capacities-IEC60364-IEC61439-v1-5"
)
BURIED = (
    "https://engx.theiet.org/f/wiring-and-regulations/23009/cables-buried-directly---grouping-factor-and-spacing/87703"
)
RCD_NOTES = (
    "https://diynot.com/diy/threads/"
    "what-is-a-rcd-suitable-for-a-low-energy-dc-modulating-pump-according-to-iet-wiring-regulations.557679"
)

SMALL_CONDUCTORS = (
    "https://www.electricallicenserenewal.com/Electrical-Continuing-Education-Courses/"
    "NEC-Content.php?sectionID=766.1%2F1000"
)

SECOND_SOURCES = {
    # insulated multicore cables, PVC, three loaded: manual of a compressor, methods B2 and C
    "https://www.easymanua.ls/atlas-copco/ga-11plus/manual?p=134": """
        capacity_iec60364: material Cu, insulation PVC, loaded_conductors_count 3, section_mm2 4 -> B2 27, C 32
        capacity_iec60364: material Cu, insulation PVC, loaded_conductors_count 3, section_mm2 6 -> B2 34, C 41
        capacity_iec60364: material Cu, insulation PVC, loaded_conductors_count 3, section_mm2 10 -> B2 46, C 57
        capacity_iec60364: material Cu, insulation PVC, loaded_conductors_count 3, section_mm2 16 -> B2 62, C 76
        capacity_iec60364: material Cu, insulation PVC, loaded_conductors_count 3, section_mm2 25 -> B2 80, C 96
        capacity_iec60364: material Cu, insulation PVC, loaded_conductors_count 3, section_mm2 35 -> B2 99, C 119
        capacity_iec60364: material Cu, insulation PVC, loaded_conductors_count 3, section_mm2 50 -> B2 118, C 144
        capacity_iec60364: material Cu, insulation PVC, loaded_conductors_count 3, section_mm2 120 -> B2 206
    """,
    # single-core cables in trefoil, three loaded: manual of a compressor, method F at 30 °C
    "https://www.easymanua.ls/atlas-copco/ga-45plus/manual?p=166": """
        capacity_single_core_iec60364: material Cu, insulation PVC, section_mm2 25 -> F3t 110
        capacity_single_core_iec60364: material Cu, insulation PVC, section_mm2 70 -> F3t 216
        capacity_single_core_iec60364: material Cu, insulation PVC, section_mm2 150 -> F3t 356
        capacity_single_core_iec60364: material Cu, insulation PVC, section_mm2 300 -> F3t 561
        capacity_single_core_iec60364: material Cu, insulation XLPE, section_mm2 25 -> F3t 135
        capacity_single_core_iec60364: material Cu, insulation XLPE, section_mm2 70 -> F3t 268
        capacity_single_core_iec60364: material Cu, insulation XLPE, section_mm2 150 -> F3t 444
        capacity_single_core_iec60364: material Cu, insulation XLPE, section_mm2 300 -> F3t 703
    """,
    # single-core cables spaced horizontally: work sheet by NEN 1010:2015 Table 52.B.10
    NEN_SHEET: """
        capacity_single_core_iec60364: material Cu, insulation PVC, section_mm2 25 -> Gh 146
        capacity_single_core_iec60364: material Cu, insulation PVC, section_mm2 95 -> Gh 341
        capacity_single_core_iec60364: material Cu, insulation PVC, section_mm2 150 -> Gh 456
        capacity_single_core_iec60364: material Cu, insulation PVC, section_mm2 300 -> Gh 709
        ambient_factor: temperature_c 55 -> air_PVC 0.61
    """,
    # a building code with the same factors for conductors of 90 °C on a base of 30 °C
    "https://up.codes/s/correction-factor-for-ambient-temperatures": """
        ambient_factor: temperature_c 10 -> air_XLPE 1.15
        ambient_factor: temperature_c 25 -> air_XLPE 1.04
        ambient_factor: temperature_c 40 -> air_XLPE 0.91
        ambient_factor: temperature_c 50 -> air_XLPE 0.82
        ambient_factor: temperature_c 60 -> air_XLPE 0.71
        ambient_factor: temperature_c 70 -> air_XLPE 0.58
        ambient_factor: temperature_c 80 -> air_XLPE 0.41
    """,
    # International Residential Code 2018, Table E3705.2, page 742
    "http://online.flipbuilder.com/mewf/mima/files/basic-html/page742.html": """
        nec_ambient: temperature_c 10 -> f_60 1.29, f_75 1.20, f_90 1.15
        nec_ambient: temperature_c 15 -> f_60 1.22, f_75 1.15, f_90 1.12
        nec_ambient: temperature_c 20 -> f_60 1.15, f_75 1.11, f_90 1.08
        nec_ambient: temperature_c 25 -> f_60 1.08, f_75 1.05, f_90 1.04
        nec_ambient: temperature_c 35 -> f_60 0.91, f_75 0.94, f_90 0.96
        nec_ambient: temperature_c 40 -> f_60 0.82, f_75 0.88, f_90 0.91
        nec_ambient: temperature_c 45 -> f_60 0.71, f_75 0.82, f_90 0.87
        nec_ambient: temperature_c 50 -> f_60 0.58, f_75 0.75, f_90 0.82
        nec_ambient: temperature_c 55 -> f_60 0.41, f_75 0.67, f_90 0.76
        nec_ambient: temperature_c 60 -> f_75 0.58, f_90 0.71
        nec_ambient: temperature_c 65 -> f_75 0.47, f_90 0.65
        nec_ambient: temperature_c 70 -> f_75 0.33, f_90 0.58
        nec_ambient: temperature_c 75 -> f_90 0.50
    """,
    # a school for electricians, with an example of nine conductors of 12 AWG
    "https://www.voltagelab.com/table-310-15b3a-adjustment-factors": """
        nec_adjustment: conductors_count 6 -> factor 0.80
        nec_adjustment: conductors_count 9 -> factor 0.70
        nec_adjustment: conductors_count 20 -> factor 0.50
        nec_adjustment: conductors_count 30 -> factor 0.45
        nec_adjustment: conductors_count 40 -> factor 0.40
        nec_adjustment: conductors_count 1000 -> factor 0.35
    """,
    # ampacity chart of a wire maker, columns of 75 °C above the small conductors
    "https://www.scribd.com/doc/191591316/ampacity": """
        nec_ampacity: material Cu, size 8 -> i_75_a 50
        nec_ampacity: material Cu, size 6 -> i_75_a 65
        nec_ampacity: material Cu, size 4 -> i_75_a 85
        nec_ampacity: material Cu, size 3 -> i_75_a 100
        nec_ampacity: material Cu, size 2 -> i_75_a 115
        nec_ampacity: material Cu, size 1 -> i_75_a 130
        nec_ampacity: material Cu, size 1/0 -> i_75_a 150
        nec_ampacity: material Cu, size 2/0 -> i_75_a 175
        nec_ampacity: material Cu, size 3/0 -> i_75_a 200
        nec_ampacity: material Cu, size 4/0 -> i_75_a 230
        nec_ampacity: material Cu, size 250 -> i_75_a 255
        nec_ampacity: material Cu, size 500 -> i_75_a 380
        nec_ampacity: material Cu, size 1000 -> i_75_a 545
        nec_ampacity: material Al, size 8 -> i_75_a 40
        nec_ampacity: material Al, size 4 -> i_75_a 65
        nec_ampacity: material Al, size 1/0 -> i_75_a 120
        nec_ampacity: material Al, size 4/0 -> i_75_a 180
        nec_ampacity: material Al, size 250 -> i_75_a 205
        nec_ampacity: material Al, size 500 -> i_75_a 310
        nec_ampacity: material Al, size 1000 -> i_75_a 445
    """,
    # continuing education for electricians on 240.4(D)
    SMALL_CONDUCTORS: """
        nec_small_conductor: material Cu, size 14 -> device_max_a 15
        nec_small_conductor: material Cu, size 12 -> device_max_a 20
        nec_small_conductor: material Cu, size 10 -> device_max_a 30
    """,
    # reprint of an older edition of NEC Tables 310.16 and 250.122
    "https://www.scribd.com/document/768710860/TABLE-310-16NEC-SIZE-CONDUCTORS-CONDUIT": """
        nec_equipment_grounding: device_a 15 -> Cu 14, Al 12
        nec_equipment_grounding: device_a 20 -> Cu 12, Al 10
        nec_equipment_grounding: device_a 60 -> Cu 10, Al 8
        nec_equipment_grounding: device_a 100 -> Cu 8, Al 6
        nec_equipment_grounding: device_a 200 -> Cu 6, Al 4
        nec_equipment_grounding: device_a 300 -> Cu 4, Al 2
    """,
    # permit file that starts from 40 A for 10 AWG copper at 90 °C
    "https://vailgovrecords.com/WebLink/DocView.aspx?dbid=0&id=432736&repo=TownofVailLaserfiche": """
        nec_ampacity: material Cu, size 10 -> i_90_a 40
    """,
    # manual of another RCD tester, page 59: ranges of trip-out times
    "https://www.manualshelf.com/manual/benning/it-120b/operation-manual-english/page-59.html": """
        rcd_break_time: device general, multiple 1 -> time_s 0.3
        rcd_break_time: device general, multiple 2 -> time_s 0.15
        rcd_break_time: device general, multiple 5 -> time_s 0.04
        rcd_break_time: device selective, multiple 1 -> time_s 0.5
        rcd_break_time: device selective, multiple 2 -> time_s 0.2
        rcd_break_time: device selective, multiple 5 -> time_s 0.15
    """,
    # manual of a loop tester with loop impedances of BS 88-2 fuses times 0.8, at 0.4 s: 230 V / (Zs / 0.8)
    "https://www.easymanua.ls/metrel/easiplus-mi-3000/manual?p=57": """
        gg_fuse_opening: system BS 88-2, time_s 0.4, i_n_a 6 -> i_a 28
        gg_fuse_opening: system BS 88-2, time_s 0.4, i_n_a 10 -> i_a 47
        gg_fuse_opening: system BS 88-2, time_s 0.4, i_n_a 16 -> i_a 90
        gg_fuse_opening: system BS 88-2, time_s 0.4, i_n_a 20 -> i_a 130
        gg_fuse_opening: system BS 88-2, time_s 0.4, i_n_a 25 -> i_a 170
        gg_fuse_opening: system BS 88-2, time_s 0.4, i_n_a 32 -> i_a 221
    """,
    # questions of engineers that quote BS 7671 Tables 4C1 and 4C2, which are those of IEC 60364-5-52
    "https://engx.theiet.org/f/wiring-and-regulations/32126/derating-factor-for-bunched-cables-in-ladder": """
        grouping_factor: standard_table B.52.17, arrangement bunched_A_to_F, circuits_count 20 -> factor 0.38
    """,
    BURIED: """
        grouping_factor: standard_table B.52.18, arrangement D2_0.5m, circuits_count 4 -> factor 0.80
    """,
    # conductor resistances by DIN VDE 0295, IEC 60228 and HD 383
    "https://www.etechnik-synergie.com/technical_information/condutor-resistance/": """
        conductor_resistance: section_mm2 1.5 -> Cu_class2 12.1, Cu_class5 13.3, Cu_class2_tinned 12.2
        conductor_resistance: section_mm2 10 -> Cu_class2 1.83, Cu_class5 1.91, Cu_class2_tinned 1.84
        conductor_resistance: section_mm2 50 -> Cu_class2 0.387, Cu_class5 0.386, Cu_class2_tinned 0.391
        conductor_resistance: section_mm2 240 -> Cu_class2 0.0754, Cu_class5 0.0801, Cu_class2_tinned 0.0762
        tinned_conductor_resistance: section_mm2 4 -> r_20_ohm_per_km 5.09
        tinned_conductor_resistance: section_mm2 6 -> r_20_ohm_per_km 3.39
        tinned_conductor_resistance: section_mm2 35 -> r_20_ohm_per_km 0.565
        tinned_conductor_resistance: section_mm2 95 -> r_20_ohm_per_km 0.210
        tinned_conductor_resistance: section_mm2 240 -> r_20_ohm_per_km 0.0817
    """,
    "http://kabelmetal-indonesia.com/technical-information/type-designation/conductor-specification.html": """
        conductor_resistance: section_mm2 16 -> Al_class2 1.91, Cu_class2_tinned 1.16
        conductor_resistance: section_mm2 50 -> Al_class2 0.641, Cu_class2_tinned 0.391
        conductor_resistance: section_mm2 150 -> Al_class2 0.206, Cu_class2_tinned 0.126
    """,
    # pocket guide of a contractors' body, values of k of BS 7671
    "https://online.flipbuilder.com/hzzr/jtap/files/basic-html/page25.html": """
        k_factor: use live_or_core_in_cable, insulation PVC70, section_range up_to_300, material Cu -> k 115
        k_factor: use live_or_core_in_cable, insulation PVC70, section_range above_300, material Cu -> k 103
        k_factor: use live_or_core_in_cable, insulation PVC90, section_range up_to_300, material Cu -> k 100
        k_factor: use live_or_core_in_cable, insulation XLPE_EPR90, section_range any, material Cu -> k 143
        k_factor: use live_or_core_in_cable, insulation rubber60, section_range any, material Cu -> k 141
        k_factor: use separate_insulated_PE, insulation PVC70, section_range up_to_300, material Cu -> k 143
        k_factor: use separate_insulated_PE, insulation PVC70, section_range above_300, material Al -> k 88
        k_factor: use separate_insulated_PE, insulation XLPE_EPR90, section_range any, material Cu -> k 176
        k_factor: use separate_insulated_PE, insulation XLPE_EPR90, section_range any, material steel -> k 64
        k_factor: use armour_or_sheath, insulation PVC70, section_range any, material steel -> k 51
        k_factor: use armour_or_sheath, insulation PVC70, section_range any, material lead -> k 26
    """,
    # data of circuit-breakers (their type D trips at 14 In already)
    "https://www.scribd.com/document/458058099/MCB-BREAKING-MAKING-CAPACITY-pdf": """
        magnetic_trip: curve B -> holds_multiple 3, trips_multiple 5
        magnetic_trip: curve C -> holds_multiple 5, trips_multiple 10
        magnetic_trip: curve D -> holds_multiple 10
    """,
    # article on a supplement to EN 60898-1
    "https://elektro.net/105670/anwendungshinweise-zum-einsatz-von-leitungsschutzschaltern": """
        magnetic_trip: curve E -> holds_multiple 5, trips_multiple 6.25
        magnetic_trip: curve D -> holds_multiple 10, trips_multiple 20
    """,
    # textbook that prints the table in an earlier edition, in which 277 V still had 0.4 s
    "https://zdroje.elektrika.cz/book/introduction-electrical-engineering/page/44": """
        disconnection_time: circuit final, earthing TN, u_0_above_v 50 -> u_0_up_to_v 120, time_s 0.8
        disconnection_time: circuit final, earthing TN, u_0_above_v 120 -> u_0_up_to_v 230, time_s 0.4
        disconnection_time: circuit final, earthing TN, u_0_above_v 230 -> u_0_up_to_v 400, time_s 0.2
        disconnection_time: circuit final, earthing TN, u_0_above_v 400 -> time_s 0.1
    """,
    # electrician's guide
    "https://www.tlc-direct.co.uk/Book/5.4.1.htm": """
        earthing_conductor_buried: protection corrosion_only -> copper_mm2 16, steel_mm2 16
        earthing_conductor_buried: protection none -> copper_mm2 25, steel_mm2 50
    """,
    "https://www.elandcables.com/the-cable-lab/faqs/faq-earth-bonding-cable-size": """
        main_bonding_pme: neutral_above_mm2 0 -> neutral_up_to_mm2 35, bonding_mm2 10
        main_bonding_pme: neutral_above_mm2 35 -> neutral_up_to_mm2 50, bonding_mm2 16
        main_bonding_pme: neutral_above_mm2 50 -> bonding_mm2 25
    """,
    "https://pangonilo.com/?p=202": """
        protective_conductor_as_nzs: active_mm2 16 -> for_copper_mm2 6, for_aluminium_mm2 4
        protective_conductor_as_nzs: active_mm2 120 -> for_copper_mm2 35, for_aluminium_mm2 25
    """,
    # manual of a frequency converter, protective conductor by line conductor
    "https://manualshive.com/en/manual/abb/acs880-14/3052148?page=83": """
        protective_conductor: line_above_mm2 0 -> line_up_to_mm2 16, factor 1, fixed_mm2 0
        protective_conductor: line_above_mm2 16 -> line_up_to_mm2 35, factor 0, fixed_mm2 16
        protective_conductor: line_above_mm2 35 -> factor 0.5, fixed_mm2 0
    """,
    # forum that quotes BS 7671 531.3.3 with its notes
    RCD_NOTES: """
        rcd_residual_direct_current: device_type A -> direct_current_up_to_ma 6
        rcd_residual_direct_current: device_type F -> direct_current_up_to_ma 10
    """,
    # calculation sheet: average reactance a metre of a three-phase cable
    "https://ru.scribd.com/document/341834748/11167988343-Sample-Short-Circuit-Calculation": """
        reactance: arrangement default -> x_ohm_per_km 0.08
    """,
    "http://www.electrical-installation.org/enwiki/Selection_of_a_Type_1_SPD": """
        surge_current: device_type 1, lightning_protection_level III/IV -> current_ka 12.5
        surge_current: device_type 1, lightning_protection_level II -> current_ka 18.75
        surge_current: device_type 1, lightning_protection_level I -> current_ka 25
    """,
    # manual of central inverters: 4 A up to 250 kW, 5 A from 266 kW
    "https://manualshive.com/en/manual/solectria-renewables/sgi-225/1314684?page=30": """
        functional_earth_fuse: p_array_up_to_kw 250 -> i_n_max_a 4
        functional_earth_fuse: p_array_up_to_kw inf -> i_n_max_a 5
    """,
    # forum that quotes the guide for installers
    "https://electriciansforums.net/threads/some-advice-on-testing-if-you-will.52683/page-2": """
        supply_default: earthing TT -> z_e_ohm 21
    """,
}

OWN_ONLY = "no page other than those that the table names was looked for"
WITHOUT = {
    "class3_conductor": "no public page with the table was found",
    "least_section": "no public page with the table was found",
    "country_note": OWN_ONLY,
    "depth_factor": "conduction of heat, below",
    "gg_fuse_holding": "no public page with these gates was found",
    "nec_grounding_electrode": OWN_ONLY,
    "nec_reactance": OWN_ONLY,
    "nec_resistance": "lengths of a maker's brief, below",
    "peak_factor": OWN_ONLY,
    "residual_current_monitor": OWN_ONLY,
    "separation_class": OWN_ONLY,
    "separation_share": OWN_ONLY,
    "surge_current_dc": OWN_ONLY,
    "array_insulation_minimum": "no public page with the bands was found",
    "conductor_material": "K and β by the formula over the whole of k_factor, see test_ratings_ac_tables.py",
    "conventional_current": "pages found were of design software, or showed no numbers",
    "electricity_meter": "trade ranges, as makers choose",
    "en50618_ambient": "data sheets found leave it out; heat balance in test_tables_direct_current.py",
    "en50618_capacity": "data sheets found leave it out; the table's own source in test_tables_direct_current.py",
    "energy_limiting_class3": "no public page with the table was found",
    "impulse_withstand": "no public page with the table was found",
    "insulation_test": "no public page other than the table's own was found",
    "mounting_temperature_rise": "35, 30 and 25 K only seen in a design aid of a maker",
    "profile_scope": "what this project does not compute, no values",
    "profiles": "sources in test_tables_profiles.py",
    "soil_factor": "no public page with the table was found; factors of a cable maker and conduction of heat, below",
    "spd_critical_length": "no public page other than the table's own was found",
    "surge_voltage": "no public page with the table was found",
    "voltage_correction": "no public page other than the table's two own was found",
    "voltage_factor": "a network library that keeps the same factors, see tests/reference/test_reference_networks.py",
}

SERIES = [
    # IEC 61869-2 5.201 in full: https://upat607.myueeshop.com/info-detail/additional-requirements-for-current-transformers-95
    ("current_transformer", {10, 12.5, 15, 20, 25, 30, 40, 50, 60, 75, 100, 125, 600, 750, 1000}),
    # rated currents of miniature circuit-breakers: https://studylib.net/doc/18072339/protection-devices
    ("mcb_a", {6, 10, 16, 20, 25, 32, 40, 50, 63}),
    # residual current devices: https://www.scribd.com/document/706790935/MCB-ELCB-RCBO-Isolators
    ("rccb_a", {16, 25, 40, 63, 80, 100}),
    ("rcd_idn_ma", {10, 30, 100, 300}),
    # nominal sections: https://www.etechnik-synergie.com/technical_information/condutor-resistance/
    ("section_mm2", {1.5, 2.5, 4, 6, 10, 16, 25, 35, 50, 70, 95, 120, 150, 185, 240, 300}),
]


def pairs(text: str) -> dict[str, str]:
    return dict(part.strip().split(" ", 1) for part in text.split(","))  # type: ignore[misc]


CELLS = [
    pytest.param(name, pairs(keys), column, float(value), url, id=f"{name} {keys.strip()} {column}")
    for url, block in SECOND_SOURCES.items()
    for line in block.strip().splitlines()
    for name, _, rest in [line.strip().partition(": ")]
    for keys, _, values in [rest.partition(" -> ")]
    for column, value in pairs(values).items()
]


@pytest.mark.parametrize(("name", "keys", "column", "value", "url"), CELLS)
def test_a_cell_is_as_the_second_source_prints_it(
    name: str, keys: dict[str, str], column: str, value: float, url: str
) -> None:
    assert table(name).pick(**keys).number(column) == value, url


@pytest.mark.parametrize(("name", "members"), SERIES)
def test_a_series_holds_what_the_second_source_lists(name: str, members: set[float]) -> None:
    held = {row.number("primary_a") for row in table(name)} if name == "current_transformer" else set(series(name))
    assert members <= held


@pytest.mark.parametrize(
    ("section_mm2", "printed_a"),
    [
        # https://www.easymanua.ls/atlas-copco/ga-45plus/manual?p=166: method F, PVC, at 30, 40, 45, 50, 55 °C
        (25, (110, 96, 87, 78, 67)),
        (95, (264, 230, 209, 187, 161)),
        (300, (561, 488, 443, 398, 342)),
    ],
)
def test_ambient_factors_of_pvc_by_the_currents_of_a_manual(section_mm2: float, printed_a: tuple[float, ...]) -> None:
    it_a = table("capacity_single_core_iec60364").pick(material="Cu", insulation="PVC", section_mm2=section_mm2)
    for temperature_c, current_a in zip((30, 40, 45, 50, 55), printed_a, strict=True):
        factor = table("ambient_factor").pick(temperature_c=temperature_c).number("air_PVC")
        assert it_a.number("F3t") * factor == pytest.approx(current_a, abs=1.01)  # the manual rounds either way


@pytest.mark.parametrize(("size", "length_ft"), [("12", 539), ("10", 860), ("8", 1371), ("6", 2172), ("4", 3463)])
def test_resistances_of_the_national_electrical_code_by_the_lengths_of_a_brief(size: str, length_ft: float) -> None:
    # https://studylib.net/doc/18453723/circuit-calculations-for-the-s280-microinverter: 1 % of 240 V at 1.125 A, out
    # and back; the brief rounds to whole feet
    ohm_per_kft = table("nec_resistance").pick(size=size).number("Cu_ohm_per_kft")
    assert 0.01 * 240 / (2 * 1.125 * ohm_per_kft / 1000) == pytest.approx(length_ft, abs=1)


INTERNAL_K_M_PER_W, DIAMETER_M, SOIL_K_M_PER_W, DEPTH_M = 0.56, 0.030, 2.5, 0.7
"""A multicore low-voltage cable: insulation and sheath, outer diameter; the conditions of IEC 60364-5-52."""


def heat_k_m_per_w(depth_m: float, soil_k_m_per_w: float) -> float:
    """Return the thermal resistance of cable and soil, IEC 60287-2-1: ρ / 2π · ln(4 · depth / diameter) outside."""
    return INTERNAL_K_M_PER_W + soil_k_m_per_w / (2 * pi) * log(4 * depth_m / DIAMETER_M)


@pytest.mark.parametrize("row", table("depth_factor").rows, ids=lambda row: row["depth_m"])
def test_depth_factor_is_near_the_conduction_of_heat_and_not_above_it_in_a_duct(row) -> None:  # type: ignore[no-untyped-def]
    expected = sqrt(heat_k_m_per_w(DEPTH_M, SOIL_K_M_PER_W) / heat_k_m_per_w(row.number("depth_m"), SOIL_K_M_PER_W))
    assert row.number("D2") == pytest.approx(expected, abs=0.015)
    assert row.number("D1") <= max(expected, row.number("D2")) + 0.015  # the air in a duct makes the soil count less


@pytest.mark.parametrize("row", table("soil_factor").rows, ids=lambda row: row["resistivity_k_m_per_w"])
def test_soil_factor_is_not_above_that_of_a_cable_without_insulation(row) -> None:  # type: ignore[no-untyped-def]
    ratio = row.number("resistivity_k_m_per_w") / SOIL_K_M_PER_W
    limit = sqrt(1 / ratio) if ratio < 1 else 1
    assert row.number("D1") <= row.number("D2") <= limit + 0.005 if ratio < 1 else row.number("D1") <= limit


@pytest.mark.parametrize(("resistivity", "printed"), [(1.0, 1.07), (1.5, 0.91), (2.0, 0.81), (3.0, 0.68)])
def test_soil_factor_direct_in_the_ground_is_near_that_of_a_cable_maker(resistivity: float, printed: float) -> None:
    # https://www.gulfcable.com/Ar/Product_Subdetails?key=269&PageName=Cables%20laid%20direct%20in%20Ground: single-core
    # cables for medium voltage, 50 mm², on a base of 1.2 K·m/W, 0.73 at 2.5 K·m/W
    factor = table("soil_factor").pick(resistivity_k_m_per_w=resistivity).number("D2")
    assert factor == pytest.approx(printed / 0.73, rel=0.035)


@pytest.mark.parametrize(
    ("arrangement", "printed"),
    [
        # https://www.gulfcable.com/Ar/Product_Subdetails.aspx?key=256: multicore cables 0.6/1 kV laid in the ground,
        # touching, 0.15 m, 0.30 m and 0.60 m apart
        ("D2_touching", {2: 0.81, 3: 0.70, 4: 0.63, 5: 0.59, 6: 0.55, 7: 0.52, 8: 0.50, 9: 0.48, 12: 0.44}),
        ("D2_0.125m", {2: 0.87, 3: 0.78, 4: 0.74, 5: 0.70, 6: 0.68, 9: 0.63, 12: 0.60}),
        ("D2_0.25m", {2: 0.91, 3: 0.84, 4: 0.81, 5: 0.78, 6: 0.77, 9: 0.74, 12: 0.72}),
        ("D2_0.5m", {2: 0.95, 3: 0.90, 4: 0.89, 5: 0.87, 6: 0.87, 9: 0.85, 12: 0.84}),
    ],
)
def test_grouping_in_the_ground_is_on_the_cautious_side_of_a_cable_maker(
    arrangement: str, printed: dict[int, float]
) -> None:
    for circuits, factor in printed.items():
        row = table("grouping_factor").pick(arrangement=arrangement, circuits_count=circuits)
        assert factor - 0.15 < row.number("factor") <= factor


def test_what_a_fuse_stands_is_what_opens_one_two_sizes_below() -> None:
    """Fuses in the ratio 1.6 to 1 are selective (IEC 60269-2, from memory): their gates of 0.1 s meet."""
    opens = [row for row in table("gg_fuse_opening") if row.number("time_s") == 0.1]
    stands = table("gg_fuse_holding").rows
    assert [row.number("holds_a") for row in stands[2:]] == [row.number("i_a") for row in opens[:-2]]


def test_every_table_has_a_second_source_or_says_why_not() -> None:
    names = {path.stem for path in Path(sld.tables.__path__[0]).glob("*.csv")}
    checked = {str(cell.values[0]) for cell in CELLS} | {"current_transformer", "standard_ratings"}
    assert checked.isdisjoint(WITHOUT)
    assert checked | set(WITHOUT) == names
