"""References from sheet to sheet: room is kept for them in the labels, they are written when all zones are known.

IEC 61082-1 (from memory): where a connection is interrupted, both ends say where the other one is, as `/sheet.zone`.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace

from sld.layout.plan import PlacedCell, Plan
from sld.symbols.stroke import Text
from sld.symbols.typeface import text_width_mm

__all__ = ["BETWEEN", "PLACEHOLDER", "filled", "written"]

PLACEHOLDER = "/000.AA00"
"""As wide as the widest reference there is; no label of a spec looks like it."""

BETWEEN = " … "
"""Between the references to the first and the last of several places."""


def written(sheet_number: int, zone: str) -> str:
    """Return a reference as it is printed: `/3.B4`."""
    return f"/{sheet_number}.{zone}"


def filled(plan: Plan, references: Mapping[str, Sequence[str]]) -> Plan:
    """Return the plan with its references written.

    references: by the key of a cell the texts for its placeholders, in their order; an empty one is left out, with
    what joins it to its neighbours.
    """
    cells = tuple(_filled(cell, references[cell.key]) if cell.key in references else cell for cell in plan.cells)
    return replace(plan, cells=cells)


def _filled(cell: PlacedCell, texts: Sequence[str]) -> PlacedCell:
    waiting = list(texts)
    labels = []
    for label in cell.labels:
        text = label.text
        while PLACEHOLDER in text:
            text = text.replace(PLACEHOLDER, waiting.pop(0), 1)
        labels.append(label if text == label.text else _put(label, text.strip(BETWEEN), cell.key))
    return replace(cell, labels=tuple(label for label in labels if label.text))


def _put(label: Text, text: str, key: str) -> Text:
    """Return the label with its true text, in the middle of its room; beside the symbol for earth at its beginning."""
    spare = text_width_mm(label.text, label.height_mm) - text_width_mm(text, label.height_mm)
    beside = key.endswith("/earth")
    return replace(label if beside else label.moved(spare / 2, 0.0), text=text)
