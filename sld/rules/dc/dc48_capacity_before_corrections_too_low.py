"""Capacity of a DC cable before corrections too low.

What it checks
    The capacity of each DC cable in the table, before any correction, against the profile's second demand.

Why
    Terminals and fuses count on a conductor of that size, however cool it lies.

How
    It < It,min, where the profile has such a test: 1.25 · 1.25 · Np · Isc in NEC 690.

Remedy
    A larger section.

Clause
    NEC 2023 690.8(B)(1).

Not covered
    Profiles without such a test; the temperature rating of terminals.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.device import Cable
from sld.model.system import System
from sld.model.wording import profile_word
from sld.ratings.symbol import Symbol
from sld.rules.compare import shortfalls, two
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("DC48", "capacity of a DC cable before corrections too low", Severity.NON_COMPLIANCE, "NEC 690.8(B)(1)")
def capacity_before_corrections_too_low(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    cables = (cable for cable in system.of(Cable) if cable.in_array)
    for cable, capacity, least in shortfalls(ratings, cables, Symbol.IT, Symbol.IT_MIN):
        has, needs = two(capacity.value, least.value, "A")
        yield Breach(
            phrase(
                "{cable} has a capacity of {has} before corrections, below the {needs} that profile {profile} asks for",
                cable=named(cable),
                has=has,
                needs=needs,
                profile=profile_word(system.profile),
            ),
            phrase("leave `section` out, and the smallest that fits is chosen"),
            (*cable.at, "section"),
            cable.key,
            (),
            (capacity, least),
        )
