"""Supplies that distribute no neutral: what is between two lines, worked by hand.

U is the voltage between lines. IEC 60909-0:2016: Ik3 = c · U / (√3 · |Z|), Ik2 = c · U / (2 · |Z|); c 1.1 and 0.95.
"""

from __future__ import annotations

from math import sqrt

import pytest
from rated_specs import AC_CABLE, BREAKER, CABLE, changed, rated, rated_data, value

from sld.model.conductors import cores, has_neutral, lines_count
from sld.ratings.symbol import Symbol

ROOF = "inverters.roof"
THREE = {"phases": 3, "voltage": "230 V", "neutral": "not_distributed", "earthing_system": "IT",
         "prospective_fault_current": "4 kA"}  # fmt: skip
TWO = {**THREE, "phases": 1}
SINGLE = {f"{ROOF}.type": "s"}
AHEAD = 1j * 1.1 * 230 / sqrt(3) / 4000
LINE = complex(4.61, 0.08) * 0.020
LONG = {AC_CABLE: {**CABLE, "section": "4 mm2", "length": "20 m"}}
OVEN = {"power": "3 kW", "phases": 1, "circuit": [BREAKER]}


@pytest.mark.parametrize(
    ("changes", "lines", "neutral", "cores_count"),
    [
        ({"supply": THREE}, 3, False, 4),  # L1 L2 L3 PE
        ({"supply": THREE, **SINGLE}, 2, False, 3),  # L1 L2 PE
        ({"supply": TWO, **SINGLE}, 2, False, 3),
        ({"supply": {**THREE, "neutral": "distributed"}}, 3, True, 5),
        ({"supply": {**THREE, "neutral": "distributed"}, **SINGLE}, 1, True, 3),
        ({"supply": {"earthing_system": "TN-S"}, "types.inverters.t.needs_neutral": False}, 3, False, 4),
        ({"supply": {"earthing_system": "TN-S"}, "types.inverters.t.needs_neutral": True}, 3, True, 5),
        ({"supply": {"earthing_system": "TN-S"}, "types.inverters.s.needs_neutral": False, **SINGLE}, 1, True, 3),
    ],
)
def test_the_conductors_of_a_circuit(changes, lines, neutral, cores_count) -> None:
    """IEC 60364-1:2005 312.1 (from memory): live conductors are lines, and a neutral where one is distributed."""
    system, _ = rated_data(changed(changes))
    cable = system.devices[f"{ROOF}.circuit.1"]
    assert (lines_count(system, ROOF), has_neutral(system, ROOF)) == (lines, neutral)
    assert cores(system, cable) == cores_count


@pytest.mark.parametrize(
    ("supply", "follows"),
    [
        # IEC 60038:2009 Table 1: one value alone is the voltage between lines of a system of three wires
        ({"voltage": "230 V", "earthing_system": "TT"}, True),
        ({"voltage": "240 V", "earthing_system": "IT"}, True),
        ({"voltage": "400 V", "earthing_system": "IT"}, False),
        ({"earthing_system": "TT"}, False),
        ({"voltage": "230 V", "phases": 1, "earthing_system": "TT"}, False),
        ({"voltage": "230 V", "earthing_system": "TN-C-S"}, False),  # its PEN is a neutral
        ({"voltage": "230 V", "earthing_system": "TT", "neutral": "distributed"}, False),
    ],
)
def test_three_lines_of_230_v_have_no_neutral_unless_it_is_said(supply, follows) -> None:
    system, _ = rated_data(changed({"supply": supply, **(SINGLE if supply.get("phases") == 1 else {})}))
    assert system.supply.has_neutral is not follows
    assert any("neutral" in str(each.what) for each in system.assumptions) is follows


@pytest.mark.parametrize(
    ("changes", "device", "ampere"),
    [
        ({"supply": THREE, "types.inverters.t.current_max": None}, ROOF, 10000 / (sqrt(3) * 230)),
        ({"supply": THREE, **SINGLE, "types.inverters.s.current_max": None}, ROOF, 4000 / 230),
        ({"supply": TWO, **SINGLE, "types.inverters.s.current_max": None}, ROOF, 4000 / 230),
        ({"supply": THREE, "loads.oven": OVEN}, "loads.oven", 3000 / 230),
        ({"supply": TWO, **SINGLE, "loads.oven": OVEN}, "loads.oven", 3000 / 230),
    ],
)
def test_a_power_between_lines(changes, device, ampere) -> None:
    """P = √3 · U · I, and between two lines U · I."""
    assert value(rated(changes), device, Symbol.IB) == pytest.approx(ampere, rel=1e-6)


@pytest.mark.parametrize(
    ("lines", "ampere"),
    [
        ((None, None), 2 * 3000 / 230),  # nobody says which: on the same two lines
        (("L1-L2", "L1-L2"), 2 * 3000 / 230),
        (("L1-L2", "L2-L3"), sqrt(3) * 3000 / 230),  # 60° apart in L2
    ],
)
def test_two_loads_between_lines_come_together(lines, ampere) -> None:
    ovens = {
        f"loads.{name}": {**OVEN, **({"line": line} if line else {})} for name, line in zip("ab", lines, strict=True)
    }
    assert value(rated({"supply": THREE, **ovens}), "boards.main", Symbol.IIMPORT) == pytest.approx(ampere, rel=1e-6)


