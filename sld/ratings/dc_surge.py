"""The DC surge protective device: whether the route is long enough to need one, and what it must withstand."""

from __future__ import annotations

from collections.abc import Sequence

from sld.citation import citations, cited, clause_from_memory, clauses_from_memory, from_memory, in_annex
from sld.frozen import replace
from sld.quantity import Given, Origin, Rating
from sld.ratings.passed_over import below
from sld.ratings.symbol import Symbol
from sld.tables.table import next_at_least, series, table
from sld.words import NOTHING, amount, phrase

__all__ = [
    "critical_length",
    "discharge_current_min",
    "impulse_current_min",
    "iscpv_min",
    "protected_length",
    "protection_level_with_leads",
    "route_length",
    "smallest_ucpv",
    "spd_type",
    "ucpv_min",
    "up_max",
]

_UP_FACTOR = 0.8
_PROTECTED_M = 10.0
_LEADS_KV_PER_M = 1.0
_TYPE_2_IN_KA = 5.0


def critical_length(flash_density_per_km2_year: float, premises: str) -> Rating:
    """Return the critical length Lcrit in m: from this route length on a DC surge protective device is required.

    flash_density_per_km2_year: Ng, flashes to ground per km² and year (from a thunderstorm-day level Nk: Nk/10).
    premises: dwelling, ground or building. The length compared is the route, not out and back; strings on one cable way
    count once. Raises ValueError for a density that is not above 0, NoRow for other premises. Source: IEC
    60364-7-712:2017 712.443.102, UTE C15-712-1.
    """
    if flash_density_per_km2_year <= 0:
        raise ValueError(f"the flash density must be above 0, not {flash_density_per_km2_year}")
    row = table("spd_critical_length").pick(premises=premises)
    numerator = row.number("length_times_density")
    return Rating(
        Symbol.LCRIT,
        numerator / flash_density_per_km2_year,
        "m",
        "c/Ng",
        (Given("c", numerator, "m/(km²·a)", row.said("meaning")), Given("Ng", flash_density_per_km2_year, "1/(km²·a)")),
        citations(clause_from_memory("IEC 60364-7-712:2017 712.443.102"), cited("UTE C15-712-1")),
        row.reference,
    )


def route_length(routes_m: Sequence[float], shared_m: float) -> Rating:
    """Return the length of the DC route in m that is compared with the critical length: Σ routes + shared part.

    routes_m: length of each cable way from its strings to where they are joined, those on one way counted once;
    shared_m: from there to the inverter. One-way lengths. Source: UTE C15-712-1.
    """
    given = (*(Given(f"L{place}", length_m, "m") for place, length_m in enumerate(routes_m, start=1)),)
    return Rating(
        Symbol.LROUTE,
        sum(routes_m) + shared_m,
        "m",
        phrase("Σ routes of strings + way to the inverter"),
        (*given, Given("Lshared", shared_m, "m")),
        clause_from_memory("UTE C15-712-1", "IEC 60364-7-712:2017 712.443.102"),
    )


def ucpv_min(uoc_max: Rating) -> Rating:
    """Return the least continuous operating voltage Ucpv in V: Uoc,max of the array as it is computed for the site.

    The 1.2·Uoc,STC of CLC/TS 50539-12, withdrawn, stood for a cold that is computed here. Source: IEC 61643-32:2017,
    Ucpv not below the largest open-circuit voltage (from memory).
    """
    return Rating(
        Symbol.UCPV_MIN,
        uoc_max.value,
        "V",
        "Uoc,max",
        (uoc_max.as_input(),),
        clause_from_memory("IEC 61643-32:2017"),
        uoc_max.table_row,
        uoc_max.assumptions,
    )


def smallest_ucpv(ucpv: Rating, ratings_v: Sequence[float] | None = None) -> Rating | None:
    """Return the smallest usual Ucpv in V not below `ucpv`, or None above the series. Common practice."""
    choices = series("spd_ucpv_v") if ratings_v is None else ratings_v
    chosen = next_at_least(choices, ucpv.value)
    if chosen is None:
        return None
    row = table("standard_ratings").pick(series="spd_ucpv_v").reference if ratings_v is None else NOTHING
    given = (ucpv.as_input(),)
    return Rating(
        Symbol.UCPV,
        chosen,
        "V",
        phrase("next rating from {symbol}", symbol=ucpv.symbol),
        given,
        ucpv.clause,
        row,
        ucpv.assumptions,
        origin=Origin.CHOSEN,
        passed_over=below(choices, ucpv.value, "V"),
    )


