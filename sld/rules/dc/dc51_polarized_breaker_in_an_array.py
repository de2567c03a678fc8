"""Polarized DC circuit-breaker in an array.

What it checks
    Whether a DC circuit-breaker that breaks current in one direction only stands where a fault can be fed from the
    other side.

Why
    A polarized circuit-breaker that has to break a reverse current draws the arc to the wrong side and can burn.

How
    polarized: true, and more than one string is joined or the inverter can feed back.

Remedy
    A circuit-breaker that is not polarized, of IEC 60947-2 or IEC 60898-2 for direct current.

Clause
    IEC 62548:2016 7.3, circuit-breakers for overcurrent protection (from memory).

Not covered
    A single string without backfeed, where the marked direction still has to be kept; circuit-breakers that do not say
    whether they are polarized.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.kinds.dc import DC_BREAKER
from sld.model.system import System
from sld.rules.naming import named
from sld.steps.dc_devices import terminal_of
from sld.steps.inputs import joined_groups, strings_count
from sld.steps.ledger import Ratings
from sld.words import amount, phrase


@rule("DC51", "polarized DC circuit-breaker in an array", Severity.DANGER, "IEC 62548 7.3")
def polarized_breaker_in_an_array(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for breaker, given in system.given_as(DC_BREAKER):
        terminal = terminal_of(system, breaker.key)
        joined = strings_count(joined_groups(system, terminal))
        backfeed_a = system.inverter_of(terminal).type.backfeed_current_a
        if not given.polarized or (joined < 2 and not backfeed_a):
            continue
        why = phrase("the inverter feeds back {current}", current=amount(backfeed_a, "A"))
        if joined > 1:
            why = phrase("{count} strings are joined", count=joined)
        yield Breach(
            phrase("{breaker} breaks current in one direction only, and {why}", breaker=named(breaker), why=why),
            phrase("use a DC circuit-breaker that is not polarized"),
            (*breaker.at, "polarized"),
            breaker.key,
        )
