"""What is chosen meets its own demand, the next smaller standard size does not; and physics runs the right way.

Series and capacities are read here from the published tables directly, without the formulas of the package.
"""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from rated_specs import AC_CABLE, CABLE, STRING, number, rated, value

from sld.ratings.symbol import Symbol
from sld.steps import Ratings
from sld.steps.thermal import laid_down_mm2
from sld.tables.table import series, table

UNIT, IN1 = "inverters.roof", "inverters.roof.inputs.0"
PROPERTY = settings(max_examples=15, deadline=None)

SYSTEMS = st.fixed_dictionaries(
    {
        f"{AC_CABLE}.length": number(0, 400),
        f"{AC_CABLE}.method": st.sampled_from(["A1", "B2", "C", "E"]),
        f"{AC_CABLE}.ambient_temperature": number(10, 55),
        f"{AC_CABLE}.grouped_circuits": st.integers(1, 9),
        "types.inverters.t.current_max": number(1, 100),
        "inverters.roof.power_factor": number(0.5, 1),
        "site.temperature_min": number(-40, 10),
        f"{STRING}.modules_in_series": st.integers(1, 30),
        f"{STRING}.count": st.integers(1, 4),
        f"{STRING}.cable": st.fixed_dictionaries({"length": number(0, 200)}),
    }
)


def next_smaller(name: str, chosen: float) -> float | None:
    return max((each for each in series(name) if each < chosen), default=None)


@given(SYSTEMS)
@PROPERTY
def test_chosen_rated_currents_and_voltages(changes: dict[str, Any]) -> None:
    ratings = rated(changes)
    for key, symbol, demand, name in (
        (f"{UNIT}.circuit.0", Symbol.IN, Symbol.IB, "mcb_a"),
        (f"{UNIT}.circuit.2", Symbol.IN, Symbol.IN_MIN, "ac_switch_disconnector_a"),
        (f"{IN1}.circuit.0", Symbol.IE, Symbol.IE_MIN, "dc_isolator_a"),
        (f"{IN1}.circuit.0", Symbol.UE, Symbol.UE_MIN, "dc_isolator_v"),
        ("boards.main", Symbol.INA, Symbol.INA_LEAST, "assembly_a"),
    ):
        least, chosen = value(ratings, key, demand), ratings.get(key, symbol)
        if chosen is None:
            assert max(series(name)) < least
            continue
        smaller = next_smaller(name, chosen.value)
        assert chosen.value >= least
        assert smaller is None or smaller < least


def tabulated_a(section_mm2: float, method: str) -> float:
    """Return the capacity of a PVC copper cable with three loaded conductors, IEC 60364-5-52:2009 Table B.52.4."""
    row = table("capacity_iec60364").pick(
        material="Cu", insulation="PVC", loaded_conductors_count=3, section_mm2=section_mm2
    )
    return row.number(method)


@given(SYSTEMS)
@PROPERTY
def test_chosen_ac_section(changes: dict[str, Any]) -> None:
    ratings = rated(changes)
    chosen = ratings.get(AC_CABLE, Symbol.S)
    if chosen is None:
        assert ratings.unanswered[AC_CABLE, Symbol.S]
        return
    least_a, limit_percent = value(ratings, AC_CABLE, Symbol.IZ_MIN), value(ratings, "", Symbol.DU_LIMIT)
    assert value(ratings, AC_CABLE, Symbol.IZ) >= least_a
    if value(ratings, AC_CABLE, Symbol.DU_RISE) > limit_percent:
        # nothing is stated about terminals: at most three sizes above what carries the current
        carries = series("section_mm2").index(value(ratings, AC_CABLE, Symbol.S_CARRIES))
        assert series("section_mm2").index(chosen.value) >= carries + 3
        return
    thermal = ratings.get(AC_CABLE, Symbol.S_THERMAL)
    assert thermal is None or laid_down_mm2(thermal) <= min(chosen.value, value(ratings, AC_CABLE, Symbol.SPE))
    smaller = next_smaller("section_mm2", chosen.value)
    if smaller is None:
        return
    thinner = rated({**changes, f"{AC_CABLE}.section": smaller})
    if str(chosen.input("governed by")) == "disconnection":
        # TN-S without an RCD: 0.95 · 230 V / (5 · In) by curve B, the lowest
        most_ohm = 0.95 * 230 / (5 * value(ratings, f"{UNIT}.circuit.0", Symbol.IN))
        assert (
            value(ratings, f"{UNIT}.circuit.0", Symbol.ZS) <= most_ohm < value(thinner, f"{UNIT}.circuit.0", Symbol.ZS)
        )
        return
    if str(chosen.input("governed by")) == "fault":
        assert value(thinner, AC_CABLE, Symbol.S) < value(thinner, AC_CABLE, Symbol.S_THERMAL)
        return
    factor = value(ratings, AC_CABLE, Symbol.IZ) / tabulated_a(chosen.value, changes[f"{AC_CABLE}.method"])
    carries_a = tabulated_a(smaller, changes[f"{AC_CABLE}.method"]) * factor
    assert value(thinner, AC_CABLE, Symbol.IZ) == pytest.approx(carries_a)
    assert carries_a < least_a or value(thinner, AC_CABLE, Symbol.DU_RISE) > limit_percent


