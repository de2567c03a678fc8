"""Sums of the system where devices of several statuses stand side by side: what is planned is no rated power yet."""

from __future__ import annotations

import pytest
from rated_specs import changed, rated_data

INVERTER = {"type": "t", "inputs": [{"strings": [{"module": "m", "modules_in_series": 18}]}]}


def powers(statuses: tuple[str, str]) -> dict[str, float]:
    first, second = statuses
    strings = [{"module": "m", "modules_in_series": 18, "status": second}]
    other = {**INVERTER, "status": second, "inputs": [{"strings": strings}]}
    changes = {"inverters.roof.status": first, "inverters.roof.inputs.0.strings.0.status": first,
               "inverters.other": other}  # fmt: skip
    _, ratings = rated_data(changed(changes))
    return {str(each.symbol): each.value for each in ratings.of("") if str(each.symbol).startswith(("Pdc", "Pac"))}


@pytest.mark.parametrize(
    ("statuses", "counted", "apart"),
    [
        (("new", "new"), 2, {}),
        (("existing", "new"), 2, {"existing": 1, "new": 1}),
        (("existing", "future"), 1, {"existing": 1, "future": 1}),
        (("future", "future"), 2, {}),
    ],
)
def test_future_inverters_count_apart(statuses: tuple[str, str], counted: int, apart: dict[str, int]) -> None:
    found = powers(statuses)
    one_w = powers(("new", "new"))["Pac"] / 2
    assert found["Pac"] == counted * one_w
    assert {
        name.removeprefix("Pac "): value / one_w for name, value in found.items() if name.startswith("Pac ")
    } == apart
    strings = {name.removeprefix("Pdc ") for name in found if name.startswith("Pdc ")}
    assert strings == set(apart)
