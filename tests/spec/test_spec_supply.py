"""Voltages of the supply that do not fit together."""

from __future__ import annotations

from typing import Any

import pytest
from pydantic import ValidationError

from sld.spec.blocks.supply import Supply
from sld.spec.document import Spec


def _supply(voltage: str, voltage_max: str) -> Supply:
    return Supply.model_validate({"earthing_system": "TN-S", "voltage": voltage, "voltage_max": voltage_max})


@pytest.mark.parametrize(("voltage", "voltage_max"), [("400 V", "252 V"), ("400 V", "319 V")])
def test_a_highest_voltage_to_neutral_beside_a_nominal_one_between_lines_is_refused(
    voltage: str, voltage_max: str
) -> None:
    # 230 V + 10 % of EN 50160 is 253 V to neutral and 440 V between lines: the lower one is no highest of 400 V
    with pytest.raises(ValidationError, match="does not go with a nominal one of 400 V"):
        _supply(voltage, voltage_max)


@pytest.mark.parametrize(("voltage", "voltage_max"), [("400 V", "437 V"), ("400 V", "320 V"), ("230 V", "252 V")])
def test_a_highest_voltage_on_the_same_basis_is_taken(voltage: str, voltage_max: str) -> None:
    assert _supply(voltage, voltage_max).voltage_max_v is not None


def test_two_supplies_are_refused_with_what_to_do() -> None:
    supply = {"earthing_system": "TN-S"}
    site = {"temperature_min": -10, "temperature_max": 35}
    with pytest.raises(ValidationError) as unusable:
        Spec.model_validate({"project": {"title": "Farm"}, "site": site, "supply": [supply, supply], "inverters": {}})
    told = [each for each in unusable.value.errors() if each["loc"] == ("supply",)]
    assert "one connection" in told[0]["msg"]
    assert "`further_supplies`" in told[0]["ctx"]["remedy"]


@pytest.mark.parametrize(
    ("changes", "message"),
    [
        ({"earthing_system": "TN-C-S"}, "neutral and protective conductor in one"),
        ({"earthing_system": "TT", "phases": 1, "split_phase": True}, "a neutral in the middle"),
    ],
)
def test_what_is_made_of_a_neutral_has_one(changes: dict[str, Any], message: str) -> None:
    """IEC 60364-1:2005 312.2.1.3: the C of TN-C-S is of a neutral that is a protective conductor too (from memory)."""
    Supply.model_validate({**changes, "neutral": "distributed"})
    with pytest.raises(ValidationError, match=message):
        Supply.model_validate({**changes, "neutral": "not_distributed"})
