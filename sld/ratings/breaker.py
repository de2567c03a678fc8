"""Rated current, overload and instantaneous tripping of circuit-breakers and gG fuses."""

from __future__ import annotations

from sld.citation import cited, from_memory, in_annex, in_table
from sld.quantity import Given, Origin, Rating
from sld.ratings.domain import require_not_negative, require_positive
from sld.ratings.passed_over import below
from sld.ratings.symbol import Symbol
from sld.tables.table import NoRow, Row, next_at_least, series, table
from sld.words import amount, phrase, verbatim

__all__ = [
    "CLASS_3_UP_TO_KA",
    "SELECTIVE",
    "continuous_duty_current",
    "conventional_holding_current",
    "conventional_tripping_current",
    "current_by_diversity",
    "duty_current",
    "instantaneous_holding_current",
    "instantaneous_tripping_current",
    "largest_rated_current",
    "let_through_energy",
    "loading",
    "overload_limit",
    "permitted_section",
    "smallest_rated_current",
]

_SERIES = {"MCB": "mcb_a", "MCCB": "mccb_a", "gG": "gg_fuse_a"}
SELECTIVE = "SLS"
"""The selective main circuit-breaker of curve E (DIN VDE 0641-21) among the families of conventional currents."""

CLASS_3_UP_TO_KA = 10.0
"""The prospective current up to which the table of energy limiting class 3 holds."""

_OVERLOAD = from_memory("IEC 60364-4-43:2008 433.1")


def _ratings_of(device: str) -> tuple[float, ...]:
    try:
        return series(_SERIES[device])
    except KeyError:
        raise NoRow(f"no series of ratings for the device {device}; there are {', '.join(_SERIES)}") from None


def smallest_rated_current(device: str, i_b_a: float) -> Rating | None:
    """Return the smallest standard rated current In in A of at least Ib, None where the series ends below it.

    device: "MCB", "MCCB" or "gG". Raises NoRow for another, ValueError for a current of zero or less.
    Source: IEC 60364-4-43:2008 433.1; series of IEC 60898-1, IEC 60947-2, IEC 60269-1.
    """
    require_positive(i_b_a=i_b_a)
    values = _ratings_of(device)
    value = next_at_least(values, i_b_a)
    if value is None:
        return None
    return Rating(
        Symbol.IN,
        value,
        "A",
        phrase("smallest In ≥ Ib"),
        (Given("Ib", i_b_a, "A"), Given(phrase("device"), device)),
        _OVERLOAD,
        origin=Origin.CHOSEN,
        passed_over=below(values, i_b_a, "A"),
    )


def conventional_tripping_current(device: str, i_n_a: float) -> Rating:
    """Return the current I2 in A that is sure to trip the device within the conventional time.

    MCB 1.45 In, MCCB 1.30 In, gG 1.6 In from 16 A (1.9 and 2.1 below). Raises NoRow for a device or rated current that
    the table does not hold, ValueError for a rated current of zero or less.
    Source: IEC 60898-1, IEC 60947-2, IEC 60269-1, as used by IEC 60364-4-43:2008 433.1 (from memory).
    """
    return _conventional(device, i_n_a, "i2_multiple", Symbol.I2, "f2")


def conventional_holding_current(device: str, i_n_a: float) -> Rating:
    """Return the current Inf in A at which the device is sure not to trip within the conventional time.

    MCB 1.13 In, MCCB 1.05 In, gG 1.25 In from 16 A (1.5 below). Errors and source as above.
    """
    return _conventional(device, i_n_a, "inf_multiple", Symbol.INF, "f1")


def _conventional(device: str, i_n_a: float, column: str, symbol: Symbol, factor: str) -> Rating:
    require_positive(i_n_a=i_n_a)
    for row in table("conventional_current").where(device=device):
        if _within(row, i_n_a):
            multiple = row.number(column)
            given = (Given("In", i_n_a, "A", verbatim(device)), Given(factor, multiple))
            return Rating(symbol, multiple * i_n_a, "A", f"{factor} · In", given, _OVERLOAD, row.reference)
    raise NoRow(f"no conventional current for {device} of {i_n_a:g} A")


