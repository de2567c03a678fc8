"""Between a battery and its converter: the current, what its devices must stand, and how far its protection may be.

Powers in W, voltages in V, currents in A, lengths in m. A battery has no current limit of its own worth the name: ahead
of its fuse any short circuit is fed by all that the cells give.
"""

from __future__ import annotations

from collections.abc import Sequence

from sld.citation import cited, from_memory
from sld.quantity import Given, Origin, Rating
from sld.ratings.symbol import Symbol
from sld.words import phrase

__all__ = ["capacity_min", "current_min", "design_current", "length_to_protection",
           "smallest_section", "voltage_drop", "voltage_min"]  # fmt: skip

_LENGTH_MAX_M = 3.0
_CURRENTS = cited("IEC 60364-4-43:2008 433.1")
_DEVICES = from_memory("IEC 62485-2:2010 5", "IEC 60364-5-53:2019 536")
_PLACE = from_memory("IEC 60364-4-43:2008 434.2.1", "BS 7671:2018 434.2.1")


def design_current(power_w: float, voltage_min_v: float) -> Rating:
    """Return the highest current Ib in A: the power of the converter at the lowest voltage of the battery.

    The losses of the converter are left out, which the assumptions say. Source: definition of power.
    """
    given = (Given("P", power_w, "W"), Given("Umin", voltage_min_v, "V"))
    said = (phrase("losses of the battery converter left out"),)
    return Rating(Symbol.IB, power_w / voltage_min_v, "A", "P / Umin", given, cited(phrase("definition of power")),
                  assumptions=said)  # fmt: skip


def voltage_min(voltage_max_v: float) -> Rating:
    """Return the least rated DC voltage in V of a device at a battery: its highest voltage, at the end of charging.

    Source: IEC 60364-5-53:2019 536 and IEC 62485-2:2010 5 (from memory).
    """
    return Rating(Symbol.UN_MIN, voltage_max_v, "V", "Umax", (Given("Umax", voltage_max_v, "V"),), _DEVICES)


def current_min(design: Rating) -> Rating:
    """Return the least rated current in A of a device: Ib of the battery. Source: IEC 60364-4-43:2008 433.1."""
    given = (design.as_input(),)
    return Rating(Symbol.IN_MIN, design.value, "A", "Ib", given, _CURRENTS, assumptions=design.assumptions)


def capacity_min(design: Rating | None, rated_a: float | None) -> Rating | None:
    """Return the least capacity Iz,min in A of a battery cable: Ib, and In of what protects it where that is known.

    Source: IEC 60364-4-43:2008 433.1 (Ib <= In <= Iz).
    """
    given = [*([design.as_input()] if design else []), *([Given("In", rated_a, "A")] if rated_a is not None else [])]
    if not given:
        return None
    least = max(each.number for each in given)
    formula = "max(Ib, In)" if len(given) > 1 else given[0].symbol
    said = design.assumptions if design else ()
    return Rating(Symbol.IZ_MIN, least, "A", formula, tuple(given), _CURRENTS, assumptions=said)


def length_to_protection(lengths_m: Sequence[float]) -> tuple[Rating, Rating]:
    """Return the cable between a battery and its overcurrent protection in m, and the longest that is allowed.

    Source: IEC 60364-4-43:2008 434.2.1 and BS 7671:2018 434.2.1: at most 3 m, laid so that a short circuit is hardly
    possible and away from what burns (from memory).
    """
    given = tuple(Given(f"L{place}", length, "m") for place, length in enumerate(lengths_m, start=1))
    length = Rating(Symbol.L_UNPROTECTED, sum(lengths_m), "m", " + ".join(each.name for each in given), given, _PLACE)
    return length, Rating(Symbol.L_UNPROTECTED_MAX, _LENGTH_MAX_M, "m", phrase("limit"), (), _PLACE)


def smallest_section(section_mm2: float, carries: Rating, least: Rating) -> Rating:
    """Return the section in mm² that was chosen: the smallest standard one with Iz >= Iz,min.

    carries, least: both in A. Source: IEC 60364-4-43:2008 433.1.
    """
    given = (carries.as_input(), least.as_input())
    formula = phrase("smallest standard section with {has} ≥ {needs}", has=carries.symbol, needs=least.symbol)
    said = (*carries.assumptions, *least.assumptions)
    return Rating(
        Symbol.S, section_mm2, "mm²", formula, given, _CURRENTS, carries.table_row, said, origin=Origin.CHOSEN
    )


def voltage_drop(
    length_m: float, current_a: float, r_ohm_per_km: float, parallel: int, voltage_v: float
) -> tuple[Rating, Rating]:
    """Return the voltage drop of a battery cable, there and back, in V and in % of a voltage.

    Source: Ohm's law.
    """
    volts = 2 * length_m * current_a * r_ohm_per_km / 1000 / parallel
    given = (
        Given("L", length_m, "m"),
        Given("Ib", current_a, "A"),
        Given("R", r_ohm_per_km, "Ω/km"),
        Given("n", parallel),
    )
    law = cited(phrase("Ohm's law"))
    drop = Rating(Symbol.DU_DC_V, volts, "V", "2·L·Ib·R/1000/n", given, law)
    shares = (drop.as_input(), Given("Umin", voltage_v, "V"))
    return drop, Rating(Symbol.DU_DC_CABLE, 100 * volts / voltage_v, "%", "100·ΔU/Umin", shares, law)
