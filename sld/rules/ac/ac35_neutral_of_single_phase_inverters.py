"""Neutral of single-phase inverters on one feeder.

What it checks
    The neutral of three-phase cables that single-phase inverters feed through.

Why
    While all run, their currents cancel in the neutral. When one or two stop, the neutral carries a whole line current.

How
    Two or more single-phase inverters behind a three-phase cable, not all of them on one line.

Remedy
    A neutral as large as the line conductors.

Clause
    IEC 60364-5-52:2009 524.2.

Not covered
    Harmonics. A neutral that the spec gives as smaller is compared with its current (AC51).
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.conductors import lines_count, phases
from sld.model.system import System
from sld.ratings.symbol import Symbol
from sld.rules.naming import named
from sld.rules.ways import ac_cables
from sld.steps.ledger import Ratings
from sld.steps.line_sums import lines_fed
from sld.words import amount, phrase


@rule("AC35", "neutral of single-phase inverters on one feeder", Severity.ADVICE, "IEC 60364-5-52 524.2")
def neutral_of_single_phase_inverters(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for cable in ac_cables(system):
        units = [unit for unit in system.inverters_behind(cable.key) if lines_count(system, unit.key) == 1]
        line = ratings.get(cable.key, Symbol.IEXPORT)
        if ratings.get(cable.key, Symbol.S_NEUTRAL) is not None:
            continue
        if len(units) < 2 or phases(system, cable.owner) == 1 or line is None:
            continue
        if len({lines_fed(system, unit) for unit in units}) == 1 and lines_fed(system, units[0]) is not None:
            continue  # the neutral is loaded as their one line is, whatever stops
        now = ratings.get(cable.key, Symbol.I_NEUTRAL)
        yield Breach(
            phrase(
                "the neutral of {cable} carries {now} while its {count} single-phase inverters run, and up "
                "to {line}, a whole line current, when some fail",
                cable=named(cable),
                now=now or amount(0.0, "A"),
                count=len(units),
                line=line,
            ),
            phrase("do not reduce the neutral"),
            cable.at,
            cable.key,
            (),
            (line,),
        )
