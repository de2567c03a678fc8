"""Cable of a generator not protected at the set.

What it checks
    Whether a generator whose circuit has a cable has an overcurrent device at its own end of it, and an RCD there where
    its short-circuit current does not trip that device.

Why
    The cable of a generator is fed from the generator alone: a device at the other end sees nothing of a fault in it.

How
    No overcurrent device between the generator and the first cable and no protection_rated_current (non-compliance); no
    RCD there and no residual_protection, and short_circuit_current not given or below what trips the device (danger).

Remedy
    The devices at the end of the `circuit`, or what is built into the set.

Clause
    IEC 60364-5-55:2011 551.5.1 and 551.4 (from memory).

Not covered
    Generators whose circuit is assumed, or has no cable; the voltage regulator, which may hold the current for a time.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from sld.finding import Breach, Severity, rule
from sld.model.device import Cable, Device, GeneratorUnit
from sld.model.kinds.role import OVERCURRENT_PROTECTION, RESIDUAL_PROTECTION
from sld.model.kinds.row import Trait
from sld.model.system import System
from sld.ratings.symbol import Symbol
from sld.rules.compare import below
from sld.rules.naming import named
from sld.rules.ways import own_circuit
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("BU09", "cable of a generator not protected at the set", Severity.DANGER, "IEC 60364-5-55 551.5.1, 551.4")
def generator_cable_not_protected(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for unit in system.of(GeneratorUnit):
        at_the_set = _ahead_of_cable(own_circuit(system, unit.key))
        if at_the_set is None:
            continue
        at = (*unit.at, "circuit")
        if unit.given.protection_rated_current_a is None and not _has(at_the_set, OVERCURRENT_PROTECTION):
            yield Breach(
                phrase("nothing at {generator} protects its cable against overcurrent", generator=named(unit)),
                phrase("end its `circuit` with a `breaker`, or give `protection_rated_current` if it is built in"),
                at,
                unit.key,
                on_key=True,
                severity=Severity.NON_COMPLIANCE,
            )
        trips, current = ratings.get(unit.key, Symbol.IA), ratings.get(unit.key, Symbol.IK_ISLAND)
        enough = trips is not None and current is not None and not below(current.value, trips.value)
        if not (enough or unit.given.residual_protection or _has(at_the_set, RESIDUAL_PROTECTION)):
            yield Breach(
                phrase("a fault to earth of the cable of {generator} is not switched off", generator=named(unit)),
                phrase("end its `circuit` with an `rcd`, or give `residual_protection` if it is built in"),
                at,
                unit.key,
                (),
                tuple(each for each in (current, trips) if each),
                on_key=True,
            )


def _ahead_of_cable(circuit: list[Device]) -> list[Device] | None:
    """Return the devices between a generator and its first cable, None where there is none."""
    place = next((place for place, each in enumerate(circuit) if isinstance(each, Cable)), None)
    return None if place is None else circuit[:place]


def _has(devices: list[Device], role: Trait[Any]) -> bool:
    return any(each.has(role) for each in devices)
