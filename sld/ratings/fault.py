"""Short-circuit and earth-fault currents of a radial low-voltage circuit by IEC 60909-0.

Greatest currents are in kA (they meet breaking capacities), least currents in A (they meet tripping currents). The two
need two runs: a cold cable and cmax for the greatest, a hot cable and cmin for the least. Inverters are not counted.
"""

from __future__ import annotations

from collections.abc import Sequence
from math import exp, sqrt

from sld.citation import cited, from_memory, in_table
from sld.quantity import Given, Rating
from sld.ratings.domain import require_not_negative, require_positive
from sld.ratings.impedance import Impedance, in_series
from sld.ratings.symbol import Symbol
from sld.tables.table import table
from sld.words import phrase

__all__ = [
    "cable_impedance",
    "earth_fault_current",
    "generation_share",
    "line_to_line_current",
    "loop_impedance",
    "peak_current",
    "sequence_loop",
    "standard_peak_current",
    "three_phase_current",
]

_ALPHA_60909_PER_K = 0.004  # IEC 60909-0 rounds the coefficient, for copper and aluminium alike


def cable_impedance(
    r_20_ohm_per_km: float,
    x_ohm_per_km: float,
    length_m: float,
    temperature_c: float = 20.0,
    parallel_count: int = 1,
) -> Impedance:
    """Return the impedance in ohm of one conductor of a cable.

    At 20 °C for greatest currents, at its end temperature for least. Raises ValueError for an input outside its range.
    Source: IEC 60909-0:2016 (resistance at end temperature, 0.004/K).
    """
    require_not_negative(r_20_ohm_per_km=r_20_ohm_per_km, x_ohm_per_km=x_ohm_per_km, length_m=length_m)
    require_positive(parallel_count=parallel_count)
    hot = 1 + _ALPHA_60909_PER_K * (temperature_c - 20)
    require_positive(temperature_factor=hot)
    return Impedance(r_20_ohm_per_km * hot, x_ohm_per_km) * (length_m / 1000 / parallel_count)


def sequence_loop(z_1: Impedance, z_0: Impedance) -> Impedance:
    """Return the loop impedance (2 · Z1 + Z0) / 3 in ohm that belongs to sequence impedances.

    Source: IEC 60909-0:2016, single line-to-earth short circuit.
    """
    return (2 * z_1 + z_0) * (1 / 3)


_SYMBOLS = {
    ("Ik1", "max"): Symbol.IK1_MAX,
    ("Ik1", "min"): Symbol.IK1_MIN,
    ("Ik2", "max"): Symbol.IK2_MAX,
    ("Ik2", "min"): Symbol.IK2_MIN,
    ("Ik3", "max"): Symbol.IK3_MAX,
    ("Ik3", "min"): Symbol.IK3_MIN,
}


def _current(
    kind: str, formula: str, u_v: float, u_symbol: str, divisor: float, z: Impedance, c_factor: float, extreme: str
) -> Rating:
    if extreme not in ("max", "min"):
        raise ValueError(f"extreme must be max or min, not {extreme}")
    require_positive(c_factor=c_factor, z_ohm=z.magnitude_ohm, **{u_symbol: u_v})
    current_a = c_factor * u_v / (divisor * z.magnitude_ohm)
    value, unit = (current_a / 1000, "kA") if extreme == "max" else (current_a, "A")
    given = (
        Given(f"c{extreme}", c_factor),
        Given(u_symbol, u_v, "V"),
        Given("R", z.r_ohm, "Ω"),
        Given("X", z.x_ohm, "Ω"),
    )
    return Rating(
        _SYMBOLS[kind, extreme], value, unit, formula.replace("c ·", f"c{extreme} ·"), given, cited("IEC 60909-0:2016")
    )


def three_phase_current(u_n_v: float, z: Impedance, c_factor: float, extreme: str) -> Rating:
    """Return Ik3 = c · Un / (√3 · |Z|), in kA for "max" and in A for "min". u_n_v: line to line in V; z: ohm a phase.

    Raises ValueError for an input outside its range. Source: IEC 60909-0:2016, three-phase short circuit.
    """
    return _current("Ik3", "c · Un / (√3 · |Z|)", u_n_v, "Un", sqrt(3), z, c_factor, extreme)


