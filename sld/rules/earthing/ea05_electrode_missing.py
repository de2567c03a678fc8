"""No earth electrode.

What it checks
    Whether a TT or IT installation has an earth electrode.

Why
    These systems have no protective conductor from the network; without an electrode nothing trips.

How
    earthing_system TT or IT and no electrode under earthing, or a board with TT and no electrode.

Remedy
    The electrode with its resistance.

Clause
    IEC 60364-4-41:2005+A1:2017 411.5, 411.6.

Not covered
    Electrodes of the network.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.device import Busbar
from sld.model.system import System
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("EA05", "no earth electrode", Severity.NON_COMPLIANCE, "IEC 60364-4-41 411.5, 411.6")
def electrode_missing(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for board in system.of(Busbar):
        if board.given.earthing_system == "TT" and board.given.electrode is None:
            yield Breach(
                phrase("{board} is in a TT system of its own, and no electrode is given", board=named(board)),
                phrase("give its `electrode` with its `resistance`"),
                (*board.at, "earthing_system"),
                board.key,
            )
    if system.supply.earthing_system in ("TT", "IT") and system.earthing.electrode is None:
        yield Breach(
            phrase(
                "earth terminal {earthing_designation} has no electrode given; the earthing system is "
                "{earthing_system}",
                earthing_designation=system.earthing_designation,
                earthing_system=system.supply.earthing_system,
            ),
            phrase("give `electrode` with its `resistance` under `earthing`"),
            ("earthing", "electrode"),
            "earthing",
            ((("supply", "earthing_system"), phrase("earthing system")),),
        )
