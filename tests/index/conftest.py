"""The browser lives beside the tests of the page of a drawing, the commands beside theirs."""

from __future__ import annotations

import sys
from pathlib import Path

sys.path += [str(Path(__file__).parents[1] / room) for room in ("webpage", "cli")]