def _within(row: Row, i_n_a: float) -> bool:
    low, high = row.number("i_n_from_a"), row.number("i_n_to_a")
    above = i_n_a >= low if row["lower_included"] == "yes" else i_n_a > low
    below = i_n_a <= high if row["upper_included"] == "yes" else i_n_a < high
    return above and below


def overload_limit(i_z_a: float) -> Rating:
    """Return 1.45 Iz in A, which the conventional tripping current I2 must not exceed.

    Raises ValueError for a capacity of zero or less. Source: IEC 60364-4-43:2008 433.1 (from memory).
    """
    require_positive(i_z_a=i_z_a)
    return Rating(Symbol.IZ_145, 1.45 * i_z_a, "A", "1.45 · Iz", (Given("Iz", i_z_a, "A"),), _OVERLOAD)


def largest_rated_current(device: str, i_z_a: float) -> Rating | None:
    """Return the largest standard In in A that protects a cable of capacity Iz: In <= Iz and I2 <= 1.45 Iz.

    None where even the smallest device of the series is too large. Raises NoRow for an unknown device, ValueError for a
    capacity of zero or less. Source: IEC 60364-4-43:2008 433.1 (from memory).
    """
    limit_a = overload_limit(i_z_a).value
    fits = [
        i_n_a
        for i_n_a in _ratings_of(device)
        if i_n_a <= i_z_a and conventional_tripping_current(device, i_n_a).value <= limit_a
    ]
    if not fits:
        return None
    given = (Given("Iz", i_z_a, "A"), Given(phrase("device"), device))
    return Rating(Symbol.IN_LARGEST, max(fits), "A", phrase("largest In ≤ Iz with I2 ≤ 1.45 · Iz"), given, _OVERLOAD)


def _band(curve: str, i_n_a: float, column: str, symbol: Symbol) -> Rating:
    require_positive(i_n_a=i_n_a)
    row = table("magnetic_trip").pick(curve=curve)
    multiple = row.number(column)
    given = (Given("In", i_n_a, "A", phrase("curve {curve}", curve=curve)), Given("m", multiple))
    return Rating(
        symbol, multiple * i_n_a, "A", "m · In", given, cited(in_table("IEC 60898-1:2015", "7")), row.reference
    )


def instantaneous_tripping_current(curve: str, i_n_a: float) -> Rating:
    """Return Ia in A, the upper bound of the instantaneous band: at this current the breaker must trip at once.

    curve: B (5 In), C (10 In), D (20 In). Raises NoRow for another, ValueError for a rated current of zero or less.
    Source: IEC 60898-1:2015 Table 7.
    """
    return _band(curve, i_n_a, "trips_multiple", Symbol.IA)


def instantaneous_holding_current(curve: str, i_n_a: float) -> Rating:
    """Return the lower bound in A of the instantaneous band, for inrush and selectivity. Errors and source as above."""
    return _band(curve, i_n_a, "holds_multiple", Symbol.I_HOLD)


def let_through_energy(curve: str, i_n_a: float, i_k_ka: float) -> Rating:
    """Return the greatest I²t in A²s that a class 3 miniature circuit-breaker lets through of `i_k_ka` kA.

    Raises NoRow above 40 A or 10 kA or for another curve, ValueError for a current of zero or less.
    Source: EN 60898-1 Annex ZA (from memory); the maker's figure wins.
    """
    row, given = _of_class_3("energy_limiting_class3", curve, i_n_a, i_k_ka)
    clause = from_memory(in_annex("EN 60898-1", "ZA"))
    return Rating(Symbol.I2T, row.number("let_through_a2s"), "A²s", phrase("table value"), given, clause, row.reference)


