"""Selectivity of two overcurrent devices in series: up to which current only the downstream one opens.

What the standards of the devices promise decides: ratio of gG fuses, gates of fuses, bands of breakers. A maker's
table may promise more, by the energy that his breakers let through.
"""

from __future__ import annotations

from sld.citation import citations, from_memory
from sld.frozen import dataclass
from sld.quantity import Given, Rating
from sld.ratings import breaker, fuse
from sld.ratings.domain import require_positive
from sld.ratings.release import Release, holding_current
from sld.ratings.symbol import Symbol
from sld.tables.table import NoRow
from sld.words import NOTHING, Phrase, amount, phrase, verbatim

__all__ = ["Protection", "overload_shortfall", "residual_ratio", "selectivity_limit"]

_FUSE_RATIO_FACTOR = 1.56
"""Two steps of the R10 series count as 1.6:1, also where they are 25 A over 16 A or 50 A over 32 A."""

_SMALLEST_FUSE_A = 16.0
_MCCB_LOWER_FACTOR = 0.8 / 1.2
_CLAUSE = from_memory("IEC 60364-5-53:2019 536")


@dataclass(frozen=True, slots=True)
class Protection:
    """An overcurrent device. family: gG, MCB or MCCB. curve: of an MCB. trip_factor: upper bound of the magnetic trip
    of an MCCB as a multiple of its rated current. release: its settings, which take the place of that."""

    family: str
    i_n_a: float
    curve: str = ""
    trip_factor: float | None = None
    release: Release | None = None


def overload_shortfall(upstream: Protection, downstream: Protection) -> Phrase | None:
    """Return why an overload may open the upstream device first, None where it does not.

    A fuse above a fuse or a breaker needs 1.6 times its rated current, a breaker a conventional non-tripping current of
    at least the conventional tripping current of the device below. Raises NoRow for an unknown device or rated current,
    ValueError for one of zero or less. Source: IEC 60269-1 (gG 1.6:1 from 16 A); IEC 60898-1, IEC 60947-2 (from
    memory); 1.6 of fuse over breaker is common practice.
    """
    require_positive(upstream_a=upstream.i_n_a, downstream_a=downstream.i_n_a)
    if upstream.family == "gG" and downstream.curve != "E":
        least_a = max(downstream.i_n_a, _SMALLEST_FUSE_A if downstream.family == "gG" else 0.0)
        if upstream.i_n_a >= _FUSE_RATIO_FACTOR * least_a:
            return None
        return phrase(
            "{i_n} is less than 1.6 times {least}",
            i_n=amount(upstream.i_n_a, "A", 6),
            least=amount(least_a, "A", 6),
        )
    holds = breaker.conventional_holding_current(_of_table(upstream), upstream.i_n_a)
    trips = breaker.conventional_tripping_current(_of_table(downstream), downstream.i_n_a)
    if holds.value >= trips.value:
        return None
    return phrase(
        "{holds} that it carries are less than the {trips} that trip the device below", holds=holds, trips=trips
    )


def selectivity_limit(upstream: Protection, downstream: Protection, i_k_max_ka: float | None) -> Rating | None:
    """Return the selectivity limit current Is in A: up to it only the downstream device opens, None where none is sure.

    It is the whole fault current for two gG fuses of 1.6:1, and for a gG fuse that the energy of a class 3 miniature
    breaker cannot melt; else what a fuse stands for 0.1 s, or the lower bound of the magnetic band of a breaker.
    i_k_max_ka: greatest fault current at the downstream device, None where it is not known. Raises NoRow for a device
    beyond the tables. Source: IEC 60269-1 Tables 3 and 7; IEC 60898-1:2015 Table 7; EN 60898-1 Annex ZA.
    """
    both = (Given("In,up", upstream.i_n_a, "A", verbatim(upstream.family)), Given("In,down", downstream.i_n_a, "A"))
    if upstream.family != "gG":
        if _waits(upstream) and not _waits(downstream):
            return _by_delay(upstream, i_k_max_ka, both)
        band = _magnetic_lower(upstream)
        if band.value <= _magnetic_lower_a(downstream):
            return None
        return Rating(Symbol.IS, band.value, "A", band.formula, (*both, *band.given), citations(_CLAUSE, band.clause))
    if i_k_max_ka is not None and (downstream.family == "gG" or _never_melts(upstream, downstream, i_k_max_ka)):
        formula = "Ik,max: In,up ≥ 1.6 · In,down" if downstream.family == "gG" else "Ik,max: I²t ≤ I²t,melt"
        said = () if downstream.family == "gG" else (phrase("miniature circuit-breakers of energy limiting class 3"),)
        clause = citations(_CLAUSE, from_memory("IEC 60269-1"))
        return Rating(
            Symbol.IS,
            1000 * i_k_max_ka,
            "A",
            formula,
            (*both, Given("Ik,max", i_k_max_ka, "kA")),
            clause,
            NOTHING,
            said,
        )
    holds = fuse.holding_current(upstream.i_n_a)
    if downstream.family == "MCB" and holds.value < _trips_at_a(downstream):
        return None
    return Rating(
        Symbol.IS,
        holds.value,
        "A",
        phrase("I,hold for 0.1 s"),
        (*both, holds.given[1]),
        citations(_CLAUSE, holds.clause),
        holds.table_row,
    )


