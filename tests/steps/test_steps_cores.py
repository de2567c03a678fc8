"""Which conductors the cores of a cable hold, by where the protective conductor lies; the alarm of a monitor."""

from __future__ import annotations

from typing import Any

import pytest
from rated_specs import AC_CABLE, CABLE, changed, rated_data

from sld.model.device import Cable
from sld.ratings.symbol import Symbol
from sld.steps.cable_conductors import conductors_needed

FOUR = ("L1", "L2", "L3", "PE")
"""Whether the inverter takes a neutral its type does not say, so that none is missed."""


@pytest.mark.parametrize(
    ("given", "needed"),
    [
        ({}, FOUR),
        ({"protective_conductor": "core"}, FOUR),
        ({"protective_conductor": "separate"}, FOUR[:-1]),
        ({"protective_conductor": "armour", "armour_section": "20 mm2"}, FOUR[:-1]),
        ({"protective_section": "6 mm2"}, FOUR[:-1]),
    ],
)
def test_a_protective_conductor_that_is_no_core_needs_none(given: dict[str, Any], needed: tuple[str, ...]) -> None:
    """IEC 60364-5-54:2011 543.2.1: a conductor in a multicore cable, a separate one, or armour."""
    system, _ = rated_data(changed({AC_CABLE: {**CABLE, "section": "10 mm2", "cores": 5, **given}}))
    cable = system.devices[AC_CABLE]
    assert isinstance(cable, Cable)
    assert conductors_needed(system, cable) == needed


def test_the_alarm_of_an_insulation_monitor_is_told_in_kilohms() -> None:
    monitor = {"kind": "insulation_monitor", "rated_voltage": "1500 V", "alarm_resistance": "50 kΩ"}
    _, ratings = rated_data(changed({"inverters.roof.inputs.0.circuit": [{"kind": "isolator"}, monitor]}))
    alarm = ratings["inverters.roof.inputs.0.circuit.1", Symbol.RALARM]
    assert (alarm.value, alarm.unit) == (50, "kΩ")
