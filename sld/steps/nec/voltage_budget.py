"""Larger sizes of AC conductors for the voltage rise: on the whole way from the supply point, at the least copper.

The code leaves the rise to the designer (210.19(A) informational note); the limit is that of the spec or the profile.
"""

from __future__ import annotations

from sld.frozen import replace
from sld.model.device import Cable
from sld.model.system import System
from sld.quantity import Given, Rating
from sld.ratings.nec.conductor_size import conditions_of, meets_current, sized
from sld.ratings.symbol import Symbol
from sld.spec.blocks.circuit import AcCable
from sld.steps.ac_cables import rise_limit_percent
from sld.steps.least_copper import Size
from sld.steps.ledger import Ledger
from sld.steps.nec.ac_conductors import Laid, as_laid, laid, rise_with
from sld.steps.voltage_budget import for_every_way, sizes_of, terminal_limit_mm2
from sld.tables.table import NoRow
from sld.wire_size import SIZES, area_mm2, size_of
from sld.words import listing, phrase

__all__ = ["voltage_budget"]

_TIMES_THE_AREA = 4.1
"""Six gauge numbers are four times the area (ASTM B258), as three standard sections of the other profiles are: more
nobody lays without having looked for another way. Common practice, no source."""


def voltage_budget(system: System, ledger: Ledger) -> None:
    """Choose larger sizes where the rise asks for them: within the limit on every way at the least Σ L · S, as few
    sizes as possible above those that carry the current.

    No size is larger than the terminals at its ends take, nor, where they state nothing, than four times the area of
    the smallest one that carries the current.
    """
    limit_percent = rise_limit_percent(system)
    if limit_percent is None:
        return
    given = {cable.key: (cable, given) for cable, given in system.ac_cables()}
    ways = {key: way for key, (cable, _) in given.items() if (way := laid(system, ledger, cable)) is not None}
    sizes = {key: _sizes(system, ledger, *given[key], way) for key, way in ways.items()}
    for key, section_mm2, kept in for_every_way(system, sizes, limit_percent):
        cable, each = given[key]
        carries = ledger.get(key, Symbol.S_CARRIES)
        if each.section_mm2 is not None or carries is None or section_mm2 == carries.value:
            continue
        ledger.add(key, _chosen(ways[key], section_mm2, carries, limit_percent if kept else None))
        as_laid(system, ledger, cable, each, ways[key])


def _sizes(system: System, ledger: Ledger, cable: Cable, given: AcCable, way: Laid) -> tuple[Size, ...]:
    """Return the sizes that a cable may have; the one that the spec gives costs nothing. Empty without export."""
    carries = ledger.get(cable.key, Symbol.S_CARRIES)
    if given.section_mm2 is not None:
        allowed = [given.section_mm2] if size_of(given.section_mm2) else []
    elif carries is not None:
        terminal_mm2 = terminal_limit_mm2(system, cable)
        most_mm2 = _TIMES_THE_AREA * carries.value if terminal_mm2 is None else terminal_mm2
        larger = [area for area in map(area_mm2, SIZES) if carries.value < area <= most_mm2]
        allowed = [carries.value, *(area for area in larger if _carries_too(way, area))]
    else:
        allowed = []

    def rise(section_mm2: float) -> float | None:
        rating = rise_with(system, ledger, cable, given, way.run, size_of(section_mm2))
        return None if rating is None else rating.value

    return sizes_of(given, allowed, rise)


def _carries_too(way: Laid, section_mm2: float) -> bool:
    try:
        return way.demand is not None and meets_current(way.run, size_of(section_mm2), way.demand)
    except NoRow:
        return False


def _chosen(way: Laid, section_mm2: float, carries: Rating, limit_percent: float | None) -> Rating:
    """Return a larger size as a rating. limit_percent: None where the limit does not hold on every way through it."""
    assert way.demand is not None, "what is chosen has a demand"
    larger = sized(way.run, size_of(section_mm2), way.demand, carries.value)
    if limit_percent is None:
        text = phrase("largest S that the terminals take, or four times that for the current; the rise stays too high")
        return replace(larger, formula=text)
    limit = Given("Δu,limit", limit_percent, "%", phrase("on the whole way"))
    conditions = listing([*conditions_of(way.demand), "Δu,ac ≤ Δu,limit"])
    text = phrase("smallest Σ L · S with {conditions} on every way", conditions=conditions)
    return replace(larger, given=(*larger.given, limit), formula=text)
