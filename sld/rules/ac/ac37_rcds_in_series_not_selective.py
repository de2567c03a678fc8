"""RCDs in series not selective.

What it checks
    Each RCD and RCBO against the next one towards the network.

Why
    An earth fault or the leakage of one circuit trips both, and the circuits beside it lose their supply.

How
    The one ahead is not time-delayed (type S), or its rated residual current is less than 3 times the one here.

Remedy
    An RCD of type S with 3 times the residual current ahead, or the circuit taken off ahead of it.

Clause
    IEC 60364-5-53:2019 531.3.6; IEC 61008-1 (from memory).

Not covered
    Delays set on devices by IEC 60947-2 Annex M, and the residual current monitoring inside inverters.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.kinds.role import RESIDUAL_PROTECTION
from sld.model.system import System
from sld.ratings.symbol import Symbol
from sld.rules.compare import below
from sld.rules.naming import named
from sld.rules.ways import is_delayed
from sld.steps.ledger import Ratings
from sld.steps.selectivity import residual_device_ahead
from sld.words import amount, listing, phrase

_LEAST_RATIO = 3.0


@rule("AC37", "RCDs in series not selective", Severity.ADVICE, "IEC 60364-5-53 531.3.6")
def rcds_in_series_not_selective(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for device in system.apparatus(RESIDUAL_PROTECTION):
        ahead, ratio = residual_device_ahead(system, device), ratings.get(device.key, Symbol.IDN_RATIO)
        if ahead is None or ratio is None:
            continue
        delayed = is_delayed(ahead)
        near = below(ratio.value, _LEAST_RATIO)
        if delayed and not near:
            continue
        why = [] if delayed else [phrase("it has no delay (type S)")]
        if near:
            times = amount(ratio.value)
            why.append(phrase("it has {times} times its residual current, less than 3 times", times=times))
        yield Breach(
            phrase(
                "{ahead} may trip with {device} behind it: {why}",
                ahead=named(ahead),
                device=named(device),
                why=listing(why),
            ),
            phrase("use type S (`selective: true`) with at least 3 times the residual current ahead"),
            ahead.at,
            device.key,
            ((device.at, phrase("the RCD behind it")),),
            (ratio,),
        )
