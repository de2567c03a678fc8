"""Separation distance to the lightning protection too short.

What it checks
    The distance between array and lightning protection system that the spec gives against the separation distance.

Why
    Closer than that the lightning current jumps over to frames and cables and enters the building.

How
    separation_kept is true, and separation < s = ki/km · kc · l, l being separation_path.

Remedy
    A larger distance; or separation_kept: false, bonding of the frames with 16 mm² and type 1 devices.

Clause
    IEC 62305-3:2010 6.3.

Not covered
    A distance through air alone, for which half of s is enough, and meshed systems, which share the current better.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.system import System
from sld.ratings.symbol import Symbol
from sld.rules.compare import below, two
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("SU19", "separation distance to the lightning protection too short", Severity.DANGER, "IEC 62305-3 6.3")
def separation_distance_too_short(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    lightning = system.earthing.lightning_protection
    kept, least = ratings.get("", Symbol.SEPARATION_GIVEN), ratings.get("", Symbol.SEPARATION)
    if lightning is None or not lightning.separation_kept or kept is None or least is None:
        return
    if not below(kept.value, least.value):
        return
    has, needs = two(kept.value, least.value, "m")
    yield Breach(
        phrase(
            "the array is {has} from the lightning protection system, and the separation distance is {needs}",
            has=has,
            needs=needs,
        ),
        phrase(
            "keep {needs}, or write `separation_kept: false`, bond the frames and use surge protection of type 1",
            needs=needs,
        ),
        ("earthing", "lightning_protection", "separation"),
        "earthing",
        (
            (
                ("earthing", "lightning_protection", "separation_path"),
                phrase("length that the distance is computed with"),
            ),
        ),
        (kept, least),
    )
