"""What reaches a cable of a fault: the least sections by heat, worked by hand, and the law that worse is not milder."""

from __future__ import annotations

import os
from math import sqrt
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from rated_specs import AC_CABLE, BREAKER, CABLE, ISOLATOR, changed, rated, rated_data, value

from sld.finding import Severity
from sld.ratings.symbol import Symbol
from sld.rules import review
from sld.steps.thermal import certain_mm2, laid_down_mm2

PROPERTY = settings(max_examples=int(os.environ.get("EXAMPLES", "15")), deadline=None)  # by hand: EXAMPLES=500
NO_FUSE = {"supply.service_fuse": None}
CIRCUIT = "inverters.roof.circuit"
MOULDED = {**BREAKER, "construction": "moulded_case", "trip_factor": 10}
DELAYED = {**BREAKER, "construction": "moulded_case", "rated_current": "25 A", "overload_setting": "20 A",
           "short_time_setting": "120 A", "short_time_delay": "0.2 s"}  # fmt: skip


def behind(device: dict[str, Any], ik_ka: float, **more: Any) -> dict[str, Any]:
    """Return the changes that put a cable of 4 mm² behind a device, with a prospective current at the board."""
    cable = {**CABLE, "section": "4 mm2", "length": "20 m"}
    return {"supply.prospective_fault_current": f"{ik_ka} kA", CIRCUIT: [device, cable, ISOLATOR], **NO_FUSE, **more}


@pytest.mark.parametrize(
    ("device", "ik_ka", "least_mm2"),
    [
        # √(I²t) / 115; class 3 of EN 60898-1 Annex ZA (from memory): B up to 16 A, C up to 32 A, 40 A
        ({**BREAKER, "curve": "C", "rated_current": 16}, 3, sqrt(18_000) / 115),
        # 1.06 mm² by 15 000 A²s, of which IET On-Site Guide Table B7 makes 1.0 mm² (from memory)
        ({**BREAKER, "curve": "B", "rated_current": 16}, 3, 1.0),
        # 80 A flow for less than 0.1 s: less than the guide permits
        ({**BREAKER, "curve": "B", "rated_current": 16}, 0.08, 80 * sqrt(0.1) / 115),
        ({**BREAKER, "curve": "B", "rated_current": 16}, 6, sqrt(35_000) / 115),
        ({**BREAKER, "curve": "B", "rated_current": 32}, 6, 1.84),
        ({**BREAKER, "curve": "C", "rated_current": 20}, 10, sqrt(110_000) / 115),
        ({**BREAKER, "curve": "C", "rated_current": 20}, 25, sqrt(110_000) / 115),
        ({**BREAKER, "curve": "C", "rated_current": 40}, 6, sqrt(71_500) / 115),
        # a selective main circuit-breaker waits for those behind it: 6 kA for 0.1 s
        ({**BREAKER, "curve": "E", "rated_current": 35}, 6, sqrt(6000**2 * 0.1) / 115),
        # 300 A flow for less than 0.1 s (IEC 60898-1 Table 7)
        ({**BREAKER, "curve": "B", "rated_current": 20}, 0.3, 300 * sqrt(0.1) / 115),
        # no table: 25 ms (IEEE 1584-2002, from memory), what the maker states
        (MOULDED, 10, 10_000 * sqrt(0.025) / 115),
        ({**BREAKER, "curve": "C", "rated_current": 63}, 6, 6_000 * sqrt(0.025) / 115),
        ({**MOULDED, "clearing_time": "300 ms"}, 10, 10_000 * sqrt(0.3) / 115),
        ({**MOULDED, "let_through_energy": "1.2e6 A2s"}, 10, sqrt(1.2e6) / 115),
        # a short-time release waits 0.2 s and opens within 0.1 s more (common practice, no source)
        (DELAYED, 10, 10_000 * sqrt(0.3) / 115),
        ({"kind": "rcbo", "curve": "C", "rated_current": 20, "let_through_energy": "28000 A2s"}, 10, sqrt(28e3) / 115),
    ],
)  # fmt: skip
def test_least_section_behind_a_breaker(device, ik_ka, least_mm2) -> None:
    """IEC 60364-4-43:2008 434.5.2: k²S² >= I²t with k 115 for copper and PVC, at the start of the cable."""
    assert value(rated(behind(device, ik_ka)), AC_CABLE, Symbol.S_THERMAL) == pytest.approx(least_mm2, rel=3e-3)


