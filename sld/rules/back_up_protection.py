"""What stands ahead of a device and helps it through a short circuit."""

from __future__ import annotations

from sld.model.device import Apparatus, Busbar
from sld.model.kinds.ac import FUSE
from sld.model.kinds.role import BACKED_UP
from sld.model.system import System
from sld.quantity import Rating
from sld.ratings.symbol import Symbol
from sld.rules.compare import above, below
from sld.steps.ledger import Ratings
from sld.steps.protection import overcurrent_device, series_device

__all__ = ["device_ahead", "is_backed_up"]

_LARGEST_FUSE_A = 100.0
"""Fuse ahead with which consumer units are tested (BS EN 61439-3 annex ZB, from memory)."""


def device_ahead(system: System, device: Apparatus | Busbar) -> Apparatus | None:
    """Return the overcurrent device that backs a device up: ahead of it; of a switch or RCD also the one in series."""
    if isinstance(device, Busbar) or device.family:
        return overcurrent_device(system, device.key)
    return series_device(system, device)


def is_backed_up(system: System, ratings: Ratings, device: Apparatus, current: Rating) -> bool:
    """Return whether the spec says that a breaker breaks a current together with the device ahead of it.

    It says so of the breaker itself, or of the board that it sits in, and the device ahead is no larger than allowed.
    Of a board only where a fuse is ahead: its conditional current is what the assembly withstands, and that breakers of
    less may sit in it is a fact of consumer units, tested behind a fuse (BS EN 61439-3 annex ZB, from memory).
    """
    given, board = device.given_as(BACKED_UP), system.devices.get(device.enclosure)
    if given is not None and _covers(given.conditional_current_ka, current):
        ahead, most_a = device_ahead(system, device), given.backup_fuse_max_a
        if ahead is None or most_a is None or not _is_larger(ratings, ahead, most_a):
            return True
    if not isinstance(board, Busbar) or not _covers(board.given.conditional_current_ka, current):
        return False
    fuse = device_ahead(system, board)
    most_a = board.given.backup_fuse_max_a or _LARGEST_FUSE_A
    return fuse is not None and fuse.family == FUSE.family and not _is_larger(ratings, fuse, most_a)


def _covers(conditional_ka: float | None, current: Rating) -> bool:
    return conditional_ka is not None and not below(conditional_ka, current.value)


def _is_larger(ratings: Ratings, ahead: Apparatus, most_a: float) -> bool:
    rated = ratings.get(ahead.key, Symbol.IN)
    return rated is not None and above(rated.value, most_a)
