"""Touch voltage at an RCD too high in a TN system.

What it checks
    The touch voltage Zs · IΔn of each RCD in a TN system against 50 V.

Why
    With such a loop the RCD does not see enough current, which is a sign of a broken or wrongly stated loop.

How
    Ut > 50 V.

Remedy
    A smaller loop impedance, or a smaller rated residual current.

Clause
    IEC 60364-4-41:2005+A1:2017 411.4.4, 411.4.5.

Not covered
    The time of disconnection of a delayed RCD.
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


@rule("FA07", "touch voltage at an RCD too high in a TN system", Severity.DANGER, "IEC 60364-4-41 411.4.4")
def touch_voltage_in_tn_too_high(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for device in system.apparatus(RESIDUAL_PROTECTION):
        touch = ratings.get(device.key, Symbol.UT)
        in_tn = system.earthing_at(device.key).startswith("TN")
        if not in_tn or touch is None or not above(touch.value, _LIMIT_V):
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
                "check `loop_impedance`, or use a smaller rated residual current, so that Ut is at most {allowed}",
                allowed=allowed,
            ),
            (*device.at, "residual_current"),
            device.key,
            ((("supply", "loop_impedance"), phrase("loop of the supply")),),
            (touch,),
        )
