"""The module: coefficients in one unit, the hottest cell, the short-circuit current to design for."""

from __future__ import annotations

from sld.citation import cited, clause_from_memory, from_memory, in_annex
from sld.quantity import Given, Rating
from sld.ratings.symbol import Symbol
from sld.tables.table import table
from sld.words import amount, phrase
from sld.words.cell import of_cell

__all__ = [
    "coefficient_percent_per_k",
    "design_short_circuit_current",
    "hottest_cell_by_mounting",
    "hottest_cell_by_noct",
    "umpp_coefficient",
]


def coefficient_percent_per_k(
    coefficient_per_k: float, stc_value: float, symbol: Symbol = Symbol.BETA, unit: str = "V"
) -> Rating:
    """Turn a temperature coefficient in V/K (or A/K) into %/K of the value at STC (V or A).

    The sign is kept. Raises ValueError for a value at STC that is not above 0. Source: definition, IEC 60891:2021.
    """
    if stc_value <= 0:
        raise ValueError(f"the value at STC must be above 0 {unit}, not {stc_value}")
    name = "Uoc,STC" if unit == "V" else "Isc,STC"
    return Rating(
        symbol,
        100 * coefficient_per_k / stc_value,
        "%/K",
        f"100·{symbol}{unit}/{name}",
        (Given(f"{symbol}{unit}", coefficient_per_k, f"{unit}/K"), Given(name, stc_value, unit)),
        clause_from_memory("IEC 60891:2021", remark=phrase("definition of the coefficients")),
    )


def umpp_coefficient(
    gamma_percent_per_k: float, alpha_percent_per_k: float, kappa_percent_per_k: float | None = None
) -> Rating:
    """Return the coefficient κ of the MPP voltage in %/K.

    The maker's own value goes first; else κ = γ - α (power minus current). The coefficient of Uoc is never used: it
    reads the MPP voltage of a hot module 6 to 7 % too high. γ - α errs on the low side in nearly all of 20 946
    modules of an open module database.
    """
    if kappa_percent_per_k is not None:
        given = (Given("κ", kappa_percent_per_k, "%/K"),)
        return Rating(
            Symbol.KAPPA,
            kappa_percent_per_k,
            "%/K",
            phrase("κ of the maker"),
            given,
            cited(phrase("data sheet of the module")),
        )
    return Rating(
        Symbol.KAPPA,
        gamma_percent_per_k - alpha_percent_per_k,
        "%/K",
        "γ - α",
        (Given("γ", gamma_percent_per_k, "%/K"), Given("α", alpha_percent_per_k, "%/K")),
        cited(phrase("common practice: Pmpp = Umpp·Impp, first order, with the coefficient of Isc for that of Impp")),
        assumptions=(
            phrase("the maker gives no coefficient of the MPP voltage: power coefficient less current coefficient"),
        ),
    )


def hottest_cell_by_mounting(t_air_max_c: float, mounting: str) -> Rating:
    """Return the hottest cell temperature Tc,max in °C from the highest air temperature in °C and the mounting.

    mounting: flush, rack or free (table mounting_temperature_rise). Raises NoRow for any other. Common practice.
    """
    row = table("mounting_temperature_rise").pick(mounting=mounting)
    rise_k = row.number("rise_k")
    return Rating(
        Symbol.TC_MAX,
        t_air_max_c + rise_k,
        "°C",
        "Ta,max + ΔT",
        (
            Given("Ta,max", t_air_max_c, "°C"),
            Given("ΔT", rise_k, "K", phrase("mounting {mounting}", mounting=of_cell(mounting))),
        ),
        from_memory(of_cell(row.source)),
        row.reference,
        (
            phrase(
                "cell {rise} above the air for the mounting: {meaning}",
                rise=amount(rise_k, "K", 6),
                meaning=row.said("meaning"),
            ),
        ),
    )


def hottest_cell_by_noct(t_air_max_c: float, noct_c: float, irradiance_w_per_m2: float = 1000.0) -> Rating:
    """Return the hottest cell temperature in °C from the nominal operating cell temperature (NOCT) in °C.

    Tc = Ta + (NOCT - 20)·G/800, G in W/m². NOCT itself is not the hottest temperature. Source: definition of NOCT
    (800 W/m², 20 °C air), IEC 61215.
    """
    return Rating(
        Symbol.TC_MAX,
        t_air_max_c + (noct_c - 20) / 800 * irradiance_w_per_m2,
        "°C",
        "Ta,max + (NOCT - 20)/800·G",
        (
            Given("Ta,max", t_air_max_c, "°C"),
            Given("NOCT", noct_c, "°C"),
            Given("G", irradiance_w_per_m2, "W/m²"),
        ),
        clause_from_memory("IEC 61215", remark=phrase("definition of NOCT")),
    )


def design_short_circuit_current(
    isc_a: float, bifaciality_factor: float = 0.0, rear_irradiance_factor: float = 0.0
) -> Rating:
    """Return the short-circuit current Isc,d of the module in A that the DC side is designed for, before KI.

    Isc,d = Isc·(1 + φ·g), φ bifaciality of the current (0 to 1), g rear over front irradiance. With a one-sided
    module it is Isc. If the data sheet already quotes a value with rear gain, pass that and leave g at 0, or the gain
    counts twice. Raises ValueError for a negative factor or φ above 1. Source: IEC 62548-1:2023 Annex F (subject
    seen, content from memory).
    """
    if not 0 <= bifaciality_factor <= 1 or rear_irradiance_factor < 0:
        raise ValueError(
            f"bifaciality {bifaciality_factor} must be 0 to 1, rear ratio {rear_irradiance_factor} not negative"
        )
    gain = bifaciality_factor * rear_irradiance_factor
    assumed = (
        (phrase("rear irradiance {share} of the front", share=amount(100 * rear_irradiance_factor, "%")),)
        if gain
        else ()
    )
    return Rating(
        Symbol.ISC_D,
        isc_a * (1 + gain),
        "A",
        "Isc·(1 + φ·g)",
        (
            Given("Isc", isc_a, "A"),
            Given("φ", bifaciality_factor),
            Given("g", rear_irradiance_factor),
        ),
        clause_from_memory(in_annex("IEC 62548-1:2023", "F")),
        assumptions=assumed,
    )
