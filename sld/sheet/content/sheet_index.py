"""The index of the sheets with parts of the diagram: what each shows, its inverters, and the totals."""

from __future__ import annotations

from collections.abc import Sequence

from sld.layout.diagram.ranges import joined
from sld.layout.parts.overview import Capacity, capacity_of
from sld.layout.plan import Plan
from sld.model.device import InverterUnit
from sld.model.system import System
from sld.quantity import shown
from sld.sheet.listings.table import Column, Table

__all__ = ["sheet_index"]


def sheet_index(system: System, parts: Sequence[tuple[Plan, str]]) -> Table:
    """Return the table of the sheets with parts of the diagram. parts: the plan and what it shows, from sheet 2 on.

    Equal inverters of one sheet share a line, which says what each of them has.
    """
    columns = (
        Column("Sheet", align="right"), Column("Shows", 1.0), Column("Inverters", align="right"),
        Column("Apparent power", align="right"), Column("Strings", align="right"),
    )  # fmt: skip
    capacities = capacity_of(system)
    rows = []
    total = Capacity()
    for number, (plan, title) in enumerate(parts, 2):
        alike: dict[tuple[str, Capacity], list[str]] = {}
        here = Capacity()
        for key in (key for cell in plan.cells for key in (cell.key, *cell.alike) if key in capacities):
            unit = system.devices[key]
            assert isinstance(unit, InverterUnit)
            alike.setdefault((unit.product, capacities[key]), []).append(unit.designation)
            here += capacities[key]
        total += here
        rows.append((str(number), title, *_words(here)))
        for (product, each), names in alike.items():
            rows.append(("", f"{joined(names)} {product}", str(len(names)), *_words(each, " each")[1:]))
    rows.append(("", "total", *_words(total)))
    return Table("Sheets of the diagram", columns, tuple(rows))


def _words(capacity: Capacity, each: str = "") -> tuple[str, str, str]:
    if not capacity.inverters_count:
        return ("–", "–", str(capacity.strings_count) if capacity.strings_count else "–")
    return (
        str(capacity.inverters_count),
        f"{shown(capacity.apparent_power_va / 1000)} kVA{each}",
        f"{capacity.strings_count}{each}",
    )
