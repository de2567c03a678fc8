"""What is only planned: itself, by its inverter, or by all strings of an input; totals leave it out. Our own rules."""

from __future__ import annotations

from typing import Any

import pytest
from small_specs import UNIT, system

from sld.model.limiters import feed_in_limiters
from sld.model.planned import is_planned, leaves_out_planned, without_planned

STRING = {"module": "m", "modules_in_series": 18}
LATER = {**STRING, "status": "future"}
INPUT = "inverters.roof.inputs.0"


@pytest.mark.parametrize(
    ("changes", "key", "planned"),
    [
        ({}, "inverters.roof", False),
        ({"inverters.roof.status": "future"}, "inverters.roof", True),
        ({"inverters.roof.status": "future"}, "inverters.roof.circuit.0", True),
        ({"inverters.roof.status": "existing"}, "inverters.roof.circuit.0", False),
        ({"inverters.roof.circuit.0.status": "future"}, "inverters.roof.circuit.0", True),
        ({"inverters.roof.circuit.0.status": "future"}, "inverters.roof.circuit.1", False),
        ({f"{INPUT}.strings": [LATER]}, INPUT, True),
        ({f"{INPUT}.strings": [LATER, LATER]}, INPUT, True),
        ({f"{INPUT}.strings": [STRING, LATER]}, INPUT, False),
        ({f"{INPUT}.strings": [LATER]}, "inverters.roof", False),
    ],
)
def test_planned(changes: dict[str, Any], key: str, planned: bool) -> None:
    made = system(changes)
    assert is_planned(made, made.devices[key]) is planned


TWO = {"inverters": {"roof": {**UNIT}, "barn": {**UNIT}}}


@pytest.mark.parametrize(
    ("changes", "left", "left_out"),
    [
        ({}, ["roof", "barn"], False),
        ({"inverters.barn.status": "future"}, ["roof"], True),
        ({"inverters.roof.status": "future", "inverters.barn.status": "future"}, ["roof", "barn"], False),
    ],
)
def test_totals_leave_out_what_is_planned_unless_there_is_nothing_else(
    changes: dict[str, Any], left: list[str], left_out: bool
) -> None:
    made = system({**TWO, **changes})
    units = [made.devices[f"inverters.{name}"] for name in ("roof", "barn")]
    assert [each.key.removeprefix("inverters.") for each in without_planned(made, units)] == left
    assert leaves_out_planned(made, units) is left_out


def test_feed_in_is_limited_by_controllers_that_have_a_limit() -> None:
    meter = {"kind": "meter", "purpose": "feed_in_limit", "id": "s"}
    limit = {"sensor": "s", "inverters": ["roof"]}
    devices = {"log": {"kind": "logger", "feed_in_limit": limit}, "net": {"kind": "router"}}
    circuit = [*UNIT["circuit"], meter]
    changes = {"inverters.roof.circuit": circuit, "supply.export_limit": "5 kW", "data": {"devices": devices}}
    made = system(changes)
    assert [(device.key, given.sensor) for device, given in feed_in_limiters(made)] == [("data.devices.log", "s")]
    assert list(feed_in_limiters(system())) == []
