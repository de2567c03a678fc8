"""The page of published values: every table with its source, and whether that was seen or is from memory."""

from __future__ import annotations

from sld.gallery.markdown import GENERATED, plain, table_lines
from sld.tables.table import Table, all_tables

__all__ = ["tables"]

_TOP = """# Tables

The values that calculations look up are CSV files in [sld/tables](../sld/tables), each with its source. Status: "seen"
where a public copy or restatement of the source was read, "from memory" where it was not; a row can differ from its
table. Compare a value with the edition that applies before you rely on it.
"""


def _status(each: Table) -> str:
    """Return the status of the table, with the number of rows that differ from it."""
    other = [row.status for row in each.rows if row.status != each.front["status"]]
    return each.front["status"] + (f"; {len(other)} rows {other[0]}" if other else "")


def _section(each: Table) -> list[str]:
    front = each.front
    rows = [
        ("File", f"[{each.name}.csv](../sld/tables/{each.name}.csv)"),
        ("Rows", str(len(each.rows))),
        ("Columns", ", ".join(f"`{column}`" for column in each.columns)),
        ("Unit", plain(front["unit"])),
        ("Source", plain(front["source"])),
        ("Edition", plain(front["edition"])),
        ("Status", _status(each)),
        ("Note", plain(front.get("note", ""))),
    ]
    title = front["title"]
    heading = f"## {plain(title[:1].upper() + title[1:])}"
    return [heading, "", *table_lines(("", ""), [row for row in rows if row[1]])]


def tables() -> str:
    """Return the page."""
    return "\n".join([GENERATED, "", _TOP, *(line for each in all_tables() for line in _section(each))])
