"""Conduits: how far they are filled, worked by hand, and how far they may be."""

from __future__ import annotations

import pytest

from sld.ratings.conduit import fill, largest_fill


@pytest.mark.parametrize(
    ("cables", "inside_mm", "percent"),
    [([(1, 10)], 20, 25), ([(4, 6)], 21, 32.653), ([(1, 14), (2, 6)], 27, 36.762)],
)
def test_fill_of_a_conduit(cables, inside_mm, percent) -> None:
    """Geometry: 4 · 36 / 441; (196 + 2 · 36) / 729."""
    assert fill(cables, inside_mm).value == pytest.approx(percent, rel=1e-4)


@pytest.mark.parametrize(("count", "percent"), [(1, 53), (2, 31), (3, 40), (9, 40)])
def test_largest_fill(count, percent) -> None:
    # NEC Chapter 9 Table 1: https://expertce.com/learn-articles/nec-chapter-9-table-1-conduit-fill
    assert largest_fill(count, by_code=True).value == percent
    assert "common practice" in str(largest_fill(count, by_code=False).clause)


@pytest.mark.parametrize(("cables", "inside_mm"), [([], 20), ([(0, 5)], 20), ([(1, 0)], 20), ([(1, 5)], 0)])
def test_no_fill_of_nothing(cables, inside_mm) -> None:
    with pytest.raises(ValueError, match=r"must be|at least"):
        fill(cables, inside_mm)
