"""Where the network operator's part ends: as given, else what is usual, which is said.

A fuse in the service head as the end of the operator's part: Great Britain, Distribution Code terms; Germany, DIN
18012 (both from memory). Where a local code puts it elsewhere the spec says so.
"""

from __future__ import annotations

from typing import Any

import pytest
from small_specs import system

METER = {"kind": "meter", "purpose": "supply"}
SWITCH = {"kind": "main_switch"}
FUSE: dict[str, Any] = {"supply.service_fuse": "63 A"}
OWN: dict[str, Any] = {
    "supply.transformer": {"rated_power": "250 kVA", "primary_voltage": "20 kV", "short_circuit_voltage": "4 %"}
}


@pytest.mark.parametrize(
    ("changes", "behind"),
    [
        ({"supply.ownership_boundary": "network"}, "supply"),
        ({**FUSE, "supply.ownership_boundary": "network"}, "supply"),
        ({**FUSE, "supply.ownership_boundary": "service_fuse"}, "supply.service_fuse"),
        ({"supply.ownership_boundary": "supply_meter"}, "boards.main.circuit.0"),  # the meter is an assumed one
        (
            {"supply.ownership_boundary": "supply_meter", "boards": {"main": {"circuit": [SWITCH, METER, METER]}}},
            "boards.main.circuit.1",
        ),
        (
            {
                "supply.ownership_boundary": "supply_meter",
                "boards": {"sub": {"fed_from": "main", "circuit": [METER]}, "main": {"circuit": [SWITCH, METER]}},
                "inverters.roof.connected_to": "sub",
            },
            "boards.main.circuit.1",
        ),
    ],
)
def test_boundary_as_given(changes: dict[str, Any], behind: str) -> None:
    found = system(changes)
    assert found.ownership_boundary == behind
    assert not [each for each in found.assumptions if "operator" in str(each.what)]


@pytest.mark.parametrize(
    ("changes", "behind", "words"),
    [
        (FUSE, "supply.service_fuse", "behind the service fuse"),
        (OWN, "supply", "ahead of the site's transformer"),
        ({**OWN, **FUSE}, "supply", "ahead of the site's transformer"),
        ({**OWN, "profile": "NEC 690"}, "supply", "ahead of the site's transformer"),
    ],
)
def test_usual_boundary_is_said_to_be_assumed(changes: dict[str, Any], behind: str, words: str) -> None:
    found = system(changes)
    assert found.ownership_boundary == behind
    (said,) = [each for each in found.assumptions if "network operator" in str(each.what)]
    assert words in str(said.what)
    assert "`ownership_boundary`" in str(said.remedy)


@pytest.mark.parametrize("changes", [{}, {**FUSE, "profile": "NEC 690"}])
def test_no_boundary_where_nothing_is_usual(changes: dict[str, Any]) -> None:
    """Behind the service point of the NEC (article 100, from memory) fuses are the customer's."""
    assert system(changes).ownership_boundary == ""
