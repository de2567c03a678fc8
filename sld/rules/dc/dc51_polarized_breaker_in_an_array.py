"""Polarized DC circuit-breaker in an array.

What it checks
    Whether a DC circuit-breaker that breaks current in one direction only stands where a fault can be fed from the
    other side.

Why
    A polarized circuit-breaker that has to break a reverse current draws the arc to the wrong side and can burn.

How
    polarized: true. Danger where current can come back through it: in a string, from the others that are joined; in the
    circuit of an input, from inputs that are joined with it; in either from an inverter that feeds back.
    Non-compliance elsewhere, at a single string too: protection against overcurrent in an array is not to depend on the
    direction. Advice where current can come back and the spec does not say whether it is polarized.

Remedy
    A circuit-breaker that is not polarized, of IEC 60947-2 or IEC 60898-2 for direct current.

Clause
    IEC 62548:2016 7.3, circuit-breakers for overcurrent protection (from memory).

Not covered
    Whether the marked direction is kept.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.device import Apparatus
from sld.model.kinds.dc import DC_BREAKER
from sld.model.system import System
from sld.rules.naming import named
from sld.steps.dc_devices import terminal_of
from sld.steps.inputs import groups_behind, joined_groups, strings_count, strings_through
from sld.steps.ledger import Ratings
from sld.words import Phrase, amount, counted, phrase


@rule("DC51", "polarized DC circuit-breaker in an array", Severity.DANGER, "IEC 62548 7.3")
def polarized_breaker_in_an_array(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for breaker, given in system.given_as(DC_BREAKER):
        if given.polarized is False:
            continue
        behind = strings_through(breaker, groups_behind(system, breaker.key))
        why = _fed_from_the_other_side(system, breaker, behind)
        at, remedy = (*breaker.at, "polarized"), phrase("use a DC circuit-breaker that is not polarized")
        if given.polarized is None and why is not None:
            yield Breach(
                phrase(
                    "{breaker} is not said to break current in both directions, and {why}",
                    breaker=named(breaker),
                    why=why,
                ),
                phrase("give `polarized: false` where its maker says so, else use another circuit-breaker"),
                at,
                breaker.key,
                severity=Severity.ADVICE,
            )
        elif given.polarized:
            ahead = (
                phrase("{count} strings are joined ahead of it", count=behind)
                if behind > 1
                else phrase("a fault in the array may drive it the other way")
            )
            yield Breach(
                phrase(
                    "{breaker} breaks current in one direction only, and {why}",
                    breaker=named(breaker),
                    why=why or ahead,
                ),
                remedy,
                at,
                breaker.key,
                severity=Severity.DANGER if why is not None else Severity.NON_COMPLIANCE,
            )


def _fed_from_the_other_side(system: System, breaker: Apparatus, behind: int) -> Phrase | None:
    """Return what can feed a fault through a breaker against its usual direction, or None. behind: its own strings."""
    terminal = terminal_of(system, breaker.key)
    others = strings_count(joined_groups(system, terminal)) - behind
    backfeed_a = system.inverter_of(terminal).type.backfeed_current_a
    if others > 0:
        return counted("{count} other string can feed back", "{count} other strings can feed back", others)
    return phrase("the inverter feeds back {current}", current=amount(backfeed_a, "A")) if backfeed_a else None
