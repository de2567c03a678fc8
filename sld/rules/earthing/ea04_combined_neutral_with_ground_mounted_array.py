"""Combined neutral and a ground-mounted array.

What it checks
    TN-C-S supplies with an array on the ground.

Why
    If the combined conductor of the network breaks, metal outdoors that is bonded to it can stand at the line's
    voltage while people stand on true earth.

How
    earthing_system: TN-C-S and building: ground_mounted, unless every inverter is on a board with TT.

Remedy
    An electrode and TT system for the array, or what the network operator prescribes.

Clause
    National codes of practice, for example in the United Kingdom (from memory).

Not covered
    Arrays of class II with no metal that can be touched.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.device import InverterUnit
from sld.model.system import System
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("EA04", "combined neutral and a ground-mounted array", Severity.ADVICE, "common practice; national codes")
def combined_neutral_with_ground_mounted_array(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    combined = any(system.earthing_at(unit.key) == "TN-C-S" for unit in system.of(InverterUnit))
    if combined and system.site.building == "ground_mounted":
        yield Breach(
            phrase(
                "earth terminal {earthing_designation} is on a combined neutral (TN-C-S), and the array "
                "stands outdoors on the ground",
                earthing_designation=system.earthing_designation,
            ),
            phrase("ask the network operator; an electrode of its own (TT) for the array is usual"),
            ("supply", "earthing_system"),
            "earthing",
            ((("site", "building"), phrase("kind of installation")),),
        )
