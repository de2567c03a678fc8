"""Blocking diode rated too low.

What it checks
    The rated reverse voltage and current of each blocking diode.

Why
    A diode that breaks down no longer blocks, and nobody sees it; one that overheats opens or melts.

How
    Rated voltage below 2 · Uoc,max, or rated current below 1.4 · Np · Isc of the strings behind it.

Remedy
    A diode for more.

Clause
    IEC 62548:2016, blocking diodes (from memory).

Not covered
    The heat that the diode gives off, for which its maker's curve counts. A diode replaces no fuse.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.kinds.dc import BLOCKING_DIODE
from sld.model.system import System
from sld.ratings.symbol import Symbol
from sld.rules.compare import shortfalls, two
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.words import amount, phrase


@rule("DC52", "blocking diode rated too low", Severity.DANGER, "IEC 62548-1, blocking diodes")
def blocking_diode_rated_too_low(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    diodes = list(system.apparatus(BLOCKING_DIODE))
    for rated_as, least_of, key in (
        (Symbol.UN, Symbol.UN_MIN, "rated_voltage"),
        (Symbol.IN, Symbol.IN_MIN, "rated_current"),
    ):
        for diode, rated, least in shortfalls(ratings, diodes, rated_as, least_of):
            has, needs = two(rated.value, least.value, least.unit)
            yield Breach(
                phrase(
                    "{device} is rated {has}, below the {needs} of {formula}",
                    device=named(diode),
                    has=has,
                    needs=needs,
                    formula=least.formula,
                ),
                phrase("use one for at least {least}", least=amount(least.value, least.unit, digits=4)),
                (*diode.at, key),
                diode.key,
                (),
                (rated, least),
            )
