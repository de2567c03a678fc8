"""Acceptance that matches nothing.

What it checks
    Every entry under `accept` against the findings.

Why
    An entry that accepts nothing hides nothing today, but it may hide a new fault tomorrow, or it was meant for a
    finding that is still open.

How
    No finding has the code of the entry at the place of the entry or at the device with that designation.

Remedy
    Remove the entry, or correct its code or place.

Clause
    Common practice, no source.

Not covered
    Whether the reason for an acceptance is a good one.
"""

from __future__ import annotations

import inspect
import sys
from collections.abc import Iterator, Sequence

from sld.finding import RULES, Finding, Rule, Severity
from sld.model.system import System
from sld.words import phrase

__all__ = ["unmatched"]

_TITLE = "acceptance that matches nothing"
# registered by hand: it looks at the findings of all the others, so it cannot be called with system and ratings
RULES["ACC01"] = Rule(
    "ACC01",
    _TITLE,
    Severity.ADVICE,
    "common practice, no source",
    inspect.cleandoc(sys.modules[__name__].__doc__ or ""),
    None,
)


def unmatched(system: System, places: Sequence[int]) -> Iterator[Finding]:
    """Yield a finding for each entry under `accept`, by its place there, that means no finding."""
    for place in places:
        entry = system.accept[place]
        yield Finding(
            "ACC01",
            Severity.ADVICE,
            phrase("acceptance of {code} at {at} matches no finding", code=entry.code, at=entry.at)
            if entry.code in RULES
            else phrase(
                "acceptance of {code} at {at} matches no finding, and there is no such code",
                code=entry.code,
                at=entry.at,
            ),
            phrase("remove the entry, or correct its `code` or `at`"),
            ("accept", place),
        )
