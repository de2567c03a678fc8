"""Words of the trade and of data sheets -> the words of the spec language that they stand for.

Letter symbols are those of IEC 61836 and of the data sheets of modules and inverters; the other words are what
electricians of several countries call a thing (common practice, no source).
"""

from __future__ import annotations

import re
from functools import cache

__all__ = ["besides", "meant"]

_CALLED = {
    # modules
    "open_circuit_voltage": "voc uoc u0 open_voltage",
    "short_circuit_current": "isc ik short_current",
    "mpp_voltage": "vmpp umpp vmp ump vpm voltage_at_pmax",
    "mpp_current": "impp imp ipm current_at_pmax",
    "rated_power": "pmax pmpp pstc pnom pn pac power peak_power nominal_power wattage ac_power wp",
    "voltage_coefficient": "beta tk_uoc tk_voc temp_coeff_voc temperature_coefficient_voc temperature_coefficient",
    "current_coefficient": "alpha tk_isc temp_coeff_isc temperature_coefficient_isc",
    "power_coefficient": "gamma tk_pmax tk_pmpp temp_coeff_pmax temperature_coefficient_pmax",
    "series_fuse_max": "max_series_fuse series_fuse_rating max_reverse_current reverse_current",
    "system_voltage_max": "max_system_voltage maximum_system_voltage",
    "technology": "cell_type",
    # keys that had another name
    "cable_route": "cable_way",
    "draw_once_from": "fold_from",
    "reader": "reading",
    "nominal_cell_temperature": "noct nmot nominal_operating_cell_temperature",
    # inverters
    "dc_voltage_max": "max_dc_voltage vdc_max udc_max max_input_voltage vmax",
    "mpp_voltage_min": "umpp_min vmpp_min mppt_min mppt_low mpp_range_from",
    "mpp_voltage_max": "umpp_max vmpp_max mppt_max mppt_high mpp_range_to",
    "start_voltage": "startup_voltage start_up_voltage",
    "apparent_power_max": "sac smax apparent_power",
    "short_circuit_current_max": "isc isc_max max_short_circuit_current",
    "current_max": "imax iac iac_max max_current max_ac_current max_input_current",
    "power_factor": "cos_phi cosphi pf",
    "arc_fault_protection": "afci afdd afpe",
    "ground_fault_protection": "gfdi gfci",
    # strings
    "modules_in_series": "series number_of_modules panels modules panels_in_series modules_per_string module_count",
    "module": "panel pv_module",
    "orientation": "azimuth tilt direction",
    # cables
    "section": "cross_section csa size area awg cross_sectional_area conductor_size wire_size",
    "protective_section": "pe cpc egc",
    "method": "installation_method reference_method laying",
    "grouped_circuits": "grouping bunched",
    "length": "cable_length distance",
    # devices
    "rated_current": "in rating amps ampere nominal_current",
    "rated_voltage": "un ue nominal_voltage",
    "breaking_capacity": "icn icu aic",
    "curve": "characteristic trip_curve tripping_curve trip_characteristic",
    "sensitivity": "idn i_delta_n residual_operating_current",
    "continuous_voltage": "uc ucpv mcov",
    "protection_level": "up vpr",
    "number": "serial_number meter_number",
    "kind": "device",
    "breaker": "mcb mccb circuit_breaker cb miniature_circuit_breaker",
    "rcd": "elcb rccb fi gfi gfci residual_current_device",
    "rcbo": "fi_ls",
    "isolator": "ac_switch ac_isolator switch ac_disconnect dc_switch dc_isolator dc_disconnect disconnector "
    "switch_disconnector",
    "dc_switch": "dc_isolator",
    "main_switch": "switch main_isolator",
    "surge_protection": "spd surge_arrester tvss surge_protective_device",
    "meter": "energy_meter kwh_meter",
    "cable": "wire conductor",
    "string_fuses": "string_fuse fuses",
    "plug_connector": "connector",
    # supply and site
    "service_fuse": "main_fuse cutout cut_out house_fuse supply_fuse",
    "earthing_system": "earthing earthing_arrangement system_earthing network_type grounding_system",
    "supply": "grid mains utility network",
    "operator": "dno dso utility network_operator",
    "supply_point": "mpan nmi ean metering_point",
    "prospective_fault_current": "pfc psc pscc ipf fault_level",
    "loop_impedance": "ze zs",
    "export_limit": "zero_export feed_in_limit",
    "feed_in_limit": "export_limit",
    "frequency": "hz",
    "temperature_min": "tmin min_temperature lowest_temperature",
    "temperature_max": "tmax max_temperature highest_temperature",
    # the rest
    "earthing": "ground grounding earth",
    "electrode": "ground_rod earth_rod",
    "lightning_protection": "lps",
    "inverters": "pv_array array pv solar inverter",
    "inputs": "mppt mppts trackers mpp_trackers array",
    "batteries": "battery storage",
    "energy": "battery_capacity usable_energy",
    "loads": "load",
    "boards": "board distribution_board panelboard consumer_unit switchboard",
    "connected_to": "board distribution_board panelboard consumer_unit",
    "junction_boxes": "combiner combiner_box junction_box string_box",
    "junction_box": "combiner combiner_box string_box",
    "generators": "generator",
    "data": "rs485 rs_485 modbus communication bus",
    "profile": "standard code rules",
    "make": "manufacturer brand maker",
    "customer": "client",
}
_BESIDES = {"mccb": "construction: moulded_case"}


def _bare(word: str) -> str:
    return re.sub(r"[\s-]+", "_", word.strip().casefold()).strip("_")


@cache
def _by_word() -> dict[str, tuple[str, ...]]:
    found: dict[str, tuple[str, ...]] = {}
    for own, words in _CALLED.items():
        for word in words.split():
            found[word] = (*found.get(word, ()), own)
    return found


def meant(word: str) -> tuple[str, ...]:
    """Return the words of the spec language that a word of the trade can stand for, none where it is not known."""
    asked = _bare(word)
    return _by_word().get(asked) or _by_word().get(asked.replace("_", ""), ())


def besides(word: str) -> str:
    """Return the key and value that a word of the trade says besides the kind of device, or nothing."""
    return _BESIDES.get(_bare(word), "")
