"""Chains of one structure told as one. What may be put together is a rule of the project, no outside source."""

from __future__ import annotations

import pytest

from sld.documents.cell import designated
from sld.documents.drawing.data_bus import in_order


@pytest.mark.parametrize(
    ("chains", "expected"),
    [
        # the second device of each chain, which is one device in all, or another in each
        ([["-KF1", "-TB1"], ["-KF1", "-TB5"], ["-KF1", "-TB9"]], True),
        ([["-KF1", "-TB1"], ["-KF1", "-TB2"], ["-KF1", "-TB3"]], True),
        ([["-KF1", "-TB5"], ["-KF1", "-TB1"]], True),
        # as a range, -TB1…3, it would no longer be seen that the first chain has -TB3
        ([["-KF1", "-TB3"], ["-KF1", "-TB1"], ["-KF1", "-TB2"]], False),
        # the first two have one device in common
        ([["-KF1"], ["-KF1"], ["-KF2"]], False),
    ],
)
def test_chains_are_told_as_one_where_each_name_keeps_its_chain(chains: list[list[str]], expected: bool) -> None:
    assert in_order([[(designated(name),) for name in names] for names in chains]) is expected
