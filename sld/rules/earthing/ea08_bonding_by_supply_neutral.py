"""Bonding by the neutral of the supply not checked.

What it checks
    Main bonding conductors of installations to BS 7671 on a supply with a combined neutral (TN-C-S, PME).

Why
    When the combined neutral breaks outside, the currents of neighbours return through the bonding; how large it must
    be depends on that neutral.

How
    Profile BS 7671, earthing system TN-C-S, a main bonding conductor, and neither `neutral_section` nor a cable between
    supply and main board. The least section here is that for a neutral of up to 35 mm² (10 mm² copper), or half of the
    earthing conductor that is required where that is more.

Remedy
    Give `neutral_section` under `supply`. By Table 54.8: 16 mm² up to 50 mm² of neutral, 25 mm² up to 95 mm², 35 mm²
    up to 150 mm², then 50 mm².

Clause
    BS 7671:2018 544.1.1 and Table 54.8.

Not covered
    What the distributor asks for beyond the table.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.system import System
from sld.ratings.symbol import Symbol
from sld.steps.ledger import Ratings
from sld.steps.supply_neutral import supply_cables
from sld.words import phrase


@rule("EA08", "bonding by the neutral of the supply not checked", Severity.ADVICE, "BS 7671:2018 Table 54.8")
def bonding_by_supply_neutral(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    if system.profile != "BS 7671" or system.supply.earthing_system != "TN-C-S":
        return
    by_cable = any(ratings.get(cable.key, Symbol.S) is not None for cable in supply_cables(system))
    if by_cable or system.supply.neutral_section_mm2 is not None:
        return
    bonding = system.bonding_at("")
    section = ratings.get(bonding[0].key, Symbol.S) if bonding else None
    if bonding and section is not None:
        yield Breach(
            phrase(
                "bonding conductor {bonding} to {to} has {section}; the section of the supply neutral, which "
                "decides with TN-C-S, is not known",
                bonding=bonding[0].designation,
                to=bonding[0].to,
                section=section,
            ),
            phrase(
                "give `neutral_section` under `supply`; the table asks for 10 mm² up to 35 mm², 16 mm² up to 50 mm²"
            ),
            bonding[0].at,
            bonding[0].key,
            (),
            (section,),
        )
