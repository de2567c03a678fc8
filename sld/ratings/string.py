"""The string of modules in series: its voltages at the temperature extremes and how many modules it may have.

Every temperature difference is taken from the 25 °C cell of STC. On the cold side the cell is as cold as the air, which
is how it is at dawn; on the hot side the cell temperature has to be given (`sld.ratings.module`).
"""

from __future__ import annotations

from fractions import Fraction
from math import ceil, floor

from sld.citation import citations, cited, clause_from_memory, clauses_from_memory
from sld.quantity import Given, Rating
from sld.ratings.symbol import Symbol
from sld.tables.profiles import Profile
from sld.tables.table import table
from sld.words import Phrase, Sayable, amount, phrase, sequence

__all__ = [
    "modules_count_max",
    "modules_count_min",
    "rated_power",
    "umpp_max",
    "umpp_min",
    "uoc_hot",
    "uoc_max_by_coefficient",
    "uoc_max_by_default",
    "uoc_max_by_table",
    "uoc_max_with_tolerance",
]

_STC_C = 25.0

_LEAST_OF_INVERTER = phrase("Umpp,min(inverter)")


def _at(u_stc_v: float, coefficient_percent_per_k: float, t_cell_c: float) -> float:
    """Return one module's voltage in V at a cell temperature."""
    if coefficient_percent_per_k > 0:
        raise ValueError(f"a voltage coefficient must not be above 0 %/K, not {coefficient_percent_per_k}")
    return u_stc_v * (1 + coefficient_percent_per_k / 100 * (t_cell_c - _STC_C))


def uoc_max_by_coefficient(modules_count: int, uoc_stc_v: float, beta_percent_per_k: float, t_min_c: float) -> Rating:
    """Return Uoc,max in V of a string: N·Uoc·(1 + β/100·(Tmin - 25)).

    uoc_stc_v in V at STC, beta_percent_per_k in %/K (negative), t_min_c the lowest expected air temperature in °C.
    Raises ValueError for a positive β. Source: IEC 62548:2016 7.2, NEC 2023 690.7(A)(1) (clauses from memory). Voc is
    straight over temperature to within 0.1 % for crystalline silicon; the value is as good as β is.
    """
    return Rating(
        Symbol.UOC_MAX,
        modules_count * _at(uoc_stc_v, beta_percent_per_k, t_min_c),
        "V",
        "N·Uoc·(1 + β/100·(Tmin - 25))",
        (
            Given("N", modules_count),
            Given("Uoc", uoc_stc_v, "V"),
            Given("β", beta_percent_per_k, "%/K"),
            Given("Tmin", t_min_c, "°C"),
        ),
        clauses_from_memory("IEC 62548:2016 7.2", "NEC 2023 690.7(A)(1)"),
    )


def uoc_max_by_table(modules_count: int, uoc_stc_v: float, t_min_c: float) -> Rating:
    """Return Uoc,max in V of a string of crystalline silicon modules by the factor table: N·Uoc·k.

    Between two bins the colder one holds (-5.4 °C reads the bin of -10 to -6 °C). Raises NoRow below -40 °C, where
    the table ends. The table is not always above the coefficient: modules with |β| over 0.40 %/K exceed it. It is
    never used beside a known coefficient, which NEC forbids and IEC allows; whether it is laid down where there is none
    is Profile.factor_table_needs_no_coefficient. Source: NEC 2023 Table 690.7(A), UTE C15-712-1, IEC 62548.
    """
    row = table("voltage_correction").at_most("t_from_c", t_min_c)
    k_factor = row.number("factor")
    return Rating(
        Symbol.UOC_MAX,
        modules_count * (uoc_stc_v * k_factor),
        "V",
        "N·Uoc·k",
        (
            Given("N", modules_count),
            Given("Uoc", uoc_stc_v, "V"),
            Given("k", k_factor, "", phrase("factor table")),
            Given("Tmin", t_min_c, "°C"),
        ),
        cited(phrase("{standard} Table 690.7(A), UTE C15-712-1", standard="NEC 2023")),
        row.reference,
        (phrase("crystalline silicon; temperature coefficient by the factor table"),),
    )


def uoc_max_by_default(modules_count: int, uoc_stc_v: float, profile: Profile) -> Rating:
    """Return Uoc,max in V of a string where neither coefficient nor lowest temperature is known: N·Uoc·1.2.

    Raises NoRow where the profile has no such default (NEC 690). Source: IEC 60364-7-712:2017 Annex B (from memory). At
    less than -25 °C the table factor is above 1.2, so the default is not cautious there.
    """
    k_factor = profile.uoc_default_factor.value
    return Rating(
        Symbol.UOC_MAX,
        modules_count * (uoc_stc_v * k_factor),
        "V",
        "N·Uoc·k",
        (
            Given("N", modules_count),
            Given("Uoc", uoc_stc_v, "V"),
            Given("k", k_factor, "", profile.said),
        ),
        profile.uoc_default_factor.cited,
        profile.uoc_default_factor.reference,
        (
            phrase(
                "{k_factor} times Uoc at STC: no coefficient or lowest temperature known",
                k_factor=amount(k_factor, digits=6),
            ),
        ),
    )


