"""The energy that a protective device lets through into a cable: at the start of it for breakers, at its end for fuses.

A breaker lets more through the larger the current is, a fuse the smaller it is. So the energy never falls with the
current that is the worse one for the device, nor with the time that it takes.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.frozen import dataclass, replace
from sld.model.device import Apparatus
from sld.model.kinds.ac import BREAKER, RCBO
from sld.model.system import System
from sld.quantity import Rating
from sld.ratings import breaker, fuse
from sld.ratings import release as release_current
from sld.ratings import thermal as heating
from sld.ratings.specified import specified
from sld.ratings.symbol import Symbol
from sld.steps.ledger import Ledger
from sld.steps.protection import protective_family, tripping_curve
from sld.steps.releases import release_of
from sld.tables.table import NoRow
from sld.words import Phrase, phrase

__all__ = ["LetThrough", "of_breaker", "of_fuse"]

_AT_ONCE_S = 0.1
"""A breaker that trips instantaneously does so in less than this (IEC 60898-1:2015 Table 7)."""

_USUAL_CLEARING_S = 0.025
"""One and a half cycles at 60 Hz, for moulded-case breakers (IEEE 1584-2002, from memory); larger miniature ones are
faster (common practice, no source)."""

_AT_ONCE_ASSUMED = phrase("breaker clears a short circuit in 25 ms; its maker's let-through decides")

_LAID_DOWN_UP_TO_KA = 6.0
"""The breaking capacity of most miniature breakers. What class 3 allows above is for those of a higher one, which let
less through of the same current."""

_CERTAIN_UP_TO_KA = 4.5
"""What class 3 allows up to here is a danger to a thinner conductor. Above, no breaker need let as much through, and a
note to IEC 60364-4-43 434.5 takes short-circuit protection as given behind class 3 (DIN VDE 0100-430 434.5 note 1, as a
school of the trade quotes it, https://eacademy.mitegro.com/energiebegrenzungsklasse-von-ls-schaltern/)."""

_TO_TWO_FIGURES = 0.99
"""The limits of class 3 are laid down to two figures: 30 000 A²s are what 1.5 mm² with PVC stands, 29 756 A²s."""


@dataclass(frozen=True, slots=True)
class LetThrough:
    """The I²t to count with, and the part of it that a standard lays down or the spec states; None where none is.

    certain: the part by which a thinner conductor is in danger whatever breaker of its kind is taken; left out, all
    that is laid down. assumed: what was assumed for it. permitted: a copper section that a handbook permits, where it
    is below the one by the energy.
    """

    energy: Rating
    laid_down: Rating | None
    assumed: tuple[Phrase, ...] = ()
    permitted: Rating | None = None
    certain: Rating | None = None


def of_breaker(system: System, ledger: Ledger, device: Apparatus, start_ka: float) -> LetThrough | None:
    """Return what a breaker lets through of the greatest current at the start of a cable, None where it is too small to
    trip at once.

    The maker's figure, else the table of class 3 for miniature breakers, else the current and the clearing time.
    """
    trips_a, rated = ledger.value(device.key, Symbol.IA), ledger.get(device.key, Symbol.IN)
    if rated is None or (trips_a is not None and 1000 * start_ka < trips_a):
        return None
    stated = device.given_as(BREAKER) or device.given_as(RCBO)
    if stated is not None and stated.let_through_energy_a2s is not None:
        energy = specified(Symbol.I2T, stated.let_through_energy_a2s, "A²s")
        return LetThrough(energy, energy)
    curve = tripping_curve(ledger, device)
    if protective_family(device) == "MCB" and curve:
        try:
            return _of_class_3(system, ledger, device, curve, rated.value, start_ka)
        except NoRow:
            pass
    moulded = device.given_as(BREAKER)
    stated_ms = moulded.clearing_time_ms if moulded is not None else None
    release = release_of(device)
    if stated_ms is None and release is not None and release.sees_short_circuits:
        passes, by_delay = release_current.energy(release, 1000 * start_ka, _USUAL_CLEARING_S)
        energy = _least([passes, *_fuses_ahead(system, ledger, device, start_ka)])
        return LetThrough(energy, energy) if by_delay else LetThrough(energy, None, (_AT_ONCE_ASSUMED,))
    usual_s = _AT_ONCE_S if curve == "E" else _USUAL_CLEARING_S  # which waits for the devices behind it
    time_s = usual_s if stated_ms is None else stated_ms / 1000
    energy = _least([heating.cleared_energy(1000 * start_ka, time_s), *_fuses_ahead(system, ledger, device, start_ka)])
    if stated_ms is not None:
        return LetThrough(energy, energy)
    return LetThrough(energy, None, (_AT_ONCE_ASSUMED,))


def _of_class_3(
    system: System, ledger: Ledger, device: Apparatus, curve: str, i_n_a: float, start_ka: float
) -> LetThrough:
    """Return what energy limiting class 3 allows, never more than flows in 0.1 s. Raises NoRow beyond its table."""
    # beyond the table the row of its greatest current is the least that counts
    tabulated_ka = min(start_ka, breaker.CLASS_3_UP_TO_KA)
    laid_down_ka = min(start_ka, _LAID_DOWN_UP_TO_KA)
    ahead = tuple(_fuses_ahead(system, ledger, device, start_ka))
    energy, laid_down, certain = (
        _least([breaker.let_through_energy(curve, i_n_a, ka), heating.cleared_energy(1000 * ka, _AT_ONCE_S), *ahead])
        for ka in (tabulated_ka, laid_down_ka, min(start_ka, _CERTAIN_UP_TO_KA))
    )
    certain = replace(certain, value=_TO_TWO_FIGURES * certain.value)
    said = [phrase("miniature circuit-breakers of energy limiting class 3")]
    if start_ka > tabulated_ka:
        said.append(phrase("let-through at 10 kA; above, the maker's figure decides"))
    return LetThrough(energy, laid_down, tuple(said), _permitted(curve, i_n_a, start_ka), certain)


def _permitted(curve: str, i_n_a: float, start_ka: float) -> Rating | None:
    try:
        return breaker.permitted_section(curve, i_n_a, start_ka)
    except NoRow:
        return None


def _fuses_ahead(system: System, ledger: Ledger, device: Apparatus, start_ka: float) -> Iterator[Rating]:
    """Yield what each fuse ahead lets through of a current: no more reaches what is behind it."""
    for other in system.upstream(device.key):
        if isinstance(other, Apparatus) and protective_family(other) == "gG":
            rated_a = ledger.value(other.key, Symbol.IN)
            try:
                if rated_a is not None:
                    yield fuse.energy_until_open(rated_a, 1000 * start_ka)
            except NoRow:
                continue


def _least(energies: list[Rating]) -> Rating:
    return min(energies, key=lambda energy: energy.value)


def of_fuse(i_n_a: float, least_a: float, bs_88: bool) -> LetThrough | None:
    """Return what a gG fuse lets through of the least current of a fault, None for a fuse that no table holds.

    Below the current at which it opens within 5 s that one counts: it lets no less through, and overload protection
    decides.
    """
    try:
        longest = fuse.opening_current(i_n_a, 5.0)
        energy = fuse.energy_until_open(i_n_a, max(least_a, longest.value), bs_88)
    except NoRow:
        return None
    if least_a < longest.value:
        return LetThrough(energy, energy, (phrase("fault below the current that opens the fuse within 5 s"),))
    return LetThrough(energy, energy)
