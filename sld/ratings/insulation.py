"""Insulation of the array to earth: test voltage and least values, and the fuse in a functional earth."""

from __future__ import annotations

from sld.citation import cited, clause_from_memory, from_memory
from sld.quantity import Given, Rating
from sld.ratings.symbol import Symbol
from sld.tables.table import Row, table
from sld.words import phrase

__all__ = [
    "functional_earth_fuse_max",
    "group_power_max",
    "resistance_min_at_test",
    "resistance_min_by_power",
    "resistance_min_inverter",
    "voltage_at_test",
]

_SYSTEM_FACTOR = 1.25
_LEAKAGE_MAX_A = 0.030
_GROUP_POWER_MAX_KWP = 10.0


def _test_row(uoc_stc_v: float) -> tuple[float, Row]:
    """Return the system voltage in V and its row: the last that begins below it, or at it where its start belongs."""
    system_v = _SYSTEM_FACTOR * uoc_stc_v
    rows = [
        row
        for row in table("insulation_test")
        if system_v > row.number("from_v") or (system_v == row.number("from_v") and row["from_included"] == "yes")
    ]
    if not rows:
        raise ValueError(f"the open-circuit voltage must not be negative, it is {uoc_stc_v} V")
    return system_v, rows[-1]


def group_power_max() -> Rating:
    """Return the greatest power in kWp of strings that are tested together; a larger array is tested in parts.

    Source: IEC 62446-1:2016 6.7.3 (the value from memory; that this is the procedure of the test is in its contents).
    """
    return Rating(
        Symbol.PGROUP,
        _GROUP_POWER_MAX_KWP,
        "kWp",
        phrase("greatest power tested together"),
        (),
        from_memory("IEC 62446-1:2016 6.7.3"),
    )


def voltage_at_test(uoc_stc_v: float, limit_v: float) -> Rating:
    """Return the DC test voltage in V of strings of `uoc_stc_v` at STC, by their system voltage 1.25·Uoc,STC.

    Below 120 V 250 V; to 500 V 500 V; above 1000 V; above 1000 V 1500 V; but never above `limit_v`, the lowest rated
    voltage of the modules and cables that are tested: then the next lower test voltage. Raises NoRow where none is as
    low. Source: IEC 62446-1:2016 6.7 (last row from memory); a maker's manual asks for a test voltage below the highest
    system voltage of the modules (https://esmanual.top/manual/130699/Aros-10000P.html?page=102).
    """
    system_v, row = _test_row(uoc_stc_v)
    given: tuple[Given, ...] = (Given("Uoc,STC", uoc_stc_v, "V"), Given("Usys", system_v, "V"))
    asked_v, formula = row.number("test_v"), phrase("table by 1.25·Uoc,STC")
    if asked_v > limit_v:
        row = table("insulation_test").at_most("test_v", limit_v)
        formula = phrase("table by 1.25·Uoc,STC, next below the rated voltage of modules and cables")
        given += (Given(phrase("asked for"), asked_v, "V"), Given(phrase("rated"), limit_v, "V"))
    clause = cited("IEC 62446-1:2016 6.7")
    return Rating(Symbol.UTEST, row.number("test_v"), "V", formula, given, clause, row.reference)


def resistance_min_at_test(uoc_stc_v: float) -> Rating:
    """Return the least insulation resistance in MΩ in the test of `voltage_at_test`. Source: IEC 62446-1:2016 6.7."""
    system_v, row = _test_row(uoc_stc_v)
    return Rating(
        Symbol.RISO_MIN,
        row.number("resistance_min_mohm"),
        "MΩ",
        phrase("table by 1.25·Uoc,STC"),
        (Given("Uoc,STC", uoc_stc_v, "V"), Given("Usys", system_v, "V")),
        cited("IEC 62446-1:2016 6.7"),
        row.reference,
    )


def resistance_min_inverter(uoc_max: Rating) -> Rating:
    """Return the least insulation resistance in kΩ before a non-isolated inverter may start: Uoc,max/30 mA.

    Source: IEC 62109-2:2011 4.8.2 (from memory).
    """
    return Rating(
        Symbol.RISO_START,
        uoc_max.value / _LEAKAGE_MAX_A / 1000,
        "kΩ",
        "Uoc,max/30 mA",
        (uoc_max.as_input(),),
        from_memory("IEC 62109-2:2011 4.8.2"),
        uoc_max.table_row,
        uoc_max.assumptions,
    )


def resistance_min_by_power(p_array_kw: float) -> Rating:
    """Return the least insulation resistance in kΩ by the array's rated power in kW.

    The other threshold for the same check. Source: IEC 62548:2016 6.4 (from memory).
    """
    row = table("array_insulation_minimum").at_least("p_array_up_to_kw", p_array_kw)
    return Rating(
        Symbol.RISO_ARRAY,
        row.number("resistance_min_kohm"),
        "kΩ",
        phrase("table by array power"),
        (Given("Parray", p_array_kw, "kW"),),
        clause_from_memory("IEC 62548:2016 6.4"),
        row.reference,
    )


def functional_earth_fuse_max(p_array_kw: float) -> Rating:
    """Return the largest rated current in A of the device that opens a functional earth, by array power in kW.

    Source: IEC 62548:2016 6.4 (from memory).
    """
    row = table("functional_earth_fuse").at_least("p_array_up_to_kw", p_array_kw)
    return Rating(
        Symbol.IN_FE_MAX,
        row.number("i_n_max_a"),
        "A",
        phrase("table by array power"),
        (Given("Parray", p_array_kw, "kW"),),
        clause_from_memory("IEC 62548:2016 6.4"),
        row.reference,
    )
