"""Operating voltage of AC surge protection too low.

What it checks
    The highest continuous operating voltage Uc of each AC surge protective device against that of the earthing
    system.

Why
    A device that sees more than its voltage for long ages, overheats and fails.

How
    Uc < Uc,min: 1.1 times the voltage to earth, or between lines in an IT system. By the NEC, the voltage to ground.

Remedy
    A device for a higher voltage.

Clause
    IEC 60364-5-53:2019 Table 534.1; NEC 2023 Article 242 (both from memory).

Not covered
    The path from neutral to earth of a device in a TT system.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.kinds.ac import AC_SURGE_PROTECTION
from sld.model.system import System
from sld.ratings.symbol import Symbol
from sld.rules.compare import shortfalls, two
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("SU09", "operating voltage of AC surge protection too low", Severity.NON_COMPLIANCE, "IEC 60364-5-53 Table 534.1")
def ac_surge_protection_voltage_too_low(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for device, rated, least in shortfalls(ratings, system.apparatus(AC_SURGE_PROTECTION), Symbol.UC, Symbol.UC_MIN):
        has, needs = two(rated.value, least.value, "V")
        yield Breach(
            phrase(
                "{device} has Uc {has}, below the {needs} that a {earthing_system} system needs",
                device=named(device),
                has=has,
                needs=needs,
                earthing_system=system.earthing_at(device.key),
            ),
            phrase("use a device with Uc of at least {needs}", needs=needs),
            (*device.at, "continuous_voltage"),
            device.key,
            (),
            (rated, least),
        )
