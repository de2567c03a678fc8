"""Which sections keep a voltage rise on every way at the least copper: the arithmetic, exact, without a device.

A tree of stretches is worked out from its ends: of each stretch the pairs of rise and copper that no other pair beats.
Then the budget is handed down from the supply point.
"""

from __future__ import annotations

from bisect import bisect_right

from sld.frozen import dataclass

__all__ = ["Size", "Stretch", "beyond", "fewest_sizes_above", "least_copper"]

_NOISE = 1e-9  # of the arithmetic, in percent of the voltage

Frontier = list[tuple[float, float]]
"""Pairs of rise and copper: the rise grows, the copper falls."""


@dataclass(frozen=True, slots=True)
class Size:
    """A section that a stretch may have, the rise along it then, and what it costs: length times section. [m·mm²]"""

    section_mm2: float
    rise_percent: float
    copper_factor: float


@dataclass(frozen=True, slots=True, eq=False)
class Stretch:
    """A cable with the sections that it may have, the smallest first, and the stretches behind it.

    alike: how many equal ones there are side by side, each with the same behind it.
    """

    key: str
    sizes: tuple[Size, ...]
    behind: tuple[Stretch, ...] = ()
    alike: int = 1


def least_copper(stretch: Stretch, limit_percent: float) -> dict[str, float]:
    """Return the section of each stretch by its key, so that the rise on every way is within a limit at the least sum
    of length times section. [mm²]

    Where no sections keep the limit on a way, every stretch of that way has its largest.
    """
    frontiers: dict[Stretch, Frontier] = {}
    _frontier(stretch, frontiers)
    chosen: dict[str, float] = {}
    open_ways = [(stretch, limit_percent)]
    while open_ways:
        here, budget_percent = open_ways.pop()
        below = _together([(frontiers[each], each.alike) for each in here.behind])
        size = _best(here.sizes, below, budget_percent)
        chosen[here.key] = size.section_mm2
        open_ways += [(each, budget_percent - size.rise_percent) for each in here.behind]
    return chosen


def fewest_sizes_above(stretch: Stretch, limit_percent: float) -> dict[str, float]:
    """Return the section of each stretch at the least copper among those that lie as few sizes as possible above the
    smallest of each: nobody makes a short tail three sizes larger to save one size of a long feeder. [mm²]"""
    most = max(len(each.sizes) for each in _all_of(stretch))
    for count in range(1, most):
        within = _cut(stretch, count)
        if _frontier(within, {})[0][0] <= limit_percent + _NOISE:
            return least_copper(within, limit_percent)
    return least_copper(stretch, limit_percent)


def beyond(stretch: Stretch, sections: dict[str, float], limit_percent: float) -> set[str]:
    """Return the keys of the stretches on ways whose rise stays above the limit with these sections."""
    rise_percent = next(size.rise_percent for size in stretch.sizes if size.section_mm2 == sections[stretch.key])
    left_percent = limit_percent - rise_percent
    if not stretch.behind:
        return {stretch.key} if left_percent < -_NOISE else set()
    behind = set().union(*(beyond(each, sections, left_percent) for each in stretch.behind))
    return behind and {stretch.key, *behind}


def _all_of(stretch: Stretch) -> list[Stretch]:
    return [stretch, *(each for branch in stretch.behind for each in _all_of(branch))]


def _cut(stretch: Stretch, count: int) -> Stretch:
    behind = tuple(_cut(each, count) for each in stretch.behind)
    return Stretch(stretch.key, stretch.sizes[:count], behind, stretch.alike)


def _best(sizes: tuple[Size, ...], below: Frontier, budget_percent: float) -> Size:
    found = [(size.copper_factor + _copper(below, budget_percent - size.rise_percent), size) for size in sizes]
    fitting = [(copper, size.section_mm2, size) for copper, size in found if copper != float("inf")]
    if not fitting:
        return min(sizes, key=lambda size: size.rise_percent)
    return min(fitting, key=lambda each: each[:2])[2]


def _frontier(stretch: Stretch, frontiers: dict[Stretch, Frontier]) -> Frontier:
    """Return the pairs of a stretch and all behind it that no other pair beats."""
    below = _together([(_frontier(each, frontiers), each.alike) for each in stretch.behind])
    pairs = sorted(
        (size.rise_percent + rise, size.copper_factor + copper) for size in stretch.sizes for rise, copper in below
    )
    kept: Frontier = []
    for rise, copper in pairs:
        if not kept or copper < kept[-1][1]:
            kept.append((rise, copper))
    frontiers[stretch] = kept
    return kept


def _together(frontiers: list[tuple[Frontier, int]]) -> Frontier:
    """Return the pairs of several branches, each so many times, that share one budget."""
    if not frontiers:
        return [(0.0, 0.0)]
    least = max(each[0][0] for each, _ in frontiers)
    rises = sorted({rise for each, _ in frontiers for rise, _ in each if rise >= least})
    return [(rise, sum(_copper(each, rise) * count for each, count in frontiers)) for rise in rises]


def _copper(frontier: Frontier, budget_percent: float) -> float:
    """Return the least copper within a budget, infinite where none is within it."""
    place = bisect_right(frontier, (budget_percent + _NOISE, float("inf")))
    return frontier[place - 1][1] if place else float("inf")
