"""Operating voltage of DC surge protection too low.

What it checks
    The highest continuous operating voltage Ucpv of each DC surge protective device against the array voltage.

Why
    A device that sees more than its voltage for long conducts, overheats and burns; direct current does not put the
    arc out.

How
    Ucpv < Ucpv,min, which is Uoc,max as computed for the lowest temperature of the site.

Remedy
    A device for a higher voltage.

Clause
    IEC 61643-32:2017 (from memory). The factor 1.2 on Uoc of CLC/TS 50539-12, withdrawn, stood for the cold that is
    computed here.

Not covered
    The short-circuit rating of the device.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.kinds.dc import DC_SURGE_PROTECTION
from sld.model.system import System
from sld.ratings.symbol import Symbol
from sld.rules.compare import shortfalls, two
from sld.rules.naming import named
from sld.rules.nearest import size_at_least
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("SU04", "operating voltage of DC surge protection too low", Severity.DANGER, "IEC 61643-32")
def dc_surge_protection_voltage_too_low(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for device, rated, least in shortfalls(
        ratings, system.apparatus(DC_SURGE_PROTECTION), Symbol.UCPV, Symbol.UCPV_MIN
    ):
        has, needs = two(rated.value, least.value, "V")
        yield Breach(
            phrase(
                "{device} has Ucpv {has}, below the {needs} that the array needs",
                device=named(device),
                has=has,
                needs=needs,
            ),
            phrase("use a device with Ucpv {size}", size=size_at_least("spd_ucpv_v", least.value, "V")),
            (*device.at, "continuous_voltage"),
            device.key,
            (),
            (rated, least),
        )
