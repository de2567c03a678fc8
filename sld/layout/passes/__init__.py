"""Diagram -> Plan: where everything is, in one chain of passes. `arrange.py` calls them; each says what it does.

A pass states in its own module what holds before and after it, and knows no pass after it. `grid.py`, `skyline.py` and
`lower_edge.py` are what they measure with, `measured.py` what is handed to those that place.
"""

from __future__ import annotations

__all__ = ["PASSES"]

PASSES = (
    "tree", "rows", "frame_members", "lanes", "shapes", "ports", "cabling", "bonding", "lettering", "stack", "way",
    "beside", "free_cells", "columns", "heights", "placing", "wiring", "framing", "turned", "data_wiring", "earth_bar",
    "spine", "crossings",
)  # fmt: skip
"""The modules of the passes in their order."""
