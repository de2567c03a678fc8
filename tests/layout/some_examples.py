"""How many made-up cases a property is tried on: a few, the same each time, or by hand many others."""

from __future__ import annotations

import os

from hypothesis import HealthCheck, Phase, settings

EXAMPLES = int(os.environ.get("EXAMPLES", "0"))
"""By hand: EXAMPLES=500 pytest tests/properties tests/layout looks at so many cases, others each time."""


def examples(usual: int) -> settings:
    """A few fixed ones by default, not made smaller where one fails, which would take minutes."""
    return settings(
        max_examples=EXAMPLES or usual,
        deadline=None,
        derandomize=not EXAMPLES,
        suppress_health_check=list(HealthCheck),
        phases=(Phase.explicit, Phase.generate) + ((Phase.reuse, Phase.shrink) if EXAMPLES else ()),
    )
