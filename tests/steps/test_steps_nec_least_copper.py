"""Sizes in AWG and kcmil for the rise on the whole way: at the least copper, never beyond the terminals.

Ω/kft: NEC 2023 Chapter 9 Table 8, uncoated stranded copper, 75 °C. Rise at power factor 1: √3 · I · L · R / U.
"""

from __future__ import annotations

import copy
import os
from itertools import product
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from rated_specs import BASE, ISOLATOR, THREE_PHASE, UNIT, rated_data, value

from sld.ratings.symbol import Symbol
from sld.rules import review
from sld.wire_size import area_mm2, name_of, size_of

FEW = settings(max_examples=int(os.environ.get("EXAMPLES", "10")), deadline=None)  # by hand: EXAMPLES=500
OHM_PER_KFT = {
    "14": 3.14, "12": 1.98, "10": 1.24, "8": 0.778, "6": 0.491, "4": 0.308, "3": 0.245, "2": 0.194, "1": 0.154,
    "1/0": 0.122, "2/0": 0.0967, "3/0": 0.0766, "4/0": 0.0608, "250": 0.0515, "300": 0.0429, "350": 0.0367,
    "400": 0.0321, "500": 0.0258, "600": 0.0214, "700": 0.0184, "750": 0.0171,
    "800": 0.0166, "900": 0.0147, "1000": 0.0132,  # these three from memory
}  # fmt: skip
SIZES = list(OHM_PER_KFT)
TAIL, FEEDER = "inverters.i0.circuit.1", "boards.pv.circuit.1"
Place = tuple[Any, ...]


def feeder(limit: float, tails: list[tuple[float, float]], feeder_m: float) -> tuple[dict[str, Any], list[Place]]:
    """Return a spec with a PV board and inverters on it, and the places of its cables. tails: length, current."""
    data = copy.deepcopy(BASE) | {"profile": "NEC 690"}
    data["supply"] |= {"voltage": "480 V", "voltage_rise_limit": limit, "prospective_fault_current": "6 kA"}
    data["supply"] |= {"service_fuse": "600 A", "earthing_system": "TN-C-S"}
    cable = {"kind": "cable", "type": "THWN", "terminal_temperature": "75 °C"}
    data["types"]["cables"] = {"THWN": {"insulation": "PVC", "temperature_rating": "90 °C"}}
    board = {"fed_from": "main", "circuit": [{"kind": "breaker"}, {**cable, "length": feeder_m}]}
    data["boards"]["pv"] = board
    data["inverters"], places = {}, [("boards", "pv", "circuit", 1)]
    for number, (length_m, current_a) in enumerate(tails):
        data["types"]["inverters"][f"t{number}"] = {**THREE_PHASE, "current_max": current_a}
        circuit = [{"kind": "breaker"}, {**cable, "length": length_m}, ISOLATOR]
        data["inverters"][f"i{number}"] = {**UNIT, "type": f"t{number}", "connected_to": "pv", "circuit": circuit}
        places.append(("inverters", f"i{number}", "circuit", 1))
    return data, places


def key_of(place: Place) -> str:
    return ".".join(map(str, place))


def with_sizes(data: dict[str, Any], sizes: dict[Place, str]) -> dict[str, Any]:
    changed = copy.deepcopy(data)
    for place, size in sizes.items():
        here: Any = changed
        for step in place:
            here = here[step]
        here["section"] = name_of(area_mm2(size))
    return changed


def told(data: dict[str, Any]) -> set[tuple[str, str]]:
    return {(each.code, str(each.device)) for each in review(*rated_data(data)) if each.severity > 1}


def rise_percent(current_a: float, length_m: float, size: str) -> float:
    return 100 * 3**0.5 * current_a * length_m * OHM_PER_KFT[size] / 304.8 / 480


FEEDERS = (
    st.sampled_from([0.5, 0.8, 1.5, 2.0]),
    st.lists(st.tuples(st.sampled_from([5, 8, 20, 45]), st.sampled_from([16, 24, 36, 72])), min_size=1, max_size=3),
    st.sampled_from([15, 40, 90, 140]),
)


@FEW
@given(*FEEDERS)
def test_no_combination_of_as_few_sizes_up_needs_less_copper(limit, tails, feeder_m) -> None:
    """All combinations of sizes up to four times the area of those for the current, by hand."""
    data, places = feeder(limit, tails, feeder_m)
    _, ratings = rated_data(data)
    runs = [(feeder_m, sum(current for _, current in tails)), *tails]
    carries = [size_of(value(ratings, key_of(place), Symbol.S_CARRIES)) for place in places]
    chosen = [size_of(value(ratings, key_of(place), Symbol.S)) for place in places]

    def copper(sizes: Any) -> float:
        return sum(length_m * area_mm2(size) for (length_m, _), size in zip(runs, sizes, strict=True))

    def highest(sizes: Any) -> float:
        first, *others = [rise_percent(amps, metres, size) for (metres, amps), size in zip(runs, sizes, strict=True)]
        return first + max(others)

    allowed = [
        [each for each in SIZES[SIZES.index(least) :] if area_mm2(each) <= 4.1 * area_mm2(least)] for least in carries
    ]
    for most in range(1, max(map(len, allowed)) + 1):
        fitting = [each for each in product(*(sizes[:most] for sizes in allowed)) if highest(each) <= limit + 1e-9]
        if fitting:
            assert highest(chosen) <= limit + 1e-6
            assert copper(chosen) == pytest.approx(min(map(copper, fitting)))
            return
    assert highest(chosen) > limit
    assert chosen[0] == allowed[0][-1]


