"""The block `types` of small specs: a module M and a three-phase inverter I. Invented."""

from __future__ import annotations

TYPES = """types:
  modules:
    M: {rated_power: 410 W, open_circuit_voltage: 37.4 V, short_circuit_current: 13.9 A, mpp_voltage: 31.3 V,
        mpp_current: 13.1 A}
  inverters:
    I: {rated_power: 5 kW, phases: 3, dc_voltage_max: 1000 V, mpp_voltage_min: 150 V, mpp_voltage_max: 850 V,
        inputs: [{count: 1, current_max: 16 A, short_circuit_current_max: 24 A}]}
"""
