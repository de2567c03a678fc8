"""Equal inverters are charted as one only where their flags are the same: a mark of one alone is not printed of all."""

from __future__ import annotations

import pytest
from plain_types import TYPES

from sld import run
from sld.layout.diagram.equals import drawn_once
from sld.model.system import System

SPEC = """project: {title: Barn}
site: {temperature_min: -10 °C, temperature_max: 32 °C, lightning_density: 0.5 /km2/yr}
supply: {phases: 3, voltage: 400 V, earthing_system: TN-S, prospective_fault_current: 10 kA, loop_impedance: 0.1 ohm}
boards:
  main: {name: main board, circuit: [{kind: breaker, rated_current: 63 A, breaking_capacity: 25 kA}]}
inverters:
  barn:
    type: I
    count: 4
    connected_to: main
    circuit: [{kind: breaker, breaking_capacity: 10 kA}]
    inputs: [{strings: [{module: M, modules_in_series: 12}]}]
"""
FIRST, SECOND, LAST = (f"inverters.barn-{number}" for number in (1, 2, 4))
ALL = tuple(f"inverters.barn-{number}" for number in range(1, 5))


@pytest.fixture(scope="module")
def system() -> System:
    return run.check_text(SPEC + TYPES).system


def flags(numbers: tuple[int, ...], *keys: str) -> dict[str, tuple[int, ...]]:
    return dict.fromkeys(keys, numbers)


@pytest.mark.parametrize(
    ("flagged", "is_once"),
    [
        pytest.param({}, True, id="none"),
        pytest.param(flags((3,), *ALL), True, id="the same of all"),
        pytest.param(flags((3, 5), *(f"{key}.circuit.0" for key in ALL)), True, id="the same two of each breaker"),
        pytest.param(flags((3,), FIRST), False, id="of the first alone"),
        pytest.param(flags((3,), LAST), False, id="of the last alone"),
        pytest.param(flags((3,), f"{SECOND}.inputs.0.strings.0"), False, id="of one string"),
        pytest.param(flags((3,), *ALL[:3]), False, id="of all but the last"),
        pytest.param({**flags((3,), *ALL), **flags((4,), SECOND)}, False, id="another one of the second"),
        pytest.param({**flags((3,), *ALL), **flags((3, 4), LAST)}, False, id="one more of the last"),
        pytest.param(flags((3,), "boards.main"), True, id="of the board"),
    ],
)
def test_inverters_are_charted_as_one_where_their_flags_are_the_same(
    flagged: dict[str, tuple[int, ...]], is_once: bool, system: System
) -> None:
    found = {first: [copy.key for copy in copies] for first, copies in drawn_once(system, flagged).items()}
    assert found == ({FIRST: list(ALL[1:])} if is_once else {})
