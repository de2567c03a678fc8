"""Larger sections of AC cables for the voltage rise: on the whole way from the supply point, at the least copper."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping

from sld.frozen import replace
from sld.model.device import Apparatus, Cable, Device, InverterUnit
from sld.model.system import System
from sld.quantity import Given, Rating
from sld.ratings.cable_section import smallest_section
from sld.ratings.passed_over import SHOWN_COUNT, outgrown
from sld.ratings.symbol import Symbol
from sld.spec.blocks.circuit import AcCable
from sld.steps.ac_cables import as_laid, governed_by, rise_limit_percent, rise_with
from sld.steps.cable_conditions import correction_factors
from sld.steps.cable_design import design, next_section
from sld.steps.least_copper import Size, Stretch, beyond, fewest_sizes_above
from sld.steps.ledger import Ledger
from sld.tables.table import NoRow, series
from sld.words import phrase

__all__ = ["for_every_way", "sizes_of", "terminal_limit_mm2", "voltage_budget"]

_SIZES_ABOVE = 3
"""Four sizes above the smallest that carries the current nobody lays without having looked for another way."""

_RISE = phrase("voltage rise")

_NO_FLOORS: Mapping[str, Rating] = {}


def terminal_limit_mm2(system: System, cable: Cable) -> float | None:
    """Return the largest section that the terminals at both ends of a cable take, None where none is stated. [mm²]

    The devices of its circuit up to the next cable, and the inverter, are wired with conductors of the same section.
    """
    stated = [cable.given.terminal_section_max_mm2]
    for end in (*_run(system.upstream(cable.key)), *_run(system.downstream(cable.key))):
        if isinstance(end, InverterUnit):
            of_type_mm2 = None if cable.dc else end.type.terminal_section_max_mm2
            stated.append(end.given.terminal_section_max_mm2 or of_type_mm2)
        elif isinstance(end, Apparatus):
            stated.append(end.given.terminal_section_max_mm2)
    return min((each for each in stated if each is not None), default=None)


def _run(devices: Iterator[Device]) -> Iterator[Device]:
    """Yield the devices along a way up to the first that is no apparatus, that one included."""
    for device in devices:
        yield device
        if not isinstance(device, Apparatus):
            return


def voltage_budget(system: System, ledger: Ledger, floors: Mapping[str, Rating] = _NO_FLOORS) -> None:
    """Choose larger sections where the rise asks for them: within the limit on every way at the least Σ L · S, as few
    sizes as possible above those that carry the current.

    floors: sections that other demands ask for, by the key of the cable. No section is larger than the terminals at its
    ends, nor, where they state nothing, than three sizes above the smallest one that carries the current.
    """
    limit_percent = rise_limit_percent(system)
    if limit_percent is None:
        return
    given = {cable.key: (cable, given) for cable, given in system.ac_cables()}
    sizes = {key: _sizes(system, ledger, cable, each, floors) for key, (cable, each) in given.items()}
    for key, section_mm2, kept in for_every_way(system, sizes, limit_percent):
        cable, each = given[key]
        if each.section_mm2 is not None:
            continue
        floor = floors.get(key)
        by_floor = floor is not None and section_mm2 == floor.value
        ledger.add(key, floor if by_floor else _chosen(system, ledger, cable, each, section_mm2, kept=kept))
        as_laid(system, ledger, cable, each)


def for_every_way(
    system: System, sizes: Mapping[str, tuple[Size, ...]], limit_percent: float
) -> Iterator[tuple[str, float, bool]]:
    """Yield the key of each cable, the section to choose from its sizes in mm², and whether every way through it keeps
    the limit. A cable without sizes takes no part; that of the first of equal inverters stands for those of all."""
    behind: dict[str, list[str]] = {}
    for key in (key for key, found in sizes.items() if found):
        ahead = next((each.key for each in system.upstream(key) if sizes.get(each.key)), "")
        behind.setdefault(ahead, []).append(key)

    def stretch(key: str) -> Stretch:
        after = tuple(replace(stretch(each), alike=_alike(system, sizes, key, each)) for each in behind.get(key, ()))
        return Stretch(key, sizes[key], after)

    for tree in map(stretch, behind.get("", ())):
        sections = fewest_sizes_above(tree, limit_percent)
        too_high = beyond(tree, sections, limit_percent)
        yield from ((key, section_mm2, key not in too_high) for key, section_mm2 in sections.items())


def _alike(system: System, sizes: Mapping[str, tuple[Size, ...]], ahead: str, key: str) -> int:
    """Return how many equal cables follow a cable, one of which has sizes."""
    owner = system.devices[key].owner
    copies = system.copies.get(owner, ()) if system.devices[ahead].owner != owner else ()
    return 1 + sum(copy.key_of(key) not in sizes for copy in copies)


def _sizes(
    system: System, ledger: Ledger, cable: Cable, given: AcCable, floors: Mapping[str, Rating]
) -> tuple[Size, ...]:
    """Return the sections that a cable may have; the one that the spec gives costs nothing. Empty without export."""
    carries = ledger.get(cable.key, Symbol.S_CARRIES)
    section_mm2 = given.section_mm2 or (carries.value if carries else None)
    if section_mm2 is None:
        return ()
    allowed = [section_mm2]
    if given.section_mm2 is None:
        at_most_mm2 = terminal_limit_mm2(system, cable)
        while at_most_mm2 is not None or len(allowed) <= _SIZES_ABOVE:
            larger = next_section(system, cable, given, allowed[-1])
            if larger is None or (at_most_mm2 is not None and larger > at_most_mm2):
                break
            allowed.append(larger)
        floor = floors.get(cable.key)
        if floor is not None:
            allowed = [each for each in allowed if each >= floor.value] or [floor.value]
    return sizes_of(given, allowed, lambda each: rise_with(system, ledger, cable, given, each))


def sizes_of(given: AcCable, allowed: Iterable[float], rise_with: Callable[[float], float | None]) -> tuple[Size, ...]:
    """Return sections that a cable may have, in mm², with what they cost; empty without export.

    rise_with: returns the rise in percent with a section, None without export; raises NoRow for one not tabulated.
    """
    found = []
    for each in allowed:
        try:
            rise = rise_with(each)
        except NoRow:
            continue
        if rise is None:
            return ()
        found.append(Size(each, rise, given.length_m * each * given.parallel if given.section_mm2 is None else 0.0))
    return tuple(found)


def _chosen(system: System, ledger: Ledger, cable: Cable, given: AcCable, section_mm2: float, *, kept: bool) -> Rating:
    """Return a section as a rating with what governs it: the current, or the rise where it is larger.

    kept: the limit holds on every way through the cable; where it cannot, the section promises nothing of it.
    """
    carries, needed = ledger[cable.key, Symbol.S_CARRIES], ledger[cable.key, Symbol.IZ_MIN]
    if section_mm2 == carries.value:
        return replace(carries, symbol=Symbol.S)
    factors, _ = correction_factors(system, ledger, cable, given)
    larger = smallest_section(design(system, cable, given, factors or ()), needed.value, None, section_mm2)
    assert larger is not None, "its capacity is tabulated"
    if kept:
        limit = Given("Δu,limit", rise_limit_percent(system) or 0.0, "%", phrase("on the whole way"))
        text = phrase("smallest Σ L · S with Iz ≥ I,needed and Δu,ac ≤ Δu,limit on every way")
        by_rise = replace(larger, given=(*larger.given, limit), formula=text)
    else:
        text = phrase("largest S that the terminals take, or three sizes above Iz ≥ I,needed; the rise stays too high")
        by_rise = replace(larger, formula=text)
    smaller = [each for each in series("section_mm2") if carries.value <= each < section_mm2]
    by_rise = replace(by_rise, passed_over=tuple(outgrown(each, _RISE) for each in reversed(smaller[-SHOWN_COUNT:])))
    return governed_by(by_rise, _RISE)
