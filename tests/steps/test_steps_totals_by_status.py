"""Sums of the system where devices of several statuses stand side by side: what is planned is no rated power yet."""

from __future__ import annotations

import pytest
from rated_specs import changed, rated_data

from sld.ratings.symbol import Symbol

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


def of_the_system(second: str, symbols: tuple[Symbol, ...]) -> list[float]:
    strings = [{"module": "m", "modules_in_series": 20, "status": second}]
    other = {**INVERTER, "status": second, "inputs": [{"strings": strings}]}
    _, ratings = rated_data(changed({"inverters.other": other}))
    return [round(ratings["", symbol].value, 1) for symbol in symbols]


@pytest.mark.parametrize(
    ("second", "export_a", "uoc_v", "start_kohm"),
    [
        # 37 V · (1 + 0.26 · 37 / 100) = 40.56 V a module; over 30 mA
        ("new", 32.0, 811.2, 27.0),
        ("existing", 32.0, 811.2, 27.0),
        ("future", 16.0, 730.1, 24.3),
    ],
)
def test_what_is_planned_is_in_no_total(second: str, export_a: float, uoc_v: float, start_kohm: float) -> None:
    assert of_the_system(second, (Symbol.IEXPORT, Symbol.UOC_MAX, Symbol.RISO_START)) == [export_a, uoc_v, start_kohm]


def test_devices_are_rated_for_what_is_planned_behind_them() -> None:
    other = {**INVERTER, "status": "future"}
    _, ratings = rated_data(changed({"inverters.other": other}))
    assert ratings["boards.main", Symbol.IEXPORT].value == 2 * ratings["", Symbol.IEXPORT].value == 32
