"""Currents and impedance of a distribution transformer, seen from its low-voltage side."""

from __future__ import annotations

from math import sqrt

from sld.citation import cited, from_memory
from sld.quantity import Given, Rating
from sld.ratings.domain import require_not_negative, require_positive
from sld.ratings.impedance import Impedance
from sld.ratings.symbol import Symbol
from sld.words import phrase

__all__ = ["correction_factor", "rated_current", "transformer_impedance"]


def rated_current(s_r_kva: float, u_r_v: float) -> Rating:
    """Return the rated current In in A of a three-phase transformer.

    s_r_kva: rated power in kVA; u_r_v: rated voltage in V, line to line at no load.
    Raises ValueError for an input of zero or less. Source: IEC 60076-1 (definition).
    """
    require_positive(s_r_kva=s_r_kva, u_r_v=u_r_v)
    given = (Given("Sr", s_r_kva, "kVA"), Given("Ur", u_r_v, "V"))
    return Rating(
        Symbol.IN,
        1000 * s_r_kva / (sqrt(3) * u_r_v),
        "A",
        "Sr / (√3 · Ur)",
        given,
        cited("IEC 60076-1", remark=phrase("definition")),
    )


def transformer_impedance(s_r_kva: float, u_r_v: float, u_k_percent: float, u_kr_percent: float = 0.0) -> Impedance:
    """Return the short-circuit impedance ZT in ohm on the side of `u_r_v` V, without the correction factor.

    u_kr_percent: the resistive part of the impedance voltage. Raises ValueError for an input outside its range, and for
    a resistive part above the whole. Source: IEC 60909-0:2016 6.3.1 (from memory).
    """
    require_positive(s_r_kva=s_r_kva, u_r_v=u_r_v, u_k_percent=u_k_percent)
    require_not_negative(u_kr_percent=u_kr_percent)
    if u_kr_percent > u_k_percent:
        raise ValueError(f"u_kr_percent {u_kr_percent} is above u_k_percent {u_k_percent}")
    base_ohm = u_r_v**2 / (1000 * s_r_kva)
    x_percent = sqrt(u_k_percent**2 - u_kr_percent**2)
    return Impedance(u_kr_percent / 100 * base_ohm, x_percent / 100 * base_ohm)


def correction_factor(u_k_percent: float, u_kr_percent: float, c_max_factor: float) -> Rating:
    """Return the impedance correction factor KT = 0.95 · cmax / (1 + 0.6 · xT), xT the reactance per unit.

    For greatest short-circuit currents only: least currents take the transformer uncorrected.
    Raises ValueError for an input outside its range. Source: IEC 60909-0:2016 6.3.3 (from memory), reproduced by an
    independent network library.
    """
    per_unit = transformer_impedance(0.001, 1.0, u_k_percent, u_kr_percent)
    require_positive(c_max_factor=c_max_factor)
    value = 0.95 * c_max_factor / (1 + 0.6 * per_unit.x_ohm)
    given = (Given(phrase("cmax"), c_max_factor), Given("xT", per_unit.x_ohm))
    return Rating(
        Symbol.KT,
        value,
        "",
        phrase("0.95 · cmax / (1 + 0.6 · xT)"),
        given,
        from_memory("IEC 60909-0:2016 6.3.3"),
    )
