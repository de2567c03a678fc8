"""Forms of a site with two supply points: what differs stands in one form for each, what both say stands once.

The farm of `gb-farm-two-supplies.yaml`: 100 A on one phase in the house, 100 A on three phases in the dairy.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from sld import run
from sld.rows import Rows

SPEC = Path(__file__).parents[1] / "designs" / "ordinary" / "gb-farm-two-supplies.yaml"


@pytest.fixture(scope="module")
def tables() -> dict[str, Rows]:
    made = run.documents(run.check(SPEC), ("particulars",))["particulars"]
    return {table.name: table for table in made.tables}


def test_each_supply_point_has_a_form_of_its_own(tables: dict[str, Rows]) -> None:
    first, second = (dict(tables[name].cells) for name in ("supply", "supply-2"))
    assert first["Phases and nominal voltage"] == "1 ~ 230 V, 50 Hz"
    assert second["Phases and nominal voltage"] == "3 ~ 400 V, 50 Hz"
    assert first["Service fuse"] == second["Service fuse"] == "100 A"
    assert first["Earthing system"] == "TN-C-S"
    assert second["Earthing system"] == "TT"


def test_what_both_say_stands_once(tables: dict[str, Rows]) -> None:
    assert {"project", "application"} <= set(tables)
    assert not {"project-2", "application-2"} & set(tables)
