"""The devices of a system by class: of copies of an inverter, which are walked and which are counted."""

from __future__ import annotations

from sld import run
from sld.model.device import BatteryUnit, Device, InverterUnit, StringGroup

SPEC = """
project: {title: Three sheds}
site: {temperature_min: -14 °C, temperature_max: 34 °C}
supply: {phases: 3, voltage: 400 V, earthing_system: TN-S}
inverters:
  shed: {type: I, count: 3, inputs: [{strings: [{module: M, modules_in_series: 18}]}]}
  barn: {type: I, status: STATUS, inputs: [{strings: [{module: M, modules_in_series: 18}]}]}
types:
  modules:
    M: {rated_power: 410 W, open_circuit_voltage: 37.4 V, short_circuit_current: 13.9 A, mpp_voltage: 31.3 V,
        mpp_current: 13.1 A, voltage_coefficient: -0.26 %/K, current_coefficient: 0.05 %/K}
  inverters:
    I: {rated_power: 10 kW, phases: 3, current_max: 15 A, dc_voltage_max: 1100 V, mpp_voltage_min: 250 V,
        mpp_voltage_max: 950 V, inputs: [{current_max: 60 A, short_circuit_current_max: 90 A}]}
"""


def test_copies_are_counted_and_not_walked() -> None:
    system = run.check_text(SPEC.replace("STATUS", "new")).system
    walked = system.one_of_each()
    assert [len(list(each)) for each in (system.of(InverterUnit), system.every(InverterUnit))] == [4, 4]
    assert [unit.copy for unit in walked.of(InverterUnit)] == [1, 1]
    assert len(list(walked.every(InverterUnit))) == 4
    assert len(list(walked.of(StringGroup))) == 2


def test_they_come_in_the_order_of_the_tree() -> None:
    system = run.check_text(SPEC.replace("STATUS", "new")).system
    devices = list(system.devices.values())
    assert list(system.every(Device)) == devices
    asked = (InverterUnit, StringGroup)
    assert list(system.whole.among(*asked)) == [each for each in devices if isinstance(each, asked)]
    assert system.whole.among(BatteryUnit) == ()


def test_what_is_only_planned_is_known() -> None:
    assert run.check_text(SPEC.replace("STATUS", "future")).system.walked.has_planned
    assert not run.check_text(SPEC.replace("STATUS", "new")).system.walked.has_planned
