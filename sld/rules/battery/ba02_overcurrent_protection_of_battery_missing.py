"""Overcurrent protection of a battery missing.

What it checks
    Whether a battery whose circuit is given has a fuse or a circuit-breaker, in it or in the circuit.

Why
    A short circuit between battery and converter is fed by all that the cells give, until something burns.

How
    No fuse and no breaker in dc_circuit, and no protection_rated_current.

Remedy
    A fuse or DC circuit-breaker close to the battery.

Clause
    IEC 62485-2:2010 5; IEC 60364-4-43:2008 434 (from memory).
    NEC 2023 706.31(A), as
    https://ecmweb.com/maintenance-repair-operations/article/21137091/nec-requirements-for-energy-storage-systems tells.

Not covered
    What the electronics of the battery switches off: it is no protective device by itself.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.system import System
from sld.rules.naming import named
from sld.steps.batteries import overcurrent_protection, stores
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("BA02", "overcurrent protection of a battery missing", Severity.DANGER, "IEC 62485-2; IEC 60364-4-43 434")
def overcurrent_protection_of_battery_missing(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for store in stores(system):
        if store.given.protection_rated_current_a is None and overcurrent_protection(system, store) is None:
            yield Breach(
                phrase("nothing protects the circuit of {battery} against short circuit", battery=named(store)),
                phrase(
                    "add a `fuse` or `breaker` to `dc_circuit`, or give `protection_rated_current` if it is built in"
                ),
                (*store.at, "dc_circuit"),
                store.key,
                on_key=True,
            )
