"""What a network operator checks, in one table: supply point, meters, protection settings, limits, isolation, and the
quantities of the summary."""

from __future__ import annotations

from collections.abc import Iterator

from sld.documents.alike import Repeated, Row, alike_as_one, of_all
from sld.documents.cell import NOT_GIVEN, Cell, State, by_ratings, designated, given, of_rating
from sld.documents.drawing.inverters import backup_words
from sld.documents.drawing.summary import quantities
from sld.documents.section import Column, Table
from sld.layout.diagram.controllers import feed_in_words
from sld.layout.diagram.labels import below
from sld.layout.diagram.line import Role
from sld.model.device import Device, InverterUnit
from sld.model.kinds.ac import INTERFACE_PROTECTION, INTERFACE_RELAY, ISOLATOR, MAIN_SWITCH, METER
from sld.model.kinds.role import INTERFACE
from sld.model.limiters import feed_in_limiters
from sld.model.places import place_of, place_words
from sld.model.planned import feeding, leaves_out_planned
from sld.model.system import System
from sld.model.wording import charging_words, device_word, protects_at_interface, titled
from sld.ratings.symbol import Symbol
from sld.steps import Ratings
from sld.words import Phrase, Sayable, Value, amount, capitalised, phrase, sequence, verbatim

__all__ = ["review"]

_COLUMNS = (
    Column(phrase("What"), 0.9),
    Column(phrase("Designation"), behind=True, on_paper=phrase("designation")),
    Column(phrase("As designed"), 2.0),
    Column(phrase("Place"), behind=True, on_paper=phrase("place")),
)

_Row = tuple[Cell, Cell, Cell, Cell]


def review(system: System, ratings: Ratings) -> Table:
    """Return the points that a reviewer looks for, with the devices that answer them; what is not given says so.

    Then the quantities, so that there is no summary beside it that says some of it again.
    """
    rows: list[Row | Repeated] = [*_supply(system, ratings), *_devices(system, ratings), *_inverters(system)]
    told = ((name, NOT_GIVEN, value, NOT_GIVEN) for name, value in quantities(system, ratings))
    return Table("review", titled(phrase("For review"), system), _COLUMNS, (*alike_as_one(rows), *told), abreast=True)


def _supply(system: System, ratings: Ratings) -> Iterator[_Row]:
    supply, network = system.supply, given(verbatim(system.devices[system.root].designation))
    power, limit_w = ratings["", Symbol.SAC], supply.export_limit_w
    yield (
        given(phrase("Supply point")),
        network,
        _stated(supply.supply_point, phrase("number not given")),
        given(system.project.address or ""),
    )
    yield given(phrase("Network operator")), network, _stated(supply.operator, phrase("not given")), NOT_GIVEN
    apparent = of_rating(power, amount(power.value / 1000, "kVA"))
    named: Sayable = phrase("Highest apparent power")
    if leaves_out_planned(system, feeding(system)):
        named = phrase("{quantity}, without future", quantity=named)
    yield given(named), NOT_GIVEN, apparent, NOT_GIVEN
    limit = given(amount(limit_w / 1000, "kW")) if limit_w is not None else _stated(None, phrase("none stated"))
    yield given(phrase("Feed-in limit")), NOT_GIVEN, limit, NOT_GIVEN
    for limiter, feed_in in feed_in_limiters(system):
        said = given(sequence(feed_in_words(feed_in, system)))
        yield given(phrase("Feed-in limiter")), designated(limiter.designation), said, _place(system, limiter)


def _stated(text: str | None, otherwise: Phrase) -> Cell:
    """Return what the spec says, else that it does not."""
    return given(verbatim(text)) if text else Cell(otherwise, State.BLANK)


def _devices(system: System, ratings: Ratings) -> Iterator[Row | Repeated]:
    """Yield the meters, the interface protection, and what the installation is isolated with."""
    for kind in (METER, INTERFACE_PROTECTION, INTERFACE_RELAY, MAIN_SWITCH, ISOLATOR):
        for device in system.one_of_each().apparatus(kind):
            told: list[Value] = [line.said for line in below(device, system, ratings) if line.role is not Role.PLACE]
            interface = device.given_as(INTERFACE)
            if interface is not None and not interface.settings:
                told.append(phrase("settings not given"))
            isolator = device.given_as(ISOLATOR)
            if isolator is not None and isolator.lockable is None:
                told.append(phrase("lockable: not stated"))
            row = (
                given(capitalised(device_word(device))),
                designated(device.designation),
                by_ratings(sequence(told), *ratings.of(device.key)) if told else NOT_GIVEN,
                _place(system, device),
            )
            yield from of_all(system, device, row)


def _inverters(system: System) -> Iterator[Row | Repeated]:
    """Yield the settings of each inverter."""
    for unit in system.one_of_each().of(InverterUnit):
        said, limit_w = unit.given, unit.given.power_limit_w
        islanded = [word for word in backup_words(unit.type.backup) if word]
        words: list[Value] = [
            phrase("network setting {name}", name=said.named_settings)
            if said.named_settings
            else phrase("network setting not given"),
            phrase("cos φ {factor}", factor=amount(said.power_factor)),
            phrase("limited to {limit}", limit=amount(limit_w / 1000, "kW")) if limit_w is not None else "",
            charging_words(said) or "",
            phrase("interface protection built in") if protects_at_interface(system, unit.type) else "",
            phrase("while the network is away: {words}", words=sequence(islanded)) if islanded else "",
        ]
        row = (
            given(phrase("Inverter settings")),
            designated(unit.designation),
            given(sequence(words)),
            _place(system, unit),
        )
        yield from of_all(system, unit, row)


def _place(system: System, device: Device) -> Cell:
    return given(place_words(system.site.locations, place_of(system, device)))
