"""DC cable that is not a solar cable.

What it checks
    The insulation of the cables on the DC side.

Why
    Array cables lie in heat, sun and rain for decades, and must be double insulated.

How
    A DC cable whose type is not given as EN 50618, unless it lies in the ground (method D1 or D2), where neither sun
    nor the heat of the modules reaches it; and the other way round a solar cable directly in the ground (method D2).

Remedy
    A cable to EN 50618 or IEC 62930; in the ground a duct, or a cable that is made for it.

Clause
    EN 50618; IEC 62930; IEC 62548:2016 7.3 (from memory). A maker gives solar cables for covered ways in the ground
    alone: https://www.rrkabel.com/products/solar-cable-en-50618/.

Not covered
    Cables inside buildings that local rules allow.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.system import System
from sld.rules.naming import named
from sld.steps.dc_laid import in_ground
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("DC25", "DC cable that is not a solar cable", Severity.ADVICE, "EN 50618; IEC 62930")
def dc_cable_not_solar(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for cable, given in system.dc_cables():
        if cable.type.insulation == "EN 50618" and given.method == "D2":
            yield Breach(
                phrase("{cable} is a solar cable and lies directly in the ground", cable=named(cable)),
                phrase("lay it in a duct (`method: D1`), or use a cable that is made for the ground"),
                (*cable.at, "method"),
                cable.key,
            )
        if cable.type.insulation != "EN 50618" and not in_ground(given):
            at = ("types", "cables", cable.given.type, "insulation") if cable.given.type else cable.at
            yield Breach(
                phrase(
                    "{cable} has {insulation} insulation and is not a solar cable",
                    cable=named(cable),
                    insulation=cable.type.insulation,
                ),
                phrase("use a solar cable with `insulation: EN 50618`"),
                at,
                cable.key,
                ((cable.at, phrase("the cable")),),
            )