@pytest.mark.parametrize(("fuse_a", "least_mm2"), [(63, sqrt(820**2 * 0.1) / 115), (125, sqrt(110_000) / 115)])
def test_a_fuse_ahead_limits_what_a_breaker_lets_through(fuse_a, least_mm2) -> None:
    """63 A gG is open within 0.1 s at 820 A (IEC 60269-1 Table 3); 125 A lets more through than a C20 by itself."""
    device = {**BREAKER, "curve": "C", "rated_current": 20}
    ratings = rated({**behind(device, 8), "supply.service_fuse": f"{fuse_a} A"})
    assert value(ratings, AC_CABLE, Symbol.S_THERMAL) == pytest.approx(least_mm2)


@pytest.mark.parametrize(
    ("fuse_a", "by_it_mm2", "beyond_doubt_mm2"),
    [
        # 35 A gG is open within 0.1 s at 450 A (IEC 60269-1 Table 3); a C20 lets more through by itself
        (35, 450 * sqrt(0.1) / 115, 450 * sqrt(0.1 * 0.99) / 115),
        # 125 A lets more through than a C20 of class 3: 55 000 A²s at 6 kA, 39 000 A²s at 4.5 kA
        (125, sqrt(55_000) / 115, sqrt(39_000 * 0.99) / 115),
    ],
)
def test_a_fuse_ahead_limits_what_is_laid_down_and_what_is_certain_too(fuse_a, by_it_mm2, beyond_doubt_mm2) -> None:
    device = {**BREAKER, "curve": "C", "rated_current": 20}
    least = rated({**behind(device, 8), "supply.service_fuse": f"{fuse_a} A"})[AC_CABLE, Symbol.S_THERMAL]
    assert laid_down_mm2(least) == pytest.approx(by_it_mm2)
    assert certain_mm2(least) == pytest.approx(beyond_doubt_mm2)


@pytest.mark.parametrize(
    ("loop_ohm", "ik_ka", "least_mm2"),
    [
        # 1.1 · 230.94 V / 0.35 Ω = 726 A: class 3 up to 3 kA
        (0.35, 6, sqrt(18_000) / 115),
        (None, 6, sqrt(45_000) / 115),
        (0.01, 6, sqrt(45_000) / 115),
    ],
)
def test_a_stated_loop_limits_what_reaches_the_protective_conductor(loop_ohm, ik_ka, least_mm2) -> None:
    device = {**BREAKER, "curve": "B", "rated_current": 32}
    changes = behind(device, ik_ka, **({"supply.loop_impedance": loop_ohm} if loop_ohm else {}))
    assert value(rated(changes), AC_CABLE, Symbol.SPE_THERMAL) == pytest.approx(least_mm2)


def test_no_protective_conductor_is_heated_in_tt() -> None:
    changes = behind({**BREAKER, "curve": "B", "rated_current": 32}, 6, **{"supply.earthing_system": "TT"})
    ratings = rated(changes)
    assert ratings.get(AC_CABLE, Symbol.SPE_THERMAL) is None
    assert ratings.get(AC_CABLE, Symbol.S_THERMAL) is not None


