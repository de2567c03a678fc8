"""Adjustable releases of moulded-case circuit-breakers: what is sure to trip, what holds, what passes meanwhile.

Settings by the letters of IEC 60947-2: Ir overload, Isd and tsd short time, Ii instantaneous, Ig and tg earth fault.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.citation import from_memory
from sld.frozen import dataclass
from sld.quantity import Given, Rating
from sld.ratings import thermal
from sld.ratings.symbol import Symbol
from sld.words import phrase

__all__ = ["Release", "earth_tripping_current", "energy", "holding_current", "tripping_current"]

_UPPER, _LOWER = 1.2, 0.8
"""A short-circuit release trips within 20 % of its setting (IEC 60947-2 8.3.3.1.2, from memory)."""

_BREAK_S = 0.1
"""The contacts are open no later than this after the delay that is set (common practice, no source)."""

_ROUNDING_S = 1e-9

_CLAUSE = from_memory("IEC 60947-2", remark=phrase("tolerance 20 %"))


@dataclass(frozen=True, slots=True)
class Release:
    """The settings of a breaker in A and s, None where the spec gives none; a delay left out is none."""

    i_r_a: float | None = None
    i_sd_a: float | None = None
    t_sd_s: float = 0.0
    i_i_a: float | None = None
    i_g_a: float | None = None
    t_g_s: float = 0.0

    @property
    def sees_short_circuits(self) -> bool:
        """Return whether a setting says at which current of a short circuit it trips."""
        return self.i_sd_a is not None or self.i_i_a is not None


def _in_time(delay_s: float, allowed_s: float | None) -> bool:
    """Return whether a delay leaves time to open; without a limit only what has no delay does."""
    return delay_s == 0.0 or (allowed_s is not None and delay_s + _BREAK_S <= allowed_s + _ROUNDING_S)


def _rating(name: str, setting_a: float, factor: float, symbol: Symbol, delay_s: float = 0.0) -> Rating:
    given = [Given("k", factor), Given(name, setting_a, "A")]
    if delay_s:
        given.append(Given("t", delay_s, "s"))
    return Rating(symbol, factor * setting_a, "A", f"k · {name}", tuple(given), _CLAUSE)


def _short_circuit(release: Release) -> Iterator[tuple[str, float, float]]:
    if release.i_sd_a is not None:
        yield "Isd", release.i_sd_a, release.t_sd_s
    if release.i_i_a is not None:
        yield "Ii", release.i_i_a, 0.0


def tripping_current(release: Release, allowed_s: float | None) -> Rating | None:
    """Return the current in A of a short circuit that is sure to trip within `allowed_s` s, None where none is set.

    Source: IEC 60947-2 (from memory): 1.2 times the lowest setting whose delay leaves 0.1 s to open.
    """
    fits = [each for each in _short_circuit(release) if _in_time(each[2], allowed_s)]
    if not fits:
        return None
    name, setting_a, delay_s = min(fits, key=lambda each: each[1])
    return _rating(name, setting_a, _UPPER, Symbol.IA, delay_s)


def earth_tripping_current(release: Release, allowed_s: float | None) -> Rating | None:
    """Return the same of an earth fault by its own release, None where there is none, or its delay is too long."""
    if release.i_g_a is None or not _in_time(release.t_g_s, allowed_s):
        return None
    return _rating("Ig", release.i_g_a, _UPPER, Symbol.IA_EARTH, release.t_g_s)


def holding_current(release: Release) -> Rating | None:
    """Return the current in A up to which a breaker stays closed while one behind it opens at once.

    0.8 times the setting that has no delay; None where a delay leaves no such setting. Source as above.
    """
    at_once = [each for each in _short_circuit(release) if each[2] == 0.0]
    if not at_once:
        return None
    name, setting_a, _ = min(at_once, key=lambda each: each[1])
    return _rating(name, setting_a, _LOWER, Symbol.I_HOLD)


def energy(release: Release, i_k_a: float, at_once_s: float) -> tuple[Rating, bool]:
    """Return the greatest I²t in A²s that passes at fault currents up to `i_k_a` A, and whether a delay governs it.

    At once beyond the instantaneous setting, after the delay below it. Source: IEC 60364-4-43:2008 434.5.2.
    """
    delayed_a = i_k_a if release.i_i_a is None else min(i_k_a, _UPPER * release.i_i_a)
    slow = thermal.cleared_energy(delayed_a, release.t_sd_s + _BREAK_S) if release.t_sd_s else None
    fast = None if slow is not None and release.i_i_a is None else thermal.cleared_energy(i_k_a, at_once_s)
    if slow is not None and (fast is None or slow.value >= fast.value):
        return slow, True
    assert fast is not None, "one of the two passes"
    return fast, False
