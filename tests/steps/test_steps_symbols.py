"""Every rating of every example has the unit of its symbol, and is kept under a symbol of the same unit."""

from __future__ import annotations

from collections import Counter
from pathlib import Path

import pytest
from example_specs import SPECS, checked

from sld.ratings.symbol import Symbol
from sld.steps.ledger import Ledger, Ratings


@pytest.mark.parametrize("spec", SPECS, ids=lambda spec: spec.stem)
def test_units_are_those_of_the_symbols(spec: Path) -> None:
    wrong = [
        f"{key}: {kept.name} ({kept.unit}) holds {rating.symbol.name} in {rating.unit}"
        for part in checked(spec).parts
        for key, of_device in part.ratings.values.items()
        for kept, rating in of_device.items()
        if not isinstance(kept, Symbol)
        or not isinstance(rating.symbol, Symbol)
        or not kept.unit == rating.symbol.unit == rating.unit
    ]
    assert not wrong, "\n".join(wrong)


def test_no_two_symbols_mean_the_same() -> None:
    """Two may be printed alike, as In of a fuse and of a surge protective device are, but not with the same unit."""
    meanings = Counter((str(symbol.meaning), symbol.unit) for symbol in Symbol)
    assert [meaning for meaning, count in meanings.items() if count > 1] == []
    assert Symbol.IN is not Symbol.IN_SURGE
    assert str(Symbol.IN) == str(Symbol.IN_SURGE) == "In"


@pytest.mark.parametrize("held", [Ledger(), Ratings({}, {}, {})])
def test_what_the_steps_always_make_is_missed_loudly(held: Ledger | Ratings) -> None:
    assert held.get("loads.oven", Symbol.IB) is None
    with pytest.raises(LookupError, match=r"IB \(design current\) of loads\.oven"):
        held["loads.oven", Symbol.IB]
    with pytest.raises(LookupError, match="of the system"):
        held["", Symbol.PDC]
