"""Battery cable overloaded.

What it checks
    The capacity Iz of each cable between a battery and its converter, as it is laid.

Why
    The battery can feed what its fuse lets through for hours; a thinner cable overheats.

How
    Iz < Iz,min, the larger of Ib and the rated current of what protects the cable.

Remedy
    A larger section or a smaller fuse.

Clause
    IEC 60364-4-43:2008 433.1; IEC 60364-5-52:2009 523.

Not covered
    The heat of a short circuit: the curves of fuses at direct current are their makers'.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.device import Cable
from sld.model.kinds.battery import BATTERY_CABLE
from sld.model.system import System
from sld.ratings.symbol import Symbol
from sld.rules.compare import shortfalls, two
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("BA08", "battery cable overloaded", Severity.DANGER, "IEC 60364-4-43 433.1")
def battery_cable_overloaded(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    cables = (cable for cable in system.of(Cable) if cable.has(BATTERY_CABLE))
    for cable, capacity, least in shortfalls(ratings, cables, Symbol.IZ, Symbol.IZ_MIN):
        has, needs = two(capacity.value, least.value, "A")
        yield Breach(
            phrase(
                "{cable} carries {has} as laid, below the {needs} that it must carry",
                cable=named(cable),
                has=has,
                needs=needs,
            ),
            phrase("leave `section` out, and the smallest that fits is chosen; or use a smaller device"),
            (*cable.at, "section"),
            cable.key,
            (),
            (capacity, least),
        )