def up_max(uoc_max_v: float, withstand_kv: float | None = None) -> Rating:
    """Return the highest voltage protection level Up in kV, connecting leads included: 0.8·Uw.

    withstand_kv: rated impulse withstand of the inverter's DC side by its maker in kV, else by Uoc,max in V (table
    impulse_withstand). Raises NoRow above 1500 V. Source: IEC 61643-32, IEC 61643-12.
    """
    if withstand_kv is not None:
        return _up_max(Given("Uw", withstand_kv, "kV"))
    row = table("impulse_withstand").at_least("u_oc_max_up_to_v", uoc_max_v)
    tabulated_kv = row.number("withstand_kv")
    withstand = Given("Uw", tabulated_kv, "kV", phrase("for {uoc_max}", uoc_max=amount(uoc_max_v, "V", 6)))
    return replace(
        _up_max(withstand),
        table_row=row.reference,
        assumptions=(
            phrase(
                "impulse withstand {tabulated} by the array voltage, none declared",
                tabulated=amount(tabulated_kv, "kV", 6),
            ),
        ),
    )


def _up_max(withstand: Given) -> Rating:
    return Rating(
        Symbol.UP_MAX,
        _UP_FACTOR * withstand.number,
        "kV",
        "0.8·Uw",
        (withstand,),
        clauses_from_memory("IEC 61643-32, IEC 61643-12"),
    )


def spd_type(
    has_lightning_protection: bool, separation_is_kept: bool = False, is_earthed_ground_plant: bool = False
) -> Given:
    """Return the type of the DC surge protective device, 1 or 2.

    Type 1 where an external lightning protection system is there and its separation distance to the array is not kept,
    or for a plant on the ground with many earthed supports; else type 2. Source: IEC 62305-3 6.3, CLC/TS 50539-12 4.3.
    """
    is_type_1 = is_earthed_ground_plant or (has_lightning_protection and not separation_is_kept)
    return Given(phrase("SPD type"), "1" if is_type_1 else "2", "", cited("IEC 62305-3 6.3", "CLC/TS 50539-12 4.3"))


def discharge_current_min() -> Rating:
    """Return the least nominal discharge current In (8/20) of a type 2 device in kA.

    5 kA a mode. Source: CLC/TS 50539-12 4.6.2.1 (withdrawn).
    """
    return Rating(
        Symbol.IN_SURGE_MIN,
        _TYPE_2_IN_KA,
        "kA",
        "5 kA",
        (),
        cited("CLC/TS 50539-12 4.6.2.1", remark=phrase("withdrawn")),
    )


def iscpv_min(isc_max: Rating) -> Rating:
    """Return the least short-circuit current rating Iscpv in A: Isc,max at the device.

    Source: IEC 61643-31 (from memory).
    """
    given = (isc_max.as_input(),)
    return Rating(
        Symbol.ISCPV_MIN,
        isc_max.value,
        "A",
        "Isc,max",
        given,
        clause_from_memory("IEC 61643-31"),
        isc_max.table_row,
    )


def impulse_current_min(level: str) -> Rating:
    """Return the least impulse current Iimp (10/350) in kA of one mode of a type 1 device, by the class I to IV.

    Raises NoRow for another class. Source: IEC 61643-32:2017 Annex A, voltage-limiting devices (from memory); the share
    depends on the number of down-conductors.
    """
    row = table("surge_current_dc").pick(level=level)
    given = (Given(phrase("class"), level),)
    clause = from_memory(in_annex("IEC 61643-32:2017", "A"))
    return Rating(
        Symbol.IIMP_MIN, row.number("impulse_current_ka"), "kA", phrase("table by class"), given, clause, row.reference
    )


def protection_level_with_leads(up_kv: float, leads_m: float | None) -> Rating:
    """Return the voltage in kV that the equipment sees: Up of the device and 1 kV for each metre of lead.

    leads_m: connecting leads in all, None where they are not known, which counts as none. Source: IEC 61643-12 (from
    memory), trade handbooks.
    """
    length_m = leads_m or 0.0
    given = (Given("Up", up_kv, "kV"), Given("l", length_m, "m"))
    said = () if leads_m is not None else (phrase("no drop along the leads, their length is not given"),)
    clause = from_memory("IEC 61643-12")
    return Rating(
        Symbol.UP_LEADS, up_kv + _LEADS_KV_PER_M * length_m, "kV", "Up + 1 kV/m·l", given, clause, NOTHING, said
    )


def protected_length() -> Rating:
    """Return the cable length in m that one device protects: 10 m. What is farther needs a device of its own.

    Source: IEC 61643-32 as restated by two makers of protective devices; IEC 60364-5-53:2019 534.4.9 has the same for
    the AC side (from memory).
    """
    return Rating(Symbol.L_PROTECTED, _PROTECTED_M, "m", "10 m", (), clause_from_memory("IEC 61643-32"))
