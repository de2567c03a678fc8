"""Where notices stand: the devices of each kind of place, and what a notice has to say of this installation."""

from __future__ import annotations

from collections.abc import Callable

from sld.documents.cell import NOT_GIVEN, Cell, State, by_ratings, computed, given
from sld.documents.switching.ways import ac_side, at_boxes, at_source, sources
from sld.grid.notices import Datum, Site
from sld.layout.diagram.ranges import joined
from sld.model.device import BatteryUnit, Busbar, Device, InverterUnit
from sld.model.kinds.ac import ISOLATOR, MAIN_SWITCH, METER, SERVICE_FUSE
from sld.model.kinds.dc import RAPID_SHUTDOWN
from sld.model.kinds.role import ISOLATION
from sld.model.places import place_of, place_words
from sld.model.system import System
from sld.quantity import Rating
from sld.ratings.symbol import Symbol
from sld.steps import Ratings
from sld.words import NOTHING, Sayable, counted, phrase, sequence, verbatim

__all__ = ["data", "devices_at", "where"]


def devices_at(system: System, site: Site) -> dict[str, Sayable]:
    """Return the designations at a kind of place, each with where that is; none where there is no such device."""
    if site is Site.DC_BOXES:
        return {name: verbatim(box.location or "") for name, box in system.boxes.values()}
    found = _DEVICES[site](system) if site in _DEVICES else []
    return {each.designation: place_words(system.site.locations, place_of(system, each)) for each in found}


def where(system: System, site: Site) -> list[Sayable]:
    """Return the places of a notice in words: designations at each place together, or a place that no device is."""
    if site is Site.ENTRANCE:
        return [phrase("entrance of the building")]
    by_place: dict[Sayable, list[str]] = {}
    for name, place in devices_at(system, site).items():
        by_place.setdefault(place, []).append(name)
    return [sequence([joined(names), *([place] if place != NOTHING else [])]) for place, names in by_place.items()]


def _inverters(system: System) -> list[Device]:
    return [each for each in sources(system) if isinstance(each, InverterUnit)]


def _dc_isolators(system: System, unit: Device) -> list[Device]:
    return [*at_source(system, unit), *at_boxes(system, unit)]


def _boards_behind_backup(system: System) -> list[Device]:
    return [each for each in system.of(Busbar) if each.given.fed_from_backup]


def _boards_with_sum(system: System) -> list[Device]:
    return [each for each in system.of(Busbar) if "source_connection" in each.given.model_fields_set]


def _dc_cables(system: System) -> list[Device]:
    return [cable for cable, _ in system.dc_cables()]


_DEVICES: dict[Site, Callable[[System], list[Device]]] = {
    Site.ORIGIN: lambda system: [*system.apparatus(SERVICE_FUSE)] or [system.devices[system.root]],
    Site.METERS: lambda system: [*system.apparatus(METER)],
    Site.BOARDS: lambda system: [*system.of(Busbar)],
    Site.AC_ISOLATORS: lambda system: [*system.apparatus(ISOLATOR, MAIN_SWITCH)],
    Site.DC_ISOLATORS: lambda system: [each for each in system.apparatus(ISOLATION) if each.in_array],
    Site.INVERTERS: _inverters,
    Site.INVERTERS_SEVERAL_DC: lambda system: [
        each for each in _inverters(system) if len(_dc_isolators(system, each)) > 1
    ],
    Site.DC_CABLES: _dc_cables,
    Site.BACKUP_BOARDS: _boards_behind_backup,
    Site.BUSBAR_SUM: _boards_with_sum,
    Site.SHUTDOWN: lambda system: [*system.apparatus(RAPID_SHUTDOWN)],
    Site.BATTERIES: lambda system: [*system.of(BatteryUnit)],
}


def data(system: System, ratings: Ratings, datum: Datum) -> Cell:
    """Return what a notice has to say of this installation; a blank where it is not known, never an invented value."""
    return _DATA[datum](system, ratings)


def _dc_voltage(system: System, ratings: Ratings) -> Cell:
    highest = _highest(system, ratings)
    if highest is None:
        return NOT_GIVEN
    return by_ratings(phrase("highest DC voltage {voltage}", voltage=highest), highest)


def _highest(system: System, ratings: Ratings) -> Rating | None:
    found = [rating for key in system.devices if (rating := ratings.get(key, Symbol.UOC_MAX)) is not None]
    return max(found, key=lambda rating: rating.value, default=None)


def _ac_current(system: System, ratings: Ratings) -> Cell:
    found = [rating for each in _inverters(system) if (rating := ratings.get(each.key, Symbol.IB)) is not None]
    if not found:
        return NOT_GIVEN
    return by_ratings(sequence(dict.fromkeys(found)), *found)


def _isolator_count(system: System, ratings: Ratings) -> Cell:
    said = [
        sequence(
            [
                each.designation,
                counted("{count} DC isolator", "{count} DC isolators", len(_dc_isolators(system, each))),
            ],
            ": ",
        )
        for each in _inverters(system)
        if len(_dc_isolators(system, each)) > 1
    ]
    return computed(sequence(said, "; ")) if said else NOT_GIVEN


def _source_count(system: System, ratings: Ratings) -> Cell:
    count = len(sources(system)) + 1
    return computed(counted("{count} source with the network", "{count} sources with the network", count))


def _disconnectors(system: System, ratings: Ratings) -> Cell:
    names: dict[str, None] = {}
    for device in system.apparatus(MAIN_SWITCH):
        names[device.designation] = None
    for each in sources(system):
        names |= dict.fromkeys(on.designation for on in (*ac_side(system, each), *_dc_isolators(system, each)))
    return given(joined(names)) if names else Cell(phrase("not given"), State.BLANK)


_DATA: dict[Datum, Callable[[System, Ratings], Cell]] = {
    Datum.DC_VOLTAGE: _dc_voltage,
    Datum.AC_CURRENT: _ac_current,
    Datum.DC_ISOLATORS: _isolator_count,
    Datum.SOURCES: _source_count,
    Datum.DISCONNECTORS: _disconnectors,
}
