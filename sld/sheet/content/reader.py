"""Which tables and lists the drawing has for its reader; what is left out is said on the sheet.

Cautions, findings, assumptions, notes and the legend are there for every reader.
"""

from __future__ import annotations

from collections.abc import Iterable

from sld.sheet.listings.laid import Listing

__all__ = ["DOCUMENT_TYPES", "left_out", "read_by"]

DOCUMENT_TYPES = {
    "full": "Single-line diagram",
    "operator": "Single-line diagram for review",
    "crew": "Single-line diagram for wiring",
}
"""What the title block calls the drawing for each reader."""

_LEFT_OUT = {
    "full": ("For review",),
    "operator": ("Terminals and routes", "Data chains", "Data bus", "Data links"),
    "crew": ("For review", "Ratings"),
}
"""Titles by reader. The table for review repeats what the full drawing has elsewhere."""


def read_by(reader: str, listings: Iterable[Listing | None]) -> list[Listing]:
    """Return the listings that are for a reader in their order."""
    return [listing for listing in listings if listing is not None and listing.title not in _LEFT_OUT[reader]]


def left_out(reader: str) -> str:
    """Return the note that says what is left out for a reader, empty for the full drawing."""
    if reader == "operator":
        return "This reading is for the network operator: terminals, routes, torques and the data bus are left out."
    if reader == "crew":
        return (
            "This reading is for those who wire: computed currents and limits at the symbols and the formulas behind "
            "the ratings are left out."
        )
    return ""
