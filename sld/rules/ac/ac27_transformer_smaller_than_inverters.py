"""Transformer smaller than the inverters.

What it checks
    The rated power of the site's transformer against the apparent power of all inverters and of the
    batteries with a converter of their own.

Why
    At full sun the transformer is overloaded for hours: it ages, overheats and is switched off.

How
    Rated power < sum of the highest apparent powers.

Remedy
    A larger transformer, or a limit of the power at the inverters; then accept the finding with it.

Clause
    IEC 60076-1 and IEC 60076-7 (loading; common practice: no overload by generation).

Not covered
    Loads, which may take from the power.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.device import Transformer
from sld.model.system import System
from sld.quantity import pair
from sld.ratings.symbol import Symbol
from sld.rules.compare import below
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("AC27", "transformer smaller than the inverters", Severity.NON_COMPLIANCE, "IEC 60076-1; common practice")
def transformer_smaller_than_inverters(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    given, total = system.supply.transformer, ratings["", Symbol.SAC]
    for device in system.of(Transformer):
        if given is None or not below(given.rated_power_va, total.value):
            continue
        has, needs = pair(given.rated_power_va / 1000, total.value / 1000)
        yield Breach(
            phrase(
                "{device} has {has} kVA, below the {needs} kVA of all that feeds in",
                device=named(device),
                has=has,
                needs=needs,
            ),
            phrase("use a transformer of at least {needs} kVA, or limit the inverters", needs=needs),
            ("supply", "transformer", "rated_power"),
            device.key,
            (),
            (total,),
        )