@FEW
@given(*FEEDERS)
def test_no_single_size_can_be_lowered_and_still_pass(limit, tails, feeder_m) -> None:
    data, places = feeder(limit, tails, feeder_m)
    _, ratings = rated_data(data)
    chosen = {place: size_of(value(ratings, key_of(place), Symbol.S)) for place in places}
    before = told(with_sizes(data, chosen))
    if any(code == "AC15" for code, _ in before):
        return  # no sizes within four times the area keep the limit
    for place, size in chosen.items():
        smaller = SIZES[: SIZES.index(size)][-1:]
        assert not smaller or told(with_sizes(data, {**chosen, place: smaller[0]})) - before


@pytest.mark.parametrize(
    ("limit", "at_most", "size", "ground", "governed_by"),
    [
        # 24 A, 30 A device: 10 AWG; 310.16 75 °C column 35 A, 240.4(D) 30 A; 250.122: 10 AWG of copper for 30 A
        # √3 · 24 A · 45 m / 480 V: 1.59 % with 10 AWG, 0.99 % with 8, 0.63 % with 6, 0.39 % with 4, 0.31 % with 3
        (2.0, None, "10 AWG", "10 AWG", "current"),
        # 250.122(B): in proportion to the area of the conductors: here as large as these, as both began with 10 AWG
        (1.0, None, "8 AWG", "8 AWG", "voltage"),
        (0.7, None, "6 AWG", "6 AWG", "voltage"),
        (0.4, None, "4 AWG", "4 AWG", "voltage"),
        # nothing is stated about terminals: four times the area and no more
        (0.3, None, "4 AWG", "4 AWG", "voltage"),
        (0.35, "2 AWG", "3 AWG", "3 AWG", "voltage"),
        (0.35, "4 AWG", "4 AWG", "4 AWG", "voltage"),
        (0.35, "8 AWG", "8 AWG", "8 AWG", "voltage"),
        (0.35, "10 AWG", "10 AWG", "10 AWG", "current"),
        (0.35, "12 AWG", "10 AWG", "10 AWG", "current"),
    ],
)
def test_a_size_grows_to_its_terminals_and_its_grounding_conductor_with_it(limit, at_most, size, ground, governed_by):
    data, _ = feeder(limit, [(45, 24)], 0.01)
    if at_most:
        data["inverters"]["i0"]["circuit"][0]["terminal_section_max"] = at_most
    _, ratings = rated_data(data)
    section = ratings[TAIL, Symbol.S]
    assert name_of(section.value) == size
    assert name_of(value(ratings, TAIL, Symbol.SPE)) == ground
    assert {each.name: str(each.value) for each in section.given}["governed by"] == governed_by
    assert (("AC45", TAIL) in told(data)) is (at_most == "12 AWG")
    keeps = rise_percent(24, 45, size.split()[0]) + 0.001 < limit
    assert (("AC15", "inverters.i0") in told(data)) is not keeps
    assert ("Δu,limit" in {str(each.symbol) for each in section.given}) is (keeps and governed_by == "voltage")


def test_a_grounding_conductor_grows_in_proportion() -> None:
    """72 A, 90 A device: 3 AWG (100 A at 75 °C), and 8 AWG to ground by Table 250.122 up to 100 A. For 1.2 % on 110 m
    1/0 AWG: √3 · 72 · 110 / 480 · 0.122 / 304.8 = 1.14 %, with 1 AWG 1.44 %. 16.51 kcmil · 105.6 / 52.62 = 33.1 kcmil:
    4 AWG (41.74 kcmil)."""
    data, _ = feeder(1.2, [(110, 72)], 0.01)
    _, ratings = rated_data(data)
    assert [name_of(value(ratings, TAIL, each)) for each in (Symbol.S_CARRIES, Symbol.S)] == ["3 AWG", "1/0 AWG"]
    assert name_of(value(ratings, TAIL, Symbol.SPE)) == "4 AWG"


def test_a_short_tail_is_not_made_thick_for_a_long_feeder() -> None:
    """24 A on 5 m with 10 AWG lift 0.18 %. On 90 m 6 AWG lift 1.26 %: together 1.43 %, within 1.5 %; 8 AWG 1.99 %. By
    length the tail would have been left 5/95 of the limit, 0.08 %: 4 AWG."""
    data, _ = feeder(1.5, [(5, 24)], 90)
    _, ratings = rated_data(data)
    assert name_of(value(ratings, TAIL, Symbol.S)) == "10 AWG"
    assert name_of(value(ratings, FEEDER, Symbol.S)) == "6 AWG"
    expected = rise_percent(24, 5, "10") + rise_percent(24, 90, "6")
    assert value(ratings, "inverters.i0", Symbol.DU_AC) == pytest.approx(expected, rel=1e-6)


def test_a_size_that_is_given_takes_its_share_of_the_rise() -> None:
    """24 A on 40 m of 10 AWG as given lift 1.41 %, which leaves 1.09 % of 2.5 % to 90 m of feeder: 4 AWG 0.79 %; 6 AWG
    1.26 %, and 8 AWG, enough for the feeder alone, 1.99 %."""
    data, (_, tail) = feeder(2.5, [(40, 24)], 90)
    _, ratings = rated_data(with_sizes(data, {tail: "10"}))
    assert name_of(value(ratings, FEEDER, Symbol.S)) == "4 AWG"
    expected = rise_percent(24, 40, "10") + rise_percent(24, 90, "4")
    assert value(ratings, "inverters.i0", Symbol.DU_AC) == pytest.approx(expected, rel=1e-6)
