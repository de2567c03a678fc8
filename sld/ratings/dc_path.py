"""What a device in the way of the direct current must stand: a plug connector, disconnector or shutdown device."""

from __future__ import annotations

from sld.citation import citations, clause_from_memory
from sld.quantity import Given, Rating
from sld.ratings.symbol import Symbol
from sld.tables.profiles import Profile

__all__ = ["branch_current_min", "current_min", "voltage_min"]

_CLAUSE = clause_from_memory("IEC 62548:2016 7.3")


def voltage_min(uoc_max: Rating) -> Rating:
    """Return the least rated voltage in V: Uoc,max of the strings, cold.

    uoc_max: in V. Source: IEC 62548:2016 7.3, components rated for the highest voltage of the array (from memory).
    """
    given = (uoc_max.as_input(),)
    return Rating(Symbol.UN_MIN, uoc_max.value, "V", "Uoc,max", given, _CLAUSE, uoc_max.table_row, uoc_max.assumptions)


def current_min(strings_count: int, isc_a: float, profile: Profile) -> Rating:
    """Return the least rated current in A: KI·Np·Isc, the current that the circuit is designed for.

    isc_a: Isc of the strongest string in A at STC, with its rear gain. Source: the profile's clause for KI (1.25), and
    IEC 62548:2016 7.3, connectors rated for the current of their circuit (from memory).
    """
    ki = profile.isc_factor
    given = (
        Given("KI", ki.value, "", profile.said),
        Given("Np", strings_count),
        Given("Isc", isc_a, "A"),
    )
    clause = citations(ki.cited, _CLAUSE)
    return Rating(Symbol.IN_MIN, ki.value * strings_count * isc_a, "A", "KI·Np·Isc", given, clause, ki.reference)


def branch_current_min(
    joined_count: int, others_count: int, isc_a: float, profile: Profile, fuse_a: float | None
) -> Rating:
    """Return the least rated current in A of the common side of a branch connector.

    joined_count: strings that it joins; others_count: strings that can feed a fault behind it; isc_a: as above; fuse_a:
    rated current of the fuse between them and it, None without one. What it carries forward, KI·n·Isc, and what comes
    back: the fuse's current, or KI·Isc of all the others. Source: IEC 62548:2016 7.3 and circuit-current table (from
    memory).
    """
    ki = profile.isc_factor
    forward_a = ki.value * joined_count * isc_a
    back_a = ki.value * others_count * isc_a if fuse_a is None else fuse_a
    given = [
        Given("KI", ki.value, "", profile.said),
        Given("n", joined_count),
        Given("Isc", isc_a, "A"),
        Given("Np,others", others_count) if fuse_a is None else Given("In", fuse_a, "A"),
    ]
    formula = "max(KI·n·Isc, KI·Np,others·Isc)" if fuse_a is None else "max(KI·n·Isc, In)"
    clause = citations(ki.cited, _CLAUSE)
    return Rating(Symbol.IN_MIN, max(forward_a, back_a), "A", formula, tuple(given), clause, ki.reference)
