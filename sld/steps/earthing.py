"""The conductors at the main earthing terminal: the least section of each, and what is chosen."""

from __future__ import annotations

from sld.citation import from_memory, in_table
from sld.frozen import dataclass, replace
from sld.model.device import Busbar
from sld.model.system import EarthConductor, System
from sld.quantity import Given, Rating
from sld.ratings import bonding, protective_conductor
from sld.ratings.specified import specified
from sld.ratings.symbol import Symbol
from sld.steps.largest_protective import largest_protective
from sld.steps.ledger import Ledger
from sld.steps.supply_neutral import supply_cables, supply_neutral
from sld.words import NOTHING, amount, phrase

__all__ = ["earthing"]

_SMALLEST_NEUTRAL_MM2 = 35.0
"""The neutral of the supply up to which BS 7671:2018 Table 54.8 asks for its smallest bonding conductor."""

_ENOUGH_MM2 = 25.0
"""No main bonding conductor need be larger (IEC 60364-5-54:2011 544.1.1)."""

_ENOUGH_IN_TT_MM2 = 25.0
"""No copper protective conductor need be larger in TT, where the fault current returns through two electrodes.

IEC 60364-5-54:2011 543.1.1 (from memory); a French course page on earthing in print:
http://dev.blinckers-groups.com/BBoux/Elektron/terre5.php
"""

_PART_54 = from_memory("IEC 60364-5-54:2011 542.3")


@dataclass(frozen=True, slots=True)
class _Bases:
    """What the least sections go by: the largest protective conductor, and the neutral of the supply where known."""

    largest: Rating
    neutral: Rating | None


def earthing(system: System, ledger: Ledger) -> None:
    """Rate every conductor at the earthing terminals."""
    bases = _Bases(largest_protective(system, ledger), supply_neutral(system, ledger))
    for conductor in system.earth_conductors:
        least = _of_building(system, ledger, conductor) or _least(system, conductor, bases)
        if least is not None:
            ledger.add(conductor.key, least, symbol=Symbol.S_MIN)
        if conductor.section_mm2 is not None:
            ledger.add(conductor.key, specified(Symbol.S, conductor.section_mm2, "mm²"))
        elif least is not None:
            ledger.attempt(
                conductor.key,
                Symbol.S,
                lambda needed=least: protective_conductor.standard_section(needed),  # type: ignore[misc]
                phrase("no standard section is large enough"),
            )


def _of_building(system: System, ledger: Ledger, conductor: EarthConductor) -> Rating | None:
    """Return the least main bonding of a building with an electrode of its own, by the largest protective conductor
    there; None elsewhere. The neutral of the supply is not earthed in it, whatever that is (PME)."""
    board = system.devices.get(conductor.board)
    if not isinstance(board, Busbar) or board.given.earthing_system is None or system.profile == "AS/NZS 5033":
        return None
    largest = largest_protective(system, ledger, board)
    return bonding.main_bonding(largest.value).assuming(*largest.assumptions)


def _least(system: System, conductor: EarthConductor, bases: _Bases) -> Rating | None:
    lightning = system.earthing.lightning_protection
    on_lightning = lightning is not None and conductor.purpose == "array_frame"
    if system.profile == "AS/NZS 5033" and conductor.purpose in _AS_NZS and not on_lightning:
        return _in_australia(conductor, bases)
    on_the_ground = system.site.building == "ground_mounted"
    if conductor.purpose == "earthing":
        return _earthing_conductor(system, bases, conductor.to_supply)
    if conductor.purpose == "main_bonding":
        return _main_bonding(system, bases)
    if conductor.purpose == "array_frame":
        return bonding.frame_bonding(lightning is not None and (on_the_ground or not lightning.separation_kept))
    if conductor.purpose == "lightning":
        clause = from_memory(in_table("EN 62305-3", "9"))
        given = (Given(phrase("class"), lightning.level if lightning else "III"),)
        return Rating(Symbol.SB, 16.0, "mm²", phrase("bonding bar to lightning protection, copper"), given, clause)
    return None


_AS_NZS = {"main_bonding": "AS/NZS 3000:2018 5.6.3.2", "array_frame": "AS/NZS 5033:2021 4.6", "earthing": ""}
"""Purposes that Australia and New Zealand have figures of their own for, and the clauses of those of 4 mm²."""


def _in_australia(conductor: EarthConductor, bases: _Bases) -> Rating:
    """Return the least conductor in Australia and New Zealand: the main earthing conductor by the table of earthing
    conductors, at least 4 mm² (AS/NZS 3000:2018 5.3.3.2, from memory), bonding 4 mm²."""
    if clause := _AS_NZS[conductor.purpose]:
        return bonding.bonding_as_nzs(clause)
    inputs, said = (Given("SPE", bases.largest.value, "mm²"),), bases.largest.assumptions
    clauses = from_memory("AS/NZS 3000:2018 5.3.3.2")
    return Rating(Symbol.SE, max(4.0, bases.largest.value), "mm²", "max(4 mm², SPE)", inputs, clauses, NOTHING, said)


