"""Plug connectors of the modules overloaded.

What it checks
    The rated current of the plug connectors, where the module type gives it, against the current of the string and,
    without string fuses, the reverse current of the others.

Why
    An overloaded contact heats up, melts and starts an arc.

How
    connector_current_max < KI · Isc, or < Irev at an input without string fuses.

Remedy
    String fuses, fewer strings in parallel, or modules with other connectors.

Clause
    IEC 62852; IEC 62548:2016 7.3 (from memory).

Not covered
    Connectors of two makers plugged together (DC40) and branch connectors (DC42).
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.device import StringGroup
from sld.model.system import System
from sld.ratings.symbol import Symbol
from sld.rules.compare import above, two
from sld.rules.naming import named
from sld.rules.ways import string_protection_of
from sld.steps.dc_devices import terminal_of
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("DC47", "plug connectors of the modules overloaded", Severity.DANGER, "IEC 62852; IEC 62548-1 7.3")
def connector_overloaded(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for group in system.of(StringGroup):
        limit_a = group.type.connector_current_max_a
        if limit_a is None:
            continue
        own = ratings.get(group.key, Symbol.ISC_STRING)
        reverse = (
            ratings.get(terminal_of(system, group.key).key, Symbol.IREV)
            if not string_protection_of(system, group)
            else None
        )
        currents = [rating for rating in (own, reverse) if rating is not None]
        worst = max(currents, key=lambda rating: rating.value, default=None)
        if worst is None or not above(worst.value, limit_a):
            continue
        flows, allowed = two(worst.value, limit_a, "A")
        what = phrase("the other strings feed into a fault") if worst is reverse else phrase("flow in short circuit")
        yield Breach(
            phrase(
                "{group} has plug connectors for {allowed}, and {flows} {what}",
                group=named(group),
                allowed=allowed,
                flows=flows,
                what=what,
            ),
            phrase("use string fuses, join fewer strings, or use modules with connectors for more"),
            (*group.at, "module"),
            group.key,
            (
                (
                    ("types", "modules", group.type_name, "connector_current_max"),
                    phrase("rated current of the connectors"),
                ),
            ),
            (worst,),
        )
