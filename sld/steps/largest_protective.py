"""The protective conductor that a cable needs, and the largest of an installation, by which earthing and bonding go."""

from __future__ import annotations

from sld.citation import cited
from sld.frozen import replace
from sld.model.device import Busbar, Cable
from sld.model.kinds.ac import AC_CABLE
from sld.model.system import System
from sld.quantity import Origin, Rating
from sld.ratings import protective_conductor
from sld.ratings.cable_section import smallest_section
from sld.ratings.symbol import Symbol
from sld.spec.blocks.circuit import AcCable
from sld.steps.cable_conditions import correction_factors
from sld.steps.cable_conductors import brings_protective, is_combined
from sld.steps.cable_design import conductor_material, design
from sld.steps.ledger import Ledger
from sld.tables.table import NoRow
from sld.words import NOTHING, phrase

__all__ = ["by_strength", "largest_protective", "least_protective"]


def least_protective(system: System, cable: Cable, section_mm2: float) -> Rating | None:
    """Return the least protective conductor of a cable by the table of the profile, for a section. [mm²]"""
    if system.profile == "AS/NZS 5033":
        return protective_conductor.earthing_conductor_as_nzs(section_mm2, conductor_material(cable))
    by_table = protective_conductor.protective_conductor_section(section_mm2)
    strong = by_strength(cable)
    if by_table is None or strong is None:
        return by_table
    return strong if strong.value > by_table.value else by_table


def by_strength(cable: Cable) -> Rating | None:
    """Return the least protective conductor for its strength, None where it is a core or the armour of its cable."""
    given = cable.given_as(AC_CABLE)
    if given is None or not (given.protective_conductor or "").startswith("separate"):
        return None
    return protective_conductor.laid_beside_minimum(given.protective_conductor == "separate_protected")


def largest_protective(system: System, ledger: Ledger, place: Busbar | None = None) -> Rating:
    """Return the largest protective conductor that a cable of the installation needs, 6 mm² where no cable says.

    place: the board of a building with an electrode of its own, of whose cables alone.

    What is larger than it need be, for the voltage or as a combined neutral (PEN), does not count as such: the fault
    current does not grow with it.
    """
    found = [
        needed
        for cable, given in system.ac_cables()
        if (place is None or system.earthed_by(cable.key) is place)
        and (brings_protective(system, cable) or is_combined(system, cable) or ledger.get(cable.key, Symbol.SPE))
        and (needed := _needed(system, ledger, cable, given)) is not None
    ]
    if found:
        return max(found, key=lambda rating: rating.value)
    assumed = (phrase("largest protective conductor 6 mm², no AC cable given"),)
    clause = cited(phrase("common practice, no source"))
    return Rating(Symbol.SPE, 6.0, "mm²", phrase("assumed"), (), clause, NOTHING, assumed, origin=Origin.ASSUMED)


def _needed(system: System, ledger: Ledger, cable: Cable, given: AcCable) -> Rating | None:
    """Return the protective conductor that a cable needs: that of the smallest section for its current, and for the
    heat of a fault where that is known; at most the one that it has."""
    candidates = [
        replace(rating, symbol=Symbol.SPE)
        for symbol in (Symbol.SPE, Symbol.SPE_MIN)
        if (rating := ledger.get(cable.key, symbol)) is not None
    ]
    demand, (factors, _) = ledger.get(cable.key, Symbol.IZ_MIN), correction_factors(system, ledger, cable, given)
    if demand is not None and factors is not None:
        heated_mm2 = ledger.value(cable.key, Symbol.S_THERMAL) or 0.0
        try:
            section = smallest_section(design(system, cable, given, factors), demand.value, None, heated_mm2)
        except NoRow:
            section = None
        least = least_protective(system, cable, section.value) if section is not None else None
        if section is not None and least is not None:
            candidates.append(replace(least, symbol=Symbol.SPE, given=(*least.given, *section.given)))
    return min(candidates, key=lambda rating: rating.value, default=None)
