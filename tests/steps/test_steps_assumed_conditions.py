"""What is assumed where the spec is silent: the warmest air around a cable, the trip of a breaker, what is printed."""

from __future__ import annotations

import pytest
from rated_specs import AC_CABLE, BREAKER, CABLE, changed, rated, rated_data, value

from sld.ratings.symbol import Symbol
from sld.rules import review

SUPPLY = {"earthing_system": "TN-S", "voltage": "400 V", "service_fuse": "100 A"}
UNIT = "inverters.roof"
BREAKER_KEY = f"{UNIT}.circuit.0"
STRING_CABLE = f"{UNIT}.inputs.0.strings.0.cable"
LAID = {**CABLE, "section": "10 mm2", "method": "C"}


@pytest.mark.parametrize(
    ("locations", "cable", "iz_a"),
    [
        # IEC 60364-5-52:2009 Table B.52.4, copper PVC 10 mm², method C, 3 loaded: 57 A; Table B.52.14, PVC: 0.87 at
        # 40 °C, 0.94 at 35 °C, 0.79 at 45 °C
        ({}, {}, 57),
        ({"loft": {"ambient_temperature": "35 °C"}}, {}, 57 * 0.94),
        ({"loft": {"outdoor": True}}, {}, 57 * 0.87),
        ({"loft": {"outdoor": True}, "cellar": {"ambient_temperature": "45 °C"}}, {}, 57 * 0.79),
        # a cool end does not cool the rest of the way
        ({"cellar": {"ambient_temperature": "15 °C"}}, {}, 57),
        # what is given for the cable itself goes before
        ({"loft": {"outdoor": True}}, {"ambient_temperature": "30 °C"}, 57),
        ({"loft": {"outdoor": True}, "cellar": {"ambient_temperature": "35 °C"}}, {"location": "cellar"}, 57 * 0.94),
        # Table B.52.2 and B.52.15: in the ground the air at the ends says nothing, 50 A
        ({"loft": {"outdoor": True}}, {"method": "D1"}, 50),
    ],
)
def test_the_warmest_end_decides_for_a_cable_without_a_place(locations, cable, iz_a) -> None:
    """IEC 60364-5-52:2009 523.8 (from memory): the part of the way with the worst cooling."""
    places = {"loft": {}, "cellar": {}, **locations}
    changes = {
        "site.locations": places,
        f"{UNIT}.location": "loft",
        "boards.main.location": "cellar",
        AC_CABLE: {**LAID, **cable},
    }
    assert value(rated(changes), AC_CABLE, Symbol.IZ) == pytest.approx(iz_a)


@pytest.mark.parametrize(
    ("trip", "trips_a"),
    [
        # IEC 60947-2 (from memory): the magnetic release may miss its setting by 20 %; 10 In is the usual setting
        ({}, 1.2 * 10 * 100),
        # the spec's trip_factor is the upper bound already
        ({"trip_factor": 8}, 8 * 100),
    ],
)
def test_moulded_case_breakers_trip_at_their_upper_bound(trip, trips_a) -> None:
    changes = {BREAKER_KEY: {**BREAKER, "construction": "moulded_case", "rated_current": "100 A", **trip}}
    assert value(rated(changes), BREAKER_KEY, Symbol.IA) == pytest.approx(trips_a)


def test_a_touch_voltage_in_tn_is_of_the_loop() -> None:
    """IEC 60364-4-41:2005+A1:2017 411.4.4 speaks of Zs in TN; RA of 411.5.3 is the electrode's in TT."""
    changes = {"supply": {**SUPPLY, "loop_impedance": "0.3 ohm"}, f"{UNIT}.circuit.1": {"kind": "rcd"}}
    touch = rated(changes).get(f"{UNIT}.circuit.1", Symbol.UT)
    assert touch is not None
    assert str(touch.formula) == "Zs · IΔn"
    assert "411.4.4" in str(touch.clause)
    zs_ohm, residual_ma = touch.input("Zs"), touch.input("IΔn")
    assert isinstance(zs_ohm, float)
    assert isinstance(residual_ma, float)
    assert touch.value == pytest.approx(zs_ohm * residual_ma / 1000)


@pytest.mark.parametrize(
    ("key", "symbol", "said"),
    [
        (UNIT, Symbol.IK_MAX, "fault current of the inverters not counted"),
        (STRING_CABLE, Symbol.IZ, "DC cables not bunched with other circuits"),
        # 6 mm² of bonding conductor is half of 12 mm² (IEC 60364-5-54:2011 544.1.1)
        ("earth.bonding.0", Symbol.S_MIN, "protective conductor of the supply at most 12 mm²"),
    ],
)
def test_what_is_taken_for_granted_is_told(key, symbol, said) -> None:
    """House rule: every assumption is printed (common practice, no source)."""
    changes = {"earthing": {"bonding": [{"to": "water pipe"}]}, STRING_CABLE: {"length": "30 m"}}
    rating = rated(changes).get(key, symbol)
    assert rating is not None
    assert said in [str(each) for each in rating.assumptions]


def test_what_is_given_is_not_called_assumed() -> None:
    changes = {
        "earthing": {"bonding": [{"to": "water pipe"}], "conductor": {"section": "16 mm2"}},
        STRING_CABLE: {"length": "30 m", "grouped_circuits": 3},
    }
    ratings = rated(changes)
    bonding = ratings.get("earth.bonding.0", Symbol.S_MIN)
    capacity = ratings.get(STRING_CABLE, Symbol.IZ)
    assert bonding is not None
    assert bonding.assumptions == ()
    assert capacity is not None
    assert not any("bunched" in str(each) for each in capacity.assumptions)


@pytest.mark.parametrize(
    ("supply", "formula"),
    [({}, "target of profile cautious"), ({"voltage_rise_limit": "1 %"}, "as specified")],
)
def test_a_limit_of_the_profile_is_not_said_to_be_specified(supply, formula) -> None:
    limit = rated({"supply": {**SUPPLY, **supply}}).get("", Symbol.DU_LIMIT)
    assert limit is not None
    assert (limit.value, str(limit.formula)) == (1.0, formula)


@pytest.mark.parametrize(("given", "said"), [({}, 1), ({"ct_secondary": "5 A"}, 0)])
def test_a_usual_transformer_secondary_is_told(given, said) -> None:
    """5 A secondary: common practice, no source."""
    meter = {"kind": "meter", "purpose": "supply", "connection": "ct", "ct_primary": "100 A", **given}
    rating = rated({"boards.main.circuit": [meter, {"kind": "main_switch"}]}).get("boards.main.circuit.0", Symbol.ISN)
    assert rating is not None
    assert rating.value == 5
    assert len(rating.assumptions) == said


def test_a_smaller_device_is_not_advised_where_the_cable_does_not_carry_the_design_current() -> None:
    """A 10 A breaker on the 16 A of an inverter would trip in normal use (IEC 60364-4-43:2008 433.1, from memory)."""
    data = changed({AC_CABLE: {**CABLE, "section": "1.5 mm2"}, BREAKER_KEY: {**BREAKER, "rated_current": "20 A"}})
    system, ratings = rated_data(data)
    remedies = [str(each.remedy) for each in review(system, ratings) if each.code == "AC02"]
    assert len(remedies) == 1
    assert "smaller protective device" not in remedies[0]
