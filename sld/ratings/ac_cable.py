"""Continuous current-carrying capacity of a cable by IEC 60364-5-52: the table value and its correction factors.

A factor for a condition between two rows is that of the row on the cautious side, never an interpolation, so that a
reader with the paper table finds the number that was used.
"""

from __future__ import annotations

from collections.abc import Sequence
from math import prod

from sld.citation import Citation, cited
from sld.quantity import Given, Origin, Rating
from sld.ratings.domain import require_positive
from sld.ratings.symbol import Symbol
from sld.tables.table import NoRow, Row, table
from sld.words import Sayable, phrase, sequence
from sld.words.cell import of_cell

__all__ = [
    "ambient_factor",
    "corrected_capacity",
    "declared_factor",
    "depth_factor",
    "grouping_factor",
    "soil_factor",
    "tabulated_capacity",
    "tabulated_capacity_needed",
]

_STANDARD = "IEC 60364-5-52:2009"
_ANNEX_B = cited(phrase("{standard} 523 and Annex B", standard=_STANDARD))
_TABLES = cited(phrase("{standard} 523 and Annex B, tables", standard=_STANDARD))
_DEPTH_SHALLOW = "REBT ITC-BT-07:2002"
_DEPTH_DEEP = phrase("{standard} Appendix 4 Table 4B4", standard="BS 7671:2018")
_SHALLOW_M = 1.2  # the deepest row of the Spanish regulation
_SINGLE_CORE_LOADED = {"F2": 2, "F3f": 3, "F3t": 3, "Gh": 3, "Gv": 3}
_NINE_CIRCUITS = 9  # a single layer loses no more above nine circuits
_LARGEST_GROUP = 20


def tabulated_capacity(
    material: str, insulation: str, loaded_conductors_count: int, method: str, section_mm2: float
) -> Rating:
    """Return the tabulated capacity It in A.

    material: "Cu" or "Al"; insulation: "PVC" or "XLPE"; loaded_conductors_count: 2 (one phase) or 3; method: A1 to E,
    or for single-core cables F2, F3f, F3t, Gh, Gv (columns of the table). Raises NoRow where the standard has no value.
    Source: IEC 60364-5-52:2009 Tables B.52.2 to B.52.5 and B.52.10 to B.52.13.
    """
    if method in _SINGLE_CORE_LOADED:
        if loaded_conductors_count != _SINGLE_CORE_LOADED[method]:
            raise NoRow(f"method {method} is tabulated for {_SINGLE_CORE_LOADED[method]} loaded conductors only")
        row = table("capacity_single_core_iec60364").pick(
            material=material, insulation=insulation, section_mm2=section_mm2
        )
    else:
        row = table("capacity_iec60364").pick(
            material=material,
            insulation=insulation,
            loaded_conductors_count=loaded_conductors_count,
            section_mm2=section_mm2,
        )
    given = (
        Given("S", section_mm2, "mm²", sequence([material, insulation])),
        Given(phrase("loaded conductors"), loaded_conductors_count),
        Given(phrase("method"), method),
    )
    reference = phrase("{reference}, method {method}", reference=row.reference_of(method), method=method)
    return Rating(
        Symbol.IT,
        row.number(method),
        "A",
        phrase("table value"),
        given,
        _TABLES,
        reference,
    )


def _table(number: str) -> Citation:
    return cited(phrase("{standard} 523 and Annex B, Table {number}", standard=_STANDARD, number=number))


def ambient_factor(temperature_c: float, insulation: str, medium: str = "air") -> Rating:
    """Return the factor Ca for the ambient temperature in °C around the cable (medium "air" or "ground").

    Takes the next hotter row. Raises NoRow above the last temperature that the insulation may be loaded at.
    Source: IEC 60364-5-52:2009 Tables B.52.14 (air) and B.52.15 (ground).
    """
    column = f"{medium}_{insulation}"
    row = table("ambient_factor").at_least("temperature_c", temperature_c)
    words = phrase("air") if medium == "air" else phrase("ground")
    given = (Given("θ", temperature_c, "°C", words), Given(phrase("insulation"), of_cell(insulation)))
    clause = _table("B.52.14" if medium == "air" else "B.52.15")
    reference = sequence([row.reference, words, insulation])
    return Rating(Symbol.CA, row.number(column), "", phrase("table value"), given, clause, reference)


def soil_factor(resistivity_k_m_per_w: float, method: str) -> Rating:
    """Return the factor Cs for the thermal resistivity of the soil in K·m/W, method "D1" (duct) or "D2" (direct).

    Takes the next more resistive row. Raises NoRow above 3 K·m/W, ValueError for zero or less.
    Source: IEC 60364-5-52:2009 Table B.52.16.
    """
    require_positive(resistivity_k_m_per_w=resistivity_k_m_per_w)
    row = table("soil_factor").at_least("resistivity_k_m_per_w", resistivity_k_m_per_w)
    given = (Given(phrase("ρ soil"), resistivity_k_m_per_w, "K·m/W"), Given(phrase("method"), method))
    clause = _table("B.52.16")
    return Rating(
        Symbol.CS,
        row.number(method),
        "",
        phrase("table value"),
        given,
        clause,
        phrase("{reference}, method {method}", reference=row.reference, method=method),
    )


