"""The DC switch-disconnector: least rated voltage and current, the next standard rating, the utilisation category."""

from __future__ import annotations

from collections.abc import Sequence

from sld.citation import cited, clause_from_memory
from sld.quantity import Given, Origin, Rating
from sld.ratings.passed_over import below
from sld.ratings.symbol import Symbol
from sld.tables.profiles import Profile
from sld.tables.table import next_at_least, series, table
from sld.words import NOTHING, phrase

__all__ = ["category", "current_min", "smallest_rating", "voltage_min"]


def voltage_min(uoc_max: Rating) -> Rating:
    """Return the least rated operational voltage Ue in V, for the actual wiring of the poles: Uoc,max of the circuit.

    A switch's Ue depends on how many poles are in series. Source: UTE C15-712-1 14.1, IEC 60947-3, IEC 62548 7.3.
    """
    return Rating(
        Symbol.UE_MIN,
        uoc_max.value,
        "V",
        "Uoc,max",
        (uoc_max.as_input(),),
        cited("IEC 60947-3", "UTE C15-712-1 14.1"),
        uoc_max.table_row,
        uoc_max.assumptions,
    )


def current_min(strings_count: int, isc_a: float, profile: Profile) -> Rating:
    """Return the least rated operational current Ie in A at Ue: f·Np·Isc.

    f is 1.25 in the IEC, UTE, BS and AS/NZS profiles and 1.25·1.25 in NEC 690, where a 100 % rated assembly may use
    1.25. isc_a: Isc of one string in A at STC with its rear gain. The rating counts at the temperature inside the
    enclosure.
    """
    factor = profile.isolator_current_factor
    return Rating(
        Symbol.IE_MIN,
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


def smallest_rating(
    current: Rating, ratings_a: Sequence[float] | None = None, series_name: str = "dc_isolator_a"
) -> Rating | None:
    """Return the smallest standard rated current in A not below `current`, or None above the series."""
    choices = series(series_name) if ratings_a is None else ratings_a
    chosen = next_at_least(choices, current.value)
    if chosen is None:
        return None
    row = table("standard_ratings").pick(series=series_name).reference if ratings_a is None else NOTHING
    given = (current.as_input(),)
    return Rating(
        Symbol.IE,
        chosen,
        "A",
        phrase("next rating from {symbol}", symbol=current.symbol),
        given,
        current.clause,
        row,
        origin=Origin.CHOSEN,
        passed_over=below(choices, current.value, "A"),
    )


def category(strings_count: int) -> Given:
    """Return the utilisation category: DC-PV1 where one string alone meets the contact, else DC-PV2.

    Several strings can drive a reverse or over-current through the contact. A switch of DC-PV2 serves in place of
    DC-PV1. Source: IEC 60947-3:2020 (clause from memory).
    """
    value = "DC-PV1" if strings_count <= 1 else "DC-PV2"
    return Given(
        phrase("utilisation category"),
        value,
        "",
        clause_from_memory(phrase("IEC 60947-3:2020, PV annex")),
    )
