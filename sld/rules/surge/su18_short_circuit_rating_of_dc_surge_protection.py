"""Short-circuit rating of DC surge protection too low.

What it checks
    The short-circuit current rating Iscpv of DC surge protective devices, where it is given, against the current of the
    array.

Why
    A device at its end of life conducts the current of the array. What it cannot cut off sets it on fire.

How
    Iscpv < Isc,max of the input.

Remedy
    A device with a higher Iscpv.

Clause
    IEC 61643-31 (from memory).

Not covered
    Devices whose rating is not given.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.kinds.dc import DC_SURGE_PROTECTION
from sld.model.system import System
from sld.ratings.symbol import Symbol
from sld.rules.compare import shortfalls, two
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("SU18", "short-circuit rating of DC surge protection too low", Severity.DANGER, "IEC 61643-31")
def short_circuit_rating_of_dc_surge_protection(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for device, rated, least in shortfalls(
        ratings, system.apparatus(DC_SURGE_PROTECTION), Symbol.ISCPV, Symbol.ISCPV_MIN
    ):
        has, needs = two(rated.value, least.value, "A")
        yield Breach(
            phrase(
                "{device} stands {has} of the array, which delivers up to {needs}",
                device=named(device),
                has=has,
                needs=needs,
            ),
            phrase("use a device with Iscpv of at least {needs}", needs=needs),
            (*device.at, "short_circuit_current"),
            device.key,
            (),
            (rated, least),
        )