def depth_factor(depth_m: float, method: str) -> Rating:
    """Return the factor Cd for the depth of laying in m, method "D1" (duct) or "D2" (direct).

    Takes the next deeper row. Raises NoRow below 3 m, ValueError for zero or less. Source: REBT ITC-BT-07 to 1.2 m,
    BS 7671:2018 Table 4B4 below.
    """
    require_positive(depth_m=depth_m)
    row = table("depth_factor").at_least("depth_m", depth_m)
    given = (Given(phrase("depth"), depth_m, "m"), Given(phrase("method"), method))
    clause = cited(_DEPTH_SHALLOW if row.number("depth_m") <= _SHALLOW_M else _DEPTH_DEEP)
    return Rating(
        Symbol.CD,
        row.number(method),
        "",
        phrase("table value"),
        given,
        clause,
        phrase("{reference}, method {method}", reference=row.reference, method=method),
    )


def grouping_factor(arrangement: str, circuits_count: int) -> Rating:
    """Return the factor Cg for a group of circuits (circuits, not conductors).

    arrangement: a row of `sld/tables/grouping_factor.csv`. Takes the next larger tabulated group; a single layer in air
    keeps its last factor. Raises NoRow for an unknown arrangement or a larger group than is tabulated, ValueError for
    no circuit. Source: IEC 60364-5-52:2009 Tables B.52.17 to B.52.19.
    """
    require_positive(circuits_count=circuits_count)
    row = _grouping_row(arrangement, circuits_count)
    given = (Given(phrase("circuits"), str(circuits_count)), Given(phrase("arrangement"), of_cell(arrangement)))
    clause = _table(row["standard_table"])
    return Rating(Symbol.CG, row.number("factor"), "", phrase("table value"), given, clause, row.reference)


def _grouping_row(arrangement: str, circuits_count: int) -> Row:
    grouping = table("grouping_factor")
    if arrangement.startswith("single_layer") and circuits_count > _LARGEST_GROUP:
        return grouping.pick(arrangement=arrangement, circuits_count=_NINE_CIRCUITS)
    return grouping.at_least("circuits_count", circuits_count, arrangement=arrangement)


def declared_factor(symbol: Symbol, value_factor: float, reason: Sayable) -> Rating:
    """Return a correction factor that the designer declares (depth, duct, roof surcharge), with the reason given.

    Raises ValueError for a factor of zero or less. Source: the designer.
    """
    require_positive(value_factor=value_factor)
    return Rating(
        symbol,
        value_factor,
        "",
        phrase("declared"),
        (Given(phrase("reason"), reason),),
        cited(phrase("declared by the designer")),
        origin=Origin.GIVEN,
    )


def corrected_capacity(tabulated: Rating, factors: Sequence[Rating] = (), parallel_count: int = 1) -> Rating:
    """Return the capacity Iz in A under the real conditions: n · It · product of the factors.

    Parallel cables must be alike in section, length, material and method, and the grouping factor must count them all.
    Raises ValueError for a count below one. Source: IEC 60364-5-52:2009 523 (523.7 for parallel cables, from memory).
    """
    require_positive(parallel_count=parallel_count)
    value = parallel_count * tabulated.value * prod(factor.value for factor in factors)
    given = [Given("It", tabulated.value, "A", tabulated.table_row)]
    given += [factor.as_input(factor.table_row or factor.clause) for factor in factors]
    parts = [each.name for each in given]
    if parallel_count > 1:
        given.append(Given("n", parallel_count, "", phrase("parallel cables")))
        parts.insert(0, "n")
    notes = tuple(note for rating in (tabulated, *factors) for note in rating.assumptions)
    return Rating(Symbol.IZ, value, "A", " · ".join(parts), tuple(given), _ANNEX_B, tabulated.table_row, notes)


def tabulated_capacity_needed(current_a: float, factors: Sequence[Rating] = (), parallel_count: int = 1) -> Rating:
    """Return the table value in A that one cable needs so that its corrected capacity carries `current_a`.

    Raises ValueError for a current or a count of zero or less. Source: IEC 60364-5-52:2009 523.
    """
    require_positive(current_a=current_a, parallel_count=parallel_count)
    value = current_a / (parallel_count * prod(factor.value for factor in factors))
    given = [Given("I", current_a, "A"), Given("n", parallel_count)]
    given += [factor.as_input(factor.table_row or factor.clause) for factor in factors]
    formula = " / ".join(["I", *(str(factor.symbol) for factor in factors)]) + (" / n" if parallel_count > 1 else "")
    return Rating(Symbol.IT_NEEDED, value, "A", formula, tuple(given), _ANNEX_B)
