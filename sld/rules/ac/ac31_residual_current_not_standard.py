"""Residual current outside the standard series.

What it checks
    The given rated residual current of each RCD and RCBO against the series 6, 10, 30, 100, 300, 500, 1000 mA.

Why
    A value outside is a slip of the unit in most cases, and all limits of touch voltage rest on it.

How
    Non-compliance above 1000 mA; advice for another value that the series does not hold.

Remedy
    The value on the device.

Clause
    IEC 61008-1, IEC 61009-1 (series from memory).

Not covered
    Adjustable residual current devices to IEC 60947-2 Annex M; accept the finding with the setting.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.kinds.role import RESIDUAL_PROTECTION
from sld.model.system import System
from sld.quantity import shown
from sld.rules.compare import above
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.tables.table import series
from sld.words import amount, phrase


@rule(
    "AC31",
    "residual current outside the standard series",
    Severity.NON_COMPLIANCE,
    "IEC 61008-1 (from memory)",
)
def residual_current_not_standard(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    standard = series("rcd_idn_ma")
    for device, given in system.given_as(RESIDUAL_PROTECTION):
        given_ma = given.residual_current_ma
        if given_ma is None or given_ma in standard:
            continue
        too_high = above(given_ma, max(standard))
        usual = ", ".join(shown(each, 4) for each in standard)
        yield Breach(
            phrase(
                "{device} has a residual current of {given}; the series is {usual} mA",
                device=named(device),
                given=amount(given_ma, "mA", digits=4),
                usual=usual,
            ),
            phrase("use at most {standard}", standard=amount(max(standard), "mA", digits=4))
            if too_high
            else phrase("give the value that stands on the device"),
            (*device.at, "residual_current"),
            device.key,
            severity=Severity.NON_COMPLIANCE if too_high else Severity.ADVICE,
        )
