"""Settings of circuit-breakers that do not go together are refused at their key. Source: own convention."""

from __future__ import annotations

from typing import Any

import pytest
from pydantic import ValidationError

from sld.spec.blocks.ac_protection import Breaker
from sld.spec.blocks.board import Board

MOULDED = {"kind": "breaker", "construction": "moulded_case", "rated_current": "250 A"}


@pytest.mark.parametrize(
    ("given", "told"),
    [
        ({"overload_setting": "251 A"}, "above the rated current"),
        ({"breaking_capacity": "25 kA", "service_breaking_capacity": "36 kA"}, "Ics of 36 kA is above Icu of 25 kA"),
        ({"construction": "miniature", "service_breaking_capacity": "10 kA"}, "moulded-case breakers"),
        ({"construction": "miniature", "overload_setting": "200 A"}, "a miniature circuit-breaker has no settings"),
        ({"short_time_delay": "0.1 s"}, "a delay of a release that is not set"),
        ({"earth_fault_delay": "0.1 s"}, "a delay of a release that is not set"),
        ({"trip_factor": 8, "instantaneous_setting": "2 kA"}, "given twice"),
        ({"short_time_setting": "2 kA", "instantaneous_setting": "1 kA"}, "do not rise"),
        ({"overload_setting": "200 A", "short_time_setting": "150 A"}, "do not rise"),
    ],
)
def test_settings_that_do_not_go_together(given: dict[str, Any], told: str) -> None:
    with pytest.raises(ValidationError, match=told):
        Breaker.model_validate({**MOULDED, **given})


@pytest.mark.parametrize(
    "given",
    [
        {"overload_setting": "250 A"},
        {"short_time_setting": "2 kA", "instantaneous_setting": "2 kA"},
        {"trip_factor": 8, "overload_setting": "200 A"},
        {"earth_fault_setting": "60 A", "earth_fault_delay": "0.2 s"},
    ],
)
def test_settings_that_go_together(given: dict[str, Any]) -> None:
    assert Breaker.model_validate({**MOULDED, **given}).construction == "moulded_case"


@pytest.mark.parametrize(
    ("given", "told"),
    [
        ({"earthing_system": "TT"}, "the main board has the earthing system of the supply"),
        ({"fed_from": "main", "electrode": {"resistance": 80}}, "its earthing system is not given"),
        ({"fed_from": "main", "earthing_system": "TN-S"}, "Input should be 'TT'"),
        ({"bonding": [{"to": "pipe"}]}, "`bonding` of the main board"),
        ({"extraneous_parts": False}, "`extraneous_parts` of the main board"),
    ],
)
def test_earthing_of_a_board_is_refused(given: dict[str, Any], told: str) -> None:
    with pytest.raises(ValidationError, match=told):
        Board.model_validate(given)
