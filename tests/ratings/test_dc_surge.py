"""DC surge protective devices: critical length, voltages, type."""

from __future__ import annotations

import pytest

from sld.ratings.array import isc_max
from sld.ratings.dc_surge import (
    critical_length,
    discharge_current_min,
    impulse_current_min,
    iscpv_min,
    protected_length,
    protection_level_with_leads,
    route_length,
    smallest_ucpv,
    spd_type,
    ucpv_min,
    up_max,
)
from sld.ratings.string import uoc_max_by_table
from sld.tables.profiles import profile
from sld.tables.table import NoRow

CITATIONS = "https://elektroteka-staging.pages.dev/zdroje/citace/zrusena-csn-clc-ts-50539-12"


@pytest.mark.parametrize(
    ("density", "dwelling", "ground", "building"),
    [(1, 115, 200, 450), (1.5, 76.7, 133.3, 300), (2.5, 46, 80, 180), (4, 28.75, 50, 112.5), (5, 23, 40, 90)],
)
def test_critical_length(density: float, dwelling: float, ground: float, building: float) -> None:
    # Own calculation: the published numerators 115, 200, 450 over the flash density
    for premises, length in (("dwelling", dwelling), ("ground", ground), ("building", building)):
        assert critical_length(density, premises).value == pytest.approx(length, abs=0.05)


def test_critical_length_without_an_answer() -> None:
    with pytest.raises(ValueError, match="above 0"):
        critical_length(0, "dwelling")
    with pytest.raises(NoRow, match="dwelling, ground, building"):
        critical_length(1, "factory")


@pytest.mark.parametrize(
    ("t_min", "ucpv"),
    [(-10, 456.0), (-25, 480.0), (-40, 500.0)],  # IEC 62548 factors 1.14, 1.20, 1.25 on ten modules of 40 V
)
def test_ucpv_is_the_cold_voltage(t_min: float, ucpv: float) -> None:
    assert ucpv_min(uoc_max_by_table(10, 40.0, t_min)).value == pytest.approx(ucpv), CITATIONS


@pytest.mark.parametrize(("t_min", "rating"), [(-10, 500), (-40, 500)])
def test_smallest_ucpv(t_min: float, rating: float) -> None:
    chosen = smallest_ucpv(ucpv_min(uoc_max_by_table(10, 40.0, t_min)))
    assert chosen is not None
    assert chosen.value == rating


def test_no_ucpv_above_the_series() -> None:
    assert smallest_ucpv(ucpv_min(uoc_max_by_table(30, 50.0, -10))) is None
    assert smallest_ucpv(ucpv_min(uoc_max_by_table(10, 40.0, -10)), (1000.0, 480.0)) is not None


@pytest.mark.parametrize(
    ("uoc_max", "declared", "up"),
    [(600, None, 3.2), (600.1, None, 4.8), (1000, None, 4.8), (1500, None, 6.4), (600, 2.5, 2.0)],
)
def test_up_is_80_percent_of_the_withstand(uoc_max: float, declared: float | None, up: float) -> None:
    # https://www.leikexing.com/news/surge-protection-devices-selection-for-pv-systems-spds-parameter/ ; Uw from memory
    assert up_max(uoc_max, declared).value == pytest.approx(up)


def test_no_withstand_above_1500_volts() -> None:
    with pytest.raises(NoRow, match="impulse withstand"):
        up_max(1500.1)


@pytest.mark.parametrize(
    ("protection", "kept", "ground", "expected"),
    [
        (False, False, False, "2"),
        (True, True, False, "2"),
        (True, False, False, "1"),
        (False, False, True, "1"),
        (True, True, True, "1"),
    ],
)
def test_type(protection: bool, kept: bool, ground: bool, expected: str) -> None:
    # https://www.dehn-ua.com/en/rooftop-systems-buildings-external-lightning-protection-system-and-sufficient-separation-distance
    assert spd_type(protection, kept, ground).value == expected, CITATIONS


def test_fixed_values() -> None:
    assert discharge_current_min().value == 5, CITATIONS
    # http://www.cnsuntree.com/info/how-to-nstalling-an-dc-spd-24684891.html
    assert protected_length().value == 10
    assert iscpv_min(isc_max(2, 10.0, profile("cautious"))).value == 25  # IEC 61643-31 (from memory)


@pytest.mark.parametrize(("level", "current_ka"), [("I", 10), ("II", 7.5), ("III", 5), ("IV", 5)])
def test_impulse_current(level: str, current_ka: float) -> None:
    assert impulse_current_min(level).value == current_ka  # IEC 61643-32:2017 Annex A (from memory)


def test_leads_add_a_kilovolt_a_metre() -> None:
    # IEC 61643-12 (from memory): about 1 kV for each metre
    assert protection_level_with_leads(3.5, 0.5).value == pytest.approx(4.0)
    unknown = protection_level_with_leads(3.5, None)
    assert unknown.value == 3.5
    assert unknown.assumptions


@pytest.mark.parametrize(("routes", "shared", "length"), [((12.0,), 8.0, 20.0), ((12.0, 5.0), 8.0, 25.0), ((), 0, 0)])
def test_route_length_adds_different_routes(routes: tuple[float, ...], shared: float, length: float) -> None:
    # http://photovoltaique.guidenr.fr/informations_techniques/dimensionnement-photovoltaique-continu/parafoudre-cc.php
    assert route_length(routes, shared).value == pytest.approx(length)
