"""Does anything on a sheet touch what it must not? Pure geometry on the finished strokes."""

from __future__ import annotations

from sld.sheet.lint.check import Defect, lint

__all__ = ["Defect", "lint"]