@given(SYSTEMS)
@PROPERTY
def test_chosen_dc_section(changes: dict[str, Any]) -> None:
    """At most 1 % of voltage drop by the profile, 4 mm² at least by common practice."""
    ratings = rated(changes)
    key = f"{STRING}.cable"
    chosen = ratings.get(key, Symbol.S)
    if chosen is None:
        assert ratings.unanswered[key, Symbol.S]
        return
    assert value(ratings, key, Symbol.IZ) >= value(ratings, key, Symbol.IZ_MIN)
    assert value(ratings, key, Symbol.DU_DC_CABLE) <= 1
    smaller = next_smaller("dc_cable_section_mm2", chosen.value)
    if smaller is None or smaller < 4:
        return
    thinner = rated({**changes, f"{STRING}.cable": {**changes[f"{STRING}.cable"], "section": smaller}})
    assert (
        value(thinner, key, Symbol.IZ) < value(thinner, key, Symbol.IZ_MIN)
        or value(thinner, key, Symbol.DU_DC_CABLE) > 1
    )


@given(number(0, 500), number(0, 500))
@PROPERTY
def test_a_longer_cable_never_drops_less(first_m: float, second_m: float) -> None:
    def at(length_m: float) -> Ratings:
        cable = {**CABLE, "length": length_m, "section": "10 mm2"}
        return rated({AC_CABLE: cable, f"{STRING}.cable": {"length": length_m, "section": "6 mm2"}})

    short, long = at(min(first_m, second_m)), at(max(first_m, second_m))
    assert value(long, UNIT, Symbol.DU_AC) >= value(short, UNIT, Symbol.DU_AC)
    assert value(long, IN1, Symbol.DU_DC) >= value(short, IN1, Symbol.DU_DC)
    assert value(long, f"{UNIT}.circuit.0", Symbol.ZS) >= value(short, f"{UNIT}.circuit.0", Symbol.ZS)
    assert value(long, UNIT, Symbol.IK_MAX) <= value(short, UNIT, Symbol.IK_MAX)


@given(number(-60, 30), number(-60, 30), st.booleans())
@PROPERTY
def test_a_colder_site_never_has_a_lower_voltage(first_c: float, second_c: float, with_coefficient: bool) -> None:
    """By the maker's coefficient, and by the factor table of IEC 62548 where there is none (1.2 below -40 °C apart)."""
    silent = {} if with_coefficient else {"types.modules.m.voltage_coefficient": None}
    cold_c, mild_c = sorted((first_c, second_c))
    if not with_coefficient and cold_c < -40:
        cold_c, mild_c = max(cold_c, -40), max(mild_c, -40)
    cold = value(rated({**silent, "site.temperature_min": cold_c}), IN1, Symbol.UOC_MAX)
    assert cold >= value(rated({**silent, "site.temperature_min": mild_c}), IN1, Symbol.UOC_MAX)


@given(number(1, 80), number(1, 80))
@PROPERTY
def test_a_stronger_inverter_never_has_a_smaller_circuit(first_a: float, second_a: float) -> None:
    weak, strong = (rated({"types.inverters.t.current_max": current}) for current in sorted((first_a, second_a)))
    for key, symbol in (
        (f"{UNIT}.circuit.0", Symbol.IN),
        (AC_CABLE, Symbol.S),
        (AC_CABLE, Symbol.SPE),
        (f"{UNIT}.circuit.2", Symbol.IN),
        ("boards.main", Symbol.INA),
    ):
        assert value(strong, key, symbol) >= value(weak, key, symbol)
