"""Metering: direct connection, current transformers and the burden of their leads."""

from __future__ import annotations

from sld.citation import cited, from_memory
from sld.quantity import Given, Origin, Rating
from sld.ratings.conductor import resistance
from sld.ratings.domain import require_not_negative, require_positive
from sld.ratings.passed_over import below
from sld.ratings.symbol import Symbol
from sld.tables.table import table
from sld.words import phrase

__all__ = [
    "direct_meter_current",
    "metered_behind_transformer",
    "metered_current",
    "transformer_lead_burden",
    "transformer_primary",
    "transformer_ratio",
]


def metered_current(main_device_a: float, export_a: float) -> Rating:
    """Return the current in A that a meter must stand: the larger of the main device and the generation.

    Raises ValueError for a current of zero or less. Source: IEC 62053-21, EN 50470-3 (from memory).
    """
    require_positive(main_device_a=main_device_a, export_a=export_a)
    given = (Given("In", main_device_a, "A", phrase("device ahead")), Given("Ig", export_a, "A", phrase("generation")))
    return Rating(
        Symbol.IM,
        max(main_device_a, export_a),
        "A",
        "max(In, Ig)",
        given,
        from_memory("IEC 62053-21", "EN 50470-3"),
    )


def metered_behind_transformer(
    main_device_a: float, transformer_a: float, elsewhere_a: float = 0.0, export_a: float = 0.0
) -> Rating:
    """Return the current in A that a meter must stand where a transformer is the source: what can flow to it for long
    is what its device lets through, at most what the transformer and generation that is not behind the meter give.

    transformer_a: rated current of the transformer; elsewhere_a, export_a: generation beside and behind the meter.
    Raises ValueError for a device or transformer of zero or less, or generation below zero.
    Source: IEC 62053-21, EN 50470-3 (from memory); rated current: what the transformer gives continuously, IEC 60076-1.
    """
    require_positive(main_device_a=main_device_a, transformer_a=transformer_a)
    require_not_negative(elsewhere_a=elsewhere_a, export_a=export_a)
    given = (
        Given("In", main_device_a, "A", phrase("device ahead")),
        Given("In,transformer", transformer_a, "A"),
        Given("Ig,2", elsewhere_a, "A", phrase("generation that is not behind the meter")),
        Given("Ig", export_a, "A", phrase("generation")),
    )
    value = max(min(main_device_a, transformer_a + elsewhere_a), export_a)
    clause = from_memory("IEC 62053-21", "EN 50470-3")
    return Rating(Symbol.IM, value, "A", "max(min(In, In,transformer + Ig,2), Ig)", given, clause)


def direct_meter_current(current_a: float) -> Rating | None:
    """Return the greatest current in A of the smallest direct meter, None where current transformers are needed.

    Raises ValueError for a current of zero or less. Source: trade ranges of IEC 62053-21 meters (from memory).
    """
    require_positive(current_a=current_a)
    for row in table("electricity_meter"):
        if row.number("i_max_a") >= current_a:
            given = (Given("Im", current_a, "A"), Given(phrase("marking"), f"{row['marking']} A"))
            clause = from_memory("IEC 62053-21", "EN 50470-3")
            return Rating(
                Symbol.IMAX,
                row.number("i_max_a"),
                "A",
                phrase("smallest Imax ≥ Im"),
                given,
                clause,
                row.reference,
                origin=Origin.CHOSEN,
                passed_over=below([each.number("i_max_a") for each in table("electricity_meter")], current_a, "A"),
            )
    return None


def transformer_primary(current_a: float) -> Rating | None:
    """Return the smallest standard primary current in A of at least `current_a`, None above the series.

    Raises ValueError for a current of zero or less. Source: IEC 61869-2:2012 (from memory).
    """
    require_positive(current_a=current_a)
    for row in table("current_transformer"):
        if row.number("primary_a") >= current_a:
            given = (Given("Im", current_a, "A"),)
            clause = from_memory("IEC 61869-2:2012")
            return Rating(
                Symbol.IPN,
                row.number("primary_a"),
                "A",
                phrase("smallest Ipn ≥ Im"),
                given,
                clause,
                row.reference,
                origin=Origin.CHOSEN,
                passed_over=below([each.number("primary_a") for each in table("current_transformer")], current_a, "A"),
            )
    return None


def transformer_ratio(primary_a: float, secondary_a: float = 5.0) -> Rating:
    """Return the ratio of a current transformer. Raises ValueError for a current of zero or less.

    Source: IEC 61869-2:2012 (definition).
    """
    require_positive(primary_a=primary_a, secondary_a=secondary_a)
    given = (Given("Ipn", primary_a, "A"), Given("Isn", secondary_a, "A"))
    return Rating(
        Symbol.KR,
        primary_a / secondary_a,
        "",
        "Ipn / Isn",
        given,
        cited("IEC 61869-2:2012", remark=phrase("definition")),
    )


def transformer_lead_burden(
    secondary_a: float, length_m: float, section_mm2: float, temperature_c: float = 20.0
) -> Rating:
    """Return the burden in VA of copper leads of `length_m` m (one way): I² · 2 · L · R.

    Raises NoRow for a section that IEC 60228 does not hold, ValueError for an input of zero or less.
    Source: Ohm's law with IEC 60228:2004 class 2 resistance.
    """
    require_positive(secondary_a=secondary_a, length_m=length_m)
    r = resistance("Cu", section_mm2, temperature_c)
    given = (Given("Isn", secondary_a, "A"), Given("L", length_m, "m", phrase("one way")), Given("R", r.value, "Ω/km"))
    value = secondary_a**2 * 2 * length_m / 1000 * r.value
    return Rating(
        Symbol.SLEAD, value, "VA", "Isn² · 2 · L · R", given, cited(phrase("Ohm's law"), "IEC 60228:2004"), r.table_row
    )
