"""Short-circuit withstand not shown.

What it checks
    RCDs, isolators, main switches, breakers and boards with a conditional short-circuit current: that current against
    the greatest fault current, and the fuse or breaker that backs them up against the largest that their maker allows.

Why
    A device that does not limit the current itself welds or bursts when more is let through than it was tested with.

How
    Inc < Ik,max of an RCD, isolator or main switch, or In of the device ahead or in series > backup_fuse_max. Danger
    where the fault current was stated, else non-compliance. Advice where more than 10 kA can flow and nothing is
    stated, nor does a board with a conditional current hold the device.

Remedy
    A device of higher conditional current, or the fuse ahead that its maker names.

Clause
    IEC 60364-4-43:2008 434.5.1; IEC 60364-5-53:2019 536.4.2; IEC 61008-1 (Inc), IEC 60947-3 (all from memory).

Not covered
    Whether the device ahead is of the make and type that the maker names. The breaking capacity of breakers: FA01, and
    the currents of boards: FA11.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.device import Apparatus, Busbar
from sld.model.kinds.role import BACKED_UP, OVERCURRENT_PROTECTION
from sld.model.system import System
from sld.quantity import Rating
from sld.ratings.symbol import Symbol
from sld.rules.back_up_protection import device_ahead, is_backed_up
from sld.rules.compare import above, below, two
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.words import phrase

_USUAL_KA = 10.0
"""The highest preferred conditional current of IEC 61008-1 for household use (from memory)."""


@rule("FA15", "short-circuit withstand not shown", Severity.DANGER, "IEC 60364-4-43 434.5.1; IEC 60364-5-53 536")
def conditional_current_too_low(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for device, given in system.given_as(BACKED_UP):
        current, stands = ratings.get(device.key, Symbol.IK_MAX), ratings.get(device.key, Symbol.INC)
        if not device.has(OVERCURRENT_PROTECTION) and current is not None:
            if stands is not None and below(stands.value, current.value):
                yield _too_low(system, device, stands, current)
            elif stands is None and not device.assumed and not is_backed_up(system, ratings, device, current):
                yield from _not_stated(device, current)
        yield from _too_large(system, ratings, device, given.backup_fuse_max_a)
    for board in system.of(Busbar):
        yield from _too_large(system, ratings, board, board.given.backup_fuse_max_a)


def _too_low(system: System, device: Apparatus, stands: Rating, current: Rating) -> Breach:
    has, flows = two(stands.value, current.value, "kA")
    known = system.supply.prospective_fault_current_ka is not None or system.supply.transformer is not None
    return Breach(
        phrase(
            "{device} stands {has} (Inc), below the greatest fault current of {flows}",
            device=named(device),
            has=has,
            flows=flows,
        ),
        phrase("use a device with a conditional current of at least {flows}", flows=flows),
        (*device.at, "conditional_current"),
        device.key,
        () if known else ((("supply", "prospective_fault_current"), phrase("assumed")),),
        (stands, current),
        severity=Severity.DANGER if known else Severity.NON_COMPLIANCE,
    )


def _not_stated(device: Apparatus, current: Rating) -> Iterator[Breach]:
    if not above(current.value, _USUAL_KA):
        return
    yield Breach(
        phrase(
            "{device} states no conditional current, and up to {current} can flow",
            device=named(device),
            current=current,
        ),
        phrase("give `conditional_current` and `backup_fuse_max` from the data of its maker"),
        (*device.at, "conditional_current"),
        device.key,
        (),
        (current,),
        severity=Severity.ADVICE,
    )


def _too_large(system: System, ratings: Ratings, device: Apparatus | Busbar, most_a: float | None) -> Iterator[Breach]:
    ahead = device_ahead(system, device)
    rated = ratings.get(ahead.key, Symbol.IN) if ahead is not None else None
    if most_a is None or ahead is None or rated is None or not above(rated.value, most_a):
        return
    has, allowed = two(rated.value, most_a, "A")
    yield Breach(
        phrase(
            "{device} is backed up by {ahead} of {has}, above the {allowed} that its maker allows",
            device=named(device),
            ahead=named(ahead),
            has=has,
            allowed=allowed,
        ),
        phrase("use a fuse or circuit-breaker of at most {allowed} ahead", allowed=allowed),
        (*device.at, "backup_fuse_max"),
        device.key,
        ((ahead.at, phrase("the device ahead")),),
        (rated,),
        severity=Severity.NON_COMPLIANCE,
    )
