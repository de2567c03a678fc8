"""How often wires cross: an end on another wire is a connection, no crossing; one net never crosses itself."""

from __future__ import annotations

from types import SimpleNamespace
from typing import Any

import pytest

from sld.layout.passes.crossings import crossings_count

Points = tuple[tuple[float, float], ...]
LEVEL: Points = ((0, 10), (20, 10))


def wire(net: str, points: Points) -> Any:
    return SimpleNamespace(net=net, points=points)


@pytest.mark.parametrize(
    ("other", "net", "count"),
    [
        (((10, 0), (10, 20)), "b", 1),
        (((10, 20), (10, 0)), "b", 1),
        (((10, 0), (10, 20)), "a", 0),
        (((10, 0), (10, 10)), "b", 0),
        (((10, 10), (10, 20)), "b", 0),
        (((0, 0), (0, 20)), "b", 0),
        (((20, 0), (20, 20)), "b", 0),
        (((30, 0), (30, 20)), "b", 0),
        (((10, 0), (10, 5)), "b", 0),
        (((10, 0), (10, 20), (15, 20), (15, 0)), "b", 2),
        (((0, 12), (20, 12)), "b", 0),
    ],
)
def test_two_wires(other: Points, net: str, count: int) -> None:
    assert crossings_count([wire("a", LEVEL), wire(net, other)]) == count
    assert crossings_count([wire(net, other), wire("a", LEVEL)]) == count
