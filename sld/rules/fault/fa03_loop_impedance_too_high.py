"""Loop impedance too high for disconnection.

What it checks
    The earth-fault loop impedance Zs at the far end of each circuit against the largest at which its breaker trips at
    once or its fuse or delayed release opens within the time allowed, in TN systems without an RCD on the way.

Why
    An earth fault that is not switched off in time leaves exposed parts live.

How
    Zs > Zs,max and no RCD sees the circuit. A fuse in a final circuit is held to the current that opens any gG fuse
    within 0.4 s, with profile BS 7671 to that standard's for BS 88-2; between two rows it counts as the next larger.
    A moulded-case breaker trips at 1.2 times the lowest setting whose delay leaves 0.1 s to open, earth faults by the
    release for them too.
    Danger where the spec states the loop impedance of the supply or its transformer; non-compliance where it had to be
    assumed.

Remedy
    A breaker of a lower curve, a device of a lower rating, a larger cable, or an RCD.

Clause
    IEC 60364-4-41:2005+A1:2017 411.4.4; fuses by IEC 60269-1 Table 3 and BS 7671 Table 41.2.

Not covered
    TT systems, which have rules of their own, and IT systems.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.device import Apparatus
from sld.model.kinds.ac import FUSE
from sld.model.system import System
from sld.quantity import Rating
from sld.ratings.symbol import Symbol
from sld.rules.compare import above, two
from sld.rules.naming import named
from sld.rules.ways import has_residual_device, key_of_trip, overcurrent_devices
from sld.steps.ledger import Ratings
from sld.steps.releases import release_of
from sld.words import phrase


@rule("FA03", "loop impedance too high for disconnection", Severity.DANGER, "IEC 60364-4-41 411.4.4")
def loop_impedance_too_high(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    known = system.supply.loop_impedance_ohm is not None or system.supply.transformer is not None
    for device in overcurrent_devices(system):
        if not system.earthing_at(device.key).startswith("TN"):
            continue
        loop, most = ratings.get(device.key, Symbol.ZS), ratings.get(device.key, Symbol.ZS_MAX)
        if loop is None or has_residual_device(system, device):
            continue
        if most is None:
            yield from _never_in_time(device, loop, ratings.get(device.key, Symbol.T_MAX))
            continue
        if not above(loop.value, most.value):
            continue
        has, allowed = two(loop.value, most.value, "Ω")
        is_fuse, limit = device.kind is FUSE, ratings.get(device.key, Symbol.T_MAX)
        release = release_of(device)
        waits = is_fuse or (release is not None and release.sees_short_circuits)
        acts = phrase("opens within {limit}", limit=limit) if waits and limit else phrase("trips at once")
        message = phrase(
            "{device} sees a loop of {has}, above the {allowed} at which it {acts}, and no RCD is on the way",
            device=named(device),
            has=has,
            allowed=allowed,
            acts=acts,
        )
        at, compared = (*device.at, key_of_trip(device)), (loop, most)
        lower = phrase("a lower curve or rated current")
        if waits:
            lower = phrase("a lower rated current") if is_fuse else phrase("a lower setting or a shorter delay")
        remedy = phrase(
            "use {lower}, a larger cable, or add an `rcd`; the loop may have {allowed}", lower=lower, allowed=allowed
        )
        if known:
            yield Breach(message, remedy, at, device.key, (), compared)
        else:
            yield Breach(
                phrase("{message}; the loop of the supply had to be assumed", message=message),
                phrase("give `loop_impedance` as the network operator states it, or {remedy}", remedy=remedy),
                at,
                device.key,
                ((("supply", "loop_impedance"), phrase("assumed")),),
                compared,
                severity=Severity.NON_COMPLIANCE,
            )


def _never_in_time(device: Apparatus, loop: Rating, limit: Rating | None) -> Iterator[Breach]:
    """Yield a finding for a breaker none of whose settings trips in time, whatever the loop."""
    release = release_of(device)
    if release is None or not release.sees_short_circuits or limit is None:
        return
    yield Breach(
        phrase("{device} has no setting that trips within {limit}", device=named(device), limit=limit),
        phrase("use a shorter `short_time_delay`, or set the instantaneous release"),
        (*device.at, "short_time_delay"),
        device.key,
        (),
        (loop, limit),
    )
