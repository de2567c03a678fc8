"""The nearest value that works: standard sizes (series of IEC 60898-1, IEC 60228) and rated numbers of modules."""

from __future__ import annotations

import pytest
from systems import rated

from sld.model.device import StringGroup
from sld.quantity import Rating
from sld.ratings.symbol import Symbol
from sld.rules.nearest import fewer_modules, more_modules, size_at_least
from sld.steps import Ratings

GROUP = next(rated({})[0].of(StringGroup))


def counts(least: float | None = None, most: float | None = None) -> Ratings:
    """Return ratings of the group that hold numbers of modules."""
    counted = {Symbol.NMIN: least, Symbol.NMAX: most}
    made = {name: Rating(name, value, "", "", (), "inverter") for name, value in counted.items() if value is not None}
    return Ratings({GROUP.key: made}, {}, {})


@pytest.mark.parametrize(
    ("series", "least", "unit", "text"),
    [
        ("mcb_icn_ka", 6, "kA", "6 kA"),
        ("mcb_icn_ka", 6.001, "kA", "10 kA"),
        ("section_mm2", 2.04, "mm²", "2.5 mm²"),
        ("section_mm2", 300.4, "mm²", "at least 300.4 mm²"),
        ("mcb_a", 126, "A", "at least 126 A"),
        ("gpv_fuse_a", 3.01, "A", "3.5 A"),
    ],
)
def test_size(series, least, unit, text) -> None:
    assert str(size_at_least(series, least, unit)) == text


@pytest.mark.parametrize(
    ("ratings", "words"),
    [
        (counts(most=24), "use at most 24 modules"),
        (counts(most=1), "use at most 1 modules"),
        (counts(most=0), "not even one"),
        (counts(), "not even one"),
    ],
)
def test_fewer_modules(ratings, words) -> None:
    assert words in str(fewer_modules(ratings, GROUP))


@pytest.mark.parametrize(
    ("ratings", "words"),
    [
        (counts(least=8, most=24), "use at least 8 modules"),
        (counts(least=8, most=8), "use at least 8 modules"),
        (counts(least=9, most=8), "9 modules in series are needed and only 8 fit"),
        (counts(least=8), "use at least 8 modules"),
        (counts(most=8), "use more modules"),
        (counts(), "use more modules"),
    ],
)
def test_more_modules(ratings, words) -> None:
    assert words in str(more_modules(ratings, GROUP))
