"""The points that a country wants to see on the diagram, each with what answers it there."""

from __future__ import annotations

from collections.abc import Callable, Iterable

from sld.documents.cell import Cell, State, by_ratings, given
from sld.documents.procedure.laid_down import laid_down
from sld.documents.section import Column, Table
from sld.grid.asked import Point
from sld.layout.diagram.controllers import feed_in_words
from sld.layout.diagram.ranges import joined
from sld.model.device import BatteryUnit, Busbar, Device, GeneratorUnit, InverterUnit, StringGroup
from sld.model.earth import ELECTRODES
from sld.model.kinds.ac import INTERFACE_PROTECTION, INTERFACE_RELAY, ISOLATOR, MAIN_SWITCH, METER, SERVICE_FUSE
from sld.model.kinds.dc import RAPID_SHUTDOWN
from sld.model.kinds.role import OVERCURRENT_PROTECTION, RESIDUAL_PROTECTION
from sld.model.limiters import feed_in_limiters
from sld.model.system import System
from sld.model.wording import protects_at_interface
from sld.ratings.symbol import Symbol
from sld.steps import Ratings
from sld.words import Sayable, counted, phrase, sequence, verbatim

__all__ = ["interface_words", "points"]

_COLUMNS = (
    Column(phrase("Asked for on the diagram"), 1.2),
    Column(phrase("Answered by"), 1.8),
    Column(phrase("Clause, edition"), 1.0),
    Column(phrase("Standing"), 0.8),
)

_NONE = Cell(phrase("not given"), State.BLANK)


def points(system: System, ratings: Ratings) -> Table:
    """Return each point with the designations, or the words, that answer it on the diagram."""
    rows = tuple(
        (
            laid_down(asked, asked.point.phrase),
            _ANSWERS[asked.point](system, ratings),
            laid_down(asked, asked.cited),
            laid_down(asked, asked.standing.phrase),
        )
        for asked in system.grid_rules.points
    )
    return Table("grid_points", phrase("Points asked for on the diagram"), _COLUMNS, rows)


def _named(devices: Iterable[Device]) -> Cell:
    names = [device.designation for device in devices]
    return given(verbatim(joined(names))) if names else _NONE


def _all(parts: Iterable[Sayable]) -> Cell:
    found = list(parts)
    return given(sequence(found, "; ")) if found else _NONE


def _supply_point(system: System, ratings: Ratings) -> Cell:
    number, network = system.supply.supply_point, system.devices[system.root].designation
    return _all([verbatim(f"{network}: {number}")]) if number else _NONE


def _boundary(system: System, ratings: Ratings) -> Cell:
    key = system.ownership_boundary
    if not key:
        return _NONE
    said = phrase("behind {device}", device=system.devices[key].designation)
    if system.supply.ownership_boundary is None:
        return Cell(said, State.ASSUMED, why=phrase("the boundary of ownership is not given"))
    return given(said)


def _meters(system: System, ratings: Ratings) -> Cell:
    return _all(
        verbatim(f"{device.designation}: {meter.number}") if meter.number else verbatim(device.designation)
        for device, meter in system.given_as(METER)
    )


def _rated(kind_devices: Iterable[Device], ratings: Ratings) -> Cell:
    """Return devices with their rated currents."""
    said, behind = [], []
    for device in kind_devices:
        rating = ratings.get(device.key, Symbol.IN)
        behind += [rating] if rating else []
        said.append(sequence([device.designation, *([rating] if rating else [])], " "))
    return by_ratings(sequence(said, "; "), *behind) if said else _NONE


def _main_switch(system: System, ratings: Ratings) -> Cell:
    return _rated(system.apparatus(MAIN_SWITCH), ratings)


def _service_fuse(system: System, ratings: Ratings) -> Cell:
    return _rated(system.apparatus(SERVICE_FUSE), ratings)


def _sources(system: System, ratings: Ratings) -> Cell:
    return _named(
        each for each in system.devices.values() if isinstance(each, InverterUnit | BatteryUnit | GeneratorUnit)
    )


def _protective(system: System, ratings: Ratings) -> Cell:
    count = sum(1 for _ in system.apparatus(OVERCURRENT_PROTECTION, RESIDUAL_PROTECTION))
    return (
        given(counted("{count} device, with its ratings", "{count} devices, with their ratings", count))
        if count
        else _NONE
    )


