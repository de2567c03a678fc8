"""Settings of moulded-case breakers: currents worked by hand from the tolerance of IEC 60947-2, 20 % (from memory)."""

from __future__ import annotations

import pytest

from sld.ratings.release import Release, earth_tripping_current, energy, holding_current, tripping_current
from sld.ratings.selectivity import Protection, selectivity_limit
from sld.ratings.symbol import Symbol

SET = Release(200, 1600, 0.2, 2400, 400, 0.3)
"""250 A frame: Ir 200 A, Isd 1600 A after 0.2 s, Ii 2400 A, Ig 400 A after 0.3 s."""


@pytest.mark.parametrize(
    ("release", "allowed_s", "trips_a"),
    [
        (SET, 5, 1920),  # 1.2 · 1600 A, 0.3 s in all
        (SET, 0.4, 1920),
        (SET, 0.3, 1920),  # exactly in time
        (SET, 0.299, 2880),  # 1.2 · 2400 A at once
        (SET, None, 2880),
        (Release(i_i_a=500), 0.4, 600),
        (Release(i_sd_a=500), None, 600),  # without a delay
        (Release(i_sd_a=500, t_sd_s=0.4), 0.4, None),
        (Release(i_r_a=200), 5, None),
    ],
)
def test_short_circuit_that_trips_in_time(release: Release, allowed_s: float | None, trips_a: float | None) -> None:
    found = tripping_current(release, allowed_s)
    assert (None if found is None else found.value) == (None if trips_a is None else pytest.approx(trips_a))


@pytest.mark.parametrize(("allowed_s", "trips_a"), [(5, 480), (0.4, 480), (0.39, None)])
def test_earth_fault_that_trips_in_time(allowed_s: float, trips_a: float | None) -> None:
    found = earth_tripping_current(SET, allowed_s)
    assert (None if found is None else found.value) == (None if trips_a is None else pytest.approx(trips_a))


@pytest.mark.parametrize(
    ("release", "holds_a"),
    [(SET, 1920), (Release(i_sd_a=1000, i_i_a=2000), 800), (Release(i_sd_a=1000, t_sd_s=0.1), None)],
)
def test_what_holds_while_another_opens(release: Release, holds_a: float | None) -> None:
    # 0.8 times the setting without a delay
    found = holding_current(release)
    assert (None if found is None else found.value) == (None if holds_a is None else pytest.approx(holds_a))


@pytest.mark.parametrize(
    ("i_k_a", "a2s", "delayed"),
    [
        (2000, 2000**2 * 0.3, True),
        (2880, 2880**2 * 0.3, True),
        (9000, 2880**2 * 0.3, True),  # 2 488 320 A²s, more than 9000² · 0.025 = 2 025 000
        (10_000, 10_000**2 * 0.025, False),  # 2 500 000 A²s
    ],
)
def test_what_passes(i_k_a: float, a2s: float, delayed: bool) -> None:
    found, by_delay = energy(SET, i_k_a, 0.025)
    assert (found.value, by_delay) == (pytest.approx(a2s), delayed)


def test_no_larger_current_lets_less_through() -> None:
    values = [energy(SET, i_k_a, 0.025)[0].value for i_k_a in range(100, 20_000, 100)]
    assert values == sorted(values)


@pytest.mark.parametrize(
    ("upstream", "limit_a"),
    [
        (Release(200, 1600, 0.2, 2400), 1920),  # up to 0.8 · Ii
        (Release(200, 1600, 0.2), 8000),  # it waits: the whole fault current
        (Release(200, 1600), 1280),  # 0.8 · Isd
    ],
)
def test_selectivity_of_settings(upstream: Release, limit_a: float) -> None:
    ahead, behind = Protection("MCCB", 200, release=upstream), Protection("MCB", 32, "C")
    found = selectivity_limit(ahead, behind, 8)
    assert found is not None
    assert (found.symbol, found.value) == (Symbol.IS, pytest.approx(limit_a))
