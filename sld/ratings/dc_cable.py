"""The DC cable: the current it must carry, what a solar cable carries in free air, resistance and voltage drop.

The solar cable is H1Z2Z2-K (EN 50618): table capacities hold for 60 °C air and a conductor at 120 °C, so the 30 °C
ambient factors of IEC 60364-5-52 do not apply. Lengths are one-way route lengths in m, sections in mm², resistances in
ohm/km.
"""

from __future__ import annotations

from math import sqrt

from sld.citation import citations, cited, clause_from_memory, in_table, in_tables
from sld.quantity import Given, Rating
from sld.ratings.symbol import Symbol
from sld.tables.profiles import Profile
from sld.tables.table import table
from sld.words import NOTHING, Phrase, amount, counted, phrase
from sld.words.cell import of_cell

__all__ = [
    "SOLAR_CONDUCTOR_C",
    "array_current_min",
    "corrected_capacity",
    "resistance",
    "string_current_min",
    "sub_array_current_min",
    "tinned_resistance_20",
    "umpp_at_inverter",
    "uncorrected_current_min",
    "voltage_drop",
    "voltage_drop_percent",
]

_ALPHA_CU_PER_K = 0.00393
_REFERENCE_AIR_C = 60.0
SOLAR_CONDUCTOR_C = 120.0
"""What EN 50618 allows the conductor for 20 000 hours of its life. [°C]"""

_CIRCUIT_CURRENT = clause_from_memory(phrase("{standard}, circuit-current table", standard="IEC 62548:2016"))


def string_current_min(
    strings_count: int,
    isc_a: float,
    profile: Profile,
    fuse_a: float | None = None,
    downstream_fuse_a: float = 0.0,
    backfeed_a: float = 0.0,
) -> Rating:
    """Return the current in A that a string cable must carry after all corrections.

    Fused: the larger of In and f·Isc. Unfused: the larger of f·Isc and downstream fuse + f·Isc·(Np - 1), because the
    other strings feed a faulted one (Np = 2: f·Isc). fuse_a: rated current of the string fuse; downstream_fuse_a: rated
    current of the next overcurrent device towards the inverter, 0 for none; backfeed_a: what the inverter feeds back,
    which counts where no such device cuts it. f 1.25. Isc at STC with its rear gain. Source: IEC 62548:2016
    circuit-current table, used for every profile; f is the profile's.
    """
    factor = profile.cable_current_factor
    shared = (
        Given("f", factor.value, "", profile.said),
        Given("Isc", isc_a, "A"),
    )
    clause = citations(_CIRCUIT_CURRENT, factor.cited)
    own_a = factor.value * isc_a
    if fuse_a is not None:
        given = (Given("In", fuse_a, "A", phrase("string fuse")), *shared)
        return Rating(Symbol.IZ_MIN, max(fuse_a, own_a), "A", "max(In, f·Isc)", given, clause, factor.reference)
    if backfeed_a and not downstream_fuse_a:
        return Rating(
            Symbol.IZ_MIN,
            max(own_a, backfeed_a + factor.value * isc_a * (strings_count - 1)),
            "A",
            "max(f·Isc, Ibackfeed + f·Isc·(Np - 1))",
            (*shared, Given("Np", strings_count), Given("Ibackfeed", backfeed_a, "A")),
            clause,
            factor.reference,
        )
    others_a = downstream_fuse_a + factor.value * isc_a * (strings_count - 1)
    return Rating(
        Symbol.IZ_MIN,
        max(own_a, others_a if strings_count > 1 else 0.0),
        "A",
        "max(f·Isc, In,down + f·Isc·(Np - 1))" if strings_count > 1 else "f·Isc",
        (*shared, Given("Np", strings_count), Given("In,down", downstream_fuse_a, "A")),
        clause,
        factor.reference,
    )


def array_current_min(
    strings_count: int, isc_a: float, profile: Profile, fuse_a: float | None = None, backfeed_a: float = 0.0
) -> Rating:
    """Return the current in A that the cable of a whole array must carry: In where it is fused, and f·Np·Isc at least.

    backfeed_a: what the inverter feeds back into an array without a fuse, in A. Source: IEC 62548:2016 circuit-current
    table (from memory).
    """
    factor = profile.cable_current_factor
    total_a = factor.value * strings_count * isc_a
    given: tuple[Given, ...] = (
        Given("f", factor.value, "", profile.said),
        Given("Np", strings_count),
        Given("Isc", isc_a, "A"),
    )
    formula = "f·Np·Isc"
    if fuse_a is not None:
        formula, given = "max(In, f·Np·Isc)", (Given("In", fuse_a, "A", phrase("array fuse")), *given)
    elif backfeed_a:
        formula, given = "max(Ibackfeed, f·Np·Isc)", (Given("Ibackfeed", backfeed_a, "A"), *given)
    clause = citations(_CIRCUIT_CURRENT, factor.cited)
    return Rating(Symbol.IZ_MIN, max(total_a, fuse_a or backfeed_a), "A", formula, given, clause, factor.reference)


