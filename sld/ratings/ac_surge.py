"""Surge protective devices on the AC side: voltages, type and discharge current."""

from __future__ import annotations

from sld.citation import from_memory, in_table
from sld.quantity import Given, Rating
from sld.ratings.domain import require_positive
from sld.ratings.symbol import Symbol
from sld.tables.table import table
from sld.words import phrase
from sld.words.cell import of_cell

__all__ = [
    "calculated_risk_level",
    "largest_protection_level",
    "least_discharge_current",
    "least_operating_voltage",
    "surge_device_type",
]

_CLAUSE = from_memory("IEC 60364-5-53:2019 534.4")


_ENVIRONMENT = {"rural": 85.0, "suburban": 85.0, "urban": 850.0}


def calculated_risk_level(surroundings: str, risk_length_m: float, flashes_per_km2_year: float) -> Rating:
    """Return the calculated risk level CRL = fenv / (LP · Ng); the lower it is, the greater is the risk.

    surroundings: rural, suburban or urban; risk_length_m: LP of the supply line in m. Raises ValueError for a length or
    density of zero or less, KeyError for other surroundings. Source: IEC 60364-4-44:2007+A1:2015 443.5 (formula as
    https://www.eca.co.uk/ECAApplications/SPDCalculator/index.html prints it; fenv of 85 and 850 from memory).
    """
    require_positive(risk_length_m=risk_length_m, flashes_per_km2_year=flashes_per_km2_year)
    factor = _ENVIRONMENT[surroundings]
    given = (
        Given(phrase("environmental factor"), factor, "", of_cell(surroundings)),
        Given("LP", risk_length_m / 1000, "km"),
        Given("Ng", flashes_per_km2_year, "/km²/yr"),
    )
    value = factor / (risk_length_m / 1000 * flashes_per_km2_year)
    return Rating(
        Symbol.CRL,
        value,
        "",
        phrase("environmental factor / (LP · Ng)"),
        given,
        from_memory("IEC 60364-4-44:2007+A1:2015 443.5"),
    )


def least_operating_voltage(earthing: str, mode: str, u_0_v: float, u_n_v: float) -> Rating:
    """Return the least continuous operating voltage Uc in V of a device in a mode (L-N, L-PE, N-PE, L-PEN).

    earthing: TN-S, TN-C-S, TN-C, TT or IT; u_0_v line to earth, u_n_v line to line, both nominal in V. Raises NoRow for
    a mode that the system does not have, ValueError for a voltage of zero or less.
    Source: IEC 60364-5-53:2019 Table 534.1 (from memory).
    """
    require_positive(u_0_v=u_0_v, u_n_v=u_n_v)
    row = table("surge_voltage").pick(earthing=earthing, mode=mode)
    factor, base = row.number("factor"), row["base"]
    base_v = u_n_v if base == "U" else u_0_v
    given = (Given(phrase("factor"), factor), Given(base, base_v, "V"), Given(phrase("mode"), f"{mode}, {earthing}"))
    clause = from_memory(in_table("IEC 60364-5-53:2019", "534.1"))
    return Rating(
        Symbol.UC_LEAST, factor * base_v, "V", phrase("factor · {base}", base=base), given, clause, row.reference
    )


_CATEGORY_II = ((500.0, 2.5), (690.0, 4.0), (1000.0, 6.0))
"""Up to which voltage between lines -> the impulse withstand voltage of category II in kV (IEC 60364-4-44 Table 443.2,
from memory: 230/400 V and 277/480 V, 400/690 V, 1000 V)."""


def largest_protection_level(sensitive_electronics: bool = True, nominal_v: float = 400.0) -> Rating:
    """Return the largest voltage protection level Up in kV.

    nominal_v: between lines. 2.5 kV up to 277/480 V (overvoltage category II), 1.5 kV advised for electronics there;
    more above. Source: IEC 60364-5-53:2019 534.4.4, IEC 60364-4-44 Table 443.2 (from memory).
    """
    category, formula = phrase("overvoltage category II"), phrase("2.5 kV, 1.5 kV for electronics")
    withstood_kv = next((level for up_to_v, level in _CATEGORY_II if nominal_v <= up_to_v), _CATEGORY_II[-1][1])
    if withstood_kv > _CATEGORY_II[0][1]:  # nothing is advised for electronics there
        given = (Given(phrase("equipment"), category), Given("U", nominal_v, "V"))
        return Rating(Symbol.UP_LARGEST, withstood_kv, "kV", category, given, _CLAUSE)
    if sensitive_electronics:
        electronics = (Given(phrase("equipment"), phrase("electronics")),)
        return Rating(Symbol.UP_LARGEST, 1.5, "kV", formula, electronics, _CLAUSE)
    return Rating(Symbol.UP_LARGEST, withstood_kv, "kV", formula, (Given(phrase("equipment"), category),), _CLAUSE)


def surge_device_type(external_lightning_protection: bool, direct_strokes_to_the_line: bool = False) -> Rating:
    """Return the type (1 or 2) of the device at the origin.

    Type 1 with external lightning protection, or where direct strokes to the overhead line between its last pole and
    the building are reckoned with. Source: IEC 60364-5-53:2019 534.4.2 (from memory).
    """
    exposed = external_lightning_protection or direct_strokes_to_the_line
    given = (
        Given(
            phrase("external lightning protection"), phrase("yes") if external_lightning_protection else phrase("no")
        ),
        Given(phrase("direct strokes to the line"), phrase("yes") if direct_strokes_to_the_line else phrase("no")),
    )
    return Rating(
        Symbol.SPD_TYPE,
        1.0 if exposed else 2.0,
        "",
        phrase("1 where lightning current may enter, else 2"),
        given,
        _CLAUSE,
    )


def least_discharge_current(device_type: int, lightning_protection_level: str = "none") -> Rating:
    """Return the least discharge current in kA: In of type 2, Iimp a pole of type 1 (level "III/IV", "II" or "I").

    Raises NoRow for another combination. Source: IEC 60364-5-53:2019 534.4.4 (from memory).
    """
    row = table("surge_current").pick(device_type=device_type, lightning_protection_level=lightning_protection_level)
    given = (
        Given(phrase("type"), str(device_type)),
        Given(phrase("lightning protection level"), of_cell(lightning_protection_level)),
    )
    symbol = Symbol.IIMP_LEAST if device_type == 1 else Symbol.IN_SURGE_LEAST
    return Rating(symbol, row.number("current_ka"), "kA", phrase("table value"), given, _CLAUSE, row.reference)
