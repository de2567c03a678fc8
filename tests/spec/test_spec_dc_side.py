"""What the DC side cannot say at once, because nothing could be computed of it."""

from __future__ import annotations

import pytest
from pydantic import ValidationError

from sld.spec.blocks.cable import CableType, DcCable
from sld.spec.blocks.string import Input, PvString


@pytest.mark.parametrize(
    ("said", "told"),
    [
        ({"method": "D1", "arrangement": "single_in_air"}, "lies in free air"),
        ({"depth": "0.6 m"}, "`depth` is of a cable in the ground"),
        ({"method": "C", "soil_resistivity": "1 K·m/W"}, "`soil_resistivity` is of a cable in the ground"),
        ({"method": "E", "spacing": "0.25 m"}, "`spacing` is of a cable in the ground"),
    ],
)
def test_a_dc_cable_lies_one_way(said: dict[str, str], told: str) -> None:
    with pytest.raises(ValidationError, match=told):
        DcCable.model_validate({"length": "5 m", **said})


def test_depth_and_soil_of_a_duct_are_taken() -> None:
    assert DcCable.model_validate({"length": "5 m", "method": "D1", "depth": "0.6 m"}).depth_m == 0.6


def test_a_solar_cable_is_of_copper() -> None:
    with pytest.raises(ValidationError, match="copper conductors alone"):
        CableType.model_validate({"insulation": "EN 50618", "conductor": "aluminium"})


@pytest.mark.parametrize(
    ("entry", "told"),
    [
        ({"count": 3, "circuit": [{"kind": "branch_connector"}]}, "are no multiple"),
        ({"count": 4, "circuit": [{"kind": "fuse"}]}, "kind"),
    ],
)
def test_strings_are_joined_evenly_by_what_joins_strings(entry: dict[str, object], told: str) -> None:
    with pytest.raises(ValidationError, match=told):
        PvString.model_validate({"module": "m", "modules_in_series": 10, **entry})


def test_branch_connectors_and_fuses_agree_on_the_strings_of_a_fuse() -> None:
    entry = {"module": "m", "modules_in_series": 10, "count": 4, "circuit": [{"kind": "branch_connector"}]}
    with pytest.raises(ValidationError, match="ahead of each fuse"):
        Input.model_validate({"strings": [entry], "string_fuses": {}})
    assert Input.model_validate({"strings": [entry], "string_fuses": {}, "strings_per_fuse": 2}).strings_per_fuse == 2
