"""The separation distance to a lightning protection system."""

from __future__ import annotations

import pytest

from sld.ratings.separation import separation_distance
from sld.tables.table import NoRow

GUIDE = "https://zdroje.elektrika.cz/book/lightning-protection-guide-obo/page/75"
MANUAL = "https://azmanual.top/manuals/559012/erico-isodc-isolated-downconductor-system.html?page=7"


def test_worked_example() -> None:
    # class III, more than four down-conductors, brickwork: 0.04 · 0.44 / 0.5 · 10 m, printed as 0.35 m
    assert separation_distance("III", 10, 5).value == pytest.approx(0.352), GUIDE


@pytest.mark.parametrize(("level", "ki"), [("I", 0.08), ("II", 0.06), ("III", 0.04), ("IV", 0.04)])
def test_class(level: str, ki: float) -> None:
    assert separation_distance(level, 5, 1).value == pytest.approx(ki / 0.5 * 5), MANUAL


@pytest.mark.parametrize(("count", "kc"), [(None, 1), (1, 1), (2, 0.66), (3, 0.44), (40, 0.44)])
def test_down_conductors(count: int | None, kc: float) -> None:
    found = separation_distance("III", 5, count)
    assert found.value == pytest.approx(0.04 / 0.5 * kc * 5), GUIDE
    assert bool(found.assumptions) is (count is None)


def test_what_cannot_be_is_refused() -> None:
    with pytest.raises(NoRow):
        separation_distance("V", 5)
    with pytest.raises(ValueError, match="path_m"):
        separation_distance("I", -1)