def sub_array_current_min(
    isc_sub_array_a: float,
    isc_other_sub_arrays_a: float,
    profile: Profile,
    fuse_a: float | None = None,
    inverter_a: float = 0.0,
) -> Rating:
    """Return the current in A that the cable of a sub-array must carry.

    Fused: the larger of In and f·Isc,sub. Unfused: the larger of f·Isc of this one, and f·Isc of the other sub-arrays
    with what comes from the inverter. inverter_a: the array fuse, or the backfeed where there is none. Currents are
    sums over strings at STC. Source: IEC 62548:2016 circuit-current table (from memory).
    """
    factor = profile.cable_current_factor
    own_a = factor.value * isc_sub_array_a
    shared = (
        Given("f", factor.value, "", profile.said),
        Given("Isc,sub", isc_sub_array_a, "A"),
    )
    clause = citations(_CIRCUIT_CURRENT, factor.cited)
    if fuse_a is not None:
        given = (Given("In", fuse_a, "A", phrase("sub-array fuse")), *shared)
        return Rating(Symbol.IZ_MIN, max(fuse_a, own_a), "A", "max(In, f·Isc,sub)", given, clause, factor.reference)
    others_a = inverter_a + factor.value * isc_other_sub_arrays_a
    return Rating(
        Symbol.IZ_MIN,
        max(own_a, others_a),
        "A",
        "max(f·Isc,sub, Iinverter + f·ΣIsc,others)",
        (*shared, Given("Iinverter", inverter_a, "A"), Given("ΣIsc,others", isc_other_sub_arrays_a, "A")),
        clause,
        factor.reference,
    )


def uncorrected_current_min(strings_count: int, isc_a: float, profile: Profile) -> Rating | None:
    """Return the current in A that the table capacity must reach before corrections, or None without such a test.

    NEC 2023 690.8(B)(1): 1.25·1.25·Isc. The IEC profiles have none.
    """
    factor = profile.cable_uncorrected_factor
    if not factor.is_set:
        return None
    return Rating(
        Symbol.IT_MIN,
        factor.value * strings_count * isc_a,
        "A",
        "f·Np·Isc",
        (
            Given("f", factor.value, "", profile.said),
            Given("Np", strings_count),
            Given("Isc", isc_a, "A"),
        ),
        factor.cited,
        factor.reference,
    )


def corrected_capacity(
    section_mm2: float,
    arrangement: str,
    t_ambient_c: float,
    circuits_count: int = 1,
    t_conductor_max_c: float = SOLAR_CONDUCTOR_C,
) -> Rating:
    """Return the capacity Iz in A of H1Z2Z2-K cable as laid: It·kT·kgroup.

    arrangement: single_in_air, single_on_surface or two_touching. t_ambient_c: air at the cable in °C (70 °C behind
    modules is usual); the next hotter row of the table counts, below 60 °C the 60 °C row. circuits_count: circuits
    bunched together, the next larger row. t_conductor_max_c: 120, or less to design for the whole life, since 120 °C is
    allowed for 20 000 h only; then kT = sqrt((θmax - Ta)/60), not above the EN 50618 factor. Raises NoRow for a
    section, an arrangement or an air above 90 °C that the tables lack; ValueError for air at or above the conductor's
    temperature. Source: EN 50618:2014 Tables A.3 and A.4; IEC 60364-5-52:2009 B.52.17.
    """
    row = table("en50618_capacity").pick(section_mm2=section_mm2, arrangement=arrangement)
    ambient = table("en50618_ambient").at_least("t_ambient_c", t_ambient_c)
    group = table("grouping_factor").at_least(
        "circuits_count", circuits_count, standard_table="B.52.17", arrangement="bunched_A_to_F"
    )
    i_table_a, k_group_factor = row.number("i_z_a"), group.number("factor")
    k_t_factor = _ambient_factor(ambient.number("factor"), t_ambient_c, t_conductor_max_c)
    return Rating(
        Symbol.IZ,
        i_table_a * k_t_factor * k_group_factor,
        "A",
        "It·kT·kgroup",
        (
            Given(
                "It",
                i_table_a,
                "A",
                _laid(section_mm2, arrangement),
            ),
            Given(
                "kT",
                k_t_factor,
                "",
                phrase(
                    "{t_ambient} air, conductor {t_conductor_max}",
                    t_ambient=amount(t_ambient_c, "°C", 6),
                    t_conductor_max=amount(t_conductor_max_c, "°C", 6),
                ),
            ),
            Given(
                phrase("kgroup"),
                k_group_factor,
                "",
                counted("{count} circuit bunched", "{count} circuits bunched", circuits_count),
            ),
        ),
        citations(
            clause_from_memory(in_tables("EN 50618:2014", "A.3, A.4")),
            cited(in_table("IEC 60364-5-52:2009", "B.52.17")),
        ),
        citations(row.reference, ambient.reference, group.reference),
    )


