"""What only the schedule says of protective devices: short circuits, isolation, directions of power."""

from __future__ import annotations

from sld.model.device import Apparatus
from sld.model.kinds.role import BackedUp, Directed
from sld.ratings.symbol import Symbol
from sld.spec.blocks.circuit import Breaker, Rcbo
from sld.steps import Ratings
from sld.words import NOTHING, Value, amount, phrase, sequence

__all__ = ["backed_up", "breaker", "direction", "rcbo"]


def backed_up(given: BackedUp) -> list[Value]:
    """Return what a device stands together with the one ahead, and how large that may be."""
    conditional_ka, most_a = given.conditional_current_ka, given.backup_fuse_max_a
    return [
        sequence([Symbol.INC, amount(conditional_ka, "kA")], " ") if conditional_ka is not None else "",
        phrase("behind at most {current}", current=amount(most_a, "A")) if most_a is not None else "",
    ]


def breaker(given: Breaker, device: Apparatus, ratings: Ratings) -> list[Value]:
    """Return what is said of a circuit-breaker besides its ratings."""
    trips = phrase("trips at {factor} In at most", factor=amount(given.trip_factor)) if given.trip_factor else ""
    clears_ms = given.clearing_time_ms
    clears = phrase("clears within {time}", time=amount(clears_ms, "ms")) if clears_ms is not None else ""
    return [trips, clears, *rcbo(given, device, ratings)]


def rcbo(given: Breaker | Rcbo, device: Apparatus, ratings: Ratings) -> list[Value]:
    """Return what is said of an RCBO, and of every circuit-breaker."""
    energy_a2s = given.let_through_energy_a2s
    energy = phrase("lets through {energy}", energy=amount(energy_a2s, "A²s")) if energy_a2s is not None else ""
    return [_ISOLATING[given.isolating], direction(given, device, ratings)[0], energy]


_ISOLATING = {
    True: phrase("suitable for isolation"),
    False: phrase("not suitable for isolation"),
    None: NOTHING,
}
_DIRECTIONS = {
    True: phrase("for both directions of power"),
    False: phrase("for one direction of power only"),
    None: NOTHING,
}


def direction(given: Directed, device: Apparatus, ratings: Ratings) -> list[Value]:
    """Return whether a device takes power from both sides, where that is known."""
    return [_DIRECTIONS[given.bidirectional]]