DEVICES = st.one_of(
    st.fixed_dictionaries(
        {
            "kind": st.just("breaker"),
            "curve": st.sampled_from(["B", "C", "D"]),
            "rated_current": st.sampled_from([6, 16, 20, 32, 40, 63]),
        },
    ),
    st.fixed_dictionaries(
        {
            "kind": st.just("breaker"),
            "construction": st.just("moulded_case"),
            "trip_factor": st.sampled_from([5, 10]),
            "rated_current": st.sampled_from([16, 63, 160]),
        },
        optional={"clearing_time": st.sampled_from([5, 20, 100]), "let_through_energy": st.sampled_from([3e4, 2e6])},
    ),
)
SECTIONS = [1.5, 2.5, 4, 6, 10, 16, 25]
SYSTEMS = st.sampled_from(["TN-S", "TN-C-S", "TT"])


def severity(system: str, device: dict[str, Any], ik_ka: float, section: float, protective: float) -> int:
    """Return how badly the heat of a fault is judged: 0 without a finding."""
    changes = behind(device, round(ik_ka, 3), **{"supply.earthing_system": system})
    changes[CIRCUIT][1] |= {"section": section, "protective_section": min(section, protective)}
    found = [each.severity for each in review(*rated_data(changed(changes))) if each.code == "FA09"]
    return max(map(int, found), default=0)


@PROPERTY
@given(SYSTEMS, DEVICES, st.floats(0.1, 50), st.floats(1, 20), st.sampled_from(SECTIONS), st.sampled_from(SECTIONS))
def test_a_larger_current_is_never_judged_milder(system, device, ik_ka, factor, section, protective) -> None:
    milder = severity(system, device, ik_ka, section, protective)
    assert severity(system, device, min(ik_ka * factor, 150), section, protective) >= milder


@PROPERTY
@given(SYSTEMS, DEVICES, st.floats(0.1, 50), st.sampled_from(SECTIONS), st.sampled_from(SECTIONS))
def test_a_longer_time_or_more_energy_is_never_judged_milder(system, device, ik_ka, section, protective) -> None:
    for key in ("clearing_time", "let_through_energy"):
        if key in device:
            milder = severity(system, device, ik_ka, section, protective)
            assert severity(system, {**device, key: 2 * device[key]}, ik_ka, section, protective) >= milder


FUSES = st.fixed_dictionaries({"kind": st.just("fuse"), "rated_current": st.sampled_from([16, 32, 63, 100])})


@PROPERTY
@given(SYSTEMS, DEVICES | FUSES, st.floats(0.1, 50), st.sampled_from(SECTIONS), st.sampled_from(SECTIONS))
def test_a_smaller_section_is_never_judged_milder(system, device, ik_ka, section, protective) -> None:
    larger = severity(system, device, ik_ka, section, protective)
    for smaller in (each for each in SECTIONS if each < section):
        assert severity(system, device, ik_ka, smaller, protective) >= larger


@PROPERTY
@given(SYSTEMS, FUSES, st.floats(0.1, 50), st.floats(1, 20), st.sampled_from(SECTIONS))
def test_a_smaller_current_through_a_fuse_is_never_judged_milder(system, device, ik_ka, factor, section) -> None:
    """It opens later and lets more through."""
    assert severity(system, device, max(ik_ka / factor, 0.06), section, section) >= severity(
        system, device, ik_ka, section, section
    )


def test_the_cliff_at_6_ka_is_gone() -> None:
    """1.5 mm² behind a C20: told as danger at 5.9 kA, and silent at 6.1 kA before."""
    device = {**BREAKER, "curve": "C", "rated_current": 20}
    assert severity("TN-S", device, 5.9, 1.5, 1.5) == severity("TN-S", device, 6.1, 1.5, 1.5) == int(Severity.DANGER)


@pytest.mark.parametrize(("curve", "ampere"), [("C", 1.45 * 35), ("E", 1.2 * 35)])
def test_the_conventional_tripping_current_goes_by_the_curve(curve, ampere) -> None:
    """IEC 60898-1 (from memory); DIN VDE 0641-21 as elektro.net tells it."""
    ratings = rated(behind({**BREAKER, "curve": curve, "rated_current": "35 A"}, 6))
    assert value(ratings, f"{CIRCUIT}.0", Symbol.I2) == pytest.approx(ampere)
