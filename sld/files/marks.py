"""What a file says of itself: whether it is a sheet of ours, and with which number. For files that no record knows."""

from __future__ import annotations

__all__ = ["is_marked", "sheet_number"]

_MARKS = {
    "svg": 'aria-labelledby="sheet-{}-title"',
    "strokes": "sheet {} ",
    "dxf": "999\nsld sheet {}\n",
    "png": "tEXtSoftware\0sld (sheet {})",
}
"""What our own sheet of a number has near its beginning, by format."""

_PDF_MARK = b"/Creator (sld)"
_HEAD_BYTES = 1000
_PNG_SIGNATURE = b"\x89PNG\r\n\x1a\n"


def sheet_number(file: str, name: str) -> int | None:
    """Return the number of the sheet that a file of a drawing is by its name, None for a file of another name."""
    stem, _, _ = file.rpartition(".")
    if stem == name:
        return 1
    number = stem.removeprefix(f"{name}-")
    return int(number) if number != stem and number.isascii() and number.isdigit() and number[0] != "0" else None


def is_marked(content: bytes, format: str, number: int) -> bool:
    """Return whether a content says of itself that it is the sheet with this number; a PDF holds all."""
    if format == "pdf":
        return content.startswith(b"%PDF") and _PDF_MARK in content
    if format not in _MARKS:
        return False
    head = content[:_HEAD_BYTES].decode("utf-8", "replace")
    mark = _MARKS[format].format(number)
    if format == "png":
        return content.startswith(_PNG_SIGNATURE) and mark in head
    return mark in head.partition("<svg ")[2] if format == "svg" else head.startswith(mark)
