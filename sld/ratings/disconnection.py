"""Automatic disconnection of supply: the time allowed, the loop impedance that allows it, the touch voltage of RCDs."""

from __future__ import annotations

from sld.citation import cited, from_memory, in_annex
from sld.quantity import Given, Rating
from sld.ratings.domain import require_not_negative, require_positive
from sld.ratings.symbol import Symbol
from sld.tables.table import NoRow, table
from sld.words import phrase
from sld.words.cell import of_cell

__all__ = [
    "TOUCH_VOLTAGE_V",
    "circuit_kind",
    "disconnection_time",
    "largest_electrode_resistance",
    "largest_loop_impedance",
    "measured_loop_limit",
    "touch_voltage",
]

TOUCH_VOLTAGE_V = 50.0
"""The conventional touch voltage limit for alternating current (IEC 60364-4-41 411.5.3)."""

_STANDARD = "IEC 60364-4-41:2005+A1:2017"
_FINAL_FIXED_A = 32.0
_FINAL_SOCKET_A = 63.0


def circuit_kind(i_n_a: float, socket_outlets: bool = False) -> str:
    """Return "final" or "distribution": which times of disconnection hold for a circuit protected at `i_n_a` A.

    Final up to 32 A with fixed equipment, up to 63 A with socket-outlets. Raises ValueError for a current of zero or
    less.
    Source: IEC 60364-4-41:2005+A1:2017 411.3.2.2.
    """
    require_positive(i_n_a=i_n_a)
    return "final" if i_n_a <= (_FINAL_SOCKET_A if socket_outlets else _FINAL_FIXED_A) else "distribution"


def disconnection_time(earthing: str, u_0_v: float, circuit: str) -> Rating:
    """Return the longest time in s to disconnect an earth fault in an alternating-current circuit.

    earthing: TN-S, TN-C-S, TN-C, TN or TT; circuit: "final" or "distribution"; u_0_v: nominal line to earth in V.
    Raises NoRow for another system (IT: second fault rules differ), circuit or voltage.
    Source: IEC 60364-4-41:2005+A1:2017 Table 41.1, 411.3.2.3 and 411.3.2.4.
    """
    family = "TN" if earthing.startswith("TN") else earthing
    for row in table("disconnection_time").where(circuit=circuit, earthing=family):
        if row.number("u_0_above_v") < u_0_v <= row.number("u_0_up_to_v"):
            given = (
                Given(phrase("earthing"), earthing),
                Given("U0", u_0_v, "V"),
                Given(phrase("circuit"), of_cell(circuit)),
            )
            clause = cited(phrase("{standard} Table 41.1, 411.3.2", standard=_STANDARD))
            return Rating(Symbol.T_MAX, row.number("time_s"), "s", phrase("table value"), given, clause, row.reference)
    raise NoRow(f"no disconnection time for a {circuit} circuit, {earthing}, {u_0_v:g} V to earth")


def largest_loop_impedance(u_0_v: float, i_a_a: float, c_min_factor: float = 0.95) -> Rating:
    """Return the largest Zs in ohm that still drives the tripping current: Cmin · U0 / Ia.

    Cmin is 0.95 in BS 7671 and 1 in the text of IEC 60364-4-41. Raises ValueError for an input of zero or less.
    Source: IEC 60364-4-41:2005+A1:2017 411.4.4; BS 7671:2018 411.4.4.
    """
    require_positive(u_0_v=u_0_v, i_a_a=i_a_a, c_min_factor=c_min_factor)
    given = (Given("Cmin", c_min_factor), Given("U0", u_0_v, "V"), Given("Ia", i_a_a, "A"))
    clause = cited(f"{_STANDARD} 411.4.4", "BS 7671:2018 411.4.4")
    return Rating(Symbol.ZS_MAX, c_min_factor * u_0_v / i_a_a, "Ω", "Cmin · U0 / Ia", given, clause)


def measured_loop_limit(u_0_v: float, i_a_a: float, bs_7671: bool = False) -> Rating:
    """Return the largest Zs in ohm to be read on cold conductors: 2/3 · U0 / Ia, by BS 7671 0.8 · 0.95 · U0 / Ia.

    Raises ValueError for an input of zero or less.
    Source: IEC 60364-6:2016 Annex D (from memory); BS 7671:2018 Appendix 3.
    """
    require_positive(u_0_v=u_0_v, i_a_a=i_a_a)
    given = (Given("U0", u_0_v, "V"), Given("Ia", i_a_a, "A"))
    if bs_7671:
        formula, clause = (
            "0.8 · 0.95 · U0 / Ia",
            cited(phrase("{standard} Appendix {number}", standard="BS 7671:2018", number="3")),
        )
        return Rating(Symbol.ZS_MEAS, 0.8 * 0.95 * u_0_v / i_a_a, "Ω", formula, given, clause)
    clause = from_memory(in_annex("IEC 60364-6:2016", "D"))
    return Rating(Symbol.ZS_MEAS, 2 / 3 * u_0_v / i_a_a, "Ω", "2/3 · U0 / Ia", given, clause)


def touch_voltage(resistance_ohm: float, i_delta_n_ma: float) -> Rating:
    """Return RA · IΔn (TT) or Zs · IΔn (TN with RCD) in V, to compare with `TOUCH_VOLTAGE_V`.

    Raises ValueError for an input outside its range. Source: IEC 60364-4-41:2005+A1:2017 411.5.3.
    """
    require_not_negative(resistance_ohm=resistance_ohm)
    require_positive(i_delta_n_ma=i_delta_n_ma)
    given = (Given("RA", resistance_ohm, "Ω"), Given("IΔn", i_delta_n_ma, "mA"))
    return Rating(
        Symbol.UT, resistance_ohm * i_delta_n_ma / 1000, "V", "RA · IΔn", given, cited(f"{_STANDARD} 411.5.3")
    )


def largest_electrode_resistance(i_delta_n_ma: float) -> Rating:
    """Return the largest RA in ohm for an RCD of `i_delta_n_ma` mA: 50 V / IΔn. Raises ValueError at zero or less.

    Source: IEC 60364-4-41:2005+A1:2017 411.5.3.
    """
    require_positive(i_delta_n_ma=i_delta_n_ma)
    given = (Given("U", TOUCH_VOLTAGE_V, "V"), Given("IΔn", i_delta_n_ma, "mA"))
    return Rating(
        Symbol.RA_MAX, 1000 * TOUCH_VOLTAGE_V / i_delta_n_ma, "Ω", "U / IΔn", given, cited(f"{_STANDARD} 411.5.3")
    )
