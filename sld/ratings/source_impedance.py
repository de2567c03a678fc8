"""The impedance of the supply at a point, from whatever the distributor has said about it."""

from __future__ import annotations

from math import sqrt

from sld.citation import cited, from_memory, in_table
from sld.quantity import Given, Rating
from sld.ratings.domain import require_not_negative, require_positive
from sld.ratings.impedance import Impedance
from sld.ratings.symbol import Symbol
from sld.tables.table import table
from sld.words import amount, phrase

__all__ = [
    "assumed_fault_current",
    "assumed_loop_impedance",
    "impedance_from_fault_current",
    "impedance_from_short_circuit_power",
    "voltage_factor",
]


def voltage_factor(tolerance_percent: float, extreme: str) -> Rating:
    """Return the voltage factor c for a network held within ±6 or ±10 %; extreme "max" or "min".

    Raises NoRow for another tolerance or extreme. Source: IEC 60909-0:2016 Table 1.
    """
    row = table("voltage_factor").pick(tolerance_percent=tolerance_percent)
    given = (Given(phrase("tolerance"), tolerance_percent, "%"),)
    value = row.number(f"c_{extreme}")
    return Rating(
        Symbol.C_MAX if extreme == "max" else Symbol.C_MIN,
        value,
        "",
        phrase("table value"),
        given,
        cited(in_table("IEC 60909-0:2016", "1")),
        row.reference,
    )


def impedance_from_fault_current(
    i_k_ka: float, u_n_v: float, c_factor: float, r_over_x_ratio: float = 0.0
) -> Impedance:
    """Return the source impedance in ohm behind a three-phase prospective fault current of `i_k_ka` kA.

    u_n_v: line to line. With only the magnitude known the angle is the caller's choice: ratio 0 (all reactance) gives
    the greatest current further down a cable, the ratio of the cable itself the least.
    Raises ValueError for an input outside its range. Source: IEC 60909-0:2016 6.2 (from memory).
    """
    require_positive(i_k_ka=i_k_ka, u_n_v=u_n_v, c_factor=c_factor)
    require_not_negative(r_over_x_ratio=r_over_x_ratio)
    return Impedance.of_magnitude(c_factor * u_n_v / (sqrt(3) * 1000 * i_k_ka), r_over_x_ratio)


def impedance_from_short_circuit_power(
    s_k_mva: float, u_lv_v: float, c_factor: float = 1.0, r_over_x_ratio: float = 0.1
) -> Impedance:
    """Return the impedance in ohm of the network above a transformer, referred to its low-voltage side of `u_lv_v` V.

    s_k_mva: short-circuit power in MVA at the high-voltage terminals; taken at the rated ratio, so that the high
    voltage cancels. c_factor: of the high-voltage side, 1.10 for the greatest, 1.00 for the least current. R is 0.1 X
    where unknown. Raises ValueError for an input outside its range.
    Source: IEC 60909-0:2016 6.2 (from memory).
    """
    require_positive(s_k_mva=s_k_mva, u_lv_v=u_lv_v, c_factor=c_factor)
    require_not_negative(r_over_x_ratio=r_over_x_ratio)
    return Impedance.of_magnitude(c_factor * u_lv_v**2 / (1e6 * s_k_mva), r_over_x_ratio)


def assumed_loop_impedance(earthing: str) -> Rating:
    """Return the external loop impedance Ze in ohm to assume for TN-C-S, TN-S or TT, marked as assumed.

    Raises NoRow for another system. Source: ENA Engineering Recommendation P23/1 (United Kingdom).
    """
    row = table("supply_default").pick(earthing=earthing)
    value = row.number("z_e_ohm")
    note = phrase(
        "external loop impedance not stated, {value} taken for {earthing}",
        value=amount(value, "Ω", 6),
        earthing=earthing,
    )
    clause = cited(phrase("{standard} design maximum", standard="ENA P23/1"), remark=phrase("United Kingdom"))
    return Rating(
        Symbol.ZE,
        value,
        "Ω",
        phrase("table value"),
        (Given(phrase("earthing"), earthing),),
        clause,
        row.reference,
        (note,),
    )


def assumed_fault_current(earthing: str) -> Rating:
    """Return the prospective current in kA to assume at the origin of a single-phase service up to 100 A.

    Raises NoRow for another system. Source: ENA Engineering Recommendation P25/2 (United Kingdom, from memory).
    """
    row = table("supply_default").pick(earthing=earthing)
    value = row.number("i_pf_ka")
    note = phrase("prospective fault current not stated, {value} taken", value=amount(value, "kA", 6))
    clause = from_memory("ENA P25/2", remark=phrase("United Kingdom"))
    return Rating(
        Symbol.IPF,
        value,
        "kA",
        phrase("table value"),
        (Given(phrase("earthing"), earthing),),
        clause,
        row.reference,
        (note,),
    )
