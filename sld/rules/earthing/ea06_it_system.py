"""IT system.

What it checks
    Installations with an IT system.

Why
    The first fault does not trip, and the second one does; insulation monitoring and disconnection at the second
    fault are not checked here.

How
    earthing_system: IT.

Remedy
    An insulation monitoring device and a check of the second fault by hand.

Clause
    IEC 60364-4-41:2005+A1:2017 411.6.

Not covered
    Everything about the second fault.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.system import System
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("EA06", "IT system", Severity.ADVICE, "IEC 60364-4-41 411.6")
def it_system(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    if system.supply.earthing_system == "IT":
        yield Breach(
            phrase(
                "earth terminal {earthing_designation} belongs to an IT system, whose second fault is not checked",
                earthing_designation=system.earthing_designation,
            ),
            phrase("add insulation monitoring, and check the second fault by hand"),
            ("supply", "earthing_system"),
            "earthing",
        )