def _of_table(device: Protection) -> str:
    return breaker.SELECTIVE if device.curve == "E" else device.family


def _waits(device: Protection) -> bool:
    """Return whether a breaker has a delay and no setting without one; a selective main circuit-breaker has it by its
    standard (DIN VDE 0641-21, as told in https://elektro.net/105670/anwendungshinweise-zum-einsatz-von-leitungsschutzschaltern)."""
    if device.curve == "E":
        return True
    release = device.release
    return release is not None and release.t_sd_s > 0 and holding_current(release) is None


def _by_delay(upstream: Protection, i_k_max_ka: float | None, both: tuple[Given, ...]) -> Rating | None:
    """Return the whole fault current: the breaker ahead waits while the one behind opens at once."""
    release = upstream.release
    if i_k_max_ka is None:
        return None
    delay = (Given("t", release.t_sd_s, "s"),) if release is not None else ()
    given = (*both, *delay, Given("Ik,max", i_k_max_ka, "kA"))
    return Rating(Symbol.IS, 1000 * i_k_max_ka, "A", phrase("by the delay of the breaker ahead"), given, _CLAUSE)


def _magnetic_lower(device: Protection) -> Rating:
    if device.family == "MCB":
        return breaker.instantaneous_holding_current(device.curve, device.i_n_a)
    held = holding_current(device.release) if device.release is not None else None
    if held is not None:
        return held
    factor = (device.trip_factor or 0.0) * _MCCB_LOWER_FACTOR
    given = (Given("m", factor, "", phrase("80 % of the setting")),)
    return Rating(
        Symbol.I_HOLD,
        factor * device.i_n_a,
        "A",
        "m · In",
        given,
        from_memory("IEC 60947-2", remark=phrase("tolerance 20 %")),
    )


def _magnetic_lower_a(device: Protection) -> float:
    return 0.0 if device.family == "gG" else _magnetic_lower(device).value


def _trips_at_a(device: Protection) -> float:
    return breaker.instantaneous_tripping_current(device.curve, device.i_n_a).value


def _never_melts(upstream: Protection, downstream: Protection, i_k_max_ka: float) -> bool:
    """Return whether the energy of a class 3 miniature breaker cannot melt the fuse ahead of it."""
    if downstream.family != "MCB" or i_k_max_ka > breaker.CLASS_3_UP_TO_KA:
        return False
    try:
        energy = breaker.let_through_energy(downstream.curve, downstream.i_n_a, i_k_max_ka)
        return energy.value <= fuse.pre_arcing_energy(upstream.i_n_a).value
    except NoRow:
        return False


def residual_ratio(upstream_ma: float, downstream_ma: float) -> Rating:
    """Return the ratio of the rated residual currents of two RCDs in series; from 3 on, with a delay upstream, they are
    selective.

    Raises ValueError for a current of zero or less. Source: IEC 60364-5-53:2019 531.3.6; IEC 61008-1 (from memory).
    """
    require_positive(upstream_ma=upstream_ma, downstream_ma=downstream_ma)
    given = (Given("IΔn,up", upstream_ma, "mA"), Given("IΔn,down", downstream_ma, "mA"))
    clause = from_memory("IEC 60364-5-53:2019 531.3.6", "IEC 61008-1")
    return Rating(Symbol.IDN_RATIO, upstream_ma / downstream_ma, "", "IΔn,up / IΔn,down", given, clause)
