"""Selectivity by the standards of the devices: ratios, gates of fuses, bands of breakers, worked by hand."""

from __future__ import annotations

import pytest

from sld.ratings.selectivity import Protection, overload_shortfall, residual_ratio, selectivity_limit
from sld.tables.table import NoRow


def gg(i_n_a: float) -> Protection:
    return Protection("gG", i_n_a)


def mcb(curve: str, i_n_a: float) -> Protection:
    return Protection("MCB", i_n_a, curve)


def mccb(i_n_a: float, trip_factor: float) -> Protection:
    return Protection("MCCB", i_n_a, trip_factor=trip_factor)


@pytest.mark.parametrize(
    ("upstream", "downstream", "selective"),
    [
        # IEC 60269-1: 1.6:1 in steps of the R10 series, from 16 A
        (gg(25), gg(16), True), (gg(50), gg(32), True), (gg(160), gg(100), True), (gg(125), gg(100), False),
        (gg(20), gg(10), False), (gg(25), gg(10), True),
        # fuse over breaker: 1.6, common practice
        (gg(63), mcb("C", 40), True), (gg(63), mcb("C", 50), False), (gg(16), mcb("B", 10), True),
        # IEC 60898-1: 1.13 In of the upper one, 1.45 In of the lower; IEC 60947-2: 1.05 and 1.30
        (mcb("C", 32), mcb("B", 20), True), (mcb("C", 32), mcb("B", 25), False), (mcb("C", 63), mcb("C", 63), False),
        (mccb(160, 12), mcb("C", 100), True), (mccb(125, 12), mcb("C", 100), False),
        (mccb(250, 12), mccb(160, 12), True),
        (mcb("C", 63), gg(40), True), (mcb("C", 63), gg(50), False),
        # DIN VDE 0641-21 (elektro.net): 1.05 In and 1.2 In; 1.25 · 63 A = 78.75 A of the fuse
        (mcb("E", 35), mcb("B", 25), True), (mcb("E", 50), mcb("C", 40), False), (gg(63), mcb("E", 63), True),
        (gg(50), mcb("E", 63), False), (mcb("E", 63), mcb("E", 50), True),
    ],
)  # fmt: skip
def test_overload(upstream: Protection, downstream: Protection, selective: bool) -> None:
    assert (overload_shortfall(upstream, downstream) is None) is selective


@pytest.mark.parametrize(
    ("upstream", "downstream", "i_k_max_ka", "limit_a"),
    [
        (gg(100), gg(63), 10.0, 10_000),  # total for two fuses
        (gg(100), mcb("C", 32), 10.0, 820),  # IEC 60269-1 Table 3: Imin(0.1 s) of 100 A
        (gg(100), mcb("C", 32), None, 820),
        (gg(160), mcb("C", 32), 6.0, 6000),  # 55 000 A²s of class 3 below the 86 000 A²s of Table 7
        (gg(160), mcb("C", 32), 6.1, 1450),
        (gg(125), mcb("C", 32), 6.0, 1100),  # 46 000 A²s
        (gg(63), mcb("C", 40), 10.0, 450),
        (gg(63), mcb("D", 32), 10.0, None),  # trips at once from 640 A on, the fuse stands 450 A
        (mcb("C", 63), mcb("B", 16), 6.0, 315),  # 5 · 63 A, IEC 60898-1 Table 7
        (mcb("B", 63), mcb("C", 32), 6.0, 189),  # 3 · 63 A, C 32 A may trip from 160 A on
        (mcb("B", 32), mcb("C", 20), 6.0, None),  # 96 A and 100 A
        (mcb("B", 40), mcb("D", 12), 6.0, None),  # exactly 120 A and 120 A
        (mccb(250, 12), mcb("C", 63), 10.0, 2000),  # setting 10 In, 20 % less: 8 · 250 A
        (mcb("C", 63), gg(40), 6.0, 315),
        (mcb("E", 50), mcb("C", 32), 6.0, 6000),  # it waits for the one behind it
        (mcb("E", 63), mcb("E", 50), 6.0, 315),  # both wait: 5 · 63 A against 5 · 50 A
        (gg(100), mcb("E", 63), 6.0, 820),
    ],
)
def test_limit(upstream: Protection, downstream: Protection, i_k_max_ka: float | None, limit_a: float | None) -> None:
    limit = selectivity_limit(upstream, downstream, i_k_max_ka)
    assert (limit.value if limit else None) == (pytest.approx(limit_a) if limit_a else None)


def test_a_fuse_beyond_the_table_has_no_answer() -> None:
    with pytest.raises(NoRow):
        selectivity_limit(gg(10), mcb("C", 6), 6.0)


@pytest.mark.parametrize(("upstream_ma", "downstream_ma", "ratio"), [(300, 100, 3), (100, 30, 10 / 3), (300, 300, 1)])
def test_residual_ratio(upstream_ma: float, downstream_ma: float, ratio: float) -> None:
    assert residual_ratio(upstream_ma, downstream_ma).value == pytest.approx(ratio)