def permitted_section(curve: str, i_n_a: float, i_k_ka: float) -> Rating:
    """Return the copper section in mm² that a handbook permits behind a class 3 breaker, below the one by its energy.

    Raises NoRow where it permits no less, ValueError for a current of zero or less.
    Source: IET On-Site Guide Table B7 (from memory).
    """
    row, given = _of_class_3("class3_conductor", curve, i_n_a, i_k_ka)
    clause = from_memory(in_table("IET On-Site Guide", "B7"))
    return Rating(Symbol.S_MIN, row.number("section_mm2"), "mm²", phrase("table value"), given, clause, row.reference)


def _of_class_3(name: str, curve: str, i_n_a: float, i_k_ka: float) -> tuple[Row, tuple[Given, ...]]:
    """Return the row of a table for class 3 breakers by rated and fault current, and what it was read with."""
    require_positive(i_n_a=i_n_a, i_k_ka=i_k_ka)
    rows = table(name)
    level_ka = rows.at_least("i_k_up_to_ka", i_k_ka, curve=curve).number("i_k_up_to_ka")
    row = rows.at_least("i_n_up_to_a", i_n_a, curve=curve, i_k_up_to_ka=level_ka)
    of = phrase("curve {curve}, class 3, {level}", curve=curve, level=amount(level_ka, "kA"))
    return row, (Given("In", i_n_a, "A", of), Given("Ik", i_k_ka, "kA"))


def loading(i_b_a: float, i_n_a: float) -> Rating:
    """Return how far a device is loaded, Ib in percent of In; above 80 % all day asks for the maker's derating.

    Raises ValueError for a current of zero or less. Source: common practice for IEC 61439 assemblies (from memory).
    """
    require_positive(i_b_a=i_b_a, i_n_a=i_n_a)
    given = (Given("Ib", i_b_a, "A"), Given("In", i_n_a, "A"))
    return Rating(Symbol.IB_BY_IN, 100 * i_b_a / i_n_a, "%", "100 · Ib / In", given, cited(phrase("common practice")))


def current_by_diversity(i_b_a: float, diversity_factor: float) -> Rating:
    """Return the least rated current in A of a device that carries `i_b_a` A for hours beside others that do: Ib / RDF.

    Raises ValueError for a current or factor of zero or less. Source: IEC 61439-1:2020 5.4 (from memory).
    """
    require_positive(i_b_a=i_b_a, diversity_factor=diversity_factor)
    given = (Given("Ib", i_b_a, "A"), Given("RDF", diversity_factor))
    return Rating(
        Symbol.IB_BY_RDF, i_b_a / diversity_factor, "A", "Ib / RDF", given, from_memory("IEC 61439-1:2020 5.4")
    )


def continuous_duty_current(i_max_a: float) -> Rating:
    """Return 125 % of the greatest current in A, for projects under the National Electrical Code only.

    Raises ValueError for a current of zero or less. Source: NEC 2023 705.28 and 705.30 (numbers from memory).
    """
    require_positive(i_max_a=i_max_a)
    clause = from_memory("NEC 2023 705.28(A), 705.30(B)")
    return Rating(Symbol.IMAX_125, 1.25 * i_max_a, "A", "1.25 · Imax", (Given("Imax", i_max_a, "A"),), clause)


def duty_current(exported_a: float, continuous_a: float, other_a: float) -> Rating:
    """Return the least rating in A of a device that sources and loads share: 125 % of what flows for three hours.

    exported_a: of sources, which count as continuous. continuous_a, other_a: loads that flow for three hours or more,
    and the others, which count at 100 %. Raises ValueError for a negative current. Source: NEC 2023 210.20(A), 215.3,
    705.30(B) (from memory).
    """
    require_not_negative(exported_a=exported_a, continuous_a=continuous_a, other_a=other_a)
    value = max(1.25 * exported_a, 1.25 * continuous_a + other_a)
    given = (
        Given("Iexport", exported_a, "A"),
        Given(phrase("continuous loads"), continuous_a, "A"),
        Given(phrase("other loads"), other_a, "A"),
    )
    formula = phrase("larger of 1.25 · Iexport and 1.25 · continuous + other loads")
    return Rating(Symbol.IMAX_125, value, "A", formula, given, from_memory("NEC 2023 210.20(A), 215.3, 705.30(B)"))
