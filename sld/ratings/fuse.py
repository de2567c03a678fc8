"""When a gG fuse opens and what it stands: the gates of its time-current characteristic, the energy it lets through.

A gate is a bound of the standard that every such fuse keeps, so that no maker's curve is needed. A fuse between two
rows of a table counts as the next larger where it must open, as the next smaller where it must not.
"""

from __future__ import annotations

from sld.citation import citations, cited, in_table, in_tables
from sld.quantity import Given, Rating
from sld.ratings.domain import require_positive
from sld.ratings.symbol import Symbol
from sld.tables.table import NoRow, Row, table
from sld.words import listing, phrase, verbatim

__all__ = ["energy_until_open", "holding_current", "opening_current", "pre_arcing_energy"]

_OPENS = cited(in_table("IEC 60269-1:2006", "3"))
_OPENS_BS_88 = cited(in_table("IEC 60269-1:2006", "3"), in_table("BS 7671:2018", "41.2"))
_HOLDS = cited(in_tables("IEC 60269-1:2006", listing(["3", "7"])))


def _times_s() -> list[float]:
    return sorted({row.number("time_s") for row in table("gg_fuse_opening")})


def _row(i_n_a: float, time_s: float, system: str) -> Row | None:
    try:
        return table("gg_fuse_opening").at_least("i_n_a", i_n_a, time_s=time_s, system=system)
    except NoRow:
        return None


def opening_current(i_n_a: float, time_s: float, bs_88: bool = False) -> Rating:
    """Return Ia in A, the current at which a gG fuse of `i_n_a` A is sure to open within `time_s` s.

    The longest tabulated time that is not longer decides: 0.1 s, 0.4 s and 5 s, at 0.4 s for fuses to BS 88-2 (bs_88)
    their own. Raises NoRow below 0.1 s or for a larger fuse than is tabulated, ValueError for an input of zero or less.
    Source: IEC 60269-1 Table 3 (0.1 s and 5 s); manuals of loop testers (0.4 s); BS 7671:2018 Table 41.2(a) and Figure
    3A3 (0.4 s, BS 88-2).
    """
    require_positive(i_n_a=i_n_a, time_s=time_s)
    for tabulated_s in reversed(_times_s()):
        if tabulated_s > time_s:
            continue
        row = (_row(i_n_a, tabulated_s, "BS 88-2") if bs_88 else None) or _row(i_n_a, tabulated_s, "gG")
        if row is None:
            continue
        given = (Given("In", i_n_a, "A", verbatim("gG")), Given("t", tabulated_s, "s"))
        clause = _OPENS_BS_88 if bs_88 else _OPENS
        return Rating(Symbol.IA, row.number("i_a"), "A", phrase("table value"), given, clause, row.reference)
    raise NoRow(f"no current is tabulated at which a gG fuse of {i_n_a:g} A opens within {time_s:g} s")


def energy_until_open(i_n_a: float, i_k_min_a: float, bs_88: bool = False) -> Rating:
    """Return the greatest I²t in A²s that a gG fuse lets through at `i_k_min_a` A or more: Ia² · t.

    The shortest tabulated time whose current is reached decides. The energy falls as the current rises, so that the
    least fault current is the worst. Raises NoRow where the fuse need not open within 5 s or is not tabulated,
    ValueError for an input of zero or less. Source: IEC 60364-4-43:2008 434.5.2; gates as `opening_current`.
    """
    require_positive(i_n_a=i_n_a, i_k_min_a=i_k_min_a)
    for time_s in _times_s():
        try:
            opens = opening_current(i_n_a, time_s, bs_88)
        except NoRow:
            continue
        if opens.value <= i_k_min_a:
            within_s = opens.given[1].number
            given = (Given("Ik1,min", i_k_min_a, "A"), Given("Ia", opens.value, "A"), opens.given[1], opens.given[0])
            value = opens.value**2 * within_s
            clause = citations(cited("IEC 60364-4-43:2008 434.5.2"), opens.clause)
            return Rating(Symbol.I2T, value, "A²s", "Ia² · t", given, clause, opens.table_row)
    raise NoRow(f"a gG fuse of {i_n_a:g} A need not open within 5 s at {i_k_min_a:g} A")


def holding_current(i_n_a: float) -> Rating:
    """Return the current in A that a gG fuse stands for 0.1 s without melting, for selectivity.

    Raises NoRow below 16 A, ValueError for a rated current of zero or less. Source: IEC 60269-1 Table 3.
    """
    require_positive(i_n_a=i_n_a)
    row = table("gg_fuse_holding").at_most("i_n_a", i_n_a)
    given = (Given("In", i_n_a, "A", verbatim("gG")), Given("t", 0.1, "s"))
    return Rating(Symbol.I_HOLD, row.number("holds_a"), "A", phrase("table value"), given, _HOLDS, row.reference)


def pre_arcing_energy(i_n_a: float) -> Rating:
    """Return the I²t in A²s below which a gG fuse is sure not to melt, however short the fault.

    Raises NoRow below 16 A, ValueError for a rated current of zero or less. Source: IEC 60269-1 Table 7.
    """
    require_positive(i_n_a=i_n_a)
    row = table("gg_fuse_holding").at_most("i_n_a", i_n_a)
    given = (Given("In", i_n_a, "A", verbatim("gG")),)
    return Rating(
        Symbol.I2T_MELT, row.number("pre_arcing_a2s"), "A²s", phrase("table value"), given, _HOLDS, row.reference
    )
