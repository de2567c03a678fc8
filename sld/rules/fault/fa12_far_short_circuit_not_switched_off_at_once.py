"""Far short circuit not switched off at once.

What it checks
    The least current of a short circuit between live conductors at the far end of each circuit against the current at
    which its breaker trips at once.

Why
    An RCD does not see a short circuit between line and neutral. Below its magnetic trip the breaker lets it flow for
    seconds, and only the overload release ends it.

How
    Ik,min < Ia of a breaker or RCBO, by conductors at their operating temperature and Cmin. Non-compliance where it is
    set so high that not even the greatest current at its place makes it trip at once: Ik,max < Ia.

Remedy
    A lower curve, a larger cable, or a proof that k²S² is not exceeded until the overload release trips.

Clause
    IEC 60364-4-43:2008 434.5.2 and 435.1 (from memory).

Not covered
    Fuses, which protect over their whole range. Circuits whose earth-fault loop is already found too high (FA03).
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.device import Apparatus
from sld.model.kinds.role import TRIPPING
from sld.model.system import System
from sld.quantity import Rating
from sld.ratings.symbol import Symbol
from sld.rules.compare import above, below, two
from sld.rules.naming import named
from sld.rules.ways import has_residual_device, key_of_trip
from sld.steps.ledger import Ratings
from sld.steps.releases import release_of
from sld.words import phrase


@rule("FA12", "far short circuit not switched off at once", Severity.NON_COMPLIANCE, "IEC 60364-4-43 434.5.2")
def far_short_circuit_not_switched_off_at_once(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for device in system.apparatus(TRIPPING):
        least, trips = ratings.get(device.key, Symbol.IK_MIN), ratings.get(device.key, Symbol.IA)
        if least is None or trips is None or not below(least.value, trips.value):
            continue
        if _loop_is_told(system, ratings, device):
            continue
        release, most = release_of(device), ratings.get(device.key, Symbol.IK_MAX)
        if release is not None and most is not None and below(1000 * most.value, trips.value):
            yield _never(device, most, trips)
            continue
        flows, needs = two(least.value, trips.value, "A")
        yield Breach(
            phrase(
                "{device} trips at once from {needs} on, and a short circuit at the far end may be {flows}",
                device=named(device),
                needs=needs,
                flows=flows,
            ),
            phrase(
                "use a lower curve or a larger cable, or show that the cable stands it until the overload release trips"
            ),
            (*device.at, "curve"),
            device.key,
            (),
            (least, trips),
            severity=Severity.ADVICE,
        )


def _never(device: Apparatus, most: Rating, trips: Rating) -> Breach:
    flows, needs = two(1000 * most.value, trips.value, "A")
    return Breach(
        phrase(
            "{device} trips at once from {needs} on, and the greatest short circuit there is {flows}",
            device=named(device),
            needs=needs,
            flows=flows,
        ),
        phrase("set it to trip at the currents that flow there"),
        (*device.at, key_of_trip(device)),
        device.key,
        (),
        (most, trips),
    )


def _loop_is_told(system: System, ratings: Ratings, device: Apparatus) -> bool:
    """Return whether FA03 has said already that too little flows at the far end."""
    loop, most = ratings.get(device.key, Symbol.ZS), ratings.get(device.key, Symbol.ZS_MAX)
    if loop is None or most is None or not system.earthing_at(device.key).startswith("TN"):
        return False
    return above(loop.value, most.value) and not has_residual_device(system, device)
