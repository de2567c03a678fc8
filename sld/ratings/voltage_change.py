"""Rise and drop of voltage along a cable in V and percent, and the length that a limit allows.

A percentage always belongs to the voltage it is taken of: line to neutral for one phase, line to line for three.
"""

from __future__ import annotations

from collections.abc import Sequence
from math import sqrt

from sld.citation import cited, from_memory, in_annex
from sld.quantity import Given, Rating
from sld.ratings.domain import require_not_negative, require_phase_count, require_positive
from sld.ratings.symbol import Symbol
from sld.words import NOTHING, phrase, sequence

__all__ = [
    "change_percent",
    "longest_length",
    "voltage_at_inverter",
    "voltage_drop",
    "voltage_rise",
    "voltage_rise_sum",
]

_CLAUSE = from_memory(in_annex("IEC 60364-5-52:2009", "G"), remark=phrase("formula G.52.2"))
_REACTIVE = ("supplied", "absorbed")


def _change(
    symbol: Symbol,
    phase_count: int,
    i_a: float,
    length_m: float,
    r_ohm_per_km: float,
    x_ohm_per_km: float,
    cos_phi: float,
    x_sign: int,
) -> Rating:
    require_phase_count(phase_count)
    require_not_negative(i_a=i_a, length_m=length_m, r_ohm_per_km=r_ohm_per_km, x_ohm_per_km=x_ohm_per_km)
    if not 0 <= cos_phi <= 1:
        raise ValueError(f"cos_phi must lie between 0 and 1: {cos_phi}")
    sin_phi = sqrt(1 - cos_phi**2)
    per_conductor_v = i_a * length_m / 1000 * (r_ohm_per_km * cos_phi + x_sign * x_ohm_per_km * sin_phi)
    value = per_conductor_v * (2 if phase_count == 1 else sqrt(3))
    formula = f"{'2' if phase_count == 1 else '√3'} · I · L · (R · cosφ {'+' if x_sign > 0 else '−'} X · sinφ)"
    given = (
        Given("I", i_a, "A"),
        Given("L", length_m, "m", phrase("one way")),
        Given("R", r_ohm_per_km, "Ω/km"),
        Given("X", x_ohm_per_km, "Ω/km"),
        Given("cosφ", cos_phi),
    )
    return Rating(symbol, value, "V", formula, given, _CLAUSE)


def _x_sign(reactive: str, raises: str) -> int:
    if reactive not in _REACTIVE:
        raise ValueError(f"reactive must be one of {', '.join(_REACTIVE)}, not {reactive}")
    return 1 if reactive == raises else -1


def voltage_rise(
    phase_count: int,
    i_a: float,
    length_m: float,
    r_ohm_per_km: float,
    x_ohm_per_km: float = 0.0,
    cos_phi: float = 1.0,
    reactive: str = "supplied",
) -> Rating:
    """Return the rise ΔU in V from the network to an inverter that feeds `i_a` A over `length_m` m (one way).

    One phase: line to neutral, out and back; three phases: line to line. `reactive`: whether the inverter supplies
    reactive power (raises the voltage further) or absorbs it (lowers it; the result may be negative).
    Raises ValueError for an input outside its range. Source: IEC 60364-5-52:2009 Annex G, sign of X from P and Q flow.
    """
    sign = _x_sign(reactive, "supplied")
    return _change(Symbol.DU_RISE_V, phase_count, i_a, length_m, r_ohm_per_km, x_ohm_per_km, cos_phi, sign)


def voltage_drop(
    phase_count: int,
    i_a: float,
    length_m: float,
    r_ohm_per_km: float,
    x_ohm_per_km: float = 0.0,
    cos_phi: float = 1.0,
    reactive: str = "absorbed",
) -> Rating:
    """Return the drop ΔU in V from the network to a load; an inductive load absorbs reactive power.

    Units, errors and source as `voltage_rise`.
    """
    sign = _x_sign(reactive, "absorbed")
    return _change(Symbol.DU_DROP_V, phase_count, i_a, length_m, r_ohm_per_km, x_ohm_per_km, cos_phi, sign)


def change_percent(change: Rating, u_v: float) -> Rating:
    """Return a change of voltage in percent of `u_v` V: line to neutral for one phase, line to line for three.

    Raises ValueError for a voltage of zero or less. Source: as the change.
    """
    require_positive(u_v=u_v)
    given = (Given("ΔU", change.value, "V"), Given("U", u_v, "V"), *change.given)
    symbol = Symbol.DU_RISE if change.symbol is Symbol.DU_RISE_V else Symbol.DU_DROP
    formula = sequence(["100 · ΔU / U, ΔU = ", change.formula], "")
    return Rating(symbol, 100 * change.value / u_v, "%", formula, given, change.clause, NOTHING, change.assumptions)


def voltage_rise_sum(rises_percent: Sequence[Rating]) -> Rating:
    """Return the whole rise in percent from the origin to the inverter: the sum over all parts of the way.

    Raises ValueError for no part, or for parts that are not in percent. Source: AS/NZS 4777.1:2016 3.3.3 (whole path).
    """
    if not rises_percent:
        raise ValueError("a way has at least one part")
    if any(rise.unit != "%" for rise in rises_percent):
        raise ValueError("only percentages of the same voltage can be summed")
    given = tuple(Given(f"Δu{place}", rise.value, "%") for place, rise in enumerate(rises_percent, start=1))
    notes = tuple(dict.fromkeys(note for rise in rises_percent for note in rise.assumptions))
    value = sum(rise.value for rise in rises_percent)
    return Rating(
        Symbol.DU_SUM,
        value,
        "%",
        "Σ Δu",
        given,
        cited("AS/NZS 4777.1:2016 3.3.3", remark=phrase("whole path")),
        NOTHING,
        notes,
    )


def voltage_at_inverter(u_network_v: float, rise_percent: float) -> Rating:
    """Return the voltage in V at the inverter for a voltage at the network and a rise in percent of it.

    Raises ValueError for a voltage of zero or less. Source: EN 50160 (253 V on 230 V networks is compared with it).
    """
    require_positive(u_network_v=u_network_v)
    given = (Given("Unetwork", u_network_v, "V"), Given("Δu", rise_percent, "%"))
    value = u_network_v * (1 + rise_percent / 100)
    return Rating(Symbol.UINVERTER, value, "V", "Unetwork · (1 + Δu/100)", given, cited("EN 50160", "EN 50549-1:2019"))


def longest_length(limit_percent: float, u_v: float, change_at_one_metre: Rating) -> Rating | None:
    """Return the one-way length in m at which a change of voltage meets its limit, None where it never does.

    change_at_one_metre: `voltage_rise` or `voltage_drop` for 1 m. Raises ValueError for a limit or voltage <= 0.
    Source: as the change.
    """
    require_positive(limit_percent=limit_percent, u_v=u_v)
    if change_at_one_metre.value <= 0:
        return None
    value = limit_percent / 100 * u_v / change_at_one_metre.value
    given = (
        Given("Δu,limit", limit_percent, "%"),
        Given("U", u_v, "V"),
        Given(phrase("ΔU per metre"), change_at_one_metre.value, "V"),
    )
    return Rating(
        Symbol.LMAX_CABLE, value, "m", phrase("Δu,limit/100 · U / ΔU per metre"), given, change_at_one_metre.clause
    )
