"""Touch voltage too high in a TT system.

What it checks
    The touch voltage of each RCD in a TT system against 50 V, at the end of the longest way behind it.

Why
    Just below its tripping current the RCD lets exposed parts stand at that voltage for good.

How
    (RA + RPE) · IΔn > 50 V with the electrode and the protective conductors up to the farthest device behind the RCD;
    where the loop outside the installation is stated, Zs · IΔn > 50 V.

Remedy
    An electrode of at most RA,max, or a smaller rated residual current.

Clause
    IEC 60364-4-41:2005+A1:2017 411.5.3.

Not covered
    Dry soil, which lifts the resistance; many codes advise 200 Ω at most.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.kinds.role import RESIDUAL_PROTECTION
from sld.model.system import System
from sld.ratings.symbol import Symbol
from sld.rules.compare import above, two
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.words import phrase

_LIMIT_V = 50.0


@rule("FA05", "touch voltage too high in a TT system", Severity.DANGER, "IEC 60364-4-41 411.5.3")
def touch_voltage_in_tt_too_high(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for device in system.apparatus(RESIDUAL_PROTECTION):
        touch, most = ratings.get(device.key, Symbol.UT), ratings.get(device.key, Symbol.RA_MAX)
        in_tt = system.earthing_at(device.key) == "TT"
        if not in_tt or touch is None or most is None or not above(touch.value, _LIMIT_V):
            continue
        has, allowed = two(touch.value, _LIMIT_V, "V")
        yield Breach(
            phrase(
                "{device} allows a touch voltage of {has}, above {allowed}",
                device=named(device),
                has=has,
                allowed=allowed,
            ),
            phrase(
                "bring the electrode with its protective conductors to at most {most}, or use a smaller rated residual "
                "current",
                most=most,
            ),
            (*system.electrode_path(device.key), "resistance"),
            device.key,
            ((device.at, phrase("the RCD")),),
            (touch, most),
        )