def test_no_current_is_told_of_a_neutral_that_is_not_there() -> None:
    ratings = rated({"supply": THREE, **SINGLE})
    assert ratings.get("boards.main", Symbol.I_NEUTRAL) is None
    assert value(ratings, "boards.main", Symbol.IRISE_LINES) == pytest.approx(2 * 20 / sqrt(3), rel=1e-6)


@pytest.mark.parametrize(
    ("changes", "symbol", "ohm", "factor"),
    [
        ({"supply": THREE}, Symbol.IK3_MAX, AHEAD + LINE, 1 / sqrt(3)),
        ({"supply": THREE, **SINGLE}, Symbol.IK2_MAX, AHEAD + LINE, 1 / 2),
        # the current that is stated for two lines is that between them: c · U / 4 kA is both of them
        ({"supply": TWO, **SINGLE}, Symbol.IK1_MAX, 1j * 1.1 * 230 / 4000 + 2 * LINE, 1),
        # a neutral far away does not count against two lines near: 1.1 · 400 / (2 · |Z|)
        ({"supply": {"earthing_system": "TN-S", "prospective_fault_current": "6 kA"}, **SINGLE,
          f"{ROOF}.line": "L1-L2"}, Symbol.IK2_MAX, 1j * 1.1 * 400 / sqrt(3) / 6000 + LINE, 400 / 230 / 2),
    ],
    ids=["three lines", "two of three", "a supply of two", "two of three with a neutral"],
)  # fmt: skip
def test_the_greatest_short_circuit(changes, symbol, ohm, factor) -> None:
    rating = rated({**changes, **LONG}).get(ROOF, Symbol.IK_MAX)
    assert rating.symbol == symbol
    assert rating.value == pytest.approx(1.1 * 230 * factor / abs(ohm) / 1000, rel=1e-4)


@pytest.mark.parametrize(
    ("changes", "ahead"),
    [
        ({"supply": THREE}, AHEAD),
        ({"supply": THREE, **SINGLE}, AHEAD),
        ({"supply": TWO, **SINGLE}, AHEAD * sqrt(3) / 2),
    ],
    ids=["three lines", "two of three", "a supply of two"],
)
def test_the_least_short_circuit_is_between_two_lines(changes, ahead) -> None:
    """Conductors at 70 °C have 1.2 times their resistance (BS 7671 Table I.1 note)."""
    z_ohm = abs(ahead + complex(4.61 * 1.2, 0.08) * 0.020)
    found = value(rated({**changes, **LONG}), f"{ROOF}.circuit.0", Symbol.IK_MIN)
    assert found == pytest.approx(0.95 * 230 / (2 * z_ohm), rel=1e-4)


@pytest.mark.parametrize(("phases", "volt"), [(3, 230 / sqrt(3)), (1, 230 / sqrt(3))])
def test_a_line_stands_at_u_over_root_three_to_earth(phases, volt) -> None:
    system, _ = rated_data(changed({"supply": {**THREE, "phases": phases}, **(SINGLE if phases == 1 else {})}))
    assert system.voltage_to_earth_v == pytest.approx(volt)
    assert system.voltage_of_one_phase_v == 230


@pytest.mark.parametrize(
    ("supply", "volt"),
    [
        ({"phases": 3, "voltage": "400 V"}, 230),  # IEC 60038:2009 Table 1: to neutral
        ({"phases": 1, "voltage": "230 V"}, 230),
        ({"phases": 1, "voltage": "240 V", "split_phase": True}, 240),  # between its two lines
        ({"phases": 3, "voltage": "400 V", "neutral": "not_distributed"}, 400),
    ],
)
def test_the_voltage_that_one_phase_works_at(supply, volt) -> None:
    single = SINGLE if supply["phases"] == 1 else {}
    system, _ = rated_data(changed({"supply": {"earthing_system": "TN-S", **supply}, **single}))
    assert system.voltage_of_one_phase_v == volt


@pytest.mark.parametrize(("earthing", "least_v", "said"), [("TT", 1.1 * 230 / sqrt(3), True), ("IT", 1.1 * 230, False)])
def test_surge_protection_between_line_and_earth(earthing, least_v, said) -> None:
    """IEC 60364-5-53:2019 Table 534.1 (from memory): 1.1 U0 to earth, in IT 1.1 U; no device has a neutral to go to."""
    device = {"kind": "surge_protection", "test_class": "2"}
    ratings = rated({"supply": {**THREE, "earthing_system": earthing}, "boards.main.circuit": [device]})
    least = ratings["boards.main.circuit.0", Symbol.UC_MIN]
    assert least.value == pytest.approx(least_v, rel=0.01)
    assert any("L-PE" in str(each.value) for each in least.given)
    assert any("star point" in str(each) for each in least.assumptions) is said
