"""References from sheet to sheet: room is kept for them in the labels, they are written when all zones are known.

IEC 61082-1 (from memory): where a connection is interrupted, both ends say where the other one is, as `/sheet.zone`.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from sld.frozen import replace
from sld.layout.plan import PlacedCell, Plan, Referring

__all__ = ["filled", "written"]


def written(sheet_number: int, zone: str) -> str:
    """Return a reference as it is printed: `/3.B4`."""
    return f"/{sheet_number}.{zone}"


def filled(plan: Plan, references: Mapping[str, Sequence[str]]) -> Plan:
    """Return the plan with its references written.

    references: by the key of a cell the texts of its references, in their order; one that is empty or missing is left
    out, with what joins it to its neighbours.
    """
    return replace(plan, cells=tuple(_filled(cell, references.get(cell.key, ())) for cell in plan.cells))


def _filled(cell: PlacedCell, texts: Sequence[str]) -> PlacedCell:
    waiting = list(texts)
    labels = []
    for label in cell.labels:
        if isinstance(label, Referring):
            own, waiting = waiting[: label.references_count], waiting[label.references_count :]
            label = label.written(own, centred=cell.symbol.startswith("continued"))
        labels.append(label)
    return replace(cell, labels=tuple(label for label in labels if label.text))
