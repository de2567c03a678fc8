"""The index of the sheets with parts of the diagram: what each shows, its inverters, and the totals."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from sld.documents.cell import EMPTY, NOT_GIVEN, Cell, computed, given
from sld.documents.drawing.sheet_index import Indexed
from sld.documents.section import Column, Table
from sld.layout.diagram.capacity import Capacity
from sld.layout.diagram.ranges import joined
from sld.layout.plan import Plan
from sld.words import Said, amount, phrase, sequence, verbatim

__all__ = ["sheet_index"]

_COLUMNS = (
    Column(phrase("Sheet"), right=True),
    Column(phrase("Shows"), 1.0),
    Column(phrase("Inverters"), right=True),
    Column(phrase("Apparent power"), right=True),
    Column(phrase("Strings"), right=True),
)


def sheet_index(indexed: Mapping[str, Indexed], parts: Sequence[tuple[Plan, Said]]) -> Table:
    """Return the table of the sheets with parts of the diagram. parts: the plan and what it shows, from sheet 2 on.

    Equal inverters of one sheet share a line, which says what each of them has.
    """
    rows: list[tuple[Cell, ...]] = []
    total = Capacity()
    for number, (plan, shows) in enumerate(parts, 2):
        alike: dict[tuple[str, Capacity], list[str]] = {}
        here = Capacity()
        for key in (key for cell in plan.cells for key in (cell.key, *cell.alike) if key in indexed):
            unit = indexed[key]
            alike.setdefault((unit.product, unit.capacity), []).append(unit.designation)
            here += unit.capacity
        total += here
        rows.append((_number(number), given(sequence([shows])), *_sums(here)))
        for (product, each), names in alike.items():
            power = phrase("{power} each", power=amount(each.apparent_power_va / 1000, "kVA"))
            strings = phrase("{count} each", count=each.strings_count)
            told = given(sequence([joined(names), product], " "))
            rows.append((EMPTY, told, _number(len(names)), computed(power), computed(strings)))
    rows.append((EMPTY, given(phrase("total")), *_sums(total)))
    return Table("sheet_index", phrase("Sheets of the diagram"), _COLUMNS, tuple(rows))


def _number(count: int) -> Cell:
    return computed(verbatim(str(count)))


def _sums(capacity: Capacity) -> tuple[Cell, Cell, Cell]:
    if not capacity.inverters_count:
        return NOT_GIVEN, NOT_GIVEN, _number(capacity.strings_count) if capacity.strings_count else NOT_GIVEN
    power = computed(amount(capacity.apparent_power_va / 1000, "kVA"))
    return _number(capacity.inverters_count), power, _number(capacity.strings_count)