def _cables(system: System, ratings: Ratings) -> Cell:
    count = len([*system.ac_cables(), *system.dc_cables()])
    if not count:
        return _NONE
    cables = counted("{count} cable", "{count} cables", count)
    return given(phrase("{cables}, with section and length", cables=cables))


def _measuring(system: System, ratings: Ratings) -> Cell:
    limiters = [
        sequence([device.designation, sequence(feed_in_words(limit, system))], ": ")
        for device, limit in feed_in_limiters(system)
    ]
    chains = [verbatim(chain.designation) for chain in system.chains]
    return _all([*limiters, *chains])


def _earthing(system: System, ratings: Ratings) -> Cell:
    electrode = system.earthing.electrode
    kind = [ELECTRODES[electrode.kind]] if electrode else []
    return _all([verbatim(system.supply.earthing_system), *kind])


def _isolation(system: System, ratings: Ratings) -> Cell:
    said = []
    for device, isolator in system.given_as(ISOLATOR):
        lockable = {True: phrase("lockable"), False: phrase("not lockable"), None: phrase("lockable: not stated")}
        said.append(sequence([device.designation, device.location, lockable[isolator.lockable]]))
    return _all(said)


def _interface(system: System, ratings: Ratings) -> Cell:
    return _all(interface_words(system))


def interface_words(system: System) -> list[Sayable]:
    """Return where the interface protection is: devices of their own, and the inverters that have it built in."""
    own = [verbatim(device.designation) for device in system.apparatus(INTERFACE_PROTECTION, INTERFACE_RELAY)]
    built_in = [unit for unit in system.of(InverterUnit) if protects_at_interface(system, unit.type)]
    stated = [u.designation for u in built_in if "interface_protection" in u.type.model_fields_set]
    taken = [u.designation for u in built_in if "interface_protection" not in u.type.model_fields_set]
    return [
        *own,
        *([phrase("built into {units}", units=joined(stated))] if stated else ()),
        *([phrase("taken to be built into {units}; not stated", units=joined(taken))] if taken else ()),
    ]


def _lines(system: System, ratings: Ratings) -> Cell:
    single = [unit for unit in system.of(InverterUnit) if unit.type.phases == 1]
    if not single:
        return given(phrase("three-phase inverters alone"))
    if system.supply.phases == 1:
        return given(phrase("supply with one phase"))
    return _all(sequence([unit.designation, unit.given.line or phrase("line not given")], ": ") for unit in single)


def _storage(system: System, ratings: Ratings) -> Cell:
    units = list(system.of(BatteryUnit))
    return _named(units) if units else given(phrase("no storage"))


def _strings(system: System, ratings: Ratings) -> Cell:
    return _all(
        phrase(
            "{strings}: {count} × {module}",
            strings=joined(group.designations),
            count=group.given.modules_in_series,
            module=group.type_name,
        )
        for group in system.of(StringGroup)
    )


def _shutdown(system: System, ratings: Ratings) -> Cell:
    return _named(system.apparatus(RAPID_SHUTDOWN))


def _busbars(system: System, ratings: Ratings) -> Cell:
    said, behind = [], []
    for board in system.of(Busbar):
        rating = ratings.get(board.key, Symbol.INA)
        behind += [rating] if rating else []
        said.append(sequence([board.designation, *([rating] if rating else [])], " "))
    return by_ratings(sequence(said, "; "), *behind) if said else _NONE


_ANSWERS: dict[Point, Callable[[System, Ratings], Cell]] = {
    Point.SUPPLY_POINT: _supply_point,
    Point.OWNERSHIP_BOUNDARY: _boundary,
    Point.METERS: _meters,
    Point.MAIN_SWITCH: _main_switch,
    Point.SERVICE_FUSE: _service_fuse,
    Point.ALL_SOURCES: _sources,
    Point.PROTECTIVE_DEVICES: _protective,
    Point.CABLES: _cables,
    Point.MEASURING: _measuring,
    Point.EARTHING: _earthing,
    Point.ISOLATION: _isolation,
    Point.INTERFACE_PROTECTION: _interface,
    Point.LINES: _lines,
    Point.STORAGE: _storage,
    Point.STRINGS: _strings,
    Point.SHUTDOWN: _shutdown,
    Point.BUSBARS: _busbars,
}
