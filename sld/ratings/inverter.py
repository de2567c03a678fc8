"""The alternating current that an inverter feeds into its circuit.

The design current is the greatest current the maker declares. Apparent power over voltage is only a stand-in: an
inverter holds its power while the network voltage falls and then feeds more than that.
"""

from __future__ import annotations

from math import sqrt

from sld.citation import clauses_from_memory, from_memory
from sld.quantity import Given, Rating
from sld.ratings.domain import require_phase_count, require_positive
from sld.ratings.symbol import Symbol
from sld.words import phrase

__all__ = ["current_at_low_voltage", "declared_current", "design_current"]

_CLAUSE = clauses_from_memory("IEC 60364-7-712:2017 712.433", "IEC 60364-5-52:2009 523")


def declared_current(i_max_a: float) -> Rating:
    """Return the design current Ib in A from the greatest output current of the data sheet. Raises ValueError at <= 0.

    Source: IEC 60364-7-712:2017 712.433 (from memory).
    """
    require_positive(i_max_a=i_max_a)
    return Rating(Symbol.IB, i_max_a, "A", "Imax,ac", (Given("Imax,ac", i_max_a, "A"),), _CLAUSE)


def design_current(phase_count: int, u_v: float, s_max_va: float | None = None, i_max_a: float | None = None) -> Rating:
    """Return the design current Ib in A: the declared greatest current, else S/U (one phase) or S/(√3·U) (three).

    u_v: nominal voltage in V, line to neutral for one phase, line to line for three. s_max_va: greatest apparent power
    in VA. Raises ValueError for an input outside its range, and where neither power nor current is given.
    Source: IEC 60364-7-712:2017 712.433 (from memory).
    """
    require_phase_count(phase_count)
    require_positive(u_v=u_v)
    if i_max_a is not None:
        return declared_current(i_max_a)
    if s_max_va is None:
        raise ValueError("neither the greatest current nor the greatest apparent power is given")
    require_positive(s_max_va=s_max_va)
    value = s_max_va / (u_v if phase_count == 1 else sqrt(3) * u_v)
    formula = "Smax / U0" if phase_count == 1 else "Smax / (√3 · Un)"
    given = (Given("Smax", s_max_va, "VA"), Given("U0" if phase_count == 1 else "Un", u_v, "V"))
    note = phrase("greatest output current not declared, taken from apparent power at nominal voltage")
    return Rating(Symbol.IB, value, "A", formula, given, _CLAUSE, assumptions=(note,))


def current_at_low_voltage(i_b_a: float, voltage_factor: float = 0.90) -> Rating:
    """Return the current in A that holds the power at a reduced network voltage (`voltage_factor` times nominal).

    Raises ValueError for a factor outside 0 < factor <= 1. Source: EN 50549-1:2019, operating range (from memory).
    """
    require_positive(i_b_a=i_b_a, voltage_factor=voltage_factor)
    if voltage_factor > 1:
        raise ValueError(f"voltage_factor must not be above 1: {voltage_factor}")
    given = (Given("Ib", i_b_a, "A"), Given("U/Un", voltage_factor))
    clause = from_memory(phrase("{standard} operating range", standard="EN 50549-1:2019"))
    return Rating(Symbol.IB_LOW, i_b_a / voltage_factor, "A", "Ib / (U/Un)", given, clause)
