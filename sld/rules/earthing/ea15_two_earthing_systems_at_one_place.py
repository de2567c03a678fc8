"""Two earthing systems at one place.

What it checks
    Whether the main boards of two supply points that stand at one place, or in one building, have one earthing system.

Why
    A fault behind one supply raises the parts earthed there; who touches them and a part of the other earthing system
    at once has the difference between his hands. With a broken PEN it lasts.

How
    For each two supply points of the drawing whose earthing systems differ: the `location` of their main boards is the
    same, or both locations are in one `building`. At one location it is a non-compliance, in one building advice,
    because nobody says whether the parts can be reached at once.

Remedy
    One earthing system for both, by agreement with the network operator; or a distance or insulation that keeps the
    parts apart, accepted with that reason.

Clause
    IEC 60364-4-41:2005+A1:2017 411.3.1.1 (BS 7671 411.3.1.1, quoted in a public discussion of its text:
    engx.theiet.org): exposed-conductive-parts that can be touched at once are connected to the same earthing system.

Not covered
    Supply points of one earthing system from two transformers. Protective conductors common to both (BS 7671
    542.1.3.3).
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.system import System
from sld.model.wording import supply_words
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("EA15", "two earthing systems at one place", Severity.NON_COMPLIANCE, "IEC 60364-4-41 411.3.1.1")
def two_earthing_systems_at_one_place(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    board = system.main_board()
    for other in system.others:
        place = board.location and board.location == other.main_board().location
        building = _building(system) and _building(system) == _building(other)
        told_there = other.root < system.root  # each pair once
        if told_there or system.supply.earthing_system == other.supply.earthing_system or not (place or building):
            continue
        yield Breach(
            phrase(
                "{board} is {system} by {supply}, and {other_board} at the same place is {other_system} by "
                "{other_supply}",
                board=named(board),
                system=system.supply.earthing_system,
                supply=supply_words(system),
                other_board=named(other.main_board()),
                other_system=other.supply.earthing_system,
                other_supply=supply_words(other),
            ),
            phrase(
                "use one earthing system for both, as the network operator allows, or keep parts of the two out of "
                "reach of each other"
            ),
            ("supply", "earthing_system"),
            board.key,
            ((other.main_board().at, supply_words(other)),),
            severity=None if place else Severity.ADVICE,
        )


def _building(system: System) -> str | None:
    place = system.site.locations.get(system.main_board().location)
    return place.building if place is not None else None
