"""The residual current monitor of an inverter without separation: when it trips, and what leaks in any case."""

from __future__ import annotations

from math import pi

from sld.citation import cited, clause_from_memory
from sld.quantity import Given, Rating
from sld.ratings.domain import require_positive
from sld.ratings.symbol import Symbol
from sld.tables.table import table
from sld.words import amount, phrase

__all__ = ["array_leakage", "monitor_threshold_max"]


def monitor_threshold_max(apparent_power_kva: float) -> Rating:
    """Return the largest continuous residual current in mA at which the inverter has to disconnect.

    300 mA up to 30 kVA, 10 mA for each kVA above. Raises ValueError for a power that is not above 0. Source: IEC
    62109-2:2011 4.8.3.5 (from memory).
    """
    require_positive(apparent_power_kva=apparent_power_kva)
    row = table("residual_current_monitor").at_least("apparent_power_up_to_kva", apparent_power_kva)
    base_ma, per_kva_ma = row.number("base_ma"), row.number("per_kva_ma")
    return Rating(
        Symbol.IDN_MONITOR,
        base_ma + per_kva_ma * apparent_power_kva,
        "mA",
        phrase("300 mA up to 30 kVA, else 10 mA/kVA"),
        (Given("S", apparent_power_kva, "kVA"),),
        clause_from_memory("IEC 62109-2:2011 4.8.3.5"),
        row.reference,
    )


def array_leakage(capacitance_nf_per_kwp: float, power_kwp: float, u_0_v: float, frequency_hz: float) -> Rating:
    """Return an upper bound in mA of the capacitive leakage of an array behind an inverter without separation.

    2π · f · C · U0. Raises ValueError for an input of zero or less. Source: capacitor at the line-to-earth voltage; the
    capacitance per kWp (about 50 nF dry) is common practice.
    """
    require_positive(capacitance_nf_per_kwp=capacitance_nf_per_kwp, power_kwp=power_kwp)
    require_positive(u_0_v=u_0_v, frequency_hz=frequency_hz)
    capacitance_nf = capacitance_nf_per_kwp * power_kwp
    given = (
        Given("C", capacitance_nf, "nF", amount(capacitance_nf_per_kwp, "nF/kWp", 6)),
        Given("U0", u_0_v, "V"),
        Given("f", frequency_hz, "Hz"),
    )
    value = 2 * pi * frequency_hz * capacitance_nf * 1e-9 * u_0_v * 1000
    return Rating(
        Symbol.ILEAK_ARRAY, value, "mA", "2π · f · C · U0", given, cited(phrase("upper bound, common practice"))
    )
