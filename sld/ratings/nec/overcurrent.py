"""Overcurrent devices: standard ratings, the 125 % of a current that flows for hours, and what a conductor allows."""

from __future__ import annotations

from sld.citation import citations, cited, from_memory
from sld.quantity import Given, Origin, Rating
from sld.ratings.domain import require_positive
from sld.ratings.passed_over import below
from sld.ratings.symbol import Symbol
from sld.tables.table import next_at_least, series, table
from sld.words import phrase, verbatim

__all__ = ["largest_device", "largest_service_of_dwelling", "smallest_device"]

_SERIES = "nec_240_6_a"
_NEXT_UP_TO_A = 800.0
_SERVICE_SHARE = 0.83
_SERVICE_FROM_A, _SERVICE_TO_A = 100.0, 400.0


def smallest_device(needed: Rating) -> Rating | None:
    """Return the smallest standard rating In in A that is not below a current, None above 6000 A.

    needed: in A, 1.25 times the continuous current where that flows for three hours or more.
    Source: NEC 2023 240.6(A) (from memory).
    """
    values = series(_SERIES)
    value = next_at_least(values, needed.value)
    if value is None:
        return None
    row = table("standard_ratings").pick(series=_SERIES)
    given = (needed.by_formula(), *needed.given)
    formula = phrase("smallest standard rating ≥ {symbol}", symbol=needed.symbol)
    clause = citations(needed.clause, cited("NEC 2023 240.6(A)"))
    return Rating(
        Symbol.IN,
        value,
        "A",
        formula,
        given,
        clause,
        row.reference,
        needed.assumptions,
        origin=Origin.CHOSEN,
        passed_over=below(values, needed.value, "A"),
    )


def largest_device(capacity_a: float, material: str, size: str) -> Rating | None:
    """Return the largest standard rating in A that protects a conductor of an ampacity in A.

    Up to 800 A the next standard rating above the ampacity is allowed, above that none that is larger; 14, 12 and
    10 AWG have limits of their own. None for a conductor that even the smallest device does not protect. Raises
    ValueError for an ampacity of zero or less.
    Source: NEC 2023 240.4(B), (C), (D) (240.4(D) seen, the rest from memory).
    """
    require_positive(capacity_a=capacity_a)
    ratings = series(_SERIES)
    above = next_at_least(ratings, capacity_a)
    if above is not None and above <= _NEXT_UP_TO_A:
        value, formula, clause = (
            above,
            phrase("next standard rating ≥ Iz"),
            from_memory("NEC 2023 240.4(B)"),
        )
    else:
        fitting = [each for each in ratings if each <= capacity_a]
        if not fitting:
            return None
        value, formula, clause = (
            fitting[-1],
            phrase("largest standard rating ≤ Iz"),
            from_memory("NEC 2023 240.4(C)"),
        )
    given = [Given("Iz", capacity_a, "A"), Given(phrase("size"), size, "", verbatim(material))]
    caps = table("nec_small_conductor").where(material=material, size=size)
    if caps and caps[0].number("device_max_a") < value:
        value = caps[0].number("device_max_a")
        formula, clause = phrase("cap of a small conductor"), cited("NEC 2023 240.4(D)")
        return Rating(Symbol.IN_ALLOWED, value, "A", formula, tuple(given), clause, caps[0].reference)
    return Rating(Symbol.IN_ALLOWED, value, "A", formula, tuple(given), clause)


def largest_service_of_dwelling(capacity_a: float) -> Rating | None:
    """Return the largest service rating in A whose conductors an ampacity is enough for in one dwelling: Iz / 0.83.

    For services of 100 A to 400 A of one phase, 120/240 V; None outside these. Raises ValueError for an ampacity of
    zero or less. Source: NEC 2023 310.12 (from memory).
    """
    require_positive(capacity_a=capacity_a)
    fitting = [each for each in series(_SERIES) if each <= capacity_a / _SERVICE_SHARE]
    if not fitting or not _SERVICE_FROM_A <= fitting[-1] <= _SERVICE_TO_A:
        return None
    given = (Given("Iz", capacity_a, "A"),)
    formula = phrase("largest standard rating ≤ Iz / 0.83, service of a dwelling")
    return Rating(Symbol.IN_ALLOWED, fitting[-1], "A", formula, given, from_memory("NEC 2023 310.12"))