def _main_bonding(system: System, bases: _Bases) -> Rating:
    """Return the least main bonding conductor: half of the largest protective conductor that is needed.

    With BS 7671 it is half of the earthing conductor that is required, or on a supply with a combined neutral what the
    table asks for by the section of that neutral (PME); where this is not known, its first row is the least in any
    case. Source: BS 7671:2018 544.1.1, in words at
    https://online.flipbuilder.com/hzzr/jtap/files/basic-html/page22.html
    """
    by_table = _by_neutral(system, bases)
    if by_table is not None and bases.neutral is not None:
        return by_table
    largest, given_mm2 = bases.largest, system.earthing.conductor.section_mm2 or 0.0
    if system.profile == "BS 7671":
        to_supply = any(each.to_supply and each.purpose == "earthing" for each in system.earth_conductors)
        half_of_mm2 = _earthing_conductor(system, bases, to_supply).value
    else:
        half_of_mm2 = largest.value
    least = bonding.main_bonding(half_of_mm2).assuming(*largest.assumptions)
    if not given_mm2 and least.value < _ENOUGH_MM2 and not supply_cables(system):
        least = least.assuming(
            phrase("protective conductor of the supply at most {what}", what=amount(2 * least.value, "mm²", 6))
        )
    return by_table if by_table is not None and by_table.value > least.value else least


def _by_neutral(system: System, bases: _Bases) -> Rating | None:
    """Return what BS 7671 asks of bonding and earthing conductors on a supply with a combined neutral, else None."""
    if system.profile != "BS 7671" or system.supply.earthing_system != "TN-C-S":
        return None
    if bases.neutral is not None:
        return bonding.main_bonding_pme(bases.neutral.value)
    return bonding.main_bonding_pme(_SMALLEST_NEUTRAL_MM2).assuming(phrase("neutral of the supply up to 35 mm²"))


def _earthing_conductor(system: System, bases: _Bases, to_supply: bool) -> Rating:
    """Return the least earthing conductor: by the protective or bonding conductors, more where it is buried, and as
    much as of main bonding where that goes by the neutral of the supply (BS 7671:2018 542.3.1, in words at
    https://electriciansforums.net/threads/earthing-for-tt-system.28774/page-2).

    In TN no noticeable fault current flows through the installation's own electrode, so the bonding rule decides
    (542.3.1, from memory); in TT and IT the electrode is part of the loop, and the protective conductor does, as for
    the conductor to the earthing point of a TN supply (to_supply), which is in the ground only where the spec says so.
    """
    largest = bases.largest
    if system.supply.earthing_system in ("TN-S", "TN-C-S") and not to_supply:
        needed = replace(bonding.main_bonding(largest.value), symbol=Symbol.SE).assuming(*largest.assumptions)
    else:
        inputs = (Given("SPE", largest.value, "mm²"),)
        needed = Rating(
            Symbol.SE,
            max(6.0, largest.value),
            "mm²",
            "max(6 mm², SPE)",
            inputs,
            _PART_54,
            NOTHING,
            largest.assumptions,
        )
        if system.supply.earthing_system == "TT" and needed.value > _ENOUGH_IN_TT_MM2:
            formula, clause = (
                phrase("max(6 mm², SPE), at most 25 mm² Cu in TT"),
                phrase("{part_54}; 543.1.1 (from memory)", part_54=_PART_54),
            )
            needed = replace(needed, value=_ENOUGH_IN_TT_MM2, formula=formula, clause=clause)
            needed = needed.assuming(phrase("earth electrodes of supply and installation independent of each other"))
    by_table = _by_neutral(system, bases)
    if by_table is not None and by_table.value > needed.value:
        needed = replace(by_table, symbol=Symbol.SE)
    buried = _buried(system, to_supply)
    return buried if buried is not None and buried.value > needed.value else needed


def _buried(system: System, to_supply: bool) -> Rating | None:
    """Return the least earthing conductor in the ground, None where it is not there or well protected. What nobody says
    of it is assumed."""
    given = system.earthing.conductor
    in_the_ground, protected = given.buried or (given.buried is None and not to_supply), given.corrosion_protected
    if not in_the_ground or (given.mechanically_protected and protected is not False):
        return None
    buried = protective_conductor.buried_earthing_conductor("none" if protected is False else "corrosion_only")
    if protected is None:
        buried = buried.assuming(phrase("earthing conductor protected against corrosion"))
    if given.buried is None:
        buried = buried.assuming(phrase("earthing conductor buried"))
    return buried
