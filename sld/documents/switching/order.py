"""The order of isolating: AC first, then DC at the inverter, then at boxes or the roof; lock, wait, prove dead.

AC before DC, so that no load current flows through the DC switch: three makers' and trade pages that agree
(solaxs.com.au, manualshive.com 2652135, eastmojo.com); lock, wait and prove: EN 50110-1 (from memory).
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from sld.documents.cell import EMPTY, FILL_IN, NOT_GIVEN, Cell, State, by_ratings, computed, designated, given
from sld.documents.section import Column, Table
from sld.documents.switching.ways import Source, ac_side, at_boxes, at_source, main_switches, sources
from sld.layout.diagram.labels import below
from sld.layout.diagram.line import Role
from sld.layout.diagram.ranges import joined
from sld.model.device import Apparatus, Device, InverterUnit
from sld.model.places import place_of, place_words
from sld.model.system import System
from sld.model.wording import device_word, status_word
from sld.steps import Ratings
from sld.words import NOTHING, Phrase, Sayable, Value, amount, phrase, sequence, verbatim

__all__ = ["of_each_source", "of_the_site", "ratings_of"]

_TICK = Cell(verbatim("□"), State.BLANK)
_Row = tuple[Cell, ...]


def _columns(first: Phrase | None) -> tuple[Column, ...]:
    return (
        *([Column(first)] if first else []),
        Column(phrase("Step"), right=True),
        Column(phrase("What to do"), 1.4),
        Column(phrase("Designation"), 0.9),
        Column(phrase("Device, ratings"), 1.3),
        Column(phrase("Place"), 0.8),
        Column(phrase("Done")),
    )


def of_the_site(system: System, ratings: Ratings) -> Table:
    """Return the order for the whole site: every source off, then the main switch, then the DC sides."""
    all_sources = sources(system)
    near = _of_all(at_source(system, each) for each in all_sources)
    far = [each for each in _of_all(at_boxes(system, each) for each in all_sources) if each not in near]
    switches = main_switches(system)
    steps: list[tuple[Sayable, Sequence[Device]]] = [
        (phrase("Open the AC side of every source"), _of_all(ac_side(system, each) for each in all_sources)),
        (phrase("Open the main switch"), switches),
        (phrase("Open the DC side at the sources"), near),
        (phrase("Open the DC side at boxes or the roof"), far),
    ]
    rows = list(_numbered(system, ratings, steps, all_sources))
    if system.others:
        root = designated(system.devices[system.root].designation)
        rows = [(root, *row) for row in rows]
    first = phrase("Supply") if system.others else None
    return Table("isolate_site", phrase("Isolating the site"), _columns(first), tuple(rows))


def of_each_source(system: System, ratings: Ratings) -> Table:
    """Return the order for each source by itself."""
    rows: list[_Row] = []
    for each in sources(system):
        steps: list[tuple[Sayable, Sequence[Device]]] = [
            (phrase("Open the AC side"), ac_side(system, each)),
            (phrase("Open the DC side at the source"), at_source(system, each)),
            (phrase("Open the DC side at boxes or the roof"), at_boxes(system, each)),
        ]
        own = _numbered(system, ratings, steps, [each])
        rows += [(designated(each.designation), *row) for row in own]
    return Table("isolate_source", phrase("Isolating one source"), _columns(phrase("Source")), tuple(rows))


def _of_all(devices: Iterable[Sequence[Device]]) -> list[Device]:
    return list({device.key: device for each in devices for device in each}.values())


def _numbered(
    system: System, ratings: Ratings, steps: list[tuple[Sayable, Sequence[Device]]], of: list[Source]
) -> Iterator[_Row]:
    """Yield the rows of an order, numbered; a step without a device is a blank, and stays in the order."""
    number = 0
    opened: list[Device] = []
    for said, devices in steps:
        number += 1
        opened += devices
        named = [(given(said), *_device(system, ratings, device)) for device in devices]
        for row in named or [(given(said), NOT_GIVEN, NOT_GIVEN, NOT_GIVEN)]:
            yield (computed(verbatim(str(number))), *row, _TICK)
    for said, cell in _closing(opened, of):
        number += 1
        yield (computed(verbatim(str(number))), given(said), EMPTY, cell, EMPTY, _TICK)


def _closing(opened: list[Device], of: list[Source]) -> Iterator[tuple[Sayable, Cell]]:
    """Yield what follows when all is open: lock, wait, prove dead on both sides."""
    yield phrase("Lock and tag against closing"), _lockable(opened)
    yield phrase("Wait for the discharge that the maker states"), _waiting(of)
    yield (
        phrase("Prove dead on the AC side and on the DC side"),
        given(
            phrase("with a tester that is proved before and after; each line, N, + and − to each other and to earth")
        ),
    )
    yield phrase("Earth or short only as the maker allows"), EMPTY


def _lockable(opened: list[Device]) -> Cell:
    """Return which devices lock, as far as the spec says."""
    told: dict[bool | None, list[str]] = {}
    for device in opened:
        told.setdefault(getattr(device.given, "lockable", None), []).append(device.designation)
    said = [
        *([phrase("lockable: {devices}", devices=joined(told[True]))] if True in told else ()),
        *([phrase("not lockable: {devices}", devices=joined(told[False]))] if False in told else ()),
        *([phrase("not stated whether lockable: {devices}", devices=joined(told[None]))] if None in told else ()),
    ]
    return given(sequence(said, "; ")) if said else NOT_GIVEN


def _waiting(of: list[Source]) -> Cell:
    """Return the times of discharge by product; a time that is not stated is a line to write on."""
    said: dict[Value, None] = {}
    for each in of:
        if isinstance(each, InverterUnit):
            time_s = each.type.discharge_time_s
            time: Sayable = amount(time_s, "s", 4) if time_s is not None else verbatim("______ s")
            said[sequence([each.product or each.type_name, time], ": ")] = None
    known = any(each.type.discharge_time_s is not None for each in of if isinstance(each, InverterUnit))
    return given(sequence(said, "; ")) if known else FILL_IN


def _device(system: System, ratings: Ratings, device: Device) -> tuple[Cell, Cell, Cell]:
    place = place_words(system.site.locations, place_of(system, device))
    return designated(device.designation), ratings_of(system, ratings, device), given(place)


def ratings_of(system: System, ratings: Ratings, device: Device) -> Cell:
    """Return what a device is, with its ratings, as the diagram has them; of an inverter its own DC switch."""
    if not isinstance(device, Apparatus):
        return given(phrase("built-in DC switch"))
    lines = [each.said for each in below(device, system, ratings) if each.role is Role.RATED]
    words = [device_word(device), *(line for line in lines if line != NOTHING)]
    if device.assumed:
        said = sequence([*words, status_word(device)])
        return Cell(said, State.ASSUMED, tuple(ratings.of(device.key)), why=phrase("not mentioned in the spec"))
    return by_ratings(sequence(words), *ratings.of(device.key))
