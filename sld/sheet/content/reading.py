"""Which tables and lists a reading of the drawing has; what it leaves out is said on the sheet.

Cautions, findings, assumptions, notes and the legend are in every reading.
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
"""What the title block calls each reading."""

_LEFT_OUT = {
    "full": ("For review",),
    "operator": ("Terminals and routes", "Data chains", "Data bus", "Data links"),
    "crew": ("For review", "Ratings"),
}
"""Titles by reading. The table for review repeats what the full drawing has elsewhere."""


def read_by(reading: str, listings: Iterable[Listing | None]) -> list[Listing]:
    """Return the listings of a reading in their order."""
    return [listing for listing in listings if listing is not None and listing.title not in _LEFT_OUT[reading]]


def left_out(reading: str) -> str:
    """Return the note that says what a reading leaves out, empty for the full drawing."""
    if reading == "operator":
        return "This reading is for the network operator: terminals, routes, torques and the data bus are left out."
    if reading == "crew":
        return (
            "This reading is for those who wire: computed currents and limits at the symbols and the formulas behind "
            "the ratings are left out."
        )
    return ""
