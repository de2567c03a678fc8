"""Breakers and fuses: rated current, overload, instantaneous band."""

from __future__ import annotations

import pytest

from sld.ratings.breaker import (
    conventional_tripping_current,
    instantaneous_holding_current,
    instantaneous_tripping_current,
    largest_rated_current,
    let_through_energy,
    loading,
    overload_limit,
    permitted_section,
    smallest_rated_current,
)
from sld.tables.table import NoRow


@pytest.mark.parametrize(
    ("device", "i_b_a", "i_n_a"),
    [
        ("MCB", 32, 32),
        ("MCB", 32.001, 40),
        ("MCB", 0.5, 6),
        ("MCB", 125, 125),
        ("MCB", 125.001, None),
        ("MCCB", 125.001, 160),
        ("MCCB", 1600.1, None),
        ("gG", 33, 35),
        ("gG", 201, 224),
    ],
)
def test_smallest_rated_current(device: str, i_b_a: float, i_n_a: float | None) -> None:
    # series of IEC 60898-1, IEC 60947-2 (common), IEC 60269-1
    chosen = smallest_rated_current(device, i_b_a)
    assert (None if chosen is None else chosen.value) == i_n_a


@pytest.mark.parametrize(
    ("device", "i_n_a", "multiple"),
    [
        ("MCB", 40, 1.45),
        ("SLS", 50, 1.2),
        ("MCCB", 250, 1.30),
        ("gG", 4, 2.1),
        ("gG", 4.001, 1.9),
        ("gG", 15.99, 1.9),
        ("gG", 16, 1.6),
        ("gG", 1250, 1.6),
    ],
)
def test_conventional_tripping_current(device: str, i_n_a: float, multiple: float) -> None:
    # IEC 60898-1, IEC 60947-2, IEC 60269-1 (from memory)
    assert conventional_tripping_current(device, i_n_a).value == pytest.approx(multiple * i_n_a)


@pytest.mark.parametrize(("device", "i_n_a"), [("MCB", 125.1), ("gG", 1251), ("fuse wire", 10)])
def test_no_conventional_tripping_current(device: str, i_n_a: float) -> None:
    with pytest.raises(NoRow):
        conventional_tripping_current(device, i_n_a)


@pytest.mark.parametrize(
    ("device", "i_z_a", "i_n_a"),
    [
        ("MCB", 40, 40),
        ("MCB", 39.999, 32),
        ("gG", 32, 25),  # 1.6 · 32 > 1.45 · 32: a gG fuse needs In <= 0.906 Iz
        ("gG", 32 * 1.6 / 1.45 + 1e-9, 32),
        ("gG", 32 * 1.6 / 1.45 - 1e-6, 25),
        ("MCB", 5.9, None),
        ("MCCB", 100, 100),
    ],
)
def test_largest_rated_current_for_a_cable(device: str, i_z_a: float, i_n_a: float | None) -> None:
    # IEC 60364-4-43:2008 433.1: In <= Iz and I2 <= 1.45 Iz
    chosen = largest_rated_current(device, i_z_a)
    assert (None if chosen is None else chosen.value) == i_n_a


def test_overload_limit() -> None:
    # IEC 60364-4-43:2008 433.1
    assert overload_limit(51.0).value == pytest.approx(73.95)


@pytest.mark.parametrize(("curve", "holds", "trips"), [("B", 3, 5), ("C", 5, 10), ("D", 10, 20)])
def test_instantaneous_band(curve: str, holds: float, trips: float) -> None:
    # IEC 60898-1:2015 Table 7; upper bounds at
    # https://18theditionmock.com/temario/ads-disconnection-times-and-earth-fault-loop-impedance-part-4-chapter-41/
    assert instantaneous_tripping_current(curve, 16).value == 16 * trips
    assert instantaneous_holding_current(curve, 16).value == 16 * holds


def test_unknown_curve() -> None:
    with pytest.raises(NoRow):
        instantaneous_tripping_current("K", 16)


@pytest.mark.parametrize(
    ("curve", "i_n_a", "i_k_ka", "a2s"),
    [
        ("B", 16, 6, 35_000), ("B", 20, 6, 45_000), ("C", 10, 6, 42_000), ("C", 32, 6, 55_000),
        ("B", 16, 3, 15_000), ("B", 16.5, 3, 18_000), ("C", 16, 3, 18_000), ("C", 32, 4.51, 55_000),
        ("B", 16, 4.5, 25_000), ("B", 20, 4.5, 32_000), ("C", 16, 3.01, 30_000), ("C", 32, 3.01, 39_000),
        # 10 kA up to 16 A: 70 000 and 84 000, https://electriciansforums.net/threads/adiabatic-equation.20007/post-146036
        ("B", 16, 10, 70_000), ("C", 16, 6.01, 84_000), ("B", 32, 10, 90_000), ("C", 32, 10, 110_000),
        # 40 A: 130 % of 32 A
        ("B", 40, 6, 58_500), ("C", 33, 10, 143_000), ("B", 40, 4.5, 41_600), ("C", 40, 4.5, 50_700),
    ],
)  # fmt: skip
def test_let_through_energy_of_class_3(curve: str, i_n_a: float, i_k_ka: float, a2s: float) -> None:
    # EN 60898-1 Annex ZA (from memory)
    assert let_through_energy(curve, i_n_a, i_k_ka).value == a2s


def test_a_handbook_permits_one_square_millimetre_of_lighting() -> None:
    # IET On-Site Guide Table B7: 1.0 mm² behind B up to 16 A and 3 kA, 1.5 mm² with C or above 16 A (from memory)
    assert permitted_section("B", 16, 3).value == permitted_section("B", 6, 0.4).value == 1.0


@pytest.mark.parametrize(("curve", "i_n_a", "i_k_ka"), [("B", 16.5, 3), ("B", 16, 3.01), ("C", 6, 1)])
def test_a_handbook_permits_no_less_of_other_circuits(curve: str, i_n_a: float, i_k_ka: float) -> None:
    with pytest.raises(NoRow):
        permitted_section(curve, i_n_a, i_k_ka)


@pytest.mark.parametrize(("curve", "i_n_a", "i_k_ka"), [("B", 41, 6), ("D", 16, 6), ("C", 16, 10.1)])
def test_no_let_through_energy(curve: str, i_n_a: float, i_k_ka: float) -> None:
    with pytest.raises(NoRow):
        let_through_energy(curve, i_n_a, i_k_ka)


def test_loading_in_percent() -> None:
    assert loading(32, 40).value == 80  # common practice: advice above 80 %


@pytest.mark.parametrize("current_a", [0, -1, float("inf"), float("nan")])
def test_refused_currents(current_a: float) -> None:
    with pytest.raises(ValueError, match="must be above zero"):
        smallest_rated_current("MCB", current_a)
