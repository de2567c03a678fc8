"""A table of published values in the terminal: where it is from, and its rows."""

from __future__ import annotations

from textwrap import wrap

from sld.cli.terminal import line
from sld.tables.table import Table

__all__ = ["explain_table"]

_WIDTH = 100
_WIDEST_CELL = 36


def explain_table(table: Table) -> None:
    """Print a table: title, source, edition, status, unit, note, then its rows in columns."""
    front = table.front
    line(f"{table.name}: {front['title']}")
    for key in ("source", "edition", "status", "unit", "note"):
        for text in wrap(f"{key}: {front[key]}", _WIDTH) if front.get(key) else ():
            line(text)
    line()
    rows = [table.columns, *([row.cells[column] for column in table.columns] for row in table)]
    widths = [min(_WIDEST_CELL, max(len(row[at]) for row in rows)) for at in range(len(table.columns))]
    for row in rows:
        line("  ".join(cell.ljust(width) for cell, width in zip(row, widths, strict=True)).rstrip())
