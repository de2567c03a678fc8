"""Utilization category of a DC isolator too low.

What it checks
    The utilization category of each DC isolator against that which its strings need.

Why
    Several strings can drive a reverse current or an overcurrent through the contacts; a switch for one string may
    not open it.

How
    DC-PV0 or DC-PV1 is given where DC-PV2 is needed because more than one string is behind the switch.

Remedy
    An isolator of category DC-PV2.

Clause
    IEC 60947-3:2020, annex on PV switches (from memory).

Not covered
    Categories that are not given.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.kinds.dc import DC_ISOLATOR
from sld.model.system import System
from sld.ratings.symbol import Word
from sld.rules.naming import named
from sld.steps.inputs import groups_behind, strings_count
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("DC20", "utilization category of a DC isolator too low", Severity.DANGER, "IEC 60947-3:2020, PV annex")
def isolator_category_too_low(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for switch, block in system.given_as(DC_ISOLATOR):
        given = block.utilization_category
        needed = ratings.word(switch.key, Word.CATEGORY)
        if needed != "DC-PV2" or given not in ("DC-PV0", "DC-PV1"):
            continue
        count = strings_count(groups_behind(system, switch.key))
        yield Breach(
            phrase(
                "{switch} is of category {given}, below the {needed} that {count} strings in parallel need",
                switch=named(switch),
                given=given,
                needed=needed,
                count=count,
            ),
            phrase("use a DC isolator of category DC-PV2"),
            (*switch.at, "utilization_category"),
            switch.key,
        )
