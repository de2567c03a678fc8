"""Where the spec leaves sizes open, what is chosen breaks no rule that a larger standard size would mend.

The rules are the judges here, each with its own clause; the generated systems leave every rating and section open.
"""

from __future__ import annotations

import copy
from typing import Any

from hypothesis import given, settings
from hypothesis import strategies as st
from rated_specs import ISOLATOR, changed, number, rated_data

from sld.finding import Severity
from sld.ratings.symbol import Symbol
from sld.rules import review
from sld.steps import Ratings

SECTIONS_MM2 = [1.5, 2.5, 4, 6, 10, 16, 25, 35, 50, 70, 95, 120, 150, 185, 240, 300]

MENDED_BY_SIZE = {
    "AC01", "AC02", "AC03", "AC04", "AC05", "AC12", "AC13", "AC15", "AC16", "AC19", "AC23", "AC38", "AC40", "DC16",
    "DC18", "DC19", "DC22", "DC24", "EA01", "EA02", "EA07", "FA03", "FA09", "ME01", "ME02", "SU04",
}  # fmt: skip
"""Rules that compare a rated current, a voltage or a section with a demand. Not FA12: the overload release ends a far
short circuit too (IEC 60364-4-43 435.1)."""

INSTALLED = {"length": number(1, 120), "method": st.sampled_from(["B2", "C", "D1", "E"])}
CABLES = st.fixed_dictionaries(
    {"kind": st.just("cable"), **INSTALLED},
    optional={
        "type": st.sampled_from(["al", "x"]),
        "parallel": st.integers(1, 2),
        "ambient_temperature": number(20, 45),
        "grouped_circuits": st.integers(1, 4),
    },
)
PROTECTION = st.sampled_from(
    [
        [{"kind": "breaker"}],
        [{"kind": "fuse"}],
        [{"kind": "rcbo"}],
        [{"kind": "breaker", "construction": "moulded_case"}],
        [{"kind": "breaker"}, {"kind": "rcd"}],
    ]
)
CIRCUITS = st.builds(lambda devices, cable: [*devices, cable, ISOLATOR], PROTECTION, CABLES)
FEEDERS = st.builds(
    lambda devices, cable: [*devices, cable, {"kind": "main_switch"}],
    st.sampled_from([[{"kind": "breaker", "construction": "moulded_case"}], [{"kind": "fuse"}]]),
    CABLES,
)
METERS = st.sampled_from([[], [{"kind": "meter", "purpose": "supply", "connection": "ct"}]])
SYSTEMS = st.fixed_dictionaries(
    {
        "supply": st.fixed_dictionaries(
            {
                "earthing_system": st.sampled_from(["TN-S", "TN-C-S", "TT"]),
                "service_fuse": st.sampled_from(["63 A", "100 A", "250 A"]),
                "prospective_fault_current": st.sampled_from(["2 kA", "5 kA", "16 kA"]),
                "loop_impedance": st.sampled_from([0.05, 0.3]),
                "voltage_rise_limit": st.sampled_from([1, 2, 3]),
            }
        ),
        "boards.main.circuit": st.builds(lambda meters: [*meters, {"kind": "main_switch"}], METERS),
        "boards.main.diversity_factor": st.sampled_from([None, 0.8, 0.9]),
        "boards.pv": st.fixed_dictionaries({"fed_from": st.just("main"), "circuit": FEEDERS}),
        "inverters.roof.connected_to": st.just("pv"),
        "inverters.roof.count": st.integers(1, 3),
        "inverters.roof.circuit": CIRCUITS,
        "types.inverters.t.current_max": st.sampled_from([None, "16 A", "29 A", "40 A"]),
        "types.inverters.t.rated_power": st.sampled_from(["8 kW", "12.4 kW", "20 kW"]),
        "types.inverters.t.leakage_current": st.sampled_from(["3 mA", "12 mA"]),
        "types.cables": st.just({"al": {"conductor": "aluminium"}, "x": {"insulation": "XLPE"}}),
        "earthing": st.just({"electrode": {"resistance": 20}, "bonding": [{"to": "water pipe"}]}),
    }
)


def told(data: dict[str, Any]) -> dict[tuple[str, str], str]:
    """Return the messages of the rules that a larger size may mend, where a standard size was found at all."""
    system, ratings = rated_data(data)
    without_answer = {key for key, _ in ratings.unanswered}
    return {
        (each.code, each.device): str(each.message)
        for each in review(system, ratings)
        if each.code in MENDED_BY_SIZE
        # what is assumed of the energy that is let through makes no cable larger: the maker's figure is asked for
        and not (each.code == "FA09" and each.severity is Severity.ADVICE)
        and not without_answer & {each.device, system.devices[each.device].parent}
        and not (
            each.code == "AC15" and all(is_three_sizes_up(ratings, way.key) for way in system.upstream(each.device))
        )
    }


def is_three_sizes_up(ratings: Ratings, key: str) -> bool:
    """Return whether a device is no cable, or one that for the voltage rise would not be made larger still."""
    section, carries = ratings.get(key, Symbol.S), ratings.get(key, Symbol.S_CARRIES)
    if section is None or carries is None:
        return True
    return section.value >= min([*SECTIONS_MM2[SECTIONS_MM2.index(carries.value) :][3:], SECTIONS_MM2[-1]])


def with_the_largest_cables(data: dict[str, Any]) -> dict[str, Any]:
    """Return the data with every AC cable as large as the tables go."""
    largest = copy.deepcopy(data)
    for circuit in (largest["boards"]["pv"]["circuit"], largest["inverters"]["roof"]["circuit"]):
        for device in circuit:
            if device["kind"] == "cable":
                device |= {"section": 300, "protective_section": 300}
    return largest


def broken(changes: dict[str, Any]) -> list[str]:
    """Return the messages of broken rules that a larger size would mend."""
    wanted = {path: value for path, value in changes.items() if value is not None or path.endswith("current_max")}
    data = changed(wanted)
    found = told(data)
    beyond_mending = told(with_the_largest_cables(data)) if any(code == "FA03" for code, _ in found) else {}
    return [f"{key[0]} {message}" for key, message in found.items() if key[0] != "FA03" or key not in beyond_mending]


@given(SYSTEMS)
@settings(max_examples=15, deadline=None)
def test_what_is_chosen_meets_every_rule(changes: dict[str, Any]) -> None:
    assert broken(changes) == []
