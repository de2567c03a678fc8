"""Largest series fuse of the module not given.

What it checks
    Module types without the largest series fuse of their data sheet, where three or more strings can feed one
    fault.

Why
    Whether string fuses are needed, and which, depends on that value; an assumed one may hide a fire risk.

How
    series_fuse_max is not given, and three strings or more are joined.

Remedy
    The value from the data sheet or the label of the module.

Clause
    IEC 61730-1 (marking), IEC 62548:2016 6.5 (from memory).

Not covered
    One or two strings, which do not need the value in most profiles.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.device import InputTerminal
from sld.model.system import System
from sld.rules.naming import named
from sld.steps.inputs import groups_behind, joined_groups, strings_count
from sld.steps.ledger import Ratings
from sld.words import phrase

_STRINGS_COUNT = 3


@rule(
    "DC30",
    "largest series fuse of the module not given",
    Severity.NON_COMPLIANCE,
    "IEC 61730-1; IEC 62548-1",
    once=True,
)
def series_fuse_limit_missing(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    told: set[str] = set()
    for terminal in system.of(InputTerminal):
        joined = strings_count(joined_groups(system, terminal))
        for group in groups_behind(system, terminal.key):
            if joined < _STRINGS_COUNT or group.type.series_fuse_max_a is not None or group.type_name in told:
                continue
            told.add(group.type_name)
            yield Breach(
                phrase(
                    "{group} is one of {joined} strings in parallel, and its modules state no largest series fuse",
                    group=named(group),
                    joined=joined,
                ),
                phrase("give `series_fuse_max` from the data sheet of the module"),
                ("types", "modules", group.type_name, "series_fuse_max"),
                group.key,
                ((group.at, phrase("the string")),),
            )
