"""The readers of plans live beside the tests of the layout."""

from __future__ import annotations

import sys
from pathlib import Path

sys.path.append(str(Path(__file__).parents[1] / "layout"))
