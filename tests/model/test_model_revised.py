"""What the newest revision changed: devices at the places that the spec names."""

from __future__ import annotations

import pytest
from small_specs import system

from sld.model.revised import revised


def _revision(index: str, *places: str) -> dict[str, object]:
    return {"index": index, "change": "moved", "date": "2026-05-04", "places": list(places)}


@pytest.mark.parametrize(
    ("revisions", "keys"),
    [
        ((), ()),
        ((_revision("A"),), ()),
        ((_revision("A", "inverters.roof.circuit[0]"),), ("inverters.roof.circuit.0",)),
        # the newest one alone, in its own order, each device once
        (
            (_revision("A", "supply"), _revision("B", "inverters.roof", "inverters.roof.circuit[2]", "inverters.roof")),
            ("inverters.roof", "inverters.roof.circuit.2"),
        ),
    ],
)
def test_the_newest_revision_says_what_it_changed(revisions, keys) -> None:
    assert revised(system({"project.revisions": list(revisions)})) == keys