def _laid(section_mm2: float, arrangement: str) -> Phrase:
    """Return what a tabulated capacity holds for."""
    return phrase(
        "{section}, {arrangement}, 60 °C air",
        section=amount(section_mm2, "mm²", 6),
        arrangement=of_cell(arrangement),
    )


def _ambient_factor(tabulated_factor: float, t_ambient_c: float, t_conductor_max_c: float) -> float:
    if t_conductor_max_c >= SOLAR_CONDUCTOR_C:
        return tabulated_factor
    if t_ambient_c >= t_conductor_max_c:
        raise ValueError(f"air at {t_ambient_c:g} °C leaves nothing for a conductor at {t_conductor_max_c:g} °C")
    # Heat goes with the temperature difference and with the current squared; 60 K is the difference of the table.
    # Colder air than the table's gives no credit beyond it.
    air_c = max(t_ambient_c, _REFERENCE_AIR_C)
    return min(tabulated_factor, sqrt(max(0.0, t_conductor_max_c - air_c) / (SOLAR_CONDUCTOR_C - _REFERENCE_AIR_C)))


def tinned_resistance_20(section_mm2: float) -> Rating:
    """Return the resistance in ohm/km of a flexible tinned copper conductor at 20 °C. Raises NoRow.

    Source: IEC 60228 Table 3, class 5.
    """
    row = table("tinned_conductor_resistance").pick(section_mm2=section_mm2)
    value = row.number("r_20_ohm_per_km")
    given = (Given("S", section_mm2, "mm²"),)
    return Rating(
        Symbol.R20, value, "Ω/km", phrase("table"), given, cited(in_table("IEC 60228:2004", "3")), row.reference
    )


def resistance(r_20_ohm_per_km: float, t_conductor_c: float, alpha_per_k: float = _ALPHA_CU_PER_K) -> Rating:
    """Return the resistance in ohm/km at a conductor temperature in °C: R20·(1 + α·(θ - 20)).

    alpha_per_k in 1/K, of copper by default (aluminium 0.00403). Source: IEC 60228, IEC 60287.
    """
    return Rating(
        Symbol.R_THETA,
        r_20_ohm_per_km * (1 + alpha_per_k * (t_conductor_c - 20)),
        "Ω/km",
        "R20·(1 + α·(θ - 20))",
        (Given("R20", r_20_ohm_per_km, "Ω/km"), Given("α", alpha_per_k, "1/K"), Given("θ", t_conductor_c, "°C")),
        cited("IEC 60228, IEC 60287", remark=phrase("temperature correction")),
    )


def voltage_drop(length_m: float, current_a: float, r_ohm_per_km: float) -> Rating:
    """Return the voltage drop in V of a DC circuit: 2·L·I·R/1000, out and back.

    length_m: one-way route; current_a: Impp, not Isc, in A; r_ohm_per_km at the conductor's temperature. Ohm's law.
    """
    return Rating(
        Symbol.DU_DC_V,
        2 * length_m * current_a * r_ohm_per_km / 1000,
        "V",
        "2·L·I·R",
        (Given("L", length_m, "m"), Given("I", current_a, "A"), Given("R", r_ohm_per_km, "Ω/km")),
        cited(phrase("Ohm's law, both conductors")),
    )


def voltage_drop_percent(drop_v: float, umpp_v: float) -> Rating:
    """Return a voltage drop in % of the MPP voltage at STC (not of Uoc): 100·ΔU/Umpp. Both in V.

    Raises ValueError for a voltage that is not above 0. Common practice.
    """
    if umpp_v <= 0:
        raise ValueError(f"the MPP voltage must be above 0 V, not {umpp_v}")
    return Rating(
        Symbol.DU_DC_CABLE,
        100 * drop_v / umpp_v,
        "%",
        "100·ΔU/Umpp",
        (Given("ΔU", drop_v, "V"), Given("Umpp", umpp_v, "V")),
        cited(phrase("common practice: percent of the MPP voltage at STC")),
    )


def umpp_at_inverter(umpp_min: Rating, drop_v: float) -> Rating:
    """Return the lowest MPP voltage at the inverter in V: that of the string less the drop in V along its cables.

    The drop is that at the MPP current of STC with hot conductors. Ohm's law.
    """
    given = (umpp_min.as_input(), Given("ΣΔU", drop_v, "V"))
    return Rating(
        Symbol.UMPP_INV,
        umpp_min.value - drop_v,
        "V",
        "Umpp,min - ΣΔU",
        given,
        umpp_min.clause,
        NOTHING,
        umpp_min.assumptions,
    )
