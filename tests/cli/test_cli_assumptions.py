"""Each assumption on the console names the device that it is about."""

from __future__ import annotations

from command import HALL, sld


def test_an_assumption_about_a_cable_names_it() -> None:
    told = [line for line in sld("check", HALL).stdout.splitlines() if "AS01" in line and "solar cable" in line]
    assert told
    assert all(" for -TB1-WD" in line for line in told)
