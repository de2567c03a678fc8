"""Tables as one XLSX, a sheet each: the same cells as on paper and in CSV, as text.

Numbers stay text, as they are printed: rounded, with their unit, in the words of the document.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from datetime import datetime
from io import BytesIO
from zipfile import ZIP_DEFLATED, ZipFile, ZipInfo

from sld.render.missing import MissingOpenpyxl
from sld.rows import Rows

__all__ = ["xlsx"]

_FIXED_DATE = datetime(2000, 1, 1)
"""Written as the dates of the file and of its parts, so that the same tables give the same bytes."""

_LONGEST_NAME_COUNT = 31
_FORBIDDEN = re.compile(r"[\[\]:*?/\\']")
_NOT_IN_XML = re.compile(r"[\x00-\x08\x0b\x0c\x0e-\x1f]")
_WIDTHS = (8, 60)
"""Least and greatest width of a column in characters."""


def xlsx(tables: Mapping[str, Rows]) -> bytes:
    """Return the tables as an XLSX, by the names of its sheets. Raises MissingOpenpyxl where it is not installed."""
    try:
        from openpyxl import Workbook
        from openpyxl.styles import Alignment, Font
        from openpyxl.utils import get_column_letter
    except ImportError:
        raise MissingOpenpyxl from None
    book = Workbook()
    book.remove(book.active)
    top, bold = Alignment(wrap_text=True, vertical="top"), Font(bold=True)
    for name, table in zip(_names(tables), tables.values(), strict=True):
        sheet = book.create_sheet(name)
        lines = [*([table.headings] if table.headings else []), *table.cells]
        for row, texts in enumerate(lines, 1):
            for column, text in enumerate(texts, 1):
                cell = sheet.cell(row, column)
                cell.value, cell.data_type = _NOT_IN_XML.sub("", text), "s"  # never a formula, whatever it begins with
                cell.alignment = top
                if table.headings and row == 1:
                    cell.font = bold
        for column, texts in enumerate(zip(*lines, strict=True), 1):
            widest = max(len(part) for text in texts for part in text.split("\n"))
            sheet.column_dimensions[get_column_letter(column)].width = min(max(widest + 2, _WIDTHS[0]), _WIDTHS[1])
        if table.headings:
            sheet.freeze_panes = "A2"
    out = BytesIO()
    book.save(out)
    return _dated(out.getvalue())


def _names(tables: Mapping[str, Rows]) -> list[str]:
    """Return names that a sheet may have: at most 31 characters, each once whatever its capitals."""
    found: list[str] = []
    for name in tables:
        kept = _FORBIDDEN.sub(" ", name)[:_LONGEST_NAME_COUNT]
        number = 1
        while kept.casefold() in (each.casefold() for each in found):
            number += 1
            kept = f"{name[: _LONGEST_NAME_COUNT - len(str(number)) - 1]} {number}"
        found.append(kept)
    return found


def _dated(content: bytes) -> bytes:
    """Return the same file with fixed dates."""
    out = BytesIO()
    date = _FIXED_DATE.strftime("%Y-%m-%dT%H:%M:%SZ").encode()
    with ZipFile(BytesIO(content)) as before, ZipFile(out, "w", ZIP_DEFLATED) as after:
        for name in before.namelist():
            part = before.read(name)
            if name == "docProps/core.xml":
                part = re.sub(rb"(?<=>)\d{4}-\d\d-\d\dT[\d:.]+Z(?=<)", date, part)
            info = ZipInfo(name, _FIXED_DATE.timetuple()[:6])
            info.compress_type, info.external_attr = ZIP_DEFLATED, 0o600 << 16
            after.writestr(info, part)
    return out.getvalue()
