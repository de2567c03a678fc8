"""Diagram -> Plan: where everything is, in one chain of passes. `arrange.py` calls them; each says what it does.

A pass states in its own module what holds before and after it, and knows no pass after it. `grid.py` is what several
of them measure with, `measured.py` what is handed to those that place.
"""

from __future__ import annotations

__all__ = ["PASSES"]

PASSES = (
    "tree", "rows", "frame_members", "lanes", "shapes", "cabling", "lettering", "stack", "beside", "columns", "heights",
    "placing", "wiring", "trunk", "data_wiring", "framing", "earth_bar", "bonding", "crossings",
)  # fmt: skip
"""The modules of the passes in their order."""
