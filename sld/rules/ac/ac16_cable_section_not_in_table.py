"""Cable section not in the tables.

What it checks
    AC cables whose capacity or resistance has no row in the tables.

Why
    Without them neither overload nor voltage rise nor disconnection of the cable is checked.

How
    The rating of Iz or R had no answer.

Remedy
    A section that the table holds, or another installation method.

Clause
    IEC 60364-5-52:2009 Annex B; IEC 60228:2004.

Not covered
    Cables with capacities by their maker.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.system import System
from sld.ratings.symbol import Symbol
from sld.rules.naming import named
from sld.rules.ways import ac_cables
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("AC16", "cable section not in the tables", Severity.NON_COMPLIANCE, "IEC 60364-5-52; IEC 60228")
def cable_section_not_in_table(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for cable in ac_cables(system):
        reasons = [why for symbol in (Symbol.IZ, Symbol.R) if (why := ratings.unanswered.get((cable.key, symbol)))]
        if reasons:
            yield Breach(
                phrase("{cable} cannot be rated: {reason}", cable=named(cable), reason=reasons[0]),
                phrase("use a section and installation method of the tables, or leave `section` out"),
                (*cable.at, "section"),
                cable.key,
            )
