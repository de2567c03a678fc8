"""Backup fuse of surge protection too large.

What it checks
    The fuse in the branch of each AC surge protective device, else the overcurrent device ahead, against the largest
    that its maker allows.

Why
    A device that fails short must be cut off before it bursts.

How
    backup_fuse, or without one In of the next overcurrent device upstream, > backup_fuse_max, where the data sheet
    states it.

Remedy
    A smaller fuse in the branch of the device (`backup_fuse`), or a device for a larger one.

Clause
    IEC 60364-5-53:2019 534.4.5 (number from memory); data of the maker.

Not covered
    Breaking capacity of a fuse in the branch, and its selectivity with the device ahead.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.device import Device
from sld.model.kinds.ac import AC_SURGE_PROTECTION
from sld.model.system import System
from sld.ratings.symbol import Symbol
from sld.rules.compare import above, two
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.steps.protection import overcurrent_device
from sld.words import Phrase, Sayable, phrase


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
        if given.backup_fuse_a is not None:
            if most_a is not None and above(given.backup_fuse_a, most_a):
                yield _own_fuse(device, given.backup_fuse_a, most_a)
            continue
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
            _remedy(allowed),
            (*device.at, "backup_fuse_max"),
            device.key,
            ((ahead.at, phrase("the device ahead")),),
            (rated,),
        )


def _own_fuse(device: Device, fuse_a: float, most_a: float) -> Breach:
    has, allowed = two(fuse_a, most_a, "A")
    return Breach(
        phrase(
            "{device} has a backup fuse of {has}, above the {allowed} that its maker allows",
            device=named(device),
            has=has,
            allowed=allowed,
        ),
        _remedy(allowed),
        (*device.at, "backup_fuse"),
        device.key,
    )


def _remedy(allowed: Sayable) -> Phrase:
    return phrase("use a backup fuse of at most {allowed} for the device", allowed=allowed)