def uoc_max_with_tolerance(uoc_max: Rating, tolerance_percent: float) -> Rating:
    """Return Uoc,max in V of modules at the upper end of the maker's tolerance: Uoc,max·(1 + t/100).

    tolerance_percent: of the open-circuit voltage in %, upwards. Source: data sheet of the module.
    """
    return Rating(
        Symbol.UOC_TOL,
        uoc_max.value * (1 + tolerance_percent / 100),
        "V",
        "Uoc,max·(1 + t/100)",
        (uoc_max.as_input(), Given("t", tolerance_percent, "%")),
        citations(cited(phrase("data sheet of the module")), uoc_max.clause),
        uoc_max.table_row,
        uoc_max.assumptions,
    )


def _scaled(
    symbol: Symbol, modules_count: int, stc: Given, coefficient: Given, temperature: Given, clause: Sayable
) -> Rating:
    values = (stc.number, coefficient.number, temperature.number)
    return Rating(
        symbol,
        modules_count * _at(*values),
        "V",
        f"N·{stc.symbol}·(1 + {coefficient.symbol}/100·({temperature.symbol} - 25))",
        (Given("N", modules_count), stc, coefficient, temperature),
        clause,
    )


def umpp_min(modules_count: int, umpp_stc_v: float, kappa_percent_per_k: float, t_cell_max_c: float) -> Rating:
    """Return the lowest MPP voltage in V: N·Umpp·(1 + κ/100·(Tc,max - 25)).

    kappa_percent_per_k from `module.umpp_coefficient`, t_cell_max_c the hottest cell in °C, not the air. Raises
    ValueError for a positive κ. Common practice; IEC 62548 7.2 (clause from memory).
    """
    return _scaled(
        Symbol.UMPP_MIN,
        modules_count,
        Given("Umpp", umpp_stc_v, "V"),
        Given("κ", kappa_percent_per_k, "%/K"),
        Given("Tc,max", t_cell_max_c, "°C"),
        clause_from_memory(phrase("common practice"), "IEC 62548:2016 7.2"),
    )


def umpp_max(modules_count: int, umpp_stc_v: float, kappa_percent_per_k: float, t_min_c: float) -> Rating:
    """Return the highest MPP voltage in V, at the lowest temperature in °C. Otherwise as `umpp_min`."""
    return _scaled(
        Symbol.UMPP_MAX,
        modules_count,
        Given("Umpp", umpp_stc_v, "V"),
        Given("κ", kappa_percent_per_k, "%/K"),
        Given("Tmin", t_min_c, "°C"),
        clause_from_memory(phrase("common practice"), "IEC 62548:2016 7.2"),
    )


def uoc_hot(modules_count: int, uoc_stc_v: float, beta_percent_per_k: float, t_cell_max_c: float) -> Rating:
    """Return the open-circuit voltage in V at the hottest cell in °C, to compare with the start-up voltage."""
    return _scaled(
        Symbol.UOC_HOT,
        modules_count,
        Given("Uoc", uoc_stc_v, "V"),
        Given("β", beta_percent_per_k, "%/K"),
        Given("Tc,max", t_cell_max_c, "°C"),
        cited(phrase("common practice: start-up voltage of the inverter")),
    )


def modules_count_max(uoc_max_per_module: Rating, u_limit_v: float, limit: str = "Udc,max") -> Rating:
    """Return the largest number of modules in series: floor(limit / voltage of one module at its highest).

    uoc_max_per_module: a Rating for one module. u_limit_v: the smallest rated voltage of the chain, in V. Tolerance
    0; a string exactly at the limit is within it; 0 where not even one module fits. Source: inverter data; IEC 62548
    7.2.
    """
    u_v = uoc_max_per_module.value
    # A floating division may round across an integer, a division of fractions cannot.
    count = floor(Fraction(u_limit_v) / Fraction(u_v))
    return Rating(
        Symbol.NMAX,
        count,
        "",
        f"floor({limit}/{uoc_max_per_module.symbol})",
        (Given(limit, u_limit_v, "V"), uoc_max_per_module.as_input(phrase("one module"))),
        citations(cited(phrase("data of the device")), uoc_max_per_module.clause),
        uoc_max_per_module.table_row,
        uoc_max_per_module.assumptions,
    )


def modules_count_min(
    umpp_min_per_module: Rating, u_limit_v: float, limit: Phrase | str = _LEAST_OF_INVERTER, drop_percent: float = 0.0
) -> Rating:
    """Return the smallest number of modules in series: ceil(limit / lowest MPP voltage of one module).

    umpp_min_per_module: a Rating for one module. u_limit_v: the lowest MPP voltage of the inverter, in V. drop_percent:
    voltage drop of the cabling in % of that MPP voltage, taken off first. Tolerance 0. Source: inverter data.
    """
    u_v = umpp_min_per_module.value * (1 - drop_percent / 100)
    count = ceil(Fraction(u_limit_v) / Fraction(u_v))
    return Rating(
        Symbol.NMIN,
        count,
        "",
        sequence(["ceil(", limit, f"/({umpp_min_per_module.symbol}·(1 - Δu/100)))"], ""),
        (
            Given(limit, u_limit_v, "V"),
            umpp_min_per_module.as_input(phrase("one module")),
            Given("Δu", drop_percent, "%"),
        ),
        cited(phrase("data of the inverter"), phrase("common practice")),
        umpp_min_per_module.table_row,
        umpp_min_per_module.assumptions,
    )


def rated_power(modules_count: int, p_module_w: float) -> Rating:
    """Return the rated power of a string in W, at STC: N·Pmax."""
    return Rating(
        Symbol.PSTRING,
        modules_count * p_module_w,
        "W",
        "N·Pmax",
        (Given("N", modules_count), Given("Pmax", p_module_w, "W")),
        cited(phrase("definition"), remark=phrase("sum of the modules at STC")),
    )
