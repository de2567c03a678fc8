"""Backup fuse of surge protection too large.

What it checks
    The overcurrent device ahead of each AC surge protective device against the largest that its maker allows.

Why
    A device that fails short must be cut off before it bursts.

How
    In of the next overcurrent device upstream > backup_fuse_max, where the data sheet states it.

Remedy
    A smaller fuse in the branch of the device, or a device for a larger one.

Clause
    IEC 60364-5-53:2019 534.4.5 (number from memory); data of the maker.

Not covered
    A fuse in the branch of the device itself; accept the finding with that reason.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.kinds.ac import AC_SURGE_PROTECTION
from sld.model.system import System
from sld.ratings.symbol import Symbol
from sld.rules.compare import above, two
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.steps.protection import overcurrent_device
from sld.words import phrase


@rule(
    "SU13",
    "backup fuse of surge protection too large",
    Severity.NON_COMPLIANCE,
    "IEC 60364-5-53 534.4.5; data of the maker",
)
def backup_fuse_of_surge_protection_too_large(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for device, given in system.given_as(AC_SURGE_PROTECTION):
        most_a = given.backup_fuse_max_a
        ahead = overcurrent_device(system, device.key)
        rated = ratings.get(ahead.key, Symbol.IN) if ahead else None
        if ahead is None or rated is None or most_a is None or not above(rated.value, most_a):
            continue
        has, allowed = two(rated.value, most_a, "A")
        yield Breach(
            phrase(
                "{device} is behind {ahead} of {has}, above the {allowed} that its maker allows",
                device=named(device),
                ahead=named(ahead),
                has=has,
                allowed=allowed,
            ),
            phrase("use a backup fuse of at most {allowed} for the device", allowed=allowed),
            (*device.at, "backup_fuse_max"),
            device.key,
            ((ahead.at, phrase("the device ahead")),),
            (rated,),
        )
