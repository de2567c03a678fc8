"""How a key of a finding is named: designations after IEC 81346 of devices, data chains and earthing conductors."""

from __future__ import annotations

import pytest
from systems import neighboured, rated

from sld.rules.naming import designation_of, named

SYSTEM = rated({}, neighboured())[0]


@pytest.mark.parametrize(
    ("key", "designation"),
    [
        ("inverters.roof", "-TB3"),
        ("data.chains.first", "-WF1"),
        ("data.chains.bus", "-WF3"),
        ("earth.electrode", "-WE1"),
        ("earth.bonding.1", "-WE4"),
        (SYSTEM.earthing_key, "-XE1"),
        ("nowhere", ""),
    ],
)
def test_designation(key, designation) -> None:
    assert designation_of(SYSTEM, key) == designation


def test_word_and_designation() -> None:
    assert str(named(SYSTEM.devices["inverters.roof"])) == "inverter -TB3"
