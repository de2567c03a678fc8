"""Where the installation is isolated, how it is earthed, what is metered, and how its devices talk to each other."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from sld.documents.alike import names_of_all
from sld.documents.cell import NOT_GIVEN, Cell, State, given
from sld.documents.drawing.nearest import QuantityRow
from sld.model.device import Device, InverterUnit
from sld.model.kinds.ac import ISOLATOR, MAIN_SWITCH, METER
from sld.model.kinds.role import ISOLATION
from sld.model.places import place_of, place_words
from sld.model.planned import without_planned
from sld.model.system import System
from sld.model.wording import MEDIA
from sld.words import NOTHING, Sayable, amount, counted, phrase, sequence, unbroken, verbatim

__all__ = ["ac_isolation", "communication", "dc_isolation", "earthing", "meters"]

_LETTERS_COUNT = 42
"""Longer lists of designations are left to the schedule, and the number is told."""

_PLACES_COUNT = 3


def dc_isolation(system: System) -> Iterator[QuantityRow]:
    """Yield the points of isolation on the DC side, and where they are."""
    firsts = system.one_of_each()
    apart = [each for each in without_planned(system, firsts.apparatus(ISOLATION)) if each.in_array]
    built_in = [each for each in without_planned(system, firsts.of(InverterUnit)) if each.type.dc_switch]
    if apart or not built_in:
        yield _devices(system, phrase("DC isolators"), apart)
    if built_in:
        yield _devices(system, phrase("DC switches in inverters"), built_in)


def ac_isolation(system: System) -> Iterator[QuantityRow]:
    """Yield the isolators of inverters and the main switches, and where they are."""
    firsts = system.one_of_each()
    isolators = list(without_planned(system, firsts.apparatus(ISOLATOR)))
    if isolators:
        yield _devices(system, phrase("AC isolators"), isolators)
    yield _devices(system, phrase("Main switches"), list(without_planned(system, firsts.apparatus(MAIN_SWITCH))))


def earthing(system: System) -> QuantityRow:
    """Return the earthing system, and the resistance of the electrode where it is known."""
    electrode = system.earthing.electrode
    known = electrode is not None and electrode.resistance_ohm is not None
    resistance = unbroken("RA", amount(electrode.resistance_ohm or 0.0, "Ω")) if electrode and known else NOTHING
    return given(phrase("Earthing system")), given(sequence([system.supply.earthing_system, resistance]))


def meters(system: System) -> Iterator[QuantityRow]:
    """Yield each meter with its number, and how it is connected."""
    for device in without_planned(system, system.apparatus(METER)):
        meter = device.given_as(METER)
        assert meter is not None, "only meters were asked for"
        name = phrase("Meter {device}", device=device.designation)
        number = unbroken(phrase("No. {number}", number=meter.number)) if meter.number else NOTHING
        place = place_words(system.site.locations, place_of(system, device))
        told = sequence(part for part in (number, place) if part)
        yield given(name), given(told) if told else NOT_GIVEN


def communication(system: System) -> QuantityRow:
    """Return the data chains and the media of the other links."""
    chains = [sequence([chain.designation, chain.given.protocol], " ") for chain in system.chains]
    media = [MEDIA[medium] for medium in dict.fromkeys(link.medium for link in system.links)]
    said = sequence([*chains, *media])
    return given(phrase("Communication")), given(said if said else phrase("none"))


def _devices(system: System, name: Sayable, devices: Sequence[Device]) -> QuantityRow:
    """Return the row of some devices: their designations, and their places. devices: with the first of equal ones."""
    if not devices:
        return given(name), Cell(phrase("none stated"), State.BLANK)
    names = names_of_all(system, devices)
    few = len(names) <= _LETTERS_COUNT
    count = len(devices) + sum(len(system.copies.get(each.owner, ())) for each in devices)
    several: Sayable = verbatim(names) if few else counted("{count} device", "{count} devices", count)
    places = list(dict.fromkeys(place_of(system, each) for each in devices))
    told = [place_words(system.site.locations, place) for place in places if place]
    where = sequence(told) if len(told) <= _PLACES_COUNT else counted("{count} place", "{count} places", len(told))
    return given(name), given(sequence([several, where], "; "))
