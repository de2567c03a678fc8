"""The language of `tests/words` that marks its texts, for what rules say."""

from __future__ import annotations

import sys
from pathlib import Path

sys.path.append(str(Path(__file__).parents[1] / "words"))