def line_to_line_current(u_n_v: float, z: Impedance, c_factor: float, extreme: str) -> Rating:
    """Return Ik2 = c · Un / (2 · |Z|), in kA for "max" and in A for "min". Inputs, errors and source as above."""
    return _current("Ik2", "c · Un / (2 · |Z|)", u_n_v, "Un", 2.0, z, c_factor, extreme)


def earth_fault_current(u_0_v: float, loop: Impedance, c_factor: float, extreme: str) -> Rating:
    """Return Ik1 = c · U0 / |Zloop|, in kA for "max" and in A for "min".

    u_0_v: line to earth in V; loop: the whole loop in ohm (source, line and return conductor), or `sequence_loop`. The
    return may be the neutral or the protective conductor. Raises ValueError for an input outside its range.
    Source: IEC 60909-0:2016, single line-to-earth short circuit.
    """
    return _current("Ik1", "c · U0 / |Zloop|", u_0_v, "U0", 1.0, loop, c_factor, extreme)


def loop_impedance(chain: Sequence[Impedance]) -> Rating:
    """Return Zs in ohm at the end of a chain: source, then line and protective conductor of every part, hot.

    Raises ValueError for an empty chain. Source: IEC 60364-4-41:2005+A1:2017 411.4.4.
    """
    if not chain:
        raise ValueError("a loop has at least one part")
    total = in_series(chain)
    given = (Given("ΣR", total.r_ohm, "Ω"), Given("ΣX", total.x_ohm, "Ω"))
    clause = cited("IEC 60364-4-41:2005+A1:2017 411.4.4")
    return Rating(Symbol.ZS, total.magnitude_ohm, "Ω", "√(ΣR² + ΣX²)", given, clause)


def peak_current(i_k_ka: float, r_over_x_ratio: float) -> Rating:
    """Return the peak short-circuit current ip in kA: κ · √2 · Ik with κ = 1.02 + 0.98 · exp(−3 R/X).

    Raises ValueError for an input outside its range. Source: IEC 60909-0:2016 8.1 (from memory).
    """
    require_positive(i_k_ka=i_k_ka)
    require_not_negative(r_over_x_ratio=r_over_x_ratio)
    kappa = 1.02 + 0.98 * exp(-3 * r_over_x_ratio)
    given = (Given("Ik", i_k_ka, "kA"), Given("R/X", r_over_x_ratio), Given("κ", kappa))
    return Rating(
        Symbol.IP,
        kappa * sqrt(2) * i_k_ka,
        "kA",
        "κ · √2 · Ik",
        given,
        from_memory("IEC 60909-0:2016 8.1"),
    )


def standard_peak_current(i_k_ka: float) -> Rating:
    """Return the peak short-circuit current ip in kA at an assembly where only the size of Ik is known: n · Ik.

    Raises ValueError for a current of zero or less. Source: IEC 61439-1:2011 Table 7.
    """
    require_positive(i_k_ka=i_k_ka)
    for row in table("peak_factor"):
        if not row.has("i_k_up_to_ka") or i_k_ka <= row.number("i_k_up_to_ka"):
            break
    given = (Given("Ik", i_k_ka, "kA"), Given("n", row.number("n")))
    return Rating(
        Symbol.IP,
        row.number("n") * i_k_ka,
        "kA",
        "n · Ik",
        given,
        cited(in_table("IEC 61439-1:2011", "7")),
        row.reference,
    )


def generation_share(generation_a: float, i_k_ka: float) -> Rating:
    """Return the rated current of all inverters in percent of the fault current of the network; up to 5 % is neglected.

    Raises ValueError for an input outside its range. Source: IEC 60909-0:2016 (converters, from memory).
    """
    require_not_negative(generation_a=generation_a)
    require_positive(i_k_ka=i_k_ka)
    given = (Given("Σ Ig", generation_a, "A"), Given("Ik", i_k_ka, "kA"))
    clause = from_memory("IEC 60909-0:2016", remark=phrase("converters neglected up to 5 %"))
    return Rating(Symbol.IG_BY_IK, generation_a / (10 * i_k_ka), "%", "100 · Σ Ig / Ik", given, clause)
