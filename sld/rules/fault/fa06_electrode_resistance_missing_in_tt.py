"""Electrode resistance not given in a TT system.

What it checks
    Whether the resistance of the earth electrode is given in a TT system.

Why
    The protection against shock rests on it; without the value the touch voltage is not checked.

How
    An electrode is given without resistance: that of the supply's TT system, or of a building.

Remedy
    The measured resistance, or the one that is agreed and will be measured before commissioning.

Clause
    IEC 60364-4-41:2005+A1:2017 411.5.3.

Not covered
    A missing electrode, which has a rule of its own.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.device import Busbar
from sld.model.system import System
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("FA06", "electrode resistance not given in a TT system", Severity.NON_COMPLIANCE, "IEC 60364-4-41 411.5.3")
def electrode_resistance_missing_in_tt(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for board in system.of(Busbar):
        given = board.given.electrode
        if given is not None and given.resistance_ohm is None:
            yield Breach(
                phrase("{board} is on an electrode of its own without a stated resistance", board=named(board)),
                phrase("give the measured `resistance` of the electrode"),
                (*board.at, "electrode"),
                board.key,
            )
    electrode = system.earthing.electrode
    if system.supply.earthing_system != "TT" or electrode is None or electrode.resistance_ohm is not None:
        return
    yield Breach(
        phrase(
            "earth terminal {earthing_designation} is on an electrode without a stated resistance, in a TT system",
            earthing_designation=system.earthing_designation,
        ),
        phrase("give the measured `resistance` of the electrode"),
        ("earthing", "electrode", "resistance"),
        "earthing",
        ((("supply", "earthing_system"), phrase("earthing system")),),
    )
