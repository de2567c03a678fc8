"""What stands ahead of a device and helps it through a short circuit."""

from __future__ import annotations

from sld.model.device import Apparatus, Busbar
from sld.model.kinds.role import BACKED_UP
from sld.model.system import System
from sld.quantity import Rating
from sld.ratings.symbol import Symbol
from sld.rules.compare import above, below
from sld.steps.ledger import Ratings
from sld.steps.protection import overcurrent_device, series_device

__all__ = ["device_ahead", "is_backed_up"]


def device_ahead(system: System, device: Apparatus | Busbar) -> Apparatus | None:
    """Return the overcurrent device that backs a device up: ahead of it; of a switch or RCD also the one in series."""
    if isinstance(device, Busbar) or device.family:
        return overcurrent_device(system, device.key)
    return series_device(system, device)


def is_backed_up(system: System, ratings: Ratings, device: Apparatus, current: Rating) -> bool:
    """Return whether the spec says that a breaker breaks a current together with the device ahead of it.

    It says so of the breaker itself, or of the board that it sits in, and the device ahead is no larger than allowed.
    """
    given, board = device.given_as(BACKED_UP), system.devices.get(device.enclosure)
    stated = []
    if given is not None:
        stated.append((device_ahead(system, device), given.conditional_current_ka, given.backup_fuse_max_a))
    if isinstance(board, Busbar):
        of_board = board.given
        stated.append((device_ahead(system, board), of_board.conditional_current_ka, of_board.backup_fuse_max_a))
    return any(
        conditional_ka is not None
        and not below(conditional_ka, current.value)
        and not (ahead is not None and most_a is not None and _is_larger(ratings, ahead, most_a))
        for ahead, conditional_ka, most_a in stated
    )


def _is_larger(ratings: Ratings, ahead: Apparatus, most_a: float) -> bool:
    rated = ratings.get(ahead.key, Symbol.IN)
    return rated is not None and above(rated.value, most_a)
