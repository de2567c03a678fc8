"""Residual current devices on an inverter circuit: type, rated residual current, leakage to expect."""

from __future__ import annotations

from collections.abc import Sequence

from sld.citation import citations, cited, from_memory, in_table
from sld.frozen import dataclass
from sld.quantity import Given, Origin, Rating
from sld.ratings.disconnection import TOUCH_VOLTAGE_V, touch_voltage
from sld.ratings.domain import require_not_negative, require_positive
from sld.ratings.symbol import Symbol
from sld.tables.table import series, table
from sld.words import NOTHING, Phrase, Sayable, amount, phrase

__all__ = [
    "CHARGING_POINT_MA",
    "ResidualCurrentType",
    "break_time",
    "chosen_residual_current",
    "direct_residual_current",
    "least_residual_current",
    "residual_current_type",
]

_ADDITIONAL_PROTECTION_MA = 30.0
_STANDING_SHARE = 0.3

CHARGING_POINT_MA = 6.0
"""Smooth direct current in mA above which a charging point behind an RCD of type A must disconnect itself.

IEC 60364-7-722:2018 722.531.3.101; IEC 62955 (from memory).
"""


@dataclass(frozen=True, slots=True)
class ResidualCurrentType:
    """The type letter of a residual current device (A, F or B) and why; `assumptions` in words fit for the sheet."""

    letter: str
    reason: Phrase
    clause: Sayable
    table_row: Sayable = NOTHING
    assumptions: tuple[Sayable, ...] = ()


def residual_current_type(simple_separation: bool, declared_dc_ma: float | None = None) -> ResidualCurrentType:
    """Return the least type of residual current device for an inverter circuit. Type AC is never enough.

    simple_separation: the inverter, or a transformer, separates the AC from the DC side. declared_dc_ma: the greatest
    smooth direct residual current in mA that the maker declares, None where he is silent; a declaration overrules the
    separation. Raises ValueError for a negative current.
    Source: IEC 60364-7-712:2017 712.531.3.5.1; IEC 60364-5-53:2019 531.3.3 (from memory).
    """
    general = cited("IEC 60364-7-712:2017 712.531.3.5.1")
    if declared_dc_ma is None:
        if simple_separation:
            return ResidualCurrentType("A", phrase("simple separation between the AC and the DC side"), general)
        note = phrase("no direct residual current declared and no separation, type B taken")
        return ResidualCurrentType(
            "B", phrase("no separation, no declaration of the maker"), general, assumptions=(note,)
        )
    require_not_negative(declared_dc_ma=declared_dc_ma)
    clause = citations(general, from_memory("IEC 60364-5-53:2019 531.3.3"))
    for row in table("rcd_residual_direct_current"):
        limit_ma = row.number("direct_current_up_to_ma")
        if declared_dc_ma <= limit_ma:
            reason = phrase(
                "declared direct residual current {declared_dc}, at most {limit}",
                declared_dc=amount(declared_dc_ma, "mA", 6),
                limit=amount(limit_ma, "mA", 6),
            )
            return ResidualCurrentType(row["device_type"], reason, clause, row.reference)
    return ResidualCurrentType(
        "B",
        phrase("declared direct residual current {declared_dc}", declared_dc=amount(declared_dc_ma, "mA", 6)),
        clause,
    )


def direct_residual_current(declared_ma: Sequence[float]) -> Rating:
    """Return the smooth direct current in mA that several converters may let through one RCD together: their sum.

    Raises ValueError for a negative current. Source: IEC 60364-5-53:2019 531.3.3 (from memory): the limit of a type
    is on the current in the RCD.
    """
    for each_ma in declared_ma:
        require_not_negative(declared_dc_ma=each_ma)
    given = tuple(Given("IΔdc,i", each_ma, "mA") for each_ma in declared_ma)
    return Rating(Symbol.IDC, sum(declared_ma), "mA", "Σ IΔdc,i", given, from_memory("IEC 60364-5-53:2019 531.3.3"))


def break_time(multiple: float, selective: bool = False, delay_s: float = 0.0) -> Rating:
    """Return the longest time in s in which an RCD opens at a fault current of so many times IΔn.

    multiple: at least 1; between two rows the smaller one counts, with the longer time. selective: type S.
    delay_s: that is set on a device where it can be; the time of the general type is added (common practice, no
    source). Raises ValueError for a delay below zero, NoRow for a multiple below 1. Source: IEC 61008-1
    Table 1.
    """
    require_not_negative(delay_s=delay_s)
    row = table("rcd_break_time").at_most("multiple", multiple, device="selective" if selective else "general")
    given = [Given("IΔ/IΔn", multiple), Given(phrase("type"), "S" if selective else phrase("general"))]
    if delay_s:
        given.append(Given("Δt", delay_s, "s"))
    formula = phrase("table value and delay") if delay_s else phrase("table value")
    clause = cited(in_table("IEC 61008-1:2010", "1"))
    return Rating(Symbol.T_RCD, row.number("time_s") + delay_s, "s", formula, tuple(given), clause, row.reference)


def least_residual_current(leakage_ma: float) -> Rating:
    """Return the least IΔn in mA that the standing leakage does not trip: leakage / 0.3.

    Raises ValueError for a negative current. Source: IEC 60364-5-53:2019 531.3.2 (from memory).
    """
    require_not_negative(leakage_ma=leakage_ma)
    given = (Given("Ileak", leakage_ma, "mA"),)
    clause = from_memory("IEC 60364-5-53:2019 531.3.2")
    return Rating(Symbol.IDN_LEAST, leakage_ma / _STANDING_SHARE, "mA", "Ileak / 0.3", given, clause)


def chosen_residual_current(
    leakage_ma: float, r_a_ohm: float | None = None, additional_protection: bool = False
) -> Rating | None:
    """Return the standard IΔn in mA in the window from leakage to electrode, None where the window is empty.

    The smallest above 30 mA that fits; 30 mA where only it fits, or where additional protection is demanded.
    r_a_ohm: None where the touch voltage does not limit (TN without RCD as fault protection). additional_protection: at
    most 30 mA. Raises ValueError for an input outside its range.
    Source: IEC 60364-4-41:2005+A1:2017 411.5.3, 415.1; IEC 60364-5-53:2019 531.3.2 (from memory).
    """
    least = least_residual_current(leakage_ma)
    given = [Given("IΔn,least", least.value, "mA", least.by_formula().origin)]
    coarse = [] if additional_protection else [idn for idn in series("rcd_idn_ma") if idn > _ADDITIONAL_PROTECTION_MA]
    fits = [idn_ma for idn_ma in (*coarse, _ADDITIONAL_PROTECTION_MA) if idn_ma >= least.value]
    if r_a_ohm is not None:
        require_positive(r_a_ohm=r_a_ohm)
        given.append(Given("RA", r_a_ohm, "Ω"))
        fits = [idn_ma for idn_ma in fits if touch_voltage(r_a_ohm, idn_ma).value <= TOUCH_VOLTAGE_V]
    if not fits:
        return None
    clause = from_memory("IEC 60364-4-41:2005+A1:2017 411.5.3, 415.1", "IEC 60364-5-53:2019 531.3.2")
    formula = phrase("standard IΔn ≥ Ileak / 0.3 with RA · IΔn ≤ 50 V")
    return Rating(Symbol.IDN, fits[0], "mA", formula, tuple(given), clause, origin=Origin.CHOSEN)
