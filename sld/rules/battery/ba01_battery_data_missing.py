"""Battery data missing.

What it checks
    The highest voltage, the short-circuit current and the current of a battery whose circuit is given.

Why
    Without them it is not known whether its fuse can break what the cells feed, nor whether its devices stand the
    voltage.

How
    No voltage_max or no short_circuit_current; neither current_max nor a power with voltage_min.

Remedy
    The values of the data sheet.

Clause
    IEC 62485-2:2010 5; IEC 60364-4-43:2008 434.5.1 (from memory).

Not covered
    Batteries whose circuit to the converter is not given: a note says that nothing of it was checked.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.system import System
from sld.ratings.symbol import Symbol
from sld.rules.naming import named
from sld.steps.batteries import stores
from sld.steps.ledger import Ratings
from sld.words import Phrase, listing, phrase


@rule("BA01", "battery data missing", Severity.NON_COMPLIANCE, "IEC 62485-2; IEC 60364-4-43 434.5.1")
def battery_data_missing(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for store in stores(system):
        missing: list[Phrase] = []
        if store.given.voltage_max_v is None:
            missing.append(phrase("`voltage_max`"))
        if store.given.short_circuit_current_ka is None:
            missing.append(phrase("`short_circuit_current`"))
        if ratings.get(store.key, Symbol.IB) is None:
            missing.append(phrase("`current_max`"))
        if missing:
            yield Breach(
                phrase("{battery} leaves out what its circuit is checked by", battery=named(store)),
                phrase("give {keys} by the data sheet of the battery", keys=listing(missing)),
                store.at,
                store.key,
                on_key=True,
            )
